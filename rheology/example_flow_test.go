package rheology_test

import (
	"fmt"
	"strings"

	"example.org/honestplate/rheology"
)

// A rheometer's file in, the best flow model out. The readings are invented.
func ExampleBestFlow() {
	points, err := rheology.ReadFlowPoints(strings.NewReader(`
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
	fits, err := rheology.BestFlow(points)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range fits[:3] {
		fmt.Printf("%-16s AICc %6.1f\n", f.Kind, f.AICc)
	}
	best := fits[0]
	for i, name := range best.Names {
		fmt.Printf("%s %.3g +- %.2g\n", name, best.Values[i], best.StandardError(i))
	}
	// Output:
	// Herschel-Bulkley AICc  -11.2
	// Carreau          AICc   28.5
	// power law        AICc   30.2
	// yield stress 31.7 +- 0.69
	// consistency 19.2 +- 0.58
	// index 0.267 +- 0.0041
}

// The same sauce through a bottle's neck: what pressure drives 5 mL/s, and how fast
// is the liquid sheared at the wall.
func ExamplePipe() {
	sauce := rheology.HerschelBulkley{Yield: 32, K: 18.7, N: 0.27}
	neck := rheology.Pipe{Diameter: 0.006, Length: 0.02}
	dp, err := neck.PressureFor(sauce, 5e-6)
	if err != nil {
		fmt.Println(err)
		return
	}
	flow, err := neck.Flow(sauce, dp)
	if err != nil {
		fmt.Println(err)
		return
	}
	re, err := flow.Reynolds(1140)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("pressure %.0f Pa, wall shear rate %.0f 1/s (8V/D %.0f), Reynolds %.2f\n", dp, flow.WallShearRate, flow.ApparentShearRate(), re)
	fmt.Printf("plug %.1f of %.1f mm, centre %.2f m/s, mean %.2f m/s\n", flow.PlugDiameter*1e3, neck.Diameter*1e3, flow.CentreSpeed, flow.Speed)
	// Output:
	// pressure 1747 Pa, wall shear rate 480 1/s (8V/D 236), Reynolds 2.18
	// plug 1.5 of 6.0 mm, centre 0.23 m/s, mean 0.18 m/s
}

// Capillary readings turned into the flow curve of the liquid.
func ExampleRabinowitschMooney() {
	readings := []rheology.FlowPoint{{ShearRate: 10, Stress: 20}, {ShearRate: 40, Stress: 40}, {ShearRate: 160, Stress: 80}}
	curve, err := rheology.RabinowitschMooney(readings)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, p := range curve {
		fmt.Printf("8V/D %.0f 1/s: true wall rate %.1f 1/s, %.0f Pa\n", readings[i].ShearRate, p.ShearRate, p.Stress)
	}
	// Output:
	// 8V/D 10 1/s: true wall rate 12.5 1/s, 20 Pa
	// 8V/D 40 1/s: true wall rate 50.0 1/s, 40 Pa
	// 8V/D 160 1/s: true wall rate 200.0 1/s, 80 Pa
}

// Ketchup stands on the plate until it is pushed hard enough.
func ExampleSauce() {
	y, err := rheology.Ketchup.YieldStress(22)
	if err != nil {
		fmt.Println(err)
		return
	}
	slow, err := rheology.Ketchup.ViscosityAtRate(22, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fast, err := rheology.Ketchup.ViscosityAtRate(22, 200)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("stands below %.0f Pa (%.0f to %.0f)\n", y.Likely, y.Low, y.High)
	fmt.Printf("%.0f Pa s at 1 1/s, %.2f Pa s at 200 1/s\n", slow.Likely, fast.Likely)
	// Output:
	// stands below 33 Pa (13 to 83)
	// 53 Pa s at 1 1/s, 0.57 Pa s at 200 1/s
}
