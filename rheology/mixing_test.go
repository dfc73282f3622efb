package rheology_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/examples/published"
	. "example.org/honestplate/rheology"
	"example.org/honestplate/testdata"
)

// publishedCreams returns the blends of testdata/dairy_blends.csv, cold and hot.
func publishedCreams(t testing.TB) (cold, hot []published.MeasuredBlend) {
	t.Helper()
	table, err := testdata.Load("dairy_blends")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		c, err := published.DairyBlend(row)
		if err != nil {
			t.Fatal(err)
		}
		if c.TempC < 40 {
			cold = append(cold, c)
		} else {
			hot = append(hot, c)
		}
	}
	return cold, hot
}

func TestOnThePublishedCreamsTheRulesRankAsTheirCommentsSay(t *testing.T) {
	cold, hot := publishedCreams(t)
	for _, blends := range [][]published.MeasuredBlend{cold, hot} {
		var mean, inside [2]float64
		for i, rule := range []Rule{{}, {NoDeparture: true}} {
			for _, c := range blends {
				m, err := c.Mix(rule)
				if err != nil {
					t.Fatal(err)
				}
				e, err := m.Viscosity(c.TempC)
				if err != nil {
					t.Fatal(err)
				}
				mean[i] += math.Log(e.Likely/c.PaS) / float64(len(blends))
				if e.Contains(c.PaS) {
					inside[i]++
				}
			}
			if inside[i] < float64(len(blends)-1) {
				t.Errorf("%v: %v of %d inside", rule, inside[i], len(blends))
			}
		}
		// Log-mixing alone is high, the law's departure takes a little too much off.
		house, alone := math.Exp(mean[0]), math.Exp(mean[1])
		if !(0.85 < house && house < 1 && 1.05 < alone) {
			t.Errorf("mean ratios: house rule %.3f, log-mixing alone %.3f", house, alone)
		}
	}
}

// The hot band against the formula of Phipps 1969, between many ends.
func TestTheBandOfTheMixingStepHoldsHotCream(t *testing.T) {
	for _, tempC := range []float64{40, 60, 80} {
		for _, ends := range [][2]float64{{0.1, 40}, {3.5, 36}, {3.5, 20}, {12, 30}} {
			thin := phipps(ends[0], tempC)
			thick := phipps(ends[1], tempC)
			for fat := ends[0] + 0.5; fat < ends[1]; fat++ {
				want := phipps(fat, tempC)
				c := published.MeasuredBlend{TempC: tempC, ThinFatPercent: ends[0], ThinPaS: thin, ThickFatPercent: ends[1], ThickPaS: thick, FatPercent: fat, PaS: want}
				for _, rule := range []Rule{{}, {NoDeparture: true}} {
					m, err := c.Mix(rule)
					if err != nil {
						t.Fatal(err)
					}
					v, err := m.Viscosity(tempC)
					if err != nil || !v.Contains(want) {
						t.Errorf("%v, %v %% of %v at %v: %v, %v, Phipps %v", rule, fat, ends, tempC, v, err, want)
					}
				}
			}
		}
	}
}

// Glycerol and sugar thinned with water: the worst that log-mixing alone meets.
func TestTheBandOfTheMixingStepHoldsSolutionsThinnedWithWater(t *testing.T) {
	table, err := testdata.Load("glycerol_water")
	if err != nil {
		t.Fatal(err)
	}
	at := make(map[float64]map[float64]float64)
	for _, row := range table.Rows {
		percent, err1 := row.Float("glycerol_percent")
		tempC, err2 := row.Float("temp_c")
		v, err3 := row.Float("viscosity_mpa_s")
		if err := errors.Join(err1, err2, err3); err != nil {
			t.Fatal(err)
		}
		if at[tempC] == nil {
			at[tempC] = make(map[float64]float64)
		}
		at[tempC][percent] = v / 1000
	}
	n, inside := 0, 0
	check := func(of Liquid, tempC, w, thin, thick, want float64) {
		m, err := Blend(
			Part{Measured{Liquid: Water{}, TempC: tempC, PaS: honestplate.Exactly(thin)}, 1 - w},
			Part{Measured{Liquid: of, TempC: tempC, PaS: honestplate.Exactly(thick)}, w})
		if err != nil {
			t.Fatal(err)
		}
		v, err := m.Viscosity(tempC)
		if err != nil {
			return // outside a part's range of temperature
		}
		n++
		if v.Contains(want) {
			inside++
		}
	}
	for tempC, values := range at {
		if values[0] == 0 || values[100] == 0 {
			continue
		}
		for percent, v := range values {
			if percent > 0 && percent < 100 {
				check(Glycerol{Percent: 100}, tempC, percent/100, values[0], values[100], v)
			}
		}
	}
	if n < 30 || float64(inside) < 0.9*float64(n) {
		t.Errorf("%d of %d inside", inside, n)
	}
	before := inside
	for brix := 22.0; brix < 60; brix += 2 {
		thin, err1 := Water{}.Viscosity(20)
		thick, err2 := Sucrose{Brix: 60}.Viscosity(20)
		want, err3 := Sucrose{Brix: brix}.Viscosity(20)
		if err := errors.Join(err1, err2, err3); err != nil {
			t.Fatal(err)
		}
		check(Sucrose{Brix: 60}, 20, brix/60, thin.Likely, thick.Likely, want.Likely)
	}
	if inside-before < 19 {
		t.Errorf("sugar: %d inside", inside-before)
	}
}

func TestTheBandOfTheMixingStepIsContinuousInTemperature(t *testing.T) {
	// Equal ends at every temperature, so that only the step's band moves.
	blendAt := func(tempC float64) honestplate.Estimate {
		m := mustBlend(t, Rule{},
			Part{Measured{Liquid: Dairy{FatPercent: 3.5}, TempC: tempC, PaS: honestplate.Exactly(0.002)}, 1},
			Part{Measured{Liquid: Dairy{FatPercent: 36}, TempC: tempC, PaS: honestplate.Exactly(0.02)}, 1})
		v, err := m.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	last := blendAt(20)
	for tempC := 20.1; tempC < 50; tempC += 0.1 {
		v := blendAt(tempC)
		if math.Abs(v.Low/last.Low-1) > 0.01 || math.Abs(v.High/last.High-1) > 0.01 {
			t.Errorf("jump at %v: %v to %v", tempC, last, v)
		}
		last = v
	}
}

// phipps is the formula of Phipps 1969, Pa s.
func phipps(fat, t float64) float64 {
	f := fat / 100
	return 1e-3 * math.Pow(10, (1.2876+0.001107*t)*(f+math.Pow(f, 5.0/3))+768.7/(273+t)-2.437)
}

// All parts of a blend are mixed at one rate, which it states: a sauce at 50 1/s and cream at
// 100 meet at 100.
func TestABlendIsMixedAtOneRate(t *testing.T) {
	sauce, cream := Food("chocolate sauce"), Dairy{FatPercent: 36}
	m := mustBlend(t, Rule{}, Part{sauce, 1}, Part{cream, 1})
	rate := m.Describe().ShearRate
	at, err := m.ViscosityAtRate(20, rate)
	if got := likely(t, m, 20); err != nil || rate != 100 || got != at.Likely {
		t.Errorf("%g, at its %g 1/s %v, %v", got, rate, at, err)
	}
	a, _ := sauce.ViscosityAtRate(20, 100)
	b, _ := cream.ViscosityAtRate(20, 100)
	if want := math.Sqrt(a.Likely * b.Likely); math.Abs(at.Likely/want-1) > 1e-12 {
		t.Errorf("%g, want %g", at.Likely, want)
	}
}

// The band of the mixing step is what the doc comments state, per unit of G, the sum over
// pairs of w_i w_j |ln eta_i/eta_j|: for liquids that share nothing, and for milk and cream
// log-mixed alone, cold and hot.
func TestTheMixingStepHasTheBandThatIsStated(t *testing.T) {
	exact := func(l Liquid, tempC, pas float64) Liquid {
		return Measured{Liquid: l, TempC: tempC, PaS: honestplate.Exactly(pas)}
	}
	for _, c := range []struct {
		thin, thick Liquid
		rule        Rule
		tempC       float64
		low, high   float64
	}{
		{Food("olive oil"), Food("sunflower oil"), Rule{}, 20, -1.8, 0.1},
		{Dairy{FatPercent: 3.5}, Dairy{FatPercent: 36}, Rule{NoDeparture: true}, 20, -1.3, 0.5},
		{Dairy{FatPercent: 3.5}, Dairy{FatPercent: 36}, Rule{NoDeparture: true}, 60, -0.6, 0.1},
		{Dairy{FatPercent: 3.5}, Dairy{FatPercent: 36}, Rule{D: -0.1}, 60, -0.35, 0.35},
	} {
		m := mustBlend(t, c.rule, Part{exact(c.thin, c.tempC, 0.01), 1}, Part{exact(c.thick, c.tempC, 0.1), 3})
		e, err := m.Viscosity(c.tempC)
		if err != nil {
			t.Fatal(err)
		}
		g := 0.25 * 0.75 * math.Ln10
		if low, high := math.Log(e.Low/e.Likely)/g, math.Log(e.High/e.Likely)/g; math.Abs(low-c.low) > 0.02 || math.Abs(high-c.high) > 0.02 {
			t.Errorf("%v: %.3f G to %.3f G, want %g to %g", m.Describe().Name, low, high, c.low, c.high)
		}
	}
}
