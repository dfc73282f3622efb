package pour_test

import (
	"fmt"
	"log"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// Bubbles leave milk at once; in honey they stay for the picture.
func ExampleBubbleRise() {
	for _, l := range []rheology.Liquid{rheology.Dairy{FatPercent: 3.5}, rheology.Honey{}} {
		v, err := pour.BubbleRise(l, 20, 0.001)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %.2g mm/s\n", l.Describe().Name, 1000*v.Likely)
	}
	// Output:
	// milk, 3.5 % fat: 99 mm/s
	// honey, 17 % moisture: 0.058 mm/s
}
