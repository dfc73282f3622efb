package rheology_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

func FuzzDairyLaws(f *testing.F) {
	f.Add(3.5, 20.0)
	f.Add(36.0, 60.0)
	f.Add(math.NaN(), math.Inf(1))
	f.Fuzz(func(t *testing.T, share, tempC float64) {
		for name, law := range map[string]func(a, b float64) (float64, error){
			"Bakshi and Smith": rheology.BakshiSmith, "Phipps": rheology.Phipps, "Fernandez-Martin": rheology.FernandezMartin,
		} {
			v, err := law(share, tempC)
			switch {
			case err != nil && !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrInput):
				t.Errorf("%s: %v", name, err)
			case err == nil && !(v > 1e-4 && v < 10):
				t.Errorf("%s(%v, %v) = %v Pa s", name, share, tempC, v)
			}
		}
	})
}

// Any two measured liquids, rule and batch: the batch adds up and is in reach, and a
// prepared recipe says the same.
func FuzzPrepared(f *testing.F) {
	f.Add(0.0026, 0.09, -1.1, 0.3, 1000.0, 0.1, 0.012, 3)
	f.Add(0.002, 0.002, 0.0, 0.0, 1.0, 1.0, 0.002, 0)
	f.Add(1e-9, 1e12, 20.0, 20.0, 1e9, 1e-3, 1.0, 1)
	f.Fuzz(func(t *testing.T, thin, thick, d, e, batch, step, pas float64, rule int) {
		r := rheology.Recipe{
			Thin:       rheology.Measured{Liquid: rheology.Dairy{FatPercent: 3.5}, TempC: 6, PaS: honestplate.Exactly(thin)},
			Thick:      rheology.Measured{Liquid: rheology.Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Factor(thick, 1.2)},
			BatchGrams: batch, StepGrams: step, TempC: 6,
			Rule: []rheology.Rule{nil, rheology.LogVolume, rheology.Emulsion, rheology.Interaction{D: d, E: e}}[uint(rule)%4],
		}
		p, prepareErr := r.Prepare()
		b, err := r.For(pas)
		if prepareErr == nil {
			again, againErr := p.For(pas)
			if (againErr == nil) != (err == nil) || err == nil && again != b {
				t.Fatalf("%v, %v; prepared %v, %v", b, err, again, againErr)
			}
		} else if err == nil {
			t.Fatalf("%v, but not prepared: %v", b, prepareErr)
		}
		if err != nil {
			return
		}
		v := b.Predicted
		if !(0 <= v.Low && v.Low <= v.Likely && v.Likely <= v.High) || math.IsInf(v.High, 0) || !(v.Likely > 0) {
			t.Errorf("predicted %v", v)
		}
		if !(b.ThinGrams >= 0 && b.ThickGrams >= 0) || math.Abs(b.ThinGrams+b.ThickGrams-batch) > 1e-8*batch {
			t.Errorf("%v + %v g of %v", b.ThinGrams, b.ThickGrams, batch)
		}
		if _, err := b.Mix(); err != nil {
			t.Errorf("no mix: %v", err)
		}
	})
}

// A model whose constants make sense has a stress at every rate that does.
func FuzzStress(f *testing.F) {
	f.Add(5.0, 0.5, 0.3, 0.5, 10.0)
	f.Add(0.0, 1e12, 1e12, 2.0, 1e12)
	f.Fuzz(func(t *testing.T, a, b, c, n, rate float64) {
		for _, m := range []rheology.FlowModel{
			rheology.Newtonian{PaS: b}, rheology.PowerLaw{K: b, N: n}, rheology.Bingham{Yield: a, Plastic: b}, rheology.Casson{Yield: a, Plastic: b},
			rheology.HerschelBulkley{Yield: a, K: b, N: n}, rheology.Carreau{Zero: b, Infinite: a, Time: c, N: n},
		} {
			if m.Name() == "" {
				t.Errorf("%T has no name", m)
			}
			if rheology.CheckFlow(m) != nil || !(rate > 0 && rate < 1e12) {
				continue
			}
			if s := m.Stress(rate); math.IsNaN(s) || s < m.YieldStress() {
				t.Errorf("%s%+v at %v 1/s: %v Pa", m.Name(), m, rate, s)
			}
			if flow, err := (rheology.Pipe{Diameter: 0.01, Length: 0.1}).Flow(m, rate); err == nil {
				if g := flow.ApparentShearRate(); math.IsNaN(g) || g < 0 {
					t.Errorf("%s%+v under %v Pa: 8V/D %v", m.Name(), m, rate, g)
				}
			}
		}
	})
}

// Whatever number an enumeration holds, it has a name; a fit of a kind that is none is
// an error.
func FuzzNames(f *testing.F) {
	f.Add(0, 40.0, 60.0)
	f.Add(-1, math.NaN(), 0.0)
	f.Fuzz(func(t *testing.T, k int, x, y float64) {
		kind := rheology.FlowKind(k)
		fit, err := rheology.FitFlow(kind, []rheology.FlowPoint{{ShearRate: 1, Stress: x}, {ShearRate: 5, Stress: y}, {ShearRate: 20, Stress: x + y}, {ShearRate: 90, Stress: 2 * (x + y)}})
		if err == nil {
			for i, v := range fit.Values {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%v: %s is %v", kind, fit.Names[i], v)
				}
			}
		}
		for _, name := range []string{kind.String(), rheology.PlainRule(k).String(), rheology.Trend(k).String(), rheology.Interaction{D: x, E: y}.String(),
			rheology.ISO2431(k).String(), rheology.FordCup(k).String(), rheology.DIN53211().String()} {
			if name == "" {
				t.Errorf("%d has a name that is empty", k)
			}
		}
		for _, e := range []honestplate.Estimate{honestplate.Within(x, 0.1), honestplate.Factor(math.Abs(x), 1.5)} {
			twice := e.Times(2)
			if !math.IsNaN(x) && !math.IsInf(2*x*1.5, 0) && (!e.Contains(e.Likely) || twice.Likely != 2*e.Likely) {
				t.Errorf("%v, twice %v", e, twice)
			}
		}
		blend := rheology.BlendCase{TempC: 6, ThinFatPercent: 3.5, ThinPaS: x, ThickFatPercent: 36, ThickPaS: y, FatPercent: 20}
		if m, err := blend.Mix(rheology.PlainRule(k)); err == nil {
			if v, err := m.Viscosity(6); err == nil && !(v.Likely > 0) {
				t.Errorf("%+v: %v", blend, v)
			}
		}
		v := rheology.SplashVerdict{Value: x, Threshold: y}
		if v.Exceeded() && !(x > y) {
			t.Errorf("%v counts as above %v", x, y)
		}
	})
}
