package thermal

import "math"

// A History is a Series at one place, made by Series.At: what depends on the place
// is computed once, so that a time costs little more than an exponential a term. The
// zero value answers with an *InputError.
type History struct {
	series *Series
	x      float64
	a, z2  [seriesTerms]float64
}

// At returns the history at x, 0 (centre) to 1 (surface), else a *RangeError.
func (s *Series) At(x float64) (*History, error) {
	if err := s.made(); err != nil {
		return nil, err
	}
	if err := checkPlace(x, 0); err != nil {
		return nil, err
	}
	h := &History{series: s, x: x}
	for i, t := range s.terms {
		h.a[i] = t.c * mode(s.form, t.z, x)
		h.z2[i] = t.z2
	}
	return h, nil
}

// Theta returns the remaining share of the temperature difference after a Fourier
// number of 0 or more, else an *InputError.
func (h *History) Theta(fourier float64) (float64, error) {
	if err := h.made(); err != nil {
		return 0, err
	}
	if err := notNegative("Fourier number", fourier, ""); err != nil {
		return 0, err
	}
	return h.theta(fourier), nil
}

func (h *History) made() error {
	if h == nil || h.series == nil {
		return unmade("history", "Series.At")
	}
	return nil
}

func (h *History) theta(fo float64) float64 {
	if fo < seriesFrom {
		return h.series.early(h.x, fo)
	}
	sum := 0.0
	for i, z2 := range &h.z2 {
		v := z2 * fo
		if v > negligible {
			break
		}
		sum += h.a[i] * decay(v)
	}
	return sum
}

// Fourier returns the Fourier number at which the remaining share has fallen to
// theta, above 0 and at most 1, else a *RangeError.
func (h *History) Fourier(theta float64) (float64, error) {
	if err := h.made(); err != nil {
		return 0, err
	}
	if err := within("remaining share", theta, 1e-12, 1, "", "the share falls from 1 towards 0"); err != nil {
		return 0, err
	}
	if theta == 1 {
		return 0, nil
	}
	return fallTo(h.theta, theta, h.z2[0]), nil
}

// fallTo returns where a falling function of the Fourier number comes down to
// theta; rate is that of its slowest exponential. The search is on the logarithm,
// since early times may be tiny: halving until the bracket is short, then the
// Illinois variant of false position.
func fallTo(f func(fo float64) float64, theta, rate float64) float64 {
	gap := func(v float64) float64 { return f(math.Exp(v)) - theta }
	lo, hi := math.Log(1e-12), math.Log((3-math.Log(theta))/rate) // the first factor is below e^3 everywhere
	for hi-lo > 0.5 {
		if mid := (lo + hi) / 2; gap(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	a, b := gap(lo), gap(hi)
	side := 0
	for range 60 {
		v := (lo*b - hi*a) / (b - a)
		if !(v > lo && v < hi) {
			break
		}
		g := gap(v)
		switch {
		case math.Abs(g) <= 1e-15:
			return math.Exp(v)
		case g > 0:
			lo, a = v, g
			if side > 0 {
				b /= 2
			}
			side = 1
		default:
			hi, b = v, g
			if side < 0 {
				a /= 2
			}
			side = -1
		}
	}
	return math.Exp((lo + hi) / 2)
}
