package pour_test

import (
	"fmt"
	"log"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// Maple syrup on a level plate: how far it has crept, and where it stops.
func ExamplePour_Puddle() {
	p, err := pour.Spout{Diameter: 0.008, Length: 0.030, Head: 0.060}.Pour(rheology.Syrup{Of: "maple", SolidsPercent: 66.9}, 20, 30)
	if err != nil {
		log.Fatal(err)
	}
	for _, after := range []time.Duration{time.Second, 3 * time.Second, 10 * time.Second, time.Hour} {
		m, err := p.Puddle(after, 40)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%7v: %2.0f mm across, %.1f mm deep, held by %s\n", after, 2000*m.Radius.Likely, m.Depth*1000, m.Held)
	}
	// Output:
	//      1s: 65 mm across, 2.9 mm deep, held by viscosity
	//      3s: 112 mm across, 2.3 mm deep, held by viscosity
	//     10s: 135 mm across, 1.6 mm deep, held by surface tension
	//  1h0m0s: 135 mm across, 1.6 mm deep, held by surface tension
}

// What a glass still carries on its wall, 90 mm high, after the drink has run down.
func ExampleWall_Drain() {
	glass := pour.Wall{Height: 0.090}
	for _, after := range []time.Duration{5 * time.Second, time.Minute} {
		c, err := glass.Drain(rheology.Dairy{FatPercent: 30}, 6, after)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%4v: %.2f mm at the foot, mean %.3f (%.3f to %.3f)\n", after, c.Foot.Likely*1000, c.Mean.Likely*1000, c.Mean.Low*1000, c.Mean.High*1000)
	}
	// Output:
	// 5s: 0.16 mm at the foot, mean 0.107 (0.081 to 0.200)
	// 1m0s: 0.05 mm at the foot, mean 0.032 (0.024 to 0.062)
}

// How long to wait for bubbles to leave 8 cm of sugar syrup.
func ExampleBubblesClear() {
	for _, mm := range []float64{1, 0.5, 0.2} {
		d, err := pour.BubblesClear(rheology.Sucrose{Brix: 65}, 20, mm/1000, 0.08)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%.1f mm: %v (%v to %v)\n", mm, d.Likely.After.Round(time.Second), d.Earliest.After.Round(time.Second), d.Latest.After.Round(time.Second))
	}
	// Output:
	// 1.0 mm: 16s (10s to 19s)
	// 0.5 mm: 1m5s (38s to 1m14s)
	// 0.2 mm: 6m46s (4m0s to 7m42s)
}

// A heap of ketchup stands by its yield stress.
func ExamplePour_Settled() {
	p, err := pour.Spout{Diameter: 0.025, Length: 0.020, Head: 0.150}.Pour(rheology.Food("tomato ketchup"), 20, 30)
	if err != nil {
		log.Fatal(err)
	}
	m, err := p.Settled(40)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f mm across (%.0f to %.0f), %.0f mm deep, held by %s\n", 2000*m.Radius.Likely, 2000*m.Radius.Low, 2000*m.Radius.High, 1000*m.Depth, m.Held)
	// Output:
	// 66 mm across (55 to 80), 8 mm deep, held by yield stress
}
