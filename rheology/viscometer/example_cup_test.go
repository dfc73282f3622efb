package viscometer_test

import (
	"fmt"
	"log"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/viscometer"
)

// Both ways through a flow cup.
func ExampleCup() {
	cup, err := viscometer.ISOCupFor(rheology.Sucrose{Brix: 60}, 20)
	if err != nil {
		log.Fatal(err)
	}
	at, err := cup.Time(50e-6)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("50 mm2/s: %v, %.1f s\n", cup, at.Seconds())
	nu, err := cup.KinematicViscosity(31 * time.Second)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("31 s: %.1f mm2/s (%.1f to %.1f)\n", 1e6*nu.Likely, 1e6*nu.Low, 1e6*nu.High)
	_, err = cup.KinematicViscosity(12 * time.Second)
	fmt.Println(err)
	// Output:
	// 50 mm2/s: ISO 2431, 4 mm, 40.1 s
	// 31 s: 36.0 mm2/s (34.9 to 37.1)
	// honestplate: T is 12 s, outside 30..100 s (ISO 2431, 4 mm: take another cup, or another temperature)
}

// A 3 mm steel ball sinking 10 cm in a jar of something thick and clear.
func ExampleFallingBall() {
	ball := viscometer.FallingBall{Diameter: 0.003, Density: 7800, TubeDiameter: 0.06, Distance: 0.10, Reading: 500 * time.Millisecond}
	eta, err := ball.Viscosity(25*time.Second, 1420)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f Pa s (%.1f to %.1f)\n", eta.Likely, eta.Low, eta.High)
	// Output:
	// 7.0 Pa s (6.8 to 7.2)
}
