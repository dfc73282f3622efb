package rheology_test

import (
	"encoding/json"
	"fmt"

	"example.org/honestplate/rheology"
)

// Cream is lighter than milk, and its solids weigh more than its water.
func ExampleDairyDensity() {
	for _, p := range []struct {
		name       string
		fat, other float64
	}{{"skim milk", 0.1, 9.1}, {"milk", 3.5, 8.8}, {"cream", 36, 5.8}} {
		rho, err := rheology.DairyDensity(p.fat, p.other, 20)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %.0f kg/m3 (%.0f to %.0f)\n", p.name, rho.Likely, rho.Low, rho.High)
	}
	// Output:
	// skim milk: 1033 kg/m3 (1031 to 1035)
	// milk: 1030 kg/m3 (1028 to 1032)
	// cream: 998 kg/m3 (996 to 1000)
}

// Three clear syrups, each a fifth of water: what the rest is decides how thick they
// are.
func ExampleSyrup() {
	for _, l := range []rheology.Liquid{rheology.Glycerol{Percent: 80}, rheology.Syrup{Of: "invert", SolidsPercent: 80}, rheology.Syrup{Of: "glucose", SolidsPercent: 80}} {
		eta, err := l.Viscosity(25)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %.2g Pa s (%.2g to %.2g)\n", l.Describe().Name, eta.Likely, eta.Low, eta.High)
	}
	// Output:
	// glycerol-water, 80 % glycerol: 0.045 Pa s (0.044 to 0.047)
	// invert syrup, 80 % solids: 2.4 Pa s (0.48 to 12)
	// glucose syrup, 80 % solids: 84 Pa s (28 to 2.5e+02)
}

// What is in a blend, whoever made it: the look of a liquid hangs on its fat and its solids.
func ExampleCompositionOf() {
	blend, err := rheology.Blend(
		rheology.Part{Liquid: rheology.Dairy{FatPercent: 3.5}, Grams: 300},
		rheology.Part{Liquid: rheology.Dairy{FatPercent: 36}, Grams: 100},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, known := rheology.CompositionOf(blend)
	fmt.Printf("fat %.1f %%, milk solids %.1f %%, water %.1f %%, %v\n", c.FatPercent, c.MilkSolidsPercent, c.WaterPercent, known)
	_, known = rheology.CompositionOf(rheology.Food("custard"))
	fmt.Println(known)
	// Output:
	// fat 11.6 %, milk solids 7.9 %, water 80.5 %, true
	// false
}

// A liquid from a program's request, and back.
func ExampleReadLiquid() {
	l, err := rheology.ReadLiquid([]byte(`{"kind":"dairy","fat_percent":3.5}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(l.Describe().Name)
	b, err := json.Marshal(rheology.Part{Liquid: rheology.Food("olive oil"), Grams: 20})
	fmt.Println(string(b), err)
	_, err = rheology.ReadLiquid([]byte(`{"kind":"dairy","brix":65}`))
	fmt.Println(err)
	// Output:
	// milk, 3.5 % fat
	// {"liquid":{"kind":"food","food":"olive oil"},"grams":20} <nil>
	// honestplate: brix is not a member of this kind, want one of fat_percent, treatment
}

// Water is the thinnest of what pours in a kitchen.
func ExampleWater() {
	for _, tempC := range []float64{5, 20, 60} {
		e, err := rheology.Water{}.Viscosity(tempC)
		fmt.Printf("%2.0f degC: %.2f mPa s, %v\n", tempC, 1e3*e.Likely, err)
	}
	// Output:
	// 5 degC: 1.52 mPa s, <nil>
	// 20 degC: 1.00 mPa s, <nil>
	// 60 degC: 0.47 mPa s, <nil>
}

// Sugar syrup thickens fast with its strength.
func ExampleSucrose() {
	for _, brix := range []float64{20, 50, 65, 72} {
		e, err := rheology.Sucrose{Brix: brix}.Viscosity(20)
		fmt.Printf("%.0f Brix: %.3g mPa s, %v\n", brix, 1e3*e.Likely, err)
	}
	// Output:
	// 20 Brix: 1.95 mPa s, <nil>
	// 50 Brix: 15.5 mPa s, <nil>
	// 65 Brix: 145 mPa s, <nil>
	// 72 Brix: 837 mPa s, <nil>
}
