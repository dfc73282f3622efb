package thermal

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
	"time"
)

// BandSamples is the number of samples a Study takes unless told otherwise.
const BandSamples = 256

// An Uncertain is an input that is not known exactly. Its distribution is normal
// in two pieces: median at Likely, 2.5 % below Low, 2.5 % above High. With Scale
// set the pieces are normal in the logarithm, for a factor such as a heat transfer
// coefficient that is known to "times or divided by".
type Uncertain struct {
	Name   string  // as the sheet will say it, such as "humidity"
	Likely float64 // the nominal value
	Low    float64 // 2.5 % of the values lie below; at most Likely
	High   float64 // 2.5 % of the values lie above; at least Likely
	Scale  bool    // normal in the logarithm; Low must be above 0
	// Min and Max are physical limits, such as 0 and 1 for a relative humidity:
	// samples beyond them are put on them. Both zero means no limits.
	Min, Max float64
}

// at returns the value at z standard deviations from the median.
func (u Uncertain) at(z float64) float64 {
	const z95 = 1.959963984540054
	end := u.High
	if z < 0 {
		end = u.Low
	}
	var v float64
	if u.Scale {
		v = u.Likely * math.Exp(math.Abs(z)/z95*math.Log(end/u.Likely))
	} else {
		v = u.Likely + math.Abs(z)/z95*(end-u.Likely)
	}
	if u.Min < u.Max {
		v = min(max(v, u.Min), u.Max)
	}
	return v
}

func (u Uncertain) check() error {
	for _, v := range [...]float64{u.Likely, u.Low, u.High, u.Min, u.Max} {
		// The tails reach three times as far as the limits and must stay finite.
		if err := within(u.Name, v, -1e100, 1e100, "", "numbers that can be spread"); err != nil {
			return err
		}
	}
	switch {
	case u.Low > u.Likely:
		return &InputError{u.Name + ": low limit", u.Low, "", "at most the likely value"}
	case u.High < u.Likely:
		return &InputError{u.Name + ": high limit", u.High, "", "at least the likely value"}
	case u.Scale && u.Low <= 0:
		return &InputError{u.Name + ": low limit", u.Low, "", "above 0, for a factor"}
	case u.Scale && u.High/u.Low > 1e50:
		return &InputError{u.Name + ": high limit", u.High, "", "within 1e50 times the low one"}
	case u.Min > u.Max:
		return &InputError{u.Name + ": least possible value", u.Min, "", "at most the greatest"}
	}
	return nil
}

// A Study asks how sure the times of a model's events are, given how sure its
// inputs are.
//
// The model runs once with every input at its likely value, twice per input with
// that one alone at its 95 % limits, and Samples times with all of them drawn from
// a fixed quasi-random sequence (gonum's samplemv.Halton, scrambled, with a fixed
// seed). The runs are spread over the cores; results do not depend on how many
// there are. With 256 samples the ends of a band are themselves good to about a
// tenth of its half-width.
type Study struct {
	Inputs  []Uncertain // at most 24
	Events  int         // how many times the model returns
	Samples int         // at most 4096; 0 means BandSamples
	// Model returns a function that computes the events' times, Never for what
	// does not happen, for input values in the order of Inputs. Each core calls
	// Model once and then its function many times, so scratch memory can live in
	// the closure. The function must write every element of at and keep neither
	// slice.
	Model func() func(x []float64, at []time.Duration) error
}

// An Outcome is what a Study finds for one event.
type Outcome struct {
	Window // 2.5 % quantile, the nominal run, 97.5 % quantile
	// Decides ranks the inputs by how much of the spread they explain, the
	// decisive one first; empty where the window has no width.
	Decides []Sensitivity
}

// Run carries out the study. It returns an *InputError for a study that makes no
// sense (a *RangeError for an input beyond 1e100), else the error of the earliest
// failing run, saying which it was.
func (s Study) Run() ([]Outcome, error) {
	n := s.Samples
	if n == 0 {
		n = BandSamples
	}
	if err := s.check(n); err != nil {
		return nil, err
	}
	d := len(s.Inputs)
	runs := 1 + 2*d + n
	times := make([]time.Duration, runs*s.Events) // run by run
	errs := make([]error, runs)
	z := halton(n, d)
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), runs) {
		wg.Go(func() {
			model := s.Model()
			if model == nil {
				model = func([]float64, []time.Duration) error {
					return &InputError{"function that Model returns", 0, "", "one that is not nil"}
				}
			}
			x := make([]float64, d)
			for r := int(next.Add(1)) - 1; r < runs; r = int(next.Add(1)) - 1 {
				s.inputs(x, r, z)
				at := times[r*s.Events : (r+1)*s.Events : (r+1)*s.Events]
				errs[r] = model(x, at)
			}
		})
	}
	wg.Wait()
	for r, err := range errs {
		if err != nil {
			return nil, fmt.Errorf("thermal: run %d of the band: %w", r, err)
		}
	}
	out := make([]Outcome, s.Events)
	event := make([]time.Duration, runs)
	for e := range out {
		for r := range event {
			event[r] = times[r*s.Events+e]
		}
		out[e] = s.outcome(event, z)
	}
	return out, nil
}

// inputs fills x for run r: 0 is nominal, then the limits one at a time, then the
// samples.
func (s Study) inputs(x []float64, r int, z []float64) {
	d := len(x)
	for j, u := range s.Inputs {
		x[j] = u.Likely
		if r > 2*d {
			x[j] = u.at(z[(r-1-2*d)*d+j])
		}
	}
	if r > 0 && r <= 2*d {
		u := s.Inputs[(r-1)/2]
		x[(r-1)/2] = u.at(1.959963984540054 * float64(2*((r-1)%2)-1))
	}
}

func (s Study) outcome(event []time.Duration, z []float64) Outcome {
	d := len(s.Inputs)
	sorted := slices.Sorted(slices.Values(event[1+2*d:]))
	// The nearest rank, the same number of samples cut off at both ends. Never is
	// the greatest duration, so it sorts as infinity.
	cut := int(math.Ceil(0.025*float64(len(sorted)))) - 1
	w := Window{Earliest: sorted[cut], Likely: event[0], Latest: sorted[len(sorted)-1-cut]}
	w.Earliest = min(w.Earliest, w.Likely)
	w.Latest = max(w.Latest, w.Likely)
	if w.Earliest == w.Latest {
		return Outcome{Window: w} // one stray sample decides nothing
	}
	return Outcome{Window: w, Decides: s.rank(event, z)}
}

func (s Study) check(n int) error {
	switch {
	case s.Events < 1 || s.Events > 1000:
		return &InputError{"number of events", float64(s.Events), "", "1 to 1000"}
	case n < 1 || n > 4096:
		return &InputError{"number of samples", float64(n), "", "1 to 4096"}
	case len(s.Inputs) > haltonDims:
		return &InputError{"number of uncertain inputs", float64(len(s.Inputs)), "", fmt.Sprintf("at most %d", haltonDims)}
	case s.Model == nil:
		return &InputError{"number of models", 0, "", "one"}
	}
	for _, u := range s.Inputs {
		if err := u.check(); err != nil {
			return err
		}
	}
	return nil
}
