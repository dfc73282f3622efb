package layer_test

import (
	"fmt"

	"example.org/honestplate/rheology/look/layer"
)

// A millimetre of whole milk, square on: what comes back over black and over white.
func ExampleSlab_Solve() {
	milk := layer.Slab{Albedo: 0.9999, Depth: 12, Asymmetry: 0.6, Index: 1.345}
	solved, err := milk.Solve(1)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, ground := range []float64{0, 0.8} {
		f, err := solved.Over(ground)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("over %.1f: %.2f of a beam, %.2f of a soft box\n", ground, f.BeamReflected, f.DiffuseReflected)
	}
	// Output:
	// over 0.0: 0.63 of a beam, 0.66 of a soft box
	// over 0.8: 0.78 of a beam, 0.80 of a soft box
}

// How far Kubelka and Munk's formula is off over black, by reduced optical depth.
func ExampleKubelkaMunk() {
	for _, depth := range []float64{0.5, 1, 2, 4, 8} {
		solved, err := layer.Slab{Albedo: 0.999, Depth: depth}.Solve(1)
		if err != nil {
			fmt.Println(err)
			return
		}
		exact, err := solved.Over(0)
		if err != nil {
			fmt.Println(err)
			return
		}
		km, err := layer.KubelkaMunk(2*0.001, 0.75*0.999, depth, 0)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("depth %3.1f: exact %.3f, Kubelka-Munk %.3f\n", depth, exact.DiffuseReflected, km)
	}
	// Output:
	// depth 0.5: exact 0.295, Kubelka-Munk 0.272
	// depth 1.0: exact 0.446, Kubelka-Munk 0.428
	// depth 2.0: exact 0.608, Kubelka-Munk 0.598
	// depth 4.0: exact 0.749, Kubelka-Munk 0.745
	// depth 8.0: exact 0.849, Kubelka-Munk 0.847
}

// What a smooth surface of milk does to light.
func ExampleSurfaceReflection() {
	beam, outside, inside, err := layer.SurfaceReflection(1.345)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("sent back: %.3f of a beam, %.3f of a soft box, %.3f from inside\n", beam, outside, inside)
	// Output:
	// sent back: 0.022 of a beam, 0.068 of a soft box, 0.485 from inside
}
