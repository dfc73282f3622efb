package thermal_test

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/light"
)

// How long does a 3 cm cube of real ice last on the table under an LED and under a
// tungsten lamp of the same brightness?
func ExampleIceOnTable() {
	room := thermal.Air{TempC: 24, RH: 0.5}
	cube := thermal.IceOnTable{Shape: thermal.IceCube, Size: 0.03, StartC: -12}
	for _, source := range []light.Source{light.LED, light.Tungsten} {
		c, err := cube.Clock(room, light.Lamp{Source: source, Lux: 5000})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: shines from %v, half melted at %v\n", source, quarters(c.Shines.Window), quarters(c.HalfOff.Window))
	}
	// Output:
	// LED: shines from 1:45 (1:15..2:30), half melted at 16:30 (11:00..23:00)
	// tungsten: shines from 1:45 (1:15..2:15), half melted at 16:00 (10:45..22:15)
}

// One large ball or as much crushed ice: how cold, how soon, and how watered?
func ExampleGlass_Clock_ice() {
	room := thermal.Air{TempC: 24, RH: 0.5}
	drink := thermal.Glass{DrinkGrams: 150, DrinkC: honestplate.Some(20), IceGrams: 80, IceC: honestplate.Some(-12), Diameter: 0.07, WallC: honestplate.Some(24)}
	for _, ice := range []struct {
		shape thermal.IceShape
		size  float64
	}{{thermal.IceBall, 0.055}, {thermal.IceChip, 0.004}} {
		drink.IceShape, drink.IceSize = ice.shape, ice.size
		c, err := drink.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		m := c.Series[len(c.Series)/6]
		fmt.Printf("%v: coldest %.1f degC; watered at %v; ice gone at %v\n", ice.shape, c.ColdestC, quarters(c.Watered.Window), quarters(c.IceGone.Window))
		fmt.Printf("  at %s: %.1f degC, %.0f g of melt\n", honestplate.After(m.Time), m.DrinkC, m.MeltGrams)
	}
	// Output:
	// ball: coldest 5.2 degC; watered at 3:15 (1:00..7:00); ice gone at 1:24:00 (53:30..1:59:30)
	//   at 0:30: 17.2 degC, 2 g of melt
	// chip: coldest 0.4 degC; watered at 0:15 (0:00..0:30); ice gone at 39:00 (29:00..53:00)
	//   at 0:30: 5.0 degC, 23 g of melt
}
