package rheology

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// within fails unless the likely value lies within a factor of 1 + rel of what is wanted.
func within(t *testing.T, what string, got honestplate.Estimate, want, rel float64) {
	t.Helper()
	if math.Abs(math.Log(got.Likely/want)) > math.Log1p(rel) {
		t.Errorf("%s: %.4g, want %.4g to %g", what, got.Likely, want, rel)
	}
}

func viscosity(t *testing.T, l Liquid, tempC float64) honestplate.Estimate {
	t.Helper()
	e, err := l.Viscosity(tempC)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// Golden and glucose syrup hit the values that their own comments name: Worster 2009,
// Understanding Fluid Flow, ch. 3 (read); confectioner's glucose, from memory; a laboratory's
// fit to a corn syrup of 77 % (read in its public program).
func TestSyrupsHitTheirOwnValues(t *testing.T) {
	rho, err := Syrup{Of: "golden"}.Density(20)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "golden, m2/s", viscosity(t, Syrup{Of: "golden"}, 20).Times(1/rho.Likely), 0.05, 0.05)
	within(t, "glucose at 27", viscosity(t, Syrup{Of: "glucose"}, 27), 60, 0.10)
	within(t, "glucose at 38", viscosity(t, Syrup{Of: "glucose"}, 38), 12, 0.10)
	// The equation falls more steeply than the laboratory's fit.
	for _, c := range []float64{23.5, 30, 40} {
		within(t, "corn syrup of 77 %", viscosity(t, Syrup{"glucose", 77}, c), 15603*math.Pow(c, -2.44), 0.5)
	}
}

// Bingham & Jackson 1918 and NBS Circular 440 (from memory): cold syrup without a lean.
func TestColdSucroseHasNoLean(t *testing.T) {
	sum, n := 0.0, 0.0
	for _, c := range []struct{ brix, tempC, mPas float64 }{
		{40, 5, 11.6}, {40, 15, 7.496}, {60, 10, 113.9}, {40, 20, 6.167}, {50, 20, 15.43}, {60, 20, 58.49}, {40, 20, 6.223},
	} {
		e := viscosity(t, Sucrose{c.brix}, c.tempC)
		within(t, "sucrose", e, c.mPas/1000, 0.03)
		sum += math.Log(1000 * e.Likely / c.mPas)
		n++
	}
	if math.Abs(sum/n) > 0.012 {
		t.Errorf("lean %.3f", sum/n)
	}
	// The correction begins and ends without a jump, and is none in water.
	for tempC := 0.0; tempC < 79; tempC++ {
		a, b := viscosity(t, Sucrose{60}, tempC).Likely, viscosity(t, Sucrose{60}, tempC+1).Likely
		if r := math.Log(a / b); r < 0.01 || r > 0.12 {
			t.Errorf("%g degC: a step of %g", tempC, r)
		}
	}
	if a, b := viscosity(t, Sucrose{}, 0).Likely, viscosity(t, Water{}, 0).Likely; math.Abs(a/b-1) > 1e-9 {
		t.Errorf("no sugar: %g, water %g", a, b)
	}
}

// White 1975 (in Crane, Honey; from memory): sweet clover honey by its water, at 25 degC. The
// slope in water is 0.40 a per cent from 14.2 to 19.1.
func TestHoneyFollowsItsWater(t *testing.T) {
	for _, c := range []struct{ water, pas float64 }{
		{13.7, 42}, {14.2, 26.9}, {15.5, 13.8}, {17.1, 6.9}, {18.2, 4.81}, {19.1, 3.49}, {20.2, 2.04}, {21.5, 1.36},
	} {
		within(t, "honey", viscosity(t, Honey{c.water}, 25), c.pas, 0.16)
	}
	slope := math.Log(viscosity(t, Honey{14.2}, 25).Likely/viscosity(t, Honey{19.1}, 25).Likely) / 4.9
	if math.Abs(slope-0.417) > 0.05 {
		t.Errorf("slope %.3f a per cent", slope)
	}
	// Juszczak & Fortuna 2006 (abstract): 92 to 105 kJ/mol at 10 to 40 degC.
	ea := math.Log(viscosity(t, Honey{16.35}, 10).Likely/viscosity(t, Honey{16.35}, 40).Likely) / (1/283.15 - 1/313.15) * 8.314e-3
	if ea < 90 || ea > 107 {
		t.Errorf("activation energy %.0f kJ/mol", ea)
	}
}

// A refrigerator is at 2 to 5 degC: what is liquid there answers.
func TestEveryLiquidAnswersWhereItIsLiquid(t *testing.T) {
	for _, l := range append(Catalogue(), Syrup{Of: "golden"}) {
		d := l.Describe()
		solid := strings.Contains(d.Name, "chocolate, ") ||
			d.Name == "olive oil" || d.Name == "peanut oil" || d.Name == "cottonseed oil" || d.Name == "rice bran oil"
		if _, err := l.Viscosity(2); (err != nil) != solid {
			t.Errorf("%s at 2 degC: %v (is it one of the solid ones of this test?)", d.Name, err)
		}
	}
}

// Campanella & Peleg 1987, squeezing flow (abstract read; figures from memory): mustard 52 to
// 78 Pa, mayonnaise 81 to 91 Pa; ketchup 18 to 30 Pa beside Steffe's 32.
func TestSaucesStandAsPublished(t *testing.T) {
	for _, c := range []struct {
		food      Food
		low, high float64
	}{{"mustard", 52, 78}, {"mayonnaise", 81, 91}, {"tomato ketchup", 18, 32}} {
		y, err := c.food.YieldStress(25)
		if err != nil {
			t.Fatal(err)
		}
		if !(y.Low < c.low && y.High > c.high) || y.Likely < c.low*0.99 || y.Likely > c.high*1.01 {
			t.Errorf("%s: %v, published %g to %g", c.food, y, c.low, c.high)
		}
		rested, err := RestedYieldStress(c.food, 25)
		if err != nil {
			t.Fatal(err)
		}
		if c.food == "tomato ketchup" {
			within(t, "rested ketchup", rested, 2*y.Likely, 1e-9)
		} else if rested != y {
			t.Errorf("%s: rested %v, undisturbed %v", c.food, rested, y)
		}
	}
	// The power laws of Steffe 1996, appendix (from memory), where they were fitted.
	for _, c := range []struct {
		food Food
		k, n float64
	}{{"mustard", 19.1, 0.39}, {"mayonnaise", 6.4, 0.55}} {
		for _, rate := range []float64{100, 300, 1000} {
			e, err := c.food.ViscosityAtRate(25, rate)
			if err != nil {
				t.Fatal(err)
			}
			if law := c.k * math.Pow(rate, c.n-1); !e.Contains(law) || rate > 200 && math.Abs(e.Likely/law-1) > 0.02 {
				t.Errorf("%s at %g 1/s: %v, power law %g", c.food, rate, e, law)
			}
		}
	}
	if y, err := RestedYieldStress(Water{}, 20); err != nil || y != (honestplate.Estimate{}) {
		t.Errorf("water: %v, %v", y, err)
	}
	var none *Dairy
	if _, err := RestedYieldStress(none, 20); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("nothing: %v", err)
	}
	if _, err := RestedYieldStress(Food("mayonnaise"), 99); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("hot: %v", err)
	}
}

// A blend keeps a yield stress, without a jump from the pure sauce, and loses it faster
// than in proportion.
func TestABlendKeepsAYieldStress(t *testing.T) {
	pure, _ := Food("tomato ketchup").YieldStress(20)
	last := pure.Likely
	for _, water := range []float64{1e-6, 0.001, 0.01, 0.1, 0.5, 0.9} {
		m, err := Blend(Part{Food("tomato ketchup"), 1 - water}, Part{Water{}, water})
		if err != nil {
			t.Fatal(err)
		}
		y, err := m.YieldStress(20)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "thinned ketchup", y, pure.Likely*math.Pow(1-water, 3), 1e-6)
		if y.Likely > last || y.Low > y.Likely || y.High < y.Likely {
			t.Errorf("%g of water: %v after %g", water, y, last)
		}
		last = y.Likely
	}
	trace, err := Blend(Part{Food("tomato ketchup"), 0.001}, Part{Water{}, 0.999})
	if err != nil {
		t.Fatal(err)
	}
	if y, err := trace.YieldStress(20); err != nil || y != (honestplate.Estimate{}) {
		t.Errorf("a trace: %v, %v", y, err)
	}
	two, err := Blend(Part{Food("tomato ketchup"), 50}, Part{Food("mayonnaise"), 50})
	if err != nil {
		t.Fatal(err)
	}
	y, err := two.YieldStress(20)
	if mayo, _ := Food("mayonnaise").YieldStress(20); err != nil || y.Likely < pure.Likely || y.Likely > mayo.Likely {
		t.Errorf("two sauces: %v, %v", y, err)
	}
	milk, err := Blend(Part{Dairy{FatPercent: 3.5}, 50}, Part{Dairy{FatPercent: 36}, 50})
	if err != nil {
		t.Fatal(err)
	}
	if y, err := milk.YieldStress(6); err != nil || y != (honestplate.Estimate{}) {
		t.Errorf("milk and cream: %v, %v", y, err)
	}
	one, err := Blend(Part{Food("mayonnaise"), 5})
	if err != nil {
		t.Fatal(err)
	}
	whole, _ := Food("mayonnaise").YieldStress(20)
	if y, err := one.YieldStress(20); err != nil || y != whole {
		t.Errorf("one part: %v, %v", y, err)
	}
	if _, err := (Mix{}).YieldStress(20); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("empty: %v", err)
	}
	if _, err := two.YieldStress(90); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("hot: %v", err)
	}
}

// A sauce measured at 20 degC answers at 12, thicker and with a wider band.
func TestAFlowCurveAloneIsCarriedAFewDegrees(t *testing.T) {
	c := Custom{Name: "gravy", Flow: flow.HerschelBulkley{Yield: 3, K: 2, N: 0.5}, FlowC: 20, KgPerM3: 1050}
	at, cold, warm := viscosity(t, c, 20), viscosity(t, c, 12), viscosity(t, c, 30)
	within(t, "8 degC colder", cold, at.Likely*math.Exp(0.16), 1e-9)
	if !(warm.Likely < at.Likely) || cold.High/cold.Low <= at.High/at.Low || warm.High/warm.Low <= cold.High/cold.Low {
		t.Errorf("%v at 12, %v at 20, %v at 30 degC", cold, at, warm)
	}
	if !cold.Contains(at.Likely) {
		t.Errorf("at 12 degC %v does not hold that it does not change, %v", cold, at)
	}
	if _, err := c.Viscosity(31); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("11 degC away: %v", err)
	}
	var none *flow.Casson
	for _, m := range []flow.Model{none, flow.Bingham{Yield: math.NaN(), Plastic: 1}, nanModel{}, nanAbove{}} {
		c.Flow = m
		if _, err := c.Viscosity(20); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%#v: viscosity %v", m, err)
		}
		if _, err := c.YieldStress(20); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%#v: yield stress %v", m, err)
		}
	}
}

// nanModel has no stress at all, nanAbove none once it flows.
type nanModel struct{}

func (nanModel) Stress(float64) float64 { return math.NaN() }
func (nanModel) String() string         { return "none" }

type nanAbove struct{}

func (nanAbove) Stress(rate float64) float64 {
	if rate > 0 {
		return math.NaN()
	}
	return 0
}
func (nanAbove) String() string { return "none above" }
