package main

import (
	"fmt"
	"math"
	"strconv"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

// when puts a window in words: when it happens, or that it does not.
func when(w honestplate.Window) string {
	switch {
	case !w.MayHappen():
		return "never"
	case w.Likely.Never:
		return fmt.Sprintf("most likely never, at the earliest after %s", w.Earliest)
	case w.Latest.Never:
		return fmt.Sprintf("after %s (%s or later, perhaps never)", w.Likely, w.Earliest)
	}
	return "after " + w.String()
}

// until says when a window closes, or that it does not.
func until(w honestplate.Window) string {
	if w.Likely.Never {
		return "the end of the slot"
	}
	return w.Likely.String()
}

// earlier is the window of whatever comes first of two.
func earlier(a, b honestplate.Window) honestplate.Window {
	first := func(x, y honestplate.Moment) honestplate.Moment {
		if x.Before(y) {
			return x
		}
		return y
	}
	return honestplate.Window{Earliest: first(a.Earliest, b.Earliest), Likely: first(a.Likely, b.Likely), Latest: first(a.Latest, b.Latest)}
}

// decisive names the input that explains most of a time's spread, and its share.
func decisive(s []thermal.Sensitivity) string {
	if len(s) == 0 {
		return ""
	}
	return fmt.Sprintf("%s, %.0f %%", s[0].Input, 100*s[0].Share)
}

// digits prints a number to n significant digits, never with an exponent.
func digits(v float64, n int) string {
	if v == 0 {
		return "0"
	}
	decimals := n - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	scale := math.Pow10(decimals)
	return strconv.FormatFloat(math.Round(v*scale)/scale, 'f', max(0, decimals), 64)
}

// mPaS prints a viscosity with its band, if it has one.
func mPaS(e honestplate.Estimate) string {
	if e.Low == e.High {
		return digits(e.Likely*1000, 2) + " mPa s"
	}
	return fmt.Sprintf("%s (%s to %s) mPa s", digits(e.Likely*1000, 2), digits(e.Low*1000, 2), digits(e.High*1000, 2))
}

// seconds prints a short time: to a tenth below ten seconds.
func seconds(d time.Duration) string {
	if d < 10*time.Second {
		return fmt.Sprintf("%.1f s", d.Seconds())
	}
	return fmt.Sprintf("%.0f s", d.Seconds())
}

// hours prints the time something stays in a freezer.
func hours(d time.Duration) string {
	return fmt.Sprintf("%d h %02d min", int(d.Hours()), int(d.Minutes())%60)
}

// takes counts good takes.
func takes(n int) string {
	if n == 1 {
		return "1 good take"
	}
	return fmt.Sprintf("%d good takes", n)
}

// stepDecimals is how many decimals a mass in steps has.
func stepDecimals(step float64) int {
	for n := range 6 {
		scaled := step * math.Pow10(n)
		if math.Abs(scaled-math.Round(scaled)) < 1e-9 {
			return n
		}
	}
	return 6
}
