package pour

import (
	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
)

const (
	leastFall  = 0.005 // m: nearer, the stream has no fall
	fallStep   = 1.11  // from one look to the next, up to the longest fall: 60 looks
	fallDigits = 1e-4  // m: a tenth of a millimetre is finer than any hand
)

// GreatestFall returns the fall in m up to which the pour lands without droplets: Low is
// where the first criterion of [Stream.Splash] that counts begins to say droplets ("pour no
// higher than"), High where the last one does, Likely where their middle speed is reached.
// A fall that is never reached is 3 m, the longest of [Pour.Stream]; one that is
// passed as the stream leaves is 0. The verdict is on the head of a stream that is whole
// and on every drop of one that has broken, as there.
//
// Errors: InputError for the zero Pour and for a surface for which no criterion was found
// ([OutsideRange]); those of Stream and Splash.
func (p Pour) GreatestFall(onto Target) (honestplate.Estimate, error) {
	if err := p.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	over := func(fall float64) (over [3]float64, err error) {
		s, err := p.Stream(fall)
		if err != nil {
			return over, err
		}
		splash, err := s.Splash(onto)
		if err == nil && splash.Summary == OutsideRange {
			err = &honestplate.InputError{Field: "Onto.Rough", Got: "a surface for which only spray was studied", Want: "a smooth or a wet one; on others, try it"}
		}
		t := splash.Threshold
		return [3]float64{s.Speed - t.Low, s.Speed - t.Likely, s.Speed - t.High}, err
	}
	var first [3]float64
	for i := range first {
		f := func(fall float64) (float64, error) {
			v, err := over(fall)
			return v[i], err
		}
		// Where a stream breaks its drops are wider than it was: the speed over the
		// threshold jumps there, so that the first change of sign is looked for.
		low, high := 0.0, leastFall
		at, err := f(high)
		for err == nil && at <= 0 && high < physics.LongestFall {
			low, high = high, min(high*fallStep, physics.LongestFall)
			at, err = f(high)
		}
		if err == nil && at > 0 && low > 0 {
			first[i], err = root.Bisect(f, low, high, fallDigits)
		}
		if err != nil {
			return honestplate.Estimate{}, err
		}
		if at <= 0 {
			first[i] = physics.LongestFall
		}
	}
	// The roots are good to fallDigits: in order where two of them are one.
	likely := max(first[0], first[1])
	return honestplate.Estimate{Low: first[0], Likely: likely, High: max(likely, first[2])}, nil
}
