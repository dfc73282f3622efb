package rheology

import (
	"math"
	"testing"
)

func pas(t *testing.T, l Liquid, tempC float64) float64 {
	t.Helper()
	e, err := l.Viscosity(tempC)
	if err != nil {
		t.Fatal(err)
	}
	return e.Likely
}

// Common practice, no source: adding cream to milk slows its pour; every further
// spoon slows it more.
func TestPracticeCreamSlowsThePourOfMilk(t *testing.T) {
	last := 0.0
	for grams := 0.0; grams <= 500; grams += 50 {
		m, err := Blend(Part{Dairy{FatPercent: 3.5}, 300}, Part{Dairy{FatPercent: 36}, grams})
		if err != nil {
			t.Fatal(err)
		}
		v := pas(t, m, 6)
		if v <= last {
			t.Errorf("%g g of cream: %g Pa s after %g", grams, v, last)
		}
		last = v
	}
}

// Common practice, no source: syrups of the maple and invert kind pour thick as they
// are, at room temperature: far thicker than milk, and none stands still.
func TestPracticeSyrupsPourThickAsTheyAre(t *testing.T) {
	milk := pas(t, Dairy{FatPercent: 3.5}, 6)
	for _, l := range []Liquid{Syrup{Of: "maple"}, Syrup{Of: "invert"}, Syrup{"invert", 75}, Syrup{Of: "glucose"}} {
		v := pas(t, l, 22)
		if v < 30*milk {
			t.Errorf("%s: %g Pa s is no thick pour beside milk's %g", l.Describe().Name, v, milk)
		}
		if y, ok := l.(Yielding); ok {
			t.Errorf("%s stands still: %v", l.Describe().Name, y)
		}
	}
}

// Common practice, no source: honey straight from a cool room is the awkward one:
// thicker than the other pours of the table, and several times what it is at 25 degC.
func TestPracticeHoneyFromACoolRoomIsTheAwkwardOne(t *testing.T) {
	cool := pas(t, Honey{}, 12)
	for _, l := range []Liquid{Dairy{FatPercent: 36}, Syrup{Of: "maple"}, Syrup{Of: "invert"}, Sucrose{65}, Food("olive oil"), Food("sweetened condensed milk")} {
		if v := pas(t, l, 12); v >= cool {
			t.Errorf("%s at 12 degC: %g, honey %g", l.Describe().Name, v, cool)
		}
	}
	if warm := pas(t, Honey{}, 25); cool < 5*warm {
		t.Errorf("12 degC: %g, 25 degC: %g", cool, warm)
	}
}

// Common practice, no source: chilling thickens more than warming thins at the same
// step, in pascal seconds for every liquid but the sauces. In shares it holds for the syrups and the
// oils, whose curves bend; for milk and cream between 0 and 30 degC too.
func TestPracticeChillingThickensMoreThanWarmingThins(t *testing.T) {
	for _, l := range Catalogue() {
		if d := l.Describe(); d.ShearRate == sauceRate {
			continue // ketchup's remembered curves bend the other way about 50 degC
		}
		d := l.Describe()
		for _, step := range []float64{1, 5, 10} {
			mid := (d.LowC + d.HighC) / 2
			if mid-step < d.LowC {
				continue
			}
			chilled, here, warmed := pas(t, l, mid-step), pas(t, l, mid), pas(t, l, mid+step)
			if !(chilled-here > here-warmed) {
				t.Errorf("%s at %g -+ %g degC: %g, %g, %g Pa s", d.Name, mid, step, chilled, here, warmed)
			}
		}
	}
	for _, l := range []Liquid{Dairy{FatPercent: 3.5}, Sucrose{65}, Syrup{Of: "maple"}, Syrup{Of: "invert"}, Honey{}, Food("olive oil")} {
		for _, step := range []float64{1, 5, 8} {
			const mid = 15
			chilled, here, warmed := pas(t, l, mid-step), pas(t, l, mid), pas(t, l, mid+step)
			if !(chilled/here > here/warmed) {
				t.Errorf("%s at %d -+ %g degC: x%g chilled, /%g warmed", l.Describe().Name, mid, step, chilled/here, here/warmed)
			}
		}
	}
}

// Common practice, no source: oil pours between milk and syrup, and ketchup stays on
// the plate where oil and honey run.
func TestPracticeOrderOfTheTable(t *testing.T) {
	order := []Liquid{Water{}, Dairy{FatPercent: 3.5}, Dairy{FatPercent: 20}, Food("olive oil"), Sucrose{66.9}, Food("sweetened condensed milk"), Honey{}}
	for i := range order[1:] {
		a, b := pas(t, order[i], 20), pas(t, order[i+1], 20)
		if a >= b {
			t.Errorf("%s (%g) before %s (%g)", order[i].Describe().Name, a, order[i+1].Describe().Name, b)
		}
	}
	for _, s := range []Food{Food("tomato ketchup"), Food("stirred yoghurt"), Food("custard")} {
		y, err := s.YieldStress(20)
		if err != nil || y.Low <= 0 {
			t.Errorf("%s does not stand: %v, %v", s.Describe().Name, y, err)
		}
	}
}

// Identities of the syrups: no sugar is water, more is thicker, heavier and tighter.
func TestSugarThickensWater(t *testing.T) {
	for tempC := 0.0; tempC <= 80; tempC += 4 {
		w, s := pas(t, Water{}, tempC), pas(t, Sucrose{}, tempC)
		if math.Abs(s/w-1) > 1e-12 {
			t.Errorf("%g degC: 0 Brix %g, water %g", tempC, s, w)
		}
		last, lastRho := 0.0, 0.0
		for brix := 0.0; brix <= 75; brix += 0.25 {
			v := pas(t, Sucrose{brix}, tempC)
			rho, err := Sucrose{brix}.Density(tempC)
			if err != nil {
				t.Fatal(err)
			}
			if v <= last || rho.Likely <= lastRho {
				t.Errorf("%g Brix at %g degC: %g Pa s after %g, %g kg/m3 after %g", brix, tempC, v, last, rho.Likely, lastRho)
			}
			last, lastRho = v, rho.Likely
		}
	}
}

// The laboratory's fit and the remembered values that Glucose lies between.
func TestGlucoseHoldsBothThatItLiesBetween(t *testing.T) {
	hold := func(solids, tempC, pas float64) {
		t.Helper()
		e, err := Syrup{"glucose", solids}.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		if !e.Contains(pas) {
			t.Errorf("%g %% at %g degC: %.3g, band %.3g..%.3g", solids, tempC, pas, e.Low, e.High)
		}
	}
	for tempC := 23.5; tempC <= 46; tempC += 2.5 {
		hold(77, tempC, 15603*math.Pow(tempC, -2.44))
	}
	hold(80, 27, 60)
	hold(80, 38, 12)
}

func TestWaterThinsEverySyrup(t *testing.T) {
	for tempC := 15.0; tempC <= 60; tempC += 5 {
		for _, c := range []struct {
			what string
			make func(float64) Liquid
			low  float64
			high float64
		}{
			{"honey", func(x float64) Liquid { return Honey{x} }, 14, 20},
			{"invert syrup", func(x float64) Liquid { return Syrup{"invert", 100 - x} }, 15, 30},
			{"glucose syrup", func(x float64) Liquid { return Syrup{"glucose", 100 - x} }, 16, 26},
			{"maple syrup", func(x float64) Liquid { return Syrup{"maple", 100 - x} }, 30, 40},
			{"glycerol", func(x float64) Liquid { return Glycerol{100 - x} }, 0, 100},
		} {
			last := math.Inf(1)
			for x := c.low; x <= c.high; x += 0.5 {
				v := pas(t, c.make(x), tempC)
				if v >= last {
					t.Errorf("%s with %g %% water at %g degC: %g after %g", c.what, x, tempC, v, last)
				}
				last = v
			}
		}
	}
	// The default strengths are the stated ones.
	for _, c := range []struct{ a, b Liquid }{{Honey{}, Honey{17}}, {Syrup{Of: "maple"}, Syrup{"maple", 66.9}}, {Syrup{Of: "invert"}, Syrup{"invert", 80}}, {Syrup{Of: "glucose"}, Syrup{"glucose", 80}}} {
		if pas(t, c.a, 20) != pas(t, c.b, 20) || c.a.Describe() != c.b.Describe() {
			t.Errorf("%+v is not %+v", c.a, c.b)
		}
	}
}
