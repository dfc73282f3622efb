package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
)

func limits(low, high float64) Limits {
	return Limits{Low: honestplate.Some(low), High: honestplate.Some(high)}
}

func TestDecisionRule(t *testing.T) {
	l := limits(61, 63)
	for _, c := range []struct {
		value, u float64
		want     Verdict
	}{
		{62, 0.25, Agrees}, {61.5, 0.25, Agrees}, {62.5, 0.25, Agrees}, // on the edge of the zone
		{61.4, 0.25, CannotTell}, {60.5, 0.25, CannotTell}, {60.4, 0.25, Differs}, {63.6, 0.25, Differs},
		{61, 0, Agrees}, {60.9, 0, Differs}, {62, 0.5, Agrees}, {62, 0.51, CannotTell},
	} {
		d, err := l.Decide(c.value, c.u)
		if err != nil || d.Verdict != c.want {
			t.Errorf("%g with %g: %+v, %v, want %s", c.value, c.u, d, err, c.want)
		}
	}
	// Simple acceptance leaves nothing open.
	simple := Limits{honestplate.Some(61), honestplate.Some(63), honestplate.Some(0)}
	for v := 58.0; v < 66; v += 0.1 {
		if d, err := simple.Decide(v, 5); err != nil || d.Verdict == CannotTell {
			t.Errorf("%g: %+v, %v", v, d, err)
		}
	}
}

// No scale can let both of two readings agree that lie further apart than the limits.
func TestNoScaleAgreesWithEverything(t *testing.T) {
	l := limits(61, 63)
	for u := 0.01; u < 1e6; u *= 1.5 {
		low, _ := l.Decide(20, u)
		high, _ := l.Decide(100, u)
		if low.Verdict == Agrees || high.Verdict == Agrees {
			t.Fatalf("u %g: %s and %s", u, low.Verdict, high.Verdict)
		}
	}
	if c, err := l.Capability(0.5); err != nil || c != 1 {
		t.Errorf("capability %v, %v", c, err)
	}
	if c, err := limits(1, 1).Capability(0); err != nil || c != 0 {
		t.Errorf("capability of no tolerance %v, %v", c, err)
	}
}

// The verdicts are ordered and mirror each other; probabilities are those of a random
// sample.
func TestDecisionProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 14))
	for range 2000 {
		low := r.NormFloat64()
		l := limits(low, low+r.Float64()*4)
		l.Guard = honestplate.Some(r.Float64() * 3)
		mirrored := limits(-l.High.Value, -l.Low.Value)
		mirrored.Guard = l.Guard
		v, u := r.NormFloat64()*3, r.Float64()
		a, err := l.Decide(v, u)
		b, err2 := mirrored.Decide(-v, u)
		if err != nil || err2 != nil || a.Verdict != b.Verdict || math.Abs(a.Probability-b.Probability) > 1e-12 {
			t.Fatalf("%+v, %g, %g: %+v, %+v", l, v, u, a, b)
		}
		if a.Verdict == Agrees && a.Probability < 0.5-1e-9 && u < (l.High.Value-l.Low.Value)/4 {
			t.Fatalf("agrees at %g", a.Probability)
		}
		if a.Verdict == Differs && a.Probability > 0.5+1e-9 {
			t.Fatalf("differs at %g", a.Probability)
		}
	}
	l, inside := limits(-0.5, 1.5), 0
	const n = 200_000
	for range n {
		if x := 1 + 0.7*r.NormFloat64(); x >= -0.5 && x <= 1.5 {
			inside++
		}
	}
	d, _ := l.Decide(1, 0.7)
	if math.Abs(d.Probability-float64(inside)/n) > 4*0.5/math.Sqrt(n) {
		t.Errorf("probability %g, sampled %g", d.Probability, float64(inside)/n)
	}
	// Far out nothing is lost to subtraction: 10 standard uncertainties, 7.62e-24.
	if d, _ := (Limits{Low: honestplate.Some(10)}).Decide(0, 1); math.Abs(d.Probability/7.619853e-24-1) > 1e-6 {
		t.Errorf("tail %g", d.Probability)
	}
}

func TestDecisionRefusals(t *testing.T) {
	nan := math.NaN()
	for name, c := range map[string]struct {
		l        Limits
		value, u float64
		kind     error
	}{
		"turned":      {limits(2, 1), 0, 1, honestplate.ErrInput},
		"NaN limit":   {limits(nan, 1), 0, 1, honestplate.ErrInput},
		"NaN value":   {Limits{}, nan, 1, honestplate.ErrInput},
		"negative u":  {Limits{}, 1, -1, honestplate.ErrInput},
		"infinite u":  {Limits{}, 1, math.Inf(1), honestplate.ErrInput},
		"infinite":    {limits(math.Inf(-1), 1), 1, 1, honestplate.ErrInput},
		"guard below": {Limits{Guard: honestplate.Some(-1)}, 1, 1, honestplate.ErrRange},
		"guard above": {Limits{Guard: honestplate.Some(4)}, 1, 1, honestplate.ErrRange},
	} {
		if _, err := c.l.Decide(c.value, c.u); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
	accept, err := limits(61, 63).Accept(0.25)
	if err != nil || accept.Low.Value != 61.5 || accept.High.Value != 62.5 {
		t.Errorf("%+v, %v", accept, err)
	}
	if _, err := (Limits{}).Accept(-1); !errors.Is(err, honestplate.ErrInput) {
		t.Error(err)
	}
	if _, err := (Limits{}).Capability(-1); !errors.Is(err, honestplate.ErrInput) {
		t.Error(err)
	}
}
