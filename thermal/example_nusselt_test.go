package thermal_test

import (
	"fmt"

	"example.org/honestplate/thermal"
)

// How well still air takes heat from differently shaped things of one size: Nu at a
// Rayleigh number of a million, that of a cold glass.
func ExampleNusseltVerticalPlate() {
	const ra, pr = 1e6, 0.71
	for _, c := range []struct {
		name string
		nu   func(ra, pr float64) (float64, error)
	}{
		{"upright plate", thermal.NusseltVerticalPlate},
		{"the same, laminar form", thermal.NusseltVerticalPlateLaminar},
		{"upright cylinder, L/D 2", func(ra, pr float64) (float64, error) { return thermal.NusseltVerticalCylinder(ra, pr, 2) }},
		{"lying cylinder", thermal.NusseltHorizontalCylinder},
		{"ball", thermal.NusseltSphere},
		{"hot plate facing up", thermal.NusseltPlateUp},
		{"hot plate facing down", thermal.NusseltPlateDown},
	} {
		nu, err := c.nu(ra, pr)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-24s %4.1f\n", c.name, nu)
	}
	// Output:
	// upright plate            16.6
	// the same, laminar form   16.9
	// upright cylinder, L/D 2  18.3
	// lying cylinder           14.5
	// ball                     16.4
	// hot plate facing up      17.1
	// hot plate facing down     8.5
}

// A fan across the set, Re 5000, and what it adds to still air's Nu of 15.
func ExampleMixedNusselt() {
	const re, pr, still = 5000, 0.71, 15
	across, err := thermal.NusseltCylinderAcross(re, pr)
	if err != nil {
		fmt.Println(err)
		return
	}
	ball, err := thermal.NusseltSphereInStream(re, pr, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	along, err := thermal.NusseltPlateAlong(re, pr)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range []struct {
		name   string
		forced float64
	}{{"glass", across}, {"scoop", ball}, {"slice", along}} {
		nu, err := thermal.MixedNusselt(still, c.forced)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: forced %.0f, together %.0f\n", c.name, c.forced, nu)
	}
	// Output:
	// glass: forced 37, together 38
	// scoop: forced 42, together 43
	// slice: forced 42, together 43
}
