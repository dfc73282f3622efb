package portion

import (
	"math"
	"testing"
)

func FuzzTolerances(f *testing.F) {
	f.Add(500.0, 485.0, 0.5, 0)
	f.Add(113.0, 105.8, 0.0, 2)
	f.Add(math.NaN(), -1.0, math.Inf(1), 7)
	f.Fuzz(func(t *testing.T, nominal, contents, uncertainty float64, system int) {
		for _, g := range []func() (float64, error){
			func() (float64, error) { return TolerableNegativeError(nominal) },
			func() (float64, error) { return FillDeviation(nominal, contents) },
			func() (float64, error) { v, err := MaximumAllowableVariation(nominal); return v.Grams, err },
		} {
			if v, err := g(); err == nil {
				allFinite(t, "tolerance", v)
				if v <= 0 || v > nominal*0.1+0.1 {
					t.Fatalf("tolerance %v of %v", v, nominal)
				}
			}
		}
		if v, err := System(system).JudgePackage(nominal, contents, uncertainty); err == nil {
			allFinite(t, "shortfall", v.Shortfall, v.Tolerance)
		}
		_, _, _ = CheckScale(nominal, uncertainty, contents)
		w := Weighing{Grams: contents, Expanded: uncertainty}
		if w.String() == "" {
			t.Fatal("no text")
		}
		d := Declaration{Item: "x", Grams: nominal, Advertised: system%2 == 0}
		if v, err := d.JudgePicture(w); err == nil {
			allFinite(t, "difference", v.Difference, v.Uncertainty)
		}
	})
}

func FuzzLots(f *testing.F) {
	f.Add(500.0, 300, false, 0, bytesOf(packs(30, 501)...))
	f.Add(113.0, 12, true, 2, bytesOf(packs(12, 114)...))
	f.Add(-1.0, -1, true, 9, bytesOf(math.NaN()))
	f.Fuzz(func(t *testing.T, nominal float64, size int, destructive bool, system int, contents []byte) {
		l := Lot{System(system), nominal, size, destructive}
		_, _ = l.Plan()
		if v, err := l.Judge(numbersOf(contents)); err == nil {
			allFinite(t, "lot", v.Mean, v.StdDev, v.Limit)
			if v.LotDecision == "" {
				t.Fatal("no decision")
			}
		}
		if k, err := SampleFactor(size, nominal); err == nil {
			allFinite(t, "factor", k)
		}
	})
}

func FuzzScales(f *testing.F) {
	f.Add(0.5, 0.0, 3000.0, 0, 0.1, true, 62.0, 5.0)
	f.Add(math.NaN(), -1.0, math.Inf(1), 9, -1.0, false, -1.0, 0.0)
	f.Fuzz(func(t *testing.T, step, verify, most float64, class int, repeat float64, service bool, load, tolerance float64) {
		s := Scale{StepGrams: step, VerifyGrams: verify, MaxGrams: most, Class: Class(class), Repeat: repeat, InService: service}
		if Class(class).String() == "" {
			t.Fatal("a class without a name")
		}
		if e, err := s.MaxError(load); err == nil {
			allFinite(t, "error", e)
		}
		if e, err := s.LeastLoad(); err == nil {
			allFinite(t, "least load", e)
		}
		if w, err := s.Weigh(load, load); err == nil {
			allFinite(t, "weighing", w.Grams, w.Standard, w.Expanded)
		}
		if w, err := s.Sum(load, load, load); err == nil {
			allFinite(t, "sum", w.Grams, w.Standard, w.Expanded)
		}
		if n, err := s.MostWeighings(load, tolerance); err == nil && n < 1 {
			t.Fatalf("%d weighings", n)
		}
	})
}

func FuzzUncertainties(f *testing.F) {
	f.Add(bytesOf(1, 2, 0, 3, 0, 5), 0.95)
	f.Add(bytesOf(math.MaxFloat64, 1, 1), math.NaN())
	f.Fuzz(func(t *testing.T, data []byte, confidence float64) {
		values := numbersOf(data)
		if mean, s, u, err := Repeated(values...); err == nil {
			allFinite(t, "readings", mean, s, u)
		}
		var budget []Component
		for v := values; len(v) >= 3; v = v[3:] {
			budget = append(budget, Component{"x", v[0], v[1], v[2]})
			if u, err := Rectangular(v[0]); err == nil {
				allFinite(t, "rectangular", u)
			}
			if u, err := Resolution(v[1]); err == nil {
				allFinite(t, "resolution", u)
			}
		}
		c, err := Combine(budget...)
		if err != nil {
			return
		}
		allFinite(t, "combined", c.Standard)
		if math.IsNaN(c.Freedom) {
			t.Fatal("degrees of freedom are NaN")
		}
		if u, err := c.Expanded(confidence); err == nil {
			allFinite(t, "expanded", u)
		}
	})
}

func FuzzHeroes(f *testing.F) {
	f.Add(0.6, 0, 0, 3, 0.95, 6)
	f.Add(0.0, 10, 7, 2, 0.9, 5)
	f.Add(math.NaN(), -1, 3, -1, 1.0, -1)
	f.Fuzz(func(t *testing.T, rate float64, takes, good, wanted int, confidence float64, n int) {
		h := Heroes{SuccessRate: rate, Takes: takes, Good: good, Wanted: wanted % 2000, Confidence: confidence}
		if units, err := h.Units(); err == nil && units < max(1, h.Wanted) {
			t.Fatalf("%+v: %d units", h, units)
		}
		if p, err := h.Chance(n); err == nil && !(p >= 0 && p <= 1) {
			t.Fatalf("%+v: chance %v of %d", h, p, n)
		}
		if p, err := h.LowestRate(); err == nil && !(p >= 0 && p <= 1) {
			t.Fatalf("%+v: lowest rate %v", h, p)
		}
	})
}
