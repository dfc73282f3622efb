package thermal_test

import (
	"fmt"
	"time"

	"example.org/honestplate/thermal"
)

// A 250 g block of butter comes out of the refrigerator. When can a knife curl it,
// and how uneven is it then?
func ExampleSolid() {
	block := thermal.Solid{
		Material: thermal.Material{Conductivity: 0.197, Density: 998, SpecificHeat: 2300},
		Size:     thermal.Size{Height: 0.04, Width: 0.065, Depth: 0.1},
		H:        9, StartC: 5, AmbientC: 22,
	}
	t, err := block.Transient()
	if err != nil {
		fmt.Println(err)
		return
	}
	ready, err := t.TimeTo(thermal.Place{}, 15)
	if err != nil {
		fmt.Println(err)
		return
	}
	corner, err := t.TempC(thermal.Place{H: 1, W: 1, D: 1}, ready)
	if err != nil {
		fmt.Println(err)
		return
	}
	mean, err := t.MeanC(ready)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the centre is at 15 degC after %s, the corners at %.1f, the mean at %.1f\n", thermal.Clock(ready), corner, mean)
	// Output:
	// the centre is at 15 degC after 1:18:51, the corners at 20.8, the mean at 17.6
}

// The one-term table of the handbooks, for a sphere.
func ExampleNewSeries() {
	for _, bi := range []float64{0.1, 1, 10} {
		s, err := thermal.NewSeries(thermal.SphereForm, bi)
		if err != nil {
			fmt.Println(err)
			return
		}
		root, factor := s.FirstTerm()
		fmt.Printf("Bi %4.1f  root %.4f  factor %.4f\n", bi, root, factor)
	}
	// Output:
	// Bi  0.1  root 0.5423  factor 1.0298
	// Bi  1.0  root 1.5708  factor 1.2732
	// Bi 10.0  root 2.8363  factor 1.9249
}

// How hot does the skin of a chocolate bar get in ten seconds of a lamp that leaves
// 800 W/m2 in it?
func ExampleHalfSpace() {
	bar := thermal.HalfSpace{Material: thermal.DarkChocolate().Material, StartC: 20}
	for _, depth := range []float64{0, 0.001, 0.003} {
		temp, err := bar.Heated(800, depth, 10*time.Second)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f mm down: %.1f degC\n", 1000*depth, temp)
	}
	// Output:
	// 0 mm down: 24.3 degC
	// 1 mm down: 21.5 degC
	// 3 mm down: 20.1 degC
}

// Deep-frozen steel and deep-frozen wood are equally cold, but not to the finger.
func ExampleContactC() {
	finger := thermal.HalfSpace{Material: thermal.Material{Conductivity: 0.4, Density: 1050, SpecificHeat: 3500}, StartC: 32}
	for _, thing := range []struct {
		name     string
		material thermal.Material
	}{
		{"steel", thermal.Material{Conductivity: 15, Density: 7900, SpecificHeat: 480}},
		{"wood", thermal.Material{Conductivity: 0.15, Density: 600, SpecificHeat: 1700}},
	} {
		temp, err := thermal.ContactC(finger, thermal.HalfSpace{Material: thing.material, StartC: -30})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: the skin goes to %.0f degC\n", thing.name, temp)
	}
	// Output:
	// steel: the skin goes to -21 degC
	// wood: the skin goes to 17 degC
}

// A cherry may be taken as one temperature; a tomato may not.
func ExampleLumped() {
	flesh := thermal.Material{Conductivity: 0.55, Density: 1000, SpecificHeat: 3900}
	for _, diameter := range []float64{0.02, 0.07} {
		area := 3.14159 * diameter * diameter
		l := thermal.Lumped{Material: flesh, Volume: area * diameter / 6, Area: area, H: 9, StartC: 4, AmbientC: 23}
		t, err := l.TimeTo(15)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println("15 degC after", thermal.Clock(t))
	}
	// Output:
	// 15 degC after 20:49
	// thermal: Biot number h (V/A)/k is 0.190909, outside 0..0.1 (limit of the lumped body)
}
