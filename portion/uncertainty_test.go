package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

func TestBudgetsCombineInAnyOrderAndUnit(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 8))
	for range 10_000 {
		budget := make([]Component, 1+rng.IntN(6))
		largest, least := 0.0, math.Inf(1)
		for i := range budget {
			budget[i] = Component{Standard: rng.Float64(), Sensitivity: 2 * rng.NormFloat64(), Freedom: float64(rng.IntN(3) * (1 + rng.IntN(20)))}
			largest = max(largest, budget[i].Standard*math.Abs(budget[i].Sensitivity))
			if budget[i].Freedom > 0 {
				least = min(least, budget[i].Freedom)
			}
		}
		c, err := Combine(budget...)
		if err != nil {
			t.Fatal(err)
		}
		if c.Standard < largest*(1-1e-12) || c.Freedom < least*(1-1e-12) {
			t.Fatalf("%+v from %+v", c, budget)
		}
		for i := range budget {
			budget[i].Sensitivity *= 1000
		}
		rng.Shuffle(len(budget), func(i, j int) { budget[i], budget[j] = budget[j], budget[i] })
		scaled, err := Combine(budget...)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(scaled.Standard/c.Standard-1000) > 1e-9 || math.Abs(scaled.Freedom/c.Freedom-1) > 1e-9 && !math.IsInf(c.Freedom, 1) {
			t.Fatalf("%+v scaled from %+v", scaled, c)
		}
		p := 0.5 + 0.49*rng.Float64()
		u, err := c.Expanded(p)
		if err != nil {
			t.Fatal(err)
		}
		if more, err := c.Expanded(p + 0.005); err != nil || more <= u {
			t.Fatalf("%v at %v, %v at more: %v", u, p, more, err)
		}
	}
}

func TestSimpleUncertainties(t *testing.T) {
	if u, err := Rectangular(3); err != nil || math.Abs(u-math.Sqrt(3)) > 1e-12 {
		t.Errorf("rectangular: %v, %v", u, err)
	}
	if u, err := Resolution(1); err != nil || math.Abs(u-0.28868) > 1e-5 {
		t.Errorf("resolution: %v, %v", u, err)
	}
	c, err := Combine(Component{})
	if err != nil || c.Standard != 0 {
		t.Errorf("nothing unsure: %+v, %v", c, err)
	}
	if u, err := c.Expanded(0.95); err != nil || u != 0 {
		t.Errorf("nothing unsure, expanded: %v, %v", u, err)
	}
	c, err = Combine(Component{Standard: 1})
	if u, err2 := c.Expanded(0.95); err != nil || err2 != nil || math.Abs(u-1.95996) > 1e-5 {
		t.Errorf("normal: %v, %v, %v", u, err, err2)
	}
}

func TestBadBudgets(t *testing.T) {
	huge := math.MaxFloat64
	_, _, _, few := Repeated(1)
	_, _, _, nan := Repeated(1, math.NaN())
	_, _, _, overflow := Repeated(-huge, huge)
	for name, err := range map[string]error{
		"rectangular":      failure(Rectangular(-1)),
		"resolution":       failure(Resolution(math.NaN())),
		"one reading":      few,
		"NaN reading":      nan,
		"huge readings":    overflow,
		"no components":    failure(Combine()),
		"negative":         failure(Combine(Component{Standard: -1})),
		"sensitivity":      failure(Combine(Component{Standard: 1, Sensitivity: math.NaN()})),
		"freedom":          failure(Combine(Component{Standard: 1, Freedom: -1})),
		"huge term":        failure(Combine(Component{Standard: huge, Sensitivity: 2})),
		"huge sum":         failure(Combine(Component{Standard: huge}, Component{Standard: huge})),
		"confidence":       failure(Combined{1, 5}.Expanded(1)),
		"combined":         failure(Combined{-1, 5}.Expanded(0.95)),
		"combined freedom": failure(Combined{1, 0}.Expanded(0.95)),
		"huge expanded":    failure(Combined{huge, 1}.Expanded(0.95)),
	} {
		if !errors.Is(err, ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
