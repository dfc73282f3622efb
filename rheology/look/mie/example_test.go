package mie_test

import (
	"fmt"

	"example.org/honestplate/rheology/look/mie"
)

// A fat globule of 3 um in milk scatters more than three times what falls on its shadow, and
// throws nearly all of it onward.
func ExampleSphere() {
	size := 3.14159 * 3e-6 * 1.333 / 550e-9 // circumference over wavelength in water
	e, err := mie.Sphere(1.463/1.333, size)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("size %.0f: scatters %.2f, asymmetry %.3f\n", size, e.Scattering, e.Asymmetry)
	// Output:
	// size 23: scatters 3.39, asymmetry 0.976
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

// Casein micelles are so small that they throw light to all sides, and blue most.
func ExampleLogNormalBelow() {
	sizes, err := mie.LogNormalBelow(43e-9, 0.23, 150e-9)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, nm := range []float64{450, 650} {
		c, err := mie.Suspended{Classes: sizes, Index: 1.503, Liquid: 1.334}.At(nm * 1e-9)
		if err != nil {
			fmt.Println(err)
			return
		}
		const share = 0.024 // of the volume of milk
		fmt.Printf("%g nm: %.1f per mm, asymmetry %.2f\n", nm, share*c.Scattering/1000, c.Asymmetry)
	}
	// Output:
	// 450 nm: 2.1 per mm, asymmetry 0.16
	// 650 nm: 0.6 per mm, asymmetry 0.08
}
