package thermal

import (
	"errors"
	"math"
	"testing"
	"time"
)

func TestZeroValuesOfWhatAMakerMakesAnswerWithAnInputError(t *testing.T) {
	second := func(_ any, err error) error { return err }
	for name, err := range map[string]error{
		"curve: enthalpy":      second(new(EnthalpyCurve).Enthalpy(-5)),
		"curve: temperature":   second(new(EnthalpyCurve).TempC(0)),
		"curve: ice":           second(new(EnthalpyCurve).IceFraction(-5)),
		"curve: conductivity":  second(new(EnthalpyCurve).Conductivity(-5)),
		"curve: apparent heat": second(new(EnthalpyCurve).ApparentHeat(-5)),
		"no curve":             second((*EnthalpyCurve)(nil).Enthalpy(-5)),
		"series: at":           second(new(Series).At(0.5)),
		"series: theta":        second(new(Series).Theta(0.5, 0.1)),
		"series: mean":         second(new(Series).Mean(0.1)),
		"series: heat":         second(new(Series).Heat(0.1)),
		"history: theta":       second(new(History).Theta(0.001)),
		"history: fourier":     second(new(History).Fourier(0.5)),
		"transient: place":     second(new(Transient).TempC(Place{}, time.Minute)),
		"transient: heat":      second(new(Transient).Heat(time.Minute)),
		"transient: mean":      second(new(Transient).MeanC(time.Minute)),
		"transient: time":      second(new(Transient).TimeTo(Place{}, 5)),
		"transient: mean time": second(new(Transient).MeanTimeTo(5)),
		"exchanger":            second(Exchanger{}.At(5, 0)),
		"exchanger at rest":    second(Exchanger{}.EquilibriumC(0)),
	} {
		if !errors.Is(err, ErrInput) {
			t.Errorf("%s: %v, want an input error", name, err)
		}
	}
	if p := new(EnthalpyCurve).Points(); p != nil {
		t.Errorf("an empty curve has the points %v", p)
	}
}

func TestStudyWhoseModelReturnsNothingIsRefused(t *testing.T) {
	s := Study{Events: 1, Samples: 8, Model: func() func([]float64, []time.Duration) error { return nil }}
	if _, err := s.Run(); !errors.Is(err, ErrInput) {
		t.Errorf("a study without a function: %v, want an input error", err)
	}
}

func TestBlackbodyFractionOfMinusZeroIsZero(t *testing.T) {
	if f, err := BlackbodyFraction(math.Copysign(0, -1)); f != 0 || err != nil {
		t.Errorf("share below -0 m K: %g, %v", f, err)
	}
}

func TestOverrunBeyondAllNumbersIsRefused(t *testing.T) {
	if v, err := Overrun(1e5, 5e-324); !errors.Is(err, ErrInput) {
		t.Errorf("overrun of next to nothing: %g, %v", v, err)
	}
}

func TestSlabOfAnEyeblinkIsStillAtItsStart(t *testing.T) {
	s, err := NewSeries(SlabForm, 2)
	if err != nil {
		t.Fatal(err)
	}
	if v, err := s.Theta(1, 5e-324); v != 1 || err != nil {
		t.Errorf("share left after no time to speak of: %g, %v", v, err)
	}
}

func TestWhatNoMatterIsLikeIsRefused(t *testing.T) {
	water := Material{0.6, 1000, 4180}
	for name, err := range map[string]error{
		"density of nothing":  Material{0.6, 1e-300, 4180}.Validate(),
		"heat without end":    Material{0.6, 1000, 1e300}.Validate(),
		"conducts too well":   Material{1e300, 1000, 4180}.Validate(),
		"below absolute zero": func() error { _, e := (HalfSpace{water, -300}).Held(0, 0.01, time.Minute); return e }(),
		"contact at 1e300":    func() error { _, e := ContactC(HalfSpace{water, 1e300}, HalfSpace{water, 0}); return e }(),
		"flux of a star":      func() error { _, e := (HalfSpace{water, 20}).Heated(1e300, 0, time.Minute); return e }(),
		"a depth of miles":    func() error { _, e := (HalfSpace{water, 20}).Held(0, 1e300, time.Minute); return e }(),
		"a grain of nothing":  func() error { _, e := ShapeFactor(Size{Diameter: 0.1, Height: 1e-300}, 1); return e }(),
		"a crumb that is at once at rest": func() error {
			_, e := Lumped{water, 1e-300, 1, 10, 20, 0}.TempC(0)
			return e
		}(),
	} {
		if !errors.Is(err, ErrRange) {
			t.Errorf("%s: %v, want a range error", name, err)
		}
	}
}
