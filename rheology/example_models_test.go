package rheology_test

import (
	"errors"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// Five flow curves that all have 1 Pa s at 10 1/s, and part to either side of it.
func ExampleApparentViscosity() {
	for _, m := range []rheology.FlowModel{
		rheology.Newtonian{PaS: 1},
		rheology.PowerLaw{K: 3.1623, N: 0.5},
		rheology.Bingham{Yield: 5, Plastic: 0.5},
		rheology.Casson{Yield: 2.5, Plastic: 0.25},
		rheology.Carreau{Zero: 2, Infinite: 0, Time: 0.3, N: 0.4},
	} {
		if err := rheology.CheckFlow(m); err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%-9s", m.Name())
		for _, rate := range []float64{1, 10, 100} {
			eta, err := rheology.ApparentViscosity(m, rate)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("  %5.2f", eta)
		}
		fmt.Println(" Pa s")
	}
	// Output:
	// Newtonian   1.00   1.00   1.00 Pa s
	// power law   3.16   1.00   0.32 Pa s
	// Bingham     5.50   1.00   0.55 Pa s
	// Casson      4.33   1.00   0.43 Pa s
	// Carreau     1.95   1.00   0.26 Pa s
}

// A model whose constants make no sense says so before it is used.
func ExampleCheckFlow() {
	err := rheology.CheckFlow(rheology.Bingham{Yield: -5, Plastic: 0.5})
	fmt.Println(errors.Is(err, honestplate.ErrInput), err)
	// Output:
	// true rheology: yield stress is -5 Pa, want a finite number, 0 or more
}

// The same readings fitted twice: by least squares in the stress, and by the straight
// line on logarithmic paper. The readings are invented.
func ExampleFitFlow() {
	points := []rheology.FlowPoint{{ShearRate: 1, Stress: 8.1}, {ShearRate: 5, Stress: 19.4}, {ShearRate: 20, Stress: 41}, {ShearRate: 100, Stress: 98}}
	fit, err := rheology.FitFlow(rheology.FitPowerLaw, points)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, name := range fit.Names {
		fmt.Printf("%s %.3g +- %.1g\n", name, fit.Values[i], fit.StandardError(i))
	}
	line, err := rheology.FitPowerLawLog(points)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("by the line: consistency %.3g, index %.3g\n", line.K, line.N)
	// Output:
	// consistency 8.11 +- 0.01
	// index 0.541 +- 0.0003
	// by the line: consistency 8.11, index 0.541
}

// One liquid of 100 mm2/s in the cups that may be at hand: the numbers on them are not
// sizes.
func ExampleFordCup() {
	for _, cup := range []rheology.Cup{rheology.ISO2431(4), rheology.FordCup(4), rheology.ZahnCup(3), rheology.ShellCup(3), rheology.DIN53211()} {
		t, err := cup.Time(100e-6)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v: %.0f s\n", cup, t.Seconds())
	}
	// Output:
	// ISO 2431, 4 mm: 75 s
	// Ford cup, ASTM D1200, number 4: 30 s
	// rheology: kinematic viscosity is 0.0001 m2/s, outside 0.00014625..0.00084825 m2/s (Zahn cup, ASTM D4212, number 3)
	// Shell cup, ASTM D4212, number 3: 68 s
	// DIN 53211, 4 mm: 26 s
}
