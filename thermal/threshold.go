package thermal

// A Threshold is a limit that a clock waits for and that nobody knows exactly: its
// value and the 95 % band that the clock spreads over. The zero value of a field
// that holds one stands for the default its doc comment gives.
type Threshold struct {
	Value     float64
	Low, High float64
}

// Exactly returns a threshold without a band.
func Exactly(v float64) Threshold { return Threshold{v, v, v} }

// or returns t, or the default where t is zero.
func (t Threshold) or(value, low, high float64) Threshold {
	if t == (Threshold{}) {
		return Threshold{value, low, high}
	}
	return t
}

// check demands low <= value <= high within the limits.
func (t Threshold) check(name string, low, high float64, unit string) error {
	if err := within(name, t.Value, low, high, unit, "this clock"); err != nil {
		return err
	}
	if !(t.Low >= low && t.Low <= t.Value) {
		return &InputError{name + ": low limit", t.Low, unit, "within range and at most the value"}
	}
	if !(t.High <= high && t.High >= t.Value) {
		return &InputError{name + ": high limit", t.High, unit, "within range and at least the value"}
	}
	return nil
}

// uncertain turns the threshold into an input of a Study.
func (t Threshold) uncertain(name string) Uncertain {
	return Uncertain{Name: name, Likely: t.Value, Low: t.Low, High: t.High}
}
