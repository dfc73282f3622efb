package rheology_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
)

var plainRules = []Rule{{}, {NoDeparture: true}, {D: -0.2}}

func mustBlend(t *testing.T, r Rule, parts ...Part) Mix {
	t.Helper()
	m, err := r.Blend(parts...)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestABlendOfOneLiquidIsThatLiquid(t *testing.T) {
	cream := Dairy{FatPercent: 20}
	want, _ := cream.Viscosity(6)
	for _, r := range plainRules {
		for _, parts := range [][]Part{
			{{cream, 300}},
			{{cream, 100}, {cream, 200}},
			{{cream, 100}, {Dairy{FatPercent: 3}, 0}, {cream, 0.1}},
			{{mustBlend(t, r, Part{cream, 5}), 100}, {cream, 200}},
		} {
			got, err := mustBlend(t, r, parts...).Viscosity(6)
			if err != nil || got != want {
				t.Errorf("%v: %v, %v, want %v", r, got, err, want)
			}
		}
	}
}

func TestTheOrderOfPartsDoesNotMatterToTheLastBit(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		n := 2 + rng.IntN(6)
		parts := make([]Part, n)
		for i := range parts {
			d := Dairy{FatPercent: float64(rng.IntN(40))}
			parts[i] = Part{d, float64(rng.IntN(5)) + 0.1*float64(1+rng.IntN(9))}
			if rng.IntN(3) == 0 {
				parts[i].Liquid = Measured{Liquid: d, TempC: 5, PaS: honestplate.Factor(0.002+0.03*rng.Float64(), 1.1)}
			}
		}
		for _, r := range plainRules {
			a := mustBlend(t, r, parts...)
			rng.Shuffle(n, func(i, j int) { parts[i], parts[j] = parts[j], parts[i] })
			b := mustBlend(t, r, parts...)
			va, errA := a.Viscosity(7)
			vb, errB := b.Viscosity(7)
			ra, _ := a.Density(7)
			rb, _ := b.Density(7)
			if errA != nil || errB != nil || va != vb || ra != rb {
				t.Fatalf("%v of %v: %v %v, %v %v, %v, %v", r, parts, va, vb, ra, rb, errA, errB)
			}
		}
	}
}

func TestAMixOfMixesIsTheMixOfTheirParts(t *testing.T) {
	a, b, c := Part{Dairy{FatPercent: 1}, 100}, Part{Dairy{FatPercent: 18}, 50}, Part{Measured{Liquid: Dairy{FatPercent: 36}, TempC: 5, PaS: honestplate.Factor(0.03, 1.1)}, 25}
	for _, r := range plainRules {
		inner := mustBlend(t, r, a, b)
		x, _ := mustBlend(t, r, Part{inner, 150}, c).Viscosity(5)
		y, _ := mustBlend(t, r, a, b, c).Viscosity(5)
		if math.Abs(x.Likely/y.Likely-1) > 1e-12 || math.Abs(x.Low/y.Low-1) > 1e-12 {
			t.Errorf("%v: %v, want %v", r, x, y)
		}
	}
}

func TestABlendLiesBetweenItsParts(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		tempC := 80 * rng.Float64()
		lo, hi := math.Inf(1), 0.0
		parts := make([]Part, 2+rng.IntN(3))
		for i := range parts {
			d := Dairy{FatPercent: 40 * rng.Float64()}
			v, _ := d.Viscosity(tempC)
			lo, hi = min(lo, v.Likely), max(hi, v.Likely)
			parts[i] = Part{d, 100 * rng.Float64()}
		}
		for _, r := range []Rule{{}} {
			v, err := mustBlend(t, r, parts...).Viscosity(tempC)
			if err != nil || v.Likely < lo*(1-1e-12) || v.Likely > hi*(1+1e-12) || !v.Contains(v.Likely) {
				t.Fatalf("%v of %v at %v: %v, %v, want in %v..%v", r, parts, tempC, v, err, lo, hi)
			}
		}
	}
}

func TestTheBandOfAMilkAndCreamBlendIsNotNarrowerThanThatOfTheCreamItMakes(t *testing.T) {
	for fat := 4.0; fat < 36; fat++ {
		w := (fat - 3.5) / 32.5
		m := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 1 - w}, Part{Dairy{FatPercent: 36}, w})
		for _, tempC := range []float64{2, 20, 35, 60} {
			got, _ := m.Viscosity(tempC)
			table, _ := Dairy{FatPercent: fat}.Viscosity(tempC)
			if got.Low > table.Low*(1+1e-9) || got.High < table.High*(1-1e-9) {
				t.Errorf("%v %% at %v degC: %v, narrower than %v", fat, tempC, got, table)
			}
		}
	}
}

func TestTheBandOfMeasuredPartsHoldsTheErrorOfTheDeparture(t *testing.T) {
	milk := Measured{Liquid: Dairy{FatPercent: 3.5}, TempC: 5, PaS: honestplate.Exactly(0.003)}
	cream := Measured{Liquid: Dairy{FatPercent: 36}, TempC: 5, PaS: honestplate.Exactly(0.030)}
	v, err := mustBlend(t, Rule{}, Part{milk, 1}, Part{cream, 1}).Viscosity(5)
	if err != nil {
		t.Fatal(err)
	}
	if up, down := v.High/v.Likely, v.Likely/v.Low; !(up > 1.2 && down > 1.2 && up < 1.7) {
		t.Errorf("band %.3f up, %.3f down: E is known to about its own size", up, down)
	}
	// and it vanishes towards either end
	v, _ = mustBlend(t, Rule{}, Part{milk, 1}, Part{cream, 1e6}).Viscosity(5)
	if v.High/v.Low > 1.00001 {
		t.Errorf("band of nearly pure cream %v", v)
	}
}

func TestABlendOfMilkAndCreamIsMilkOfTheirMeanFat(t *testing.T) {
	for fat := 6.0; fat < 40; fat += 2 {
		w := (fat - 0.1) / 39.9
		thin, thick := Part{Dairy{FatPercent: 0.1}, 1 - w}, Part{Dairy{FatPercent: 40}, w}
		table, _ := Dairy{FatPercent: fat}.Viscosity(60)
		byMass, _ := mustBlend(t, Rule{NoDeparture: true}, thin, thick).Viscosity(60)
		byFat, _ := mustBlend(t, Rule{}, thin, thick).Viscosity(60)
		if a, b := math.Abs(math.Log(byMass.Likely/table.Likely)), math.Abs(math.Log(byFat.Likely/table.Likely)); b > 1e-12 || a < 0.01 {
			t.Errorf("%v %%: house rule off by %.3f, log-mixing alone by %.3f", fat, b, a)
		}
	}
}

func TestABlendThatMakesNoSenseIsRefused(t *testing.T) {
	milk := Dairy{FatPercent: 3.5}
	for name, parts := range map[string][]Part{
		"none":      nil,
		"nil":       {{nil, 10}},
		"negative":  {{milk, -1}},
		"NaN":       {{milk, math.NaN()}},
		"infinite":  {{milk, math.Inf(1)}},
		"zero":      {{milk, 0}},
		"empty mix": {{Mix{}, 10}},
		"too much":  {{milk, math.MaxFloat64}, {Dairy{FatPercent: 4}, math.MaxFloat64}},
	} {
		if _, err := Blend(parts...); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, r := range []Rule{{NoDeparture: true, D: 1}, {D: math.NaN()}, {D: math.Inf(1)}} {
		if _, err := r.Blend(Part{milk, 1}); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%v: %v", r, err)
		}
	}
	var many []Part
	for i := range 33 {
		many = append(many, Part{Dairy{FatPercent: float64(i)}, 1})
	}
	if _, err := Blend(many...); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("33 liquids: %v", err)
	}
	for name, err := range map[string]error{
		"viscosity": func() error { _, err := Mix{}.Viscosity(5); return err }(),
		"density":   func() error { _, err := Mix{}.Density(5); return err }(),
		"tension":   func() error { _, err := Mix{}.SurfaceTension(5); return err }(),
	} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s of the zero Mix: %v", name, err)
		}
	}
}

func TestAMixOutsideThePartsRangeSaysWhose(t *testing.T) {
	m := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 1}, Part{Dairy{FatPercent: 36}, 1})
	for _, tempC := range []float64{-1, 81} {
		var r *honestplate.RangeError
		if _, err := m.Viscosity(tempC); !errors.As(err, &r) || r.Value != tempC {
			t.Errorf("%v degC: %v", tempC, err)
		}
		if _, err := m.Density(tempC); !errors.As(err, &r) {
			t.Errorf("density at %v degC: %v", tempC, err)
		}
		if _, err := m.SurfaceTension(tempC); !errors.As(err, &r) {
			t.Errorf("surface tension at %v degC: %v", tempC, err)
		}
	}
}

func BenchmarkTwoPartDairyViscosity(b *testing.B) {
	m, err := Blend(Part{Dairy{FatPercent: 3.5}, 300}, Part{Dairy{FatPercent: 36}, 200})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		m.Viscosity(6)
	}
}

func BenchmarkFivePartViscosity(b *testing.B) {
	var parts []Part
	for i := range 5 {
		parts = append(parts, Part{Dairy{FatPercent: 9 * float64(i)}, 100})
	}
	m, err := Blend(parts...)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		m.Viscosity(6)
	}
}

// A blend is stated at the largest of its parts' rates: 100 1/s with cream, 50 with a sauce,
// whatever a liquid of the user's own says.
func TestABlendIsStatedAtTheLargestRateOfItsParts(t *testing.T) {
	own := Custom{Name: "own", Flow: flow.PowerLaw{K: 5, N: 0.5}, FlowC: 20, KgPerM3: 1100}
	cream := Dairy{FatPercent: 36}
	for _, c := range []struct {
		a, b Liquid
		rate float64
	}{
		{own, Water{}, 50}, {own, cream, 100}, {Measured{Liquid: own, TempC: 20, PaS: honestplate.Exactly(1)}, Water{}, 50},
		{quick{own}, Water{}, 300}, {quick{own}, cream, 300}, {Food("tomato ketchup"), cream, 100},
	} {
		m := mustBlend(t, Rule{}, Part{c.a, 1}, Part{c.b, 1})
		stated, err := m.Viscosity(20)
		at, err2 := m.ViscosityAtRate(20, c.rate)
		if err != nil || err2 != nil || stated != at || m.Describe().ShearRate != c.rate {
			t.Errorf("%s: %v (%v); at %v 1/s %v (%v)", m.Describe().Name, stated, err, c.rate, at, err2)
		}
	}
}

// A quick is a liquid of the user's own that is stated at 300 1/s.
type quick struct{ Custom }

func (q quick) Describe() Description {
	d := q.Custom.Describe()
	d.ShearRate = 300
	return d
}

func (q quick) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return q.ViscosityAtRate(tempC, 300)
}
