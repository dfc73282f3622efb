package thermal_test

import (
	"fmt"
	"time"

	"example.org/honestplate/thermal"
)

// How long do dough balls of 60 mm take in each freezer? Plank leaves out what goes
// before and after freezing; Pham does not.
func ExampleFreezing() {
	dough, err := thermal.Watery(0.44, -4, 1100)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, medium := range []thermal.Medium{thermal.HomeFreezer(), thermal.DeepFreezer(), thermal.BlastFreezer()} {
		f := thermal.Freezing{Food: dough, Size: thermal.Size{Diameter: 0.06}, Medium: medium, StartC: 22, EndC: -15}
		plank, err := f.Plank()
		if err != nil {
			fmt.Println(err)
			return
		}
		pham, err := f.Pham()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-13s Plank %s  Pham %s\n", medium.Name, thermal.Clock(plank), thermal.Clock(pham))
	}
	// Output:
	// home freezer  Plank 4:25:23  Pham 5:49:55
	// deep freezer  Plank 2:22:54  Pham 3:25:42
	// blast freezer Plank 42:01  Pham 1:01:43
}

// A brick freezes a little sooner than a slab as thick.
func ExampleShapeFactor() {
	e, err := thermal.ShapeFactor(thermal.Size{Height: 0.04, Width: 0.12, Depth: 0.16}, 0.964)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f times\n", e)
	// Output:
	// 1.17 times
}

// What the sheet prints beside the dry ice.
func ExampleDryIce() {
	m := thermal.DryIce()
	fmt.Printf("%.1f degC, %.0f W/(m2 K)\n%s\n", m.TempC, m.H, m.Caution)
	// Output:
	// -78.5 degC, 40 W/(m2 K)
	// Dry ice burns skin at once and its gas suffocates: insulated gloves, eye protection, a ventilated room (1 kg adds about 11,000 ppm CO2 to a closed 50 m3; the usual limit is 5,000), never a sealed container or a car without ventilation, never in a drink that is served. Follow local rules.
}

// The freezers that the package knows, with the band of their coefficients.
func ExampleMedium() {
	for _, m := range []thermal.Medium{
		thermal.ServingCabinet(), thermal.HomeFreezer(), thermal.DeepFreezer(), thermal.BlastFreezer(),
		thermal.PlateFreezer(), thermal.DryIce(),
	} {
		fmt.Printf("%-15s %5.1f degC  %.0f (%.0f..%.0f) W/(m2 K)\n", m.Name, m.TempC, m.H, m.HLow, m.HHigh)
	}
	// Output:
	// serving cabinet -13.0 degC  8 (5..12) W/(m2 K)
	// home freezer    -18.0 degC  8 (5..12) W/(m2 K)
	// deep freezer    -30.0 degC  8 (5..12) W/(m2 K)
	// blast freezer   -35.0 degC  28 (15..50) W/(m2 K)
	// plate freezer   -35.0 degC  180 (100..300) W/(m2 K)
	// dry ice         -78.5 degC  40 (20..80) W/(m2 K)
}

// The same dough by its composition and the enthalpy solver: what the core and the
// mean are like each hour in the deep freezer.
func ExampleFood_Points() {
	dough := thermal.Food{Water: 0.44, Protein: 0.07, Fat: 0.03, Carbohydrate: 0.43, Fibre: 0.015, Ash: 0.015, FreezeC: -4}
	points, err := dough.Points()
	if err != nil {
		fmt.Println(err)
		return
	}
	freezer := thermal.DeepFreezer()
	states, err := thermal.Body{Form: thermal.SphereForm, Radius: 0.03, Curve: points}.Run(22, -4,
		func(surfaceC float64, _ time.Duration) float64 { return freezer.H * (freezer.TempC - surfaceC) },
		time.Hour, 2*time.Hour, 3*time.Hour, 4*time.Hour)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range states {
		fmt.Printf("%v: core %.1f, mean %.1f degC\n", s.Time, s.CoreC, s.MeanC)
	}
	// Output:
	// 1h0m0s: core -0.9, mean -4.1 degC
	// 2h0m0s: core -4.0, mean -6.5 degC
	// 3h0m0s: core -8.2, mean -11.2 degC
	// 4h0m0s: core -16.7, mean -17.9 degC
}
