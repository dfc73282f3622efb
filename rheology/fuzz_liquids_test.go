package rheology

import (
	"errors"
	"maps"
	"math"
	"slices"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// sound fails on an estimate that no caller could use.
func sound(t *testing.T, what string, e honestplate.Estimate, err error) {
	t.Helper()
	if err != nil {
		if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: error of no kind: %v", what, err)
		}
		if e != (honestplate.Estimate{}) {
			t.Errorf("%s: %+v beside an error", what, e)
		}
		return
	}
	if !(e.Low <= e.Likely && e.Likely <= e.High) || e.Low < 0 || math.IsInf(e.High, 0) {
		t.Errorf("%s: %+v", what, e)
	}
}

func soundLiquid(t *testing.T, l Liquid, tempC, rate float64) {
	t.Helper()
	what := l.Describe().Name
	e, err := l.Viscosity(tempC)
	sound(t, what+" viscosity", e, err)
	e, err = ViscosityAtRate(l, tempC, rate)
	sound(t, what+" viscosity at a rate", e, err)
	e, err = l.Density(tempC)
	sound(t, what+" density", e, err)
	e, err = l.SurfaceTension(tempC)
	sound(t, what+" surface tension", e, err)
	e, err = RestedYieldStress(l, tempC)
	sound(t, what+" rested yield stress", e, err)
	if y, ok := l.(Yielding); ok {
		e, err = y.YieldStress(tempC)
		sound(t, what+" yield stress", e, err)
	}
}

var odd = []float64{0, -1, 1, 20, 36, 66.9, 100, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, 5e-324}

func FuzzLiquids(f *testing.F) {
	for i, x := range odd {
		f.Add(i, x, 20.0, 30.0)
		f.Add(i, 17.0, x, 30.0)
		f.Add(i, 17.0, 20.0, x)
	}
	f.Fuzz(func(t *testing.T, kind int, x, tempC, rate float64) {
		names := slices.Sorted(maps.Keys(foods))
		food := names[((kind%len(names))+len(names))%len(names)]
		for _, l := range []Liquid{Water{}, Dairy{FatPercent: x}, Sucrose{x}, Syrup{"maple", x}, Syrup{"invert", x}, Syrup{"glucose", x}, Honey{x}, Glycerol{x}, Syrup{"golden", x}, food, Food("tea")} {
			soundLiquid(t, l, tempC, rate)
		}
		if m, err := food.Curve(tempC); err == nil {
			v, err := flow.Viscosity(m, 50)
			sound(t, "curve of a food", honestplate.Exactly(v), err)
		}
		e, err := DairyDensity(x, rate, tempC)
		sound(t, "dairy density", e, err)
	})
}

func FuzzMeasured(f *testing.F) {
	for _, x := range odd {
		f.Add(x, 0.02, 0.019, 0.021, 6.0, 100.0)
		f.Add(6.0, x, 0.019, 0.021, 6.0, 100.0)
		f.Add(6.0, 0.02, x, x, x, 100.0)
		f.Add(6.0, x, x, x, 30.0, x)
	}
	f.Add(1.0, 0.75, 0.019, 1.43, 1.0, 100.0)
	f.Fuzz(func(t *testing.T, at, v, low, high, tempC, rate float64) {
		for _, l := range []Liquid{nil, Dairy{FatPercent: 36}, Honey{}, Food("tomato ketchup")} {
			soundLiquid(t, Measured{Liquid: l, TempC: at, PaS: honestplate.Estimate{Low: low, Likely: v, High: high}}, tempC, rate)
			soundLiquid(t, Measured{Liquid: l, TempC: at, PaS: honestplate.Estimate{Low: low, Likely: v, High: high}, ShearRate: rate}, tempC, 100)
			soundLiquid(t, Measured{Liquid: l, TempC: at, PaS: honestplate.Exactly(v), ShearRate: low}, tempC, rate)
		}
	})
}

func FuzzCustom(f *testing.F) {
	for _, x := range odd {
		f.Add(x, 1.0, 0.4, 1050.0, 0.05, 20.0, 10.0)
		f.Add(20.0, x, 0.4, 1050.0, 0.05, 20.0, 10.0)
		f.Add(20.0, 1.0, x, x, x, 20.0, 10.0)
		f.Add(20.0, 1e6, 0.4, 1050.0, 0.05, x, x)
	}
	f.Fuzz(func(t *testing.T, flowC, a, b, density, tension, tempC, rate float64) {
		for _, m := range []flow.Model{nil, flow.Newtonian{PaS: a}, flow.PowerLaw{K: a, N: b}, flow.HerschelBulkley{Yield: a, K: b, N: 0.5}, flow.Casson{Yield: a, Plastic: b}} {
			soundLiquid(t, Custom{"own", m, flowC, density, tension}, tempC, rate)
		}
	})
}
