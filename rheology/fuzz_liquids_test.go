package rheology

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/honestplate"
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

func soundNumber(t *testing.T, what string, v float64, err error) {
	t.Helper()
	if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
		t.Errorf("%s: %g", what, v)
	}
	if err != nil && !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("%s: error of no kind: %v", what, err)
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
		for _, l := range []Liquid{Water{}, Dairy{x}, Sucrose{x}, Maple{x}, Invert{x}, Glucose{x}, Honey{x}, Glycerol{x}, Oil(kind), Condensed(kind), Sauce(kind)} {
			soundLiquid(t, l, tempC, rate)
		}
		if m, err := Sauce(kind).Flow(tempC); err == nil && CheckFlow(m) != nil {
			t.Errorf("sauce %d at %g: %+v", kind, tempC, m)
		}
		be, err := Sucrose{x}.Baume()
		soundNumber(t, "Baume", be, err)
		e, err := DairyDensity(x, rate, tempC)
		sound(t, "dairy density", e, err)
		for name, law := range map[string]func(a, b float64) (float64, error){"Bakshi": BakshiSmith, "Phipps": Phipps, "Fernandez": FernandezMartin} {
			v, err := law(x, tempC)
			soundNumber(t, name, v, err)
		}
	})
}

func FuzzMeasured(f *testing.F) {
	for _, x := range odd {
		f.Add(x, 0.02, 0.019, 0.021, 6.0, 100.0)
		f.Add(6.0, x, 0.019, 0.021, 6.0, 100.0)
		f.Add(6.0, 0.02, x, x, x, 100.0)
		f.Add(6.0, x, x, x, 30.0, x)
	}
	f.Fuzz(func(t *testing.T, at, v, low, high, tempC, rate float64) {
		for _, l := range []Liquid{nil, Dairy{36}, Honey{}, Ketchup} {
			soundLiquid(t, Measured{l, at, honestplate.Estimate{Low: low, Likely: v, High: high}}, tempC, rate)
		}
	})
}

func FuzzOwn(f *testing.F) {
	for _, x := range odd {
		f.Add(x, 1.0, 40.0, 0.4, 60.0, 0.2, 20.0, 10.0)
		f.Add(20.0, x, 40.0, 0.4, 60.0, 0.2, 20.0, 10.0)
		f.Add(20.0, 1.0, x, x, 60.0, 0.2, x, x)
		f.Add(20.0, 1e6, 40.0, 1e-5, 23.0, x, 20.0, 10.0)
	}
	f.Fuzz(func(t *testing.T, t1, v1, t2, v2, t3, v3, tempC, rate float64) {
		curves := []Vogel{{}, {A: v1, B: t1, T0: t2, LowC: v2, HighC: t3, N: 3, Spread: v3}}
		for _, points := range [][]TemperaturePoint{{{t1, v1}, {t2, v2}}, {{t1, v1}, {t2, v2}, {t3, v3}}, {{t1, v1}, {t2, v2}, {t3, v3}, {10, 1}, {30, 0.5}}} {
			c, err := FitVogel(points...)
			soundNumber(t, "Vogel", c.A+c.B, err)
			if err == nil {
				curves = append(curves, c)
				e, err := c.Viscosity(points[0].TempC)
				sound(t, "fitted curve", e, err)
			}
		}
		for _, c := range curves {
			e, err := c.Viscosity(tempC)
			sound(t, "curve", e, err)
			a, err := c.ActivationEnergy(tempC)
			soundNumber(t, "activation energy", a, err)
			for _, m := range []FlowModel{nil, PowerLaw{v1, v2}, HerschelBulkley{v1, v2, v3}, Casson{v1, v2}} {
				soundLiquid(t, Own{"own", c, m, t1, v2, v3}, tempC, rate)
			}
		}
	})
}

func FuzzFlowModels(f *testing.F) {
	for _, x := range odd {
		f.Add(x, 2.0, 0.5, 0.01, 1000.0, 1e-5)
		f.Add(5.0, x, 0.5, 0.01, x, 1e-5)
		f.Add(5.0, 2.0, x, x, 1000.0, x)
	}
	f.Fuzz(func(t *testing.T, a, b, n, size, pressure, rate float64) {
		for _, m := range []FlowModel{
			nil, Newtonian{a}, PowerLaw{a, n}, Bingham{a, b}, HerschelBulkley{a, b, n}, Casson{a, b}, Carreau{a, b, size, n}, disguised{Bingham{a, b}},
		} {
			v, err := ApparentViscosity(m, rate)
			soundNumber(t, "apparent viscosity", v, err)
			for _, p := range []Pipe{{size, size}, {0.01, size}} {
				flow, err := p.Flow(m, pressure)
				for _, x := range []float64{flow.Rate, flow.Speed, flow.CentreSpeed, flow.WallShearRate, flow.PlugDiameter} {
					soundNumber(t, "flow", x, err)
				}
				re, err := flow.Reynolds(size)
				soundNumber(t, "Reynolds number", re, err)
				dp, err := p.PressureFor(m, rate)
				soundNumber(t, "pressure", dp, err)
				he, err := p.Hedstrom(Bingham{a, b}, pressure)
				soundNumber(t, "Hedstrom number", he, err)
			}
		}
	})
}

func FuzzFit(f *testing.F) {
	for _, x := range odd {
		f.Add(x, 2.0, 3.0, 5.0, 30.0, 20.0, 100.0, 40.0, x)
		f.Add(1.0, x, 3.0, x, 30.0, 20.0, 100.0, 40.0, 0.0)
	}
	f.Add(1.0, 2.0, 3.0, 5.0, 30.0, 20.0, 100.0, 40.0, 1.0)
	f.Add(1.0, 2.0, 1.0, 2.0, 1.0, 2.0, 1.6, 2.0, 1.0)
	f.Fuzz(func(t *testing.T, r1, s1, r2, s2, r3, s3, r4, s4, w float64) {
		points := []FlowPoint{{r1, s1, w}, {r2, s2, 0}, {r3, s3, 0}, {r4, s4, w}, {2 * r4, s4 * 1.1, 0}}
		fits, err := BestFlow(points)
		soundNumber(t, "best fit", 0, err)
		for _, fit := range fits {
			soundNumber(t, "residuals", fit.RSS, CheckFlow(fit.Model))
			for i, v := range fit.Values {
				soundNumber(t, fit.Names[i], v, nil)
				_ = fit.StandardError(i)
			}
			e, err := fit.Viscosity(r2)
			sound(t, "fitted viscosity", e, err)
			if math.IsNaN(fit.AICc) {
				t.Errorf("AICc of %s is no number", fit.Kind)
			}
		}
		curve, err := RabinowitschMooney(points)
		soundNumber(t, "Rabinowitsch-Mooney", 0, err)
		for _, p := range curve {
			soundNumber(t, "true rate", p.ShearRate+p.Stress, nil)
		}
		m, err := FitPowerLawLog(points)
		soundNumber(t, "power law", m.K+m.N, err)
		if err == nil {
			soundNumber(t, "pipe constants", m.ForPipe().K+m.FromPipe().K, nil)
		}
	})
}

func FuzzReadFlowPoints(f *testing.F) {
	for _, s := range []string{"", "1,2\n3,4\n", "rate,stress\n1,2,3\n", "#\n\n1;2", "\"", "1,NaN", "1e999,1", "\xff,\x00", "a,b\nc,d"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		points, err := ReadFlowPoints(strings.NewReader(s))
		if err == nil && len(points) == 0 {
			t.Error("no points and no error")
		}
		for _, p := range points {
			if _, err := checkFlowPoints([]FlowPoint{p}); err != nil {
				t.Errorf("%+v passed: %v", p, err)
			}
		}
	})
}
