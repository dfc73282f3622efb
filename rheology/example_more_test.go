package rheology_test

import (
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
	// invert syrup, 80 % solids: 3.6 Pa s (0.71 to 18)
	// glucose syrup, 80 % solids: 28 Pa s (9.4 to 84)
}

// Three test pours answer what D is for this milk and this cream; the readings are
// invented. The blend is thinner than log-mixing says, as most are.
func ExampleFitInteraction() {
	var cases []rheology.BlendCase
	for _, p := range []struct{ fat, pas float64 }{{12, 0.0047}, {20, 0.0081}, {28, 0.0155}} {
		cases = append(cases, rheology.BlendCase{
			Source: "our cup", TempC: 6, ThinFatPercent: 3.5, ThinPaS: 0.0029, ThickFatPercent: 36, ThickPaS: 0.036,
			FatPercent: p.fat, PaS: p.pas,
		})
	}
	rule, err := rheology.FitInteraction(cases)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(rule)
	// Output:
	// log-mixing by mass with interaction -1.028, skew -0.2918
}
