package solution

import (
	"math"
	"testing"
)

// Densities of sucrose solutions and of alcohol and water at 20 degC, specific heats of
// alcohol and water, freezing points of spirits: handbook tables, from memory.
func TestDrinksAgainstTables(t *testing.T) {
	near := func(name string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within {
			t.Errorf("%s: %g, want %g", name, got, want)
		}
	}
	near("water", Drink{}.Density(), 998.2, 0.1)
	near("10 Brix", Drink{Brix: 10}.Density(), 1038.1, 1)
	near("20 Brix", Drink{Brix: 20}.Density(), 1081, 1.5)
	near("40 Brix", Drink{Brix: 40}.Density(), 1176.5, 5)
	near("12 % alcohol", Drink{AlcoholPercent: 12}.Density(), 984, 2)
	near("40 % alcohol", Drink{AlcoholPercent: 40}.Density(), 948, 2)
	for _, c := range []struct{ alcohol, freezes, heat float64 }{{10, -4, 0}, {20, -9, 0}, {24.5, 0, 4320}, {30, -15, 0}, {40, -23, 4050}} {
		d := Drink{AlcoholPercent: c.alcohol}
		if c.freezes != 0 {
			near("freezing", d.FreezesC(0), c.freezes, 0.06*-c.freezes)
		}
		if c.heat != 0 {
			near("heat", d.SpecificHeat(), c.heat, 0.04*c.heat)
		}
	}
	// Leighton 1927 after Pickering 1891, in Goff & Hartel 2013, Table 6.1 (read): 12 g of
	// sucrose in 100 g of water 0.72 K.
	near("sugar", Drink{Brix: 100 * 12.0 / 112}.FreezesC(0), -0.72, 0.005)
	near("diluted", Drink{Brix: 100 * 12.0 / 112}.FreezesC(100.0/112), -0.35, 0.01)
	if (Drink{}).FreezesC(0.3) != 0 || (Drink{AlcoholPercent: 40}).FreezesC(-0.2) >= (Drink{AlcoholPercent: 40}).FreezesC(0) {
		t.Error("water, and a spirit with ice frozen out")
	}
	near("water share", Drink{Brix: 10, AlcoholPercent: 5}.WaterShare(), 0.86, 0.005)
}
