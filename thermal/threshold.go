package thermal

import "fmt"

// A Threshold is a limit that a clock waits for and that nobody knows exactly: the
// likely value and the 95 % band that the clock spreads over. The zero value of a
// field that holds one stands for the default its doc comment gives.
type Threshold struct {
	// Low and High are the 95 % limits around Likely, in the unit of the field that
	// holds the threshold.
	Low, Likely, High float64
}

// Exactly returns a threshold without a band.
func Exactly(v float64) Threshold { return Threshold{v, v, v} }

// or returns t, or the default where t is zero.
func (t Threshold) or(low, likely, high float64) Threshold {
	if t == (Threshold{}) {
		return Threshold{low, likely, high}
	}
	return t
}

// check demands low <= t.Low <= t.Likely <= t.High <= high.
func (t Threshold) check(name string, low, high float64, unit string) error {
	if err := within(name, t.Likely, low, high, unit, "this clock"); err != nil {
		return err
	}
	if !(t.Low >= low && t.Low <= t.Likely) {
		return &InputError{name + ": low limit", t.Low, unit, fmt.Sprintf("%.6g or more and at most the likely value", low)}
	}
	if !(t.High <= high && t.High >= t.Likely) {
		return &InputError{name + ": high limit", t.High, unit, fmt.Sprintf("%.6g or less and at least the likely value", high)}
	}
	return nil
}

// uncertain turns the threshold into an input of a Study.
func (t Threshold) uncertain(name string) Uncertain {
	return Uncertain{Name: name, Likely: t.Likely, Low: t.Low, High: t.High}
}
