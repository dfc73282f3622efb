package flow_test

import (
	"errors"
	"fmt"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// A rheometer's file in, the best flow model out. The readings are invented.
func ExampleFitAll() {
	points, err := flow.ReadPoints(strings.NewReader(`
# invented ketchup-like sauce, 22 degC
shear rate 1/s, stress Pa
0.5, 47.6
1,   51.3
2,   54.2
5,   61.2
10,  67.1
20,  74.6
50,  86.3
100, 97.1
200, 110.9
500, 132.6
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	fits, err := flow.FitAll(points)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range fits[:3] {
		fmt.Printf("%-16s AICc %6.1f\n", f.Model, f.AICc)
	}
	best := fits[0]
	for i, name := range best.Names {
		fmt.Printf("%s %.3g +- %.2g\n", name, best.Values[i], best.Errors[i])
	}
	// Output:
	// Herschel-Bulkley AICc  -92.2
	// power law        AICc  -56.1
	// Carreau          AICc  -56.1
	// yield stress 31.9 +- 0.83
	// consistency 19 +- 0.75
	// index 0.269 +- 0.0057
}

// Five flow curves that all have 1 Pa s at 10 1/s, and part to either side of it.
func ExampleViscosity() {
	for _, m := range []flow.Model{
		flow.Newtonian{PaS: 1},
		flow.PowerLaw{K: 3.1623, N: 0.5},
		flow.Bingham{Yield: 5, Plastic: 0.5},
		flow.Casson{Yield: 2.5, Plastic: 0.25},
		flow.Carreau{Zero: 2, Infinite: 0, Time: 0.3, N: 0.4},
	} {
		fmt.Printf("%-9s", m)
		for _, rate := range []float64{1, 10, 100} {
			eta, err := flow.Viscosity(m, rate)
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
func ExampleBingham() {
	_, err := flow.Viscosity(flow.Bingham{Yield: -5, Plastic: 0.5}, 50)
	fmt.Println(errors.Is(err, honestplate.ErrInput), err)
	// Output:
	// true honestplate: Yield is -5 Pa, want a finite number, 0 or more
}

// Points of a rheometer, fitted by one model.
func ExampleFit() {
	points := []flow.Point{{ShearRate: 1, Stress: 10.5}, {ShearRate: 10, Stress: 16.2}, {ShearRate: 50, Stress: 28.1}, {ShearRate: 100, Stress: 36.4}}
	fitted, err := flow.Fit(flow.HerschelBulkley{}, points)
	if err != nil {
		fmt.Println(err)
		return
	}
	at, err := flow.Viscosity(fitted.Model, 30)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v: %.2f Pa s at 30 1/s\n", fitted.Model, at)
	// Output:
	// Herschel-Bulkley: 0.77 Pa s at 30 1/s
}
