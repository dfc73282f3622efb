package rheology_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

// The rule that made the points is found again, and with it the blends.
func TestFitRuleFindsTheRuleThatMadeThePoints(t *testing.T) {
	r := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Honey{}, BatchGrams: 500, StepGrams: 1, TempC: 20}
	for _, want := range []Rule{{D: -6}, {D: -3}, {D: 0.4}} {
		var points []MixPoint
		for _, w := range []float64{0.2, 0.5, 0.8} {
			m := mustBlend(t, want, Part{r.Thin, 1 - w}, Part{r.Thick, w})
			points = append(points, MixPoint{w, likely(t, m, 20)})
		}
		got, err := r.FitRule(points...)
		if err != nil || math.Abs(got.D-want.D) > 1e-9 {
			t.Errorf("%+v, %v, want %+v", got, err, want)
		}
		one, err := r.FitRule(points[1])
		if err != nil || math.Abs(one.D-want.D) > 1e-9 {
			t.Errorf("from the middle alone: %+v, %v, want %+v", one, err, want)
		}
	}
}

// Sugar and water fitted by their own table: the fitted rule and the law agree.
func TestAFittedRuleAgreesWithTheLaw(t *testing.T) {
	r := Recipe{Thin: Water{}, Thick: Sucrose{Brix: 65}, BatchGrams: 500, StepGrams: 1, TempC: 20}
	var points []MixPoint
	for w := 0.1; w < 0.95; w += 0.1 {
		points = append(points, MixPoint{w, likely(t, Sucrose{Brix: 65 * w}, 20)})
	}
	rule, err := r.FitRule(points...)
	if err != nil {
		t.Fatal(err)
	}
	m := mustBlend(t, rule, Part{Water{}, 0.45}, Part{Sucrose{Brix: 65}, 0.55})
	if got, want := likely(t, m, 20), likely(t, Sucrose{Brix: 65 * 0.55}, 20); math.Abs(got/want-1) > 0.08 {
		t.Errorf("%g, want %g", got, want)
	}
}

func TestFitRuleRefusesWhatTellsNothing(t *testing.T) {
	r := Recipe{Thin: Water{}, Thick: Sucrose{Brix: 65}, BatchGrams: 500, StepGrams: 1, TempC: 20}
	for name, points := range map[string][]MixPoint{
		"none": nil, "an end": {{0, 0.01}}, "the other": {{1, 0.01}}, "NaN": {{math.NaN(), 0.01}},
		"beyond": {{1.5, 0.01}}, "no viscosity": {{0.5, 0}}, "not finite": {{0.5, math.Inf(1)}},
	} {
		if rule, err := r.FitRule(points...); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %+v, %v", name, rule, err)
		}
	}
	r.Thin = nil
	if _, err := r.FitRule(MixPoint{0.5, 0.01}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no liquid: %v", err)
	}
}

// A recipe takes every rule under which more of the thick liquid is never thinner, and no
// other.
func TestARecipeTakesAnyRuleThatKeepsTheCurveRising(t *testing.T) {
	thin, thick := likely(t, Water{}, 20), likely(t, Sucrose{Brix: 65}, 20)
	ratio := math.Log(thick / thin)
	taken := 0
	for d := -12.0; d <= 12; d += 0.13 {
		least := ratio - math.Abs(d) // of the slope ratio + (1 - 2 w) d
		r := Recipe{Thin: Water{}, Thick: Sucrose{Brix: 65}, BatchGrams: 100, StepGrams: 1, TempC: 20, Rule: Rule{D: d}}
		_, err := r.For(math.Sqrt(thin * thick))
		if (err == nil) != (least > 0) {
			t.Errorf("D %g: least slope %g, %v", d, least, err)
		}
		if err == nil {
			taken++
		}
	}
	if taken < 10 {
		t.Errorf("only %d rules taken", taken)
	}
}
