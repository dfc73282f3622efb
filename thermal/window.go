package thermal

import (
	"fmt"
	"math"
	"time"
)

// Never is the time of what does not happen within the horizon of a clock.
const Never = time.Duration(math.MaxInt64)

// A Window says when something happens: a 95 % band from the earliest to the
// latest time, and the likely one. Each may be Never.
type Window struct {
	// Earliest and Latest bound the band, Likely is the nominal time.
	Earliest, Likely, Latest time.Duration
}

// MayHappen reports whether the event happens anywhere in the band.
func (w Window) MayHappen() bool { return w.Earliest != Never }

// Round returns the window with each time rounded to the nearest multiple of to, as
// time.Duration.Round does; Never stays. A band of minutes is not to be read in
// seconds, and output rounded to what the band warrants stays the same when a model
// moves a little.
func (w Window) Round(to time.Duration) Window {
	round := func(t time.Duration) time.Duration {
		if t == Never {
			return t
		}
		return t.Round(to)
	}
	return Window{Earliest: round(w.Earliest), Likely: round(w.Likely), Latest: round(w.Latest)}
}

// String gives the window for people: "2:10 (1:30..3:05)", min:s below an hour,
// h:min:s above, "never" for what never happens.
func (w Window) String() string {
	if !w.MayHappen() {
		return "never"
	}
	return fmt.Sprintf("%s (%s..%s)", Clock(w.Likely), Clock(w.Earliest), Clock(w.Latest))
}

// Clock prints a duration as min:s below an hour and h:min:s above, to the second.
func Clock(d time.Duration) string {
	if d == Never {
		return "never"
	}
	sign := ""
	if d < 0 {
		sign, d = "-", -d
	}
	s := int64(d.Round(time.Second) / time.Second)
	if s < 3600 {
		return fmt.Sprintf("%s%d:%02d", sign, s/60, s%60)
	}
	return fmt.Sprintf("%s%d:%02d:%02d", sign, s/3600, s/60%60, s%60)
}
