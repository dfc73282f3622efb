package light_test

import (
	"fmt"

	"example.org/honestplate/thermal/light"
)

// What moving a tungsten head from 1 m to 1.5 m buys: less than half the heat.
func ExampleLamp_At() {
	near := light.Lamp{Watts: 650, Source: light.Tungsten, Distance: 1, BeamDegrees: 50, Head: light.Fresnel}
	far, err := near.At(1.5)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range []light.Lamp{near, far} {
		e, err := l.Irradiance()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.1f m: %.0f W/m2\n", l.Distance, e.Likely)
	}
	// Output:
	// 1.0 m: 254 W/m2
	// 1.5 m: 113 W/m2
}

// How much of a lamp's light stays in 30 mm of clear ice.
func ExampleClearIce() {
	ice, err := light.ClearIce(0.03)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("tungsten %.0f %%, discharge %.0f %%, LED %.1f %%\n", 100*ice.Tungsten, 100*ice.Discharge, 100*ice.LED)
	// Output:
	// tungsten 65 %, discharge 29 %, LED 0.4 %
}

// How much of it stays in a glass of water 7 cm across.
func ExampleClearWater() {
	water, err := light.ClearWater(0.07)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("tungsten %.0f %%, discharge %.0f %%, LED %.1f %%\n", 100*water.Tungsten, 100*water.Discharge, 100*water.LED)
	// Output:
	// tungsten 76 %, discharge 37 %, LED 1.3 %
}

// What things take up, W/m2, from one tungsten head, and how well that is known before
// anybody has metered it.
func ExampleAbsorptance_Absorbed() {
	key := light.Lamp{Watts: 650, Source: light.Tungsten, Distance: 1.4, BeamDegrees: 40, Head: light.Fresnel}
	for _, c := range []struct {
		name string
		abs  light.Absorptance
	}{{"white food", light.WhiteFood()}, {"pale food", light.PaleFood()}, {"dark food", light.DarkFood()}} {
		q, err := c.abs.Absorbed(key)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s %.0f\n", c.name, q.Likely)
	}
	falls, err := key.Irradiance()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("of %.0f (%.0f..%.0f)\n", falls.Likely, falls.Low, falls.High)
	// Output:
	// white food 131
	// pale food 141
	// dark food 177
	// of 201 (67..603)
}
