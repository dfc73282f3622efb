package food

import (
	"math"
	"testing"
)

var mixes = []FrozenMix{
	Recipes().VanillaIceCream, Recipes().PremiumIceCream, Recipes().Gelato, Recipes().ChocolateIceCream, Recipes().FrozenYogurt, Recipes().SoftServe, Recipes().Sorbet, Recipes().IcePop,
}

func mustCurve(t testing.TB, m FrozenMix) *EnthalpyCurve {
	t.Helper()
	c, err := m.Curve()
	if err != nil {
		t.Fatal(m.Name, err)
	}
	return c
}

func TestTemperatureAndEnthalpyAreInverse(t *testing.T) {
	for _, m := range mixes {
		c := mustCurve(t, m)
		previous := math.Inf(-1)
		for temp := -90.0; temp <= 90; temp += 0.05 {
			h, err := c.Enthalpy(temp)
			if err != nil {
				t.Fatal(err)
			}
			if h <= previous {
				t.Fatalf("%s: enthalpy does not rise at %g degC", m.Name, temp)
			}
			previous = h
			back := c.temp(h)
			if math.Abs(back-temp) > 1e-9 {
				t.Fatalf("%s: %g degC comes back as %g", m.Name, temp, back)
			}
		}
	}
}

// The table on even steps must say what the freezing curve says: the ice it gives
// at a temperature is the ice of FrozenAtC to 0.1 % of the mix.
func TestCurveFollowsTheFreezingCurve(t *testing.T) {
	for _, m := range mixes {
		c := mustCurve(t, m)
		for frozen := 0.0; frozen <= 0.85; frozen += 0.01 {
			temp, err := m.FrozenAtC(frozen)
			if err != nil {
				t.Fatal(err)
			}
			if temp < glassC {
				continue
			}
			ice, err := c.IceFraction(temp)
			if err != nil {
				t.Fatal(err)
			}
			if want := frozen * m.WaterFraction(); math.Abs(ice-want) > 1e-3 {
				t.Errorf("%s at %.2f degC: ice %.4f, want %.4f", m.Name, temp, ice, want)
			}
		}
	}
}

func BenchmarkCurve(b *testing.B) {
	m := Recipes().VanillaIceCream
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Curve(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCurveAt(b *testing.B) {
	c := mustCurve(b, Recipes().VanillaIceCream)
	b.ReportAllocs()
	h, sum := -250e3, 0.0
	for b.Loop() {
		temp, k := c.at(h)
		sum += temp + k
		if h += 100; h > 0 {
			h = -250e3
		}
	}
	if math.IsNaN(sum) {
		b.Fatal()
	}
}
