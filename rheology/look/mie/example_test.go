package mie_test

import (
	"fmt"

	"example.org/honestplate/rheology/look/mie"
)

// A fat globule of 3 um in milk takes more than three times its shadow out of a beam, and
// throws nearly all of it onward.
func ExampleSphere() {
	size := 3.14159 * 3e-6 * 1.333 / 550e-9 // circumference over wavelength in water
	e, err := mie.Sphere(1.463/1.333, size)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("size %.0f: extinction %.2f, asymmetry %.3f\n", size, e.Extinction, e.Asymmetry)
	// Output:
	// size 23: extinction 3.39, asymmetry 0.976
}

// The same fat in smaller globules scatters more: that is what homogenising does.
func ExampleSuspended_At() {
	for _, um := range []float64{1.6, 0.3} {
		sizes, err := mie.LogNormal(um*1e-6, 0.6, 10e-6)
		if err != nil {
			fmt.Println(err)
			return
		}
		c, err := mie.Suspended{Classes: sizes, Index: 1.463, Liquid: 1.333}.At(550e-9)
		if err != nil {
			fmt.Println(err)
			return
		}
		const share = 0.035 // of the volume
		fmt.Printf("mean radius %.1f um: reduced scattering %.1f per mm\n", um, share*c.Scattering*(1-c.Asymmetry)/1000)
	}
	// Output:
	// mean radius 1.6 um: reduced scattering 1.6 per mm
	// mean radius 0.3 um: reduced scattering 3.5 per mm
}
