package law_test

import (
	"fmt"
	"log"

	"example.org/honestplate/rheology/law"
)

// Syrup on a plate, by Huppert's laws: released at once, and fed all the time.
func Example() {
	const nu = 150e-6 // m2/s, a maple syrup
	for _, t := range []float64{1, 10, 60} {
		released, err := law.ReleasedPuddle(30e-6, nu, t)
		if err != nil {
			log.Fatal(err)
		}
		fed, err := law.FedPuddle(3e-6, nu, t)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%.0f s: %3.0f mm, %3.0f mm across\n", t, 2000*released, 2000*fed)
	}
	// Output:
	// 1 s: 125 mm,  42 mm across
	// 10 s: 167 mm, 134 mm across
	// 60 s: 209 mm, 328 mm across
}

// A drop of water that falls on glass: does the air lift the sheet it throws out?
func ExampleImpact_Lift() {
	v, err := law.TerminalSpeed(0.003)
	if err != nil {
		log.Fatal(err)
	}
	drop := law.Impact{Fluid: law.Fluid{Viscosity: 0.001, Density: 998, SurfaceTension: 0.0727}, Diameter: 0.003, Speed: v}
	there, err := drop.Lift()
	if err != nil {
		log.Fatal(err)
	}
	drop.GasDensity, drop.GasViscosity, drop.MeanFreePath = 0.6, 1.8e-5, 1.4e-7 // half the pressure
	thin, err := drop.Lift()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f m/s: %.2f in the air of a room, %.2f in thin air\n", v, there.Beta, thin.Beta)
	// Output:
	// 7.9 m/s: 0.19 in the air of a room, 0.14 in thin air
}

// A bubble of half a millimetre in cream.
func ExampleBubble_Coated() {
	cream := law.Fluid{Viscosity: 0.02, Density: 1000, SurfaceTension: 0.045}
	v, err := law.Bubble{Fluid: cream, Diameter: 0.0005}.Coated()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("it rises %.1f mm a second\n", 1000*v)
	// Output:
	// it rises 6.7 mm a second
}
