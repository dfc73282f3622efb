package food

import (
	"math"
	"testing"
)

var mixes = []FrozenMix{
	Recipes().VanillaIceCream, Recipes().PremiumIceCream, Recipes().Gelato, Recipes().ChocolateIceCream, Recipes().FrozenYogurt, Recipes().SoftServe, Recipes().Sorbet, Recipes().IcePop,
}

func TestEnthalpyRises(t *testing.T) {
	for _, m := range mixes {
		previous := math.Inf(-1)
		for temp := -90.0; temp <= 90; temp += 0.05 {
			h, err := m.Enthalpy(temp)
			if err != nil {
				t.Fatal(err)
			}
			if h <= previous {
				t.Fatalf("%s: enthalpy does not rise at %g degC", m.Name, temp)
			}
			previous = h
		}
	}
}

// The share that is ice is the freezing curve the other way.
func TestIceShareIsTheFreezingCurveTheOtherWay(t *testing.T) {
	for _, m := range mixes {
		for frozen := 0.0; frozen <= 0.95; frozen += 0.01 {
			temp, err := m.FrozenAtC(frozen)
			if err != nil {
				t.Fatal(err)
			}
			if temp < glassC {
				continue
			}
			if share, err := m.IceShare(temp); err != nil || math.Abs(share-frozen) > 1e-9 {
				t.Errorf("%s at %.2f degC: %g is ice, want %g, %v", m.Name, temp, share, frozen, err)
			}
		}
	}
}

// The curve for the solver, straight between its points, is the enthalpy to half a per
// cent of that of melting.
func TestCurveIsTheEnthalpy(t *testing.T) {
	for _, m := range mixes {
		c, err := m.Curve()
		if err != nil {
			t.Fatal(err)
		}
		if len(c) < 40 {
			t.Errorf("%s: %d points", m.Name, len(c))
		}
		density, _ := m.Density() // a mix that has a curve
		for i := range len(c) - 1 {
			h, err := m.Enthalpy((c[i].TempC + c[i+1].TempC) / 2)
			if straight := (c[i].Enthalpy + c[i+1].Enthalpy) / 2 / density; err != nil || math.Abs(h-straight) > 1200 {
				t.Errorf("%s between %g and %g degC: %g, straight %g J/kg, %v", m.Name, c[i].TempC, c[i+1].TempC, h, straight, err)
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
