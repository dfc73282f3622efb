package pour_test

import (
	"fmt"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// How high may the jug be held over the dry bowl, and over what already lies in it?
func ExamplePour_GreatestFall() {
	jug := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}
	poured, err := jug.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, film := range []float64{0, 0.010} {
		fall, err := poured.GreatestFall(pour.Target{Film: film})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f mm of milk in the bowl: pour no higher than %.0f cm\n", film*1000, 100*fall.Low)
	}
	// Output:
	// 0 mm of milk in the bowl: pour no higher than 21 cm
	// 10 mm of milk in the bowl: pour no higher than 26 cm
}

// A hand poured 300 g of water from this jug in 6 s. The same hand pours cream.
func ExampleLip_Calibrate() {
	jug, err := pour.Lip{Width: 0.015, Length: 0.008}.Calibrate(rheology.Water{}, 20, 300, 6*time.Second)
	if err != nil {
		fmt.Println(err)
		return
	}
	poured, err := jug.Pour(rheology.Dairy{FatPercent: 30}, 6, 100)
	if err != nil {
		fmt.Println(err)
		return
	}
	d := poured.Duration
	fmt.Printf("the hand keeps %.1f mm; 100 g of cream take %.1f to %.1f s\n",
		jug.Head*1000, d.Earliest.After.Seconds(), d.Latest.After.Seconds())
	// Output:
	// the hand keeps 18.1 mm; 100 g of cream take 2.2 to 3.1 s
}

// A bottle turned upside down waits for its air.
func ExampleSpout_Pour_bottle() {
	bottle := pour.Spout{Diameter: 0.0185, Length: 0.08, Head: 0.25, SurfaceArea: 0.0042}
	for _, closed := range []bool{false, true} {
		bottle.Closed = closed
		poured, err := bottle.Pour(rheology.Water{}, 20, 750)
		if err != nil {
			fmt.Println(err)
			return
		}
		d := poured.Duration
		fmt.Printf("closed %v: %.1f to %.0f s, %s\n", closed, d.Earliest.After.Seconds(), d.Latest.After.Seconds(), poured.Regime)
	}
	// Output:
	// closed false: 1.9 to 2 s, turbulent
	// closed true: 10.9 to 35 s, glugs, held by the air that must come in
}
