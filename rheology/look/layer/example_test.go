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
