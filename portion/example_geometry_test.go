package portion_test

import (
	"fmt"
	"math"
	"os"
	"text/tabwriter"

	"example.org/honestplate/portion"
)

// Three strips across a bread of 30 cm, 6 cm apart: their lengths, and what each
// cuts off the bread.
func ExampleChord() {
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	for _, y := range []float64{0, 0.06, 0.12} {
		length, err := portion.Chord(0.15, y)
		if err != nil {
			fmt.Println(err)
			return
		}
		area, err := portion.SegmentArea(0.15, y)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Fprintf(w, "at %.0f mm\t%.0f mm long\t%.0f cm2 beyond\n", y*1000, length*1000, area*1e4)
	}
	_ = w.Flush()
	// Output:
	// at 0 mm    300 mm long  353 cm2 beyond
	// at 60 mm   275 mm long  178 cm2 beyond
	// at 120 mm  180 mm long  37 cm2 beyond
}

// What a slice of an eighth covers, and the rings that hold as much each.
func ExampleSectorArea() {
	slice, err := portion.SectorArea(0.15, 360./8)
	if err != nil {
		fmt.Println(err)
		return
	}
	rings, err := portion.EqualRings(0.15, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("a slice %.1f cm2, the inner disc %.1f cm2\n", slice*1e4, math.Pi*rings[0]*rings[0]*1e4)
	fmt.Printf("rings out to %.0f, %.0f .. %.0f mm\n", rings[0]*1000, rings[1]*1000, rings[7]*1000)
	// Output:
	// a slice 88.4 cm2, the inner disc 88.4 cm2
	// rings out to 53, 75 .. 150 mm
}

// Berries scattered on an oval plate lie more evenly than chance would have them.
func ExampleEvenness() {
	plate := portion.Oval{Width: 0.28, Depth: 0.20, Edge: 0.02}
	placing, err := portion.Scatter{Item: "berries", Count: 40, Diameter: 0.014, Gap: 0.002}.Place(plate)
	if err != nil {
		fmt.Println(err)
		return
	}
	var at []portion.Point
	for _, s := range placing.Spots {
		at = append(at, s.At)
	}
	// The spots keep half a berry from the free edge.
	free := math.Pi * (0.14 - 0.02 - 0.007) * (0.10 - 0.02 - 0.007)
	even, err := portion.Evenness(at, free)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("more even than chance (1), less than a lattice (2.15):", even > 1.3 && even < 2.15)
	// Output:
	// more even than chance (1), less than a lattice (2.15): true
}
