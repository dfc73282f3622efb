package colour_test

import (
	"fmt"

	"example.org/honestplate/rheology/look/colour"
)

// A white that swallows a fifth of the blue, under daylight and under tungsten light, each
// with the camera balanced for it.
func ExampleLight_See() {
	var s colour.Spectrum
	for i := range s {
		s[i] = 0.9
		if colour.Wavelength(i) < 480 {
			s[i] = 0.72
		}
	}
	for _, l := range []colour.Light{colour.D65, colour.A} {
		white, err := l.White()
		if err != nil {
			fmt.Println(err)
			return
		}
		seen, err := l.See(&s)
		if err != nil {
			fmt.Println(err)
			return
		}
		lab, err := seen.Lab(white)
		if err != nil {
			fmt.Println(err)
			return
		}
		swatch, err := seen.Swatch(white)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-3v L* %.1f, a* %.1f, b* %.1f, %s\n", l, lab.L, lab.A, lab.B, swatch.Hex())
	}
	// Output:
	// D65 L* 95.8, a* -4.9, b* 11.2, #f2f5dd
	// A   L* 95.9, a* -1.1, b* 10.2, #f4f4df
}

// How far apart are two whites? From 1.5 on an eye sees it side by side.
func ExampleDifference() {
	d, err := colour.Difference(colour.Lab{L: 96.5, A: -2, B: 8.7}, colour.Lab{L: 97, A: -2.4, B: 11.3})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f\n", d)
	// Output:
	// 1.8
}

// What is white under each light, by its chromaticity.
func ExampleLight_White() {
	for _, l := range []colour.Light{colour.D65, colour.D50, colour.A, colour.LEDB1, colour.LEDB3, colour.LEDB5, colour.LEDV2} {
		w, err := l.White()
		if err != nil {
			fmt.Println(err)
			return
		}
		sum := w.X + w.Y + w.Z
		fmt.Printf("%-6v x %.4f, y %.4f\n", l, w.X/sum, w.Y/sum)
	}
	// Output:
	// D65    x 0.3127, y 0.3290
	// D50    x 0.3457, y 0.3585
	// A      x 0.4476, y 0.4074
	// LED-B1 x 0.4560, y 0.4078
	// LED-B3 x 0.3756, y 0.3723
	// LED-B5 x 0.3118, y 0.3236
	// LED-V2 x 0.3781, y 0.3775
}
