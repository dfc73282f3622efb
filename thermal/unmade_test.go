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
