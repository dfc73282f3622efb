package rheology_test

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// say returns a function that prints the one number of a formula, times scale, or
// its error: say(format, scale)(formula(...)).
func say(format string, scale float64) func(float64, error) {
	return func(v float64, err error) {
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf(format+"\n", scale*v)
	}
}

// The published laws behind Dairy, each asked itself. Two of them overlap for cold
// milk, and none speaks for cold cream of 36 % fat.
func ExampleBakshiSmith() {
	say("whole milk at 20 degC, Bakshi and Smith: %.2f mPa s", 1e3)(rheology.BakshiSmith(3.5, 20))
	say("whole milk at 20 degC, Fernandez-Martin: %.2f mPa s", 1e3)(rheology.FernandezMartin(12.2, 20))
	say("cream of 36 %% at 60 degC, Phipps: %.2f mPa s", 1e3)(rheology.Phipps(36, 60))
	say("cream of 36 %% at 5 degC: %.2f mPa s", 1e3)(rheology.BakshiSmith(36, 5))
	// Output:
	// whole milk at 20 degC, Bakshi and Smith: 2.08 mPa s
	// whole milk at 20 degC, Fernandez-Martin: 2.21 mPa s
	// cream of 36 % at 60 degC, Phipps: 4.03 mPa s
	// rheology: fat is 36 %, outside 0.1..30 % (Bakshi & Smith 1984, J. Dairy Sci. 67, Effect of fat content and temperature on viscosity in relation to pumping requirements of fluid milk products)
}

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
func ExampleGlucose() {
	for _, l := range []rheology.Liquid{rheology.Glycerol{Percent: 80}, rheology.Invert{SolidsPercent: 80}, rheology.Glucose{SolidsPercent: 80}} {
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

// Three ways to say how sure a measurement is.
func ExampleEstimate() {
	for _, e := range []honestplate.Estimate{honestplate.Exactly(0.02), honestplate.Within(0.02, 0.05), honestplate.Factor(0.02, 1.5)} {
		fmt.Printf("%.3f (%.4f to %.4f), may be 0.021: %v\n", e.Likely, e.Low, e.High, e.Contains(0.021))
	}
	// Output:
	// 0.020 (0.0200 to 0.0200), may be 0.021: false
	// 0.020 (0.0190 to 0.0210), may be 0.021: true
	// 0.020 (0.0133 to 0.0300), may be 0.021: true
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

// A ladder of test pours from one pair of bottles: five batches of 100 g.
func ExampleRecipe_Prepare() {
	tray, err := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 100, StepGrams: 0.5, TempC: 6,
	}.Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, mPaS := range []float64{4, 6, 9, 13, 20} {
		b, err := tray.For(mPaS / 1000)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2g mPa s: milk %4.1f g, cream %4.1f g\n", mPaS, b.ThinGrams, b.ThickGrams)
	}
	// Output:
	// 4 mPa s: milk 89.0 g, cream 11.0 g
	//  6 mPa s: milk 72.0 g, cream 28.0 g
	//  9 mPa s: milk 55.5 g, cream 44.5 g
	// 13 mPa s: milk 40.0 g, cream 60.0 g
	// 20 mPa s: milk 22.0 g, cream 78.0 g
}
