package portion

import (
	"math"
	"testing"

	"example.org/honestplate"
)

func FuzzTolerances(f *testing.F) {
	f.Add(500.0, 485.0, 0.5, true)
	f.Add(113.0, 105.8, 0.0, false)
	f.Add(math.NaN(), -1.0, math.Inf(1), false)
	f.Fuzz(func(t *testing.T, nominal, contents, uncertainty float64, even bool) {
		if v, err := TolerableNegativeError(nominal); err == nil {
			allFinite(t, "tolerance", v)
			if v <= 0 || v > nominal*0.1+0.1 {
				t.Fatalf("tolerance %v of %v", v, nominal)
			}
		}
		w := Weighing{Grams: contents, Expanded: uncertainty}
		if w.String() == "" {
			t.Fatal("no text")
		}
		a := Amount{Grams: nominal, MinusGrams: nominal / 20, PlusGrams: nominal / 50}
		w.Standard = uncertainty / 2
		if got, err := a.Judge(&w, 0, honestplate.Optional{}); err == nil {
			allFinite(t, "finding", got.Found, got.Standard, got.Probability)
			if band := got.Limits.band(w.Standard); got.Verdict.Worst(Agrees) != got.Verdict || got.Limits.Validate() == nil && band != uncertainty {
				t.Fatalf("%s with a band of %v", got, band)
			}
		}
		d := Declaration{Item: "x", Grams: nominal, MinusGrams: nominal / 20, PlusGrams: nominal / 50, Advertised: even}
		if v, err := d.JudgePicture(w); err == nil {
			allFinite(t, "difference", v.Found, v.Standard, v.Probability)
			if v.Verdict == Agrees && (contents < nominal*0.95-1e-6*nominal || contents > nominal*1.02*(1+1e-6)) {
				t.Fatalf("%v agrees with %v", contents, nominal)
			}
		}
	})
}

func FuzzScales(f *testing.F) {
	f.Add(0.5, 0.0, 3000.0, 0, 0.1, true, 62.0, 0.0, 0.0)
	f.Add(0.5, 0.0, 3000.0, 0, 0.1, false, 62.0, 100.0, 101.0)
	f.Add(math.NaN(), -1.0, math.Inf(1), 9, -1.0, false, -1.0, -1.0, math.NaN())
	f.Fuzz(func(t *testing.T, step, verify, most float64, class int, repeat float64, verified bool, load, weight, reading float64) {
		s := Scale{StepGrams: step, VerifyGrams: verify, MaxGrams: most, Class: Class(class), Repeat: repeat, Verified: verified,
			Check: CheckWeight{Grams: weight, Reading: reading}}
		if Class(class).String() == "" {
			t.Fatal("a class without a name")
		}
		if e, err := s.MaxError(load); err == nil {
			allFinite(t, "error", e)
		}
		if e, err := s.Evidence(load); err == nil {
			allFinite(t, "evidence", e.Reading, e.Relative, e.Factor)
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
	})
}

func FuzzHeroes(f *testing.F) {
	f.Add(0.6, 0, 0, 3, 0.95, 6, 0.0, 0, 0.0)
	f.Add(0.0, 10, 7, 2, 0.9, 5, 0.3, 4, 2.5)
	f.Add(math.NaN(), -1, 3, -1, 1.0, -1, math.NaN(), -1, -1.0)
	f.Fuzz(func(t *testing.T, rate float64, takes, good, wanted int, confidence float64, n int, together float64, batch int, prior float64) {
		h := Heroes{SuccessRate: rate, Takes: takes, Good: good, Wanted: wanted % 2000, Confidence: confidence, Correlation: together, Batch: batch}
		if together > 0 {
			h.Wanted = wanted % 50
		}
		if prior != 0 {
			h.Prior = Prior{prior, prior / 2}
		}
		if units, err := h.Units(); err == nil && units < max(1, h.Wanted) {
			t.Fatalf("%+v: %d units", h, units)
		}
		if p, err := h.Chance(n); err == nil && !(p >= 0 && p <= 1) {
			t.Fatalf("%+v: chance %v of %d", h, p, n)
		}
		if stop, err := h.Stop(n%50, 10, 3); err == nil {
			allFinite(t, "stopping", stop.Value, stop.Takes, stop.Heroes, stop.Chance)
		}
		if p, err := h.LowestRate(); err == nil && !(p >= 0 && p <= 1) {
			t.Fatalf("%+v: lowest rate %v", h, p)
		}
	})
}
