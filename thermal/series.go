package thermal

import "math"

// A Series is the exact solution for a slab, long cylinder or sphere, at one
// temperature to begin with, whose surface from then on exchanges heat with
// surroundings at another: in dimensionless form
//
//	theta = (T - Tinf)/(Tstart - Tinf) = sum c_n exp(-z_n^2 Fo) mode_n(x)
//
// with Fo = alpha t/L^2, L the radius or half the slab's thickness, x = 0 at the
// centre and 1 at the surface, and z_n from the Biot number Bi = h L/k. The roots
// are found once, by NewSeries; a Series does not change and may be shared. The zero
// value answers with an *InputError.
//
// It holds for any time: below Fo = 0.008 the half-space solution with the
// curvature of the surface takes over where it is exact (slab, sphere), and the
// cylinder takes as many terms as are needed. Errors are below 1e-9 of the full
// difference (cylinder below Fo = 1e-4: 1e-6).
type Series struct {
	form  Form
	bi    float64
	terms [seriesTerms]seriesTerm
}

type seriesTerm struct{ z, z2, c, cz, mean float64 } // cz is c/z

const (
	// seriesTerms terms leave less than exp(-44) of the difference at seriesFrom.
	seriesTerms  = 24
	seriesFrom   = 0.008
	cylinderFrom = 1e-4
	// negligible is the exponent beyond which a term is dropped: exp(-38) is
	// below the rounding of the sum from 1 down.
	negligible = 38.0
)

// NewSeries prepares the solution for a Biot number of 1e-6 to 1e6, or infinite for
// a surface held at the temperature of the surroundings. Another is a *RangeError
// (NaN: an *InputError), an unknown form an *InputError.
//
// Source: Carslaw & Jaeger, Conduction of Heat in Solids (from memory); first roots
// and factors agree with all the digits of Cengel & Ghajar, Heat and Mass Transfer,
// Table 4-2 (read in part).
func NewSeries(form Form, biot float64) (*Series, error) {
	if err := checkForm(form); err != nil {
		return nil, err
	}
	if !math.IsInf(biot, 1) {
		if err := within("Biot number", biot, 1e-6, 1e6, "", "the series; infinite is allowed"); err != nil {
			return nil, err
		}
	}
	s := &Series{form: form, bi: biot}
	for i := range s.terms {
		s.terms[i] = newTerm(form, biot, i+1)
	}
	return s, nil
}

func checkForm(form Form) error {
	if form != SlabForm && form != CylinderForm && form != SphereForm {
		return &InputError{"form", float64(form), "", "slab, cylinder or sphere"}
	}
	return nil
}

func newTerm(form Form, bi float64, n int) seriesTerm {
	z := eigenvalue(form, bi, n)
	c, mean := amplitude(form, bi, z)
	return seriesTerm{z, z * z, c, c / z, mean}
}

// FirstTerm returns the first root z_1, in radians, and its factor c_1 at the
// centre: the one-term approximation of the handbooks, good for Fo above 0.2.
func (s *Series) FirstTerm() (root, factor float64) {
	return s.terms[0].z, s.terms[0].c
}

// Theta returns the remaining share of the temperature difference at x, 0 (centre)
// to 1 (surface), after a Fourier number of 0 or more: 1 at the beginning, 0 in the
// end. Another x is a *RangeError, a negative Fourier number an *InputError. For
// many times at one place, At is quicker.
func (s *Series) Theta(x, fourier float64) (float64, error) {
	if err := s.made(); err != nil {
		return 0, err
	}
	if err := checkPlace(x, fourier); err != nil {
		return 0, err
	}
	return s.theta(x, fourier), nil
}

func (s *Series) made() error {
	if s == nil || s.bi == 0 {
		return unmade("series", "NewSeries")
	}
	return nil
}

func checkPlace(x, fourier float64) error {
	if err := within("place between centre and surface", x, 0, 1, "", "0 is the centre, 1 the surface"); err != nil {
		return err
	}
	return notNegative("Fourier number", fourier, "")
}

func (s *Series) theta(x, fo float64) float64 {
	if fo < seriesFrom {
		return s.early(x, fo)
	}
	if s.form == SphereForm && x > 1e-3 {
		return s.ball(x, fo)
	}
	sum := 0.0
	for i := range s.terms {
		t := &s.terms[i]
		v := t.z2 * fo
		if v > negligible {
			break
		}
		sum += t.c * decay(v) * mode(s.form, t.z, x)
	}
	return sum
}

// ball is theta for the commonest body, with the divisions taken out of the sum.
func (s *Series) ball(x, fo float64) float64 {
	sum := 0.0
	for i := range s.terms {
		t := &s.terms[i]
		v := t.z2 * fo
		if v > negligible {
			break
		}
		sum += t.cz * decay(v) * math.Sin(t.z*x)
	}
	return sum / x
}

func (s *Series) early(x, fo float64) float64 {
	if fo == 0 {
		return 1
	}
	if s.form != CylinderForm || fo < cylinderFrom {
		return 1 - warmed(s.form, s.bi, x, fo)
	}
	sum := 0.0
	s.eachTerm(fo, func(t seriesTerm, e float64) { sum += t.c * e * math.J0(t.z*x) })
	return sum
}

// eachTerm calls f with every term that counts and its exponential, beyond the
// stored ones too.
func (s *Series) eachTerm(fo float64, f func(t seriesTerm, e float64)) {
	for n := 1; ; n++ {
		var t seriesTerm
		if n <= seriesTerms {
			t = s.terms[n-1]
		} else {
			t = newTerm(s.form, s.bi, n)
		}
		v := t.z2 * fo
		if v > negligible {
			return
		}
		f(t, decay(v))
	}
}

// Mean returns the remaining share of the temperature difference, averaged over
// the volume. A negative Fourier number is an *InputError.
func (s *Series) Mean(fourier float64) (float64, error) {
	h, err := s.Heat(fourier)
	if err != nil {
		return 0, err
	}
	return 1 - h, nil
}

// Heat returns the share Q/Qmax of all the heat that will ever be exchanged:
// 1 - sum c_n exp(-z_n^2 Fo) mean_n. A negative Fourier number is an *InputError.
func (s *Series) Heat(fourier float64) (float64, error) {
	if err := s.made(); err != nil {
		return 0, err
	}
	if err := notNegative("Fourier number", fourier, ""); err != nil {
		return 0, err
	}
	return s.heat(fourier), nil
}

func (s *Series) heat(fo float64) float64 {
	switch {
	case fo == 0:
		return 0
	case fo < seriesFrom && (s.form != CylinderForm || fo < cylinderFrom):
		return released(s.form, s.bi, fo)
	}
	sum := 0.0
	s.eachTerm(fo, func(t seriesTerm, e float64) { sum += t.c * e * t.mean })
	return 1 - sum
}
