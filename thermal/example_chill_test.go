package thermal_test

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

// A bottle and a can of lemonade from the shelf, wanted at 6 degC: refrigerator, iced
// water or freezer, and when must they be out of the freezer?
func ExampleBottle_Clock() {
	chill, freeze := cold.Chillers(), cold.Freezers()
	bottle := thermal.Bottle{DrinkGrams: 330, Drink: food.Drink{Brix: 10}, Diameter: 0.061, StartC: honestplate.Some(22), TargetC: 6}
	can := bottle
	can.Diameter, can.Wall, can.WallThickness = 0.066, heat.Aluminium(), 0.0002
	for _, way := range []struct {
		name   string
		vessel thermal.Bottle
		in     cold.Medium
	}{
		{"bottle, refrigerator", bottle, chill.Refrigerator},
		{"bottle, iced water  ", bottle, chill.IcedWater},
		{"can, iced water     ", can, chill.IcedWater},
		{"bottle, freezer     ", bottle, freeze.Home},
	} {
		way.vessel.Medium = way.in
		k, err := way.vessel.Clock()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s cold %v, bursts %v\n", way.name, quarters(k.Cold.Window), quarters(k.Bursts.Window))
	}
	// Output:
	// bottle, refrigerator cold 4:28:00 (2:43:30..7:14:45), bursts never
	// bottle, iced water   cold 17:30 (10:45..30:00), bursts never
	// can, iced water      cold 15:00 (8:00..27:30), bursts never
	// bottle, freezer      cold 55:00 (37:15..1:28:00), bursts 4:51:45 (3:00:00..8:04:00)
}

// A drink is not water: sugar and alcohol move where it freezes, and how long ice lasts.
func ExampleGlass_Likely_spritz() {
	room := thermal.Air{TempC: 23, RH: 0.5}
	for _, d := range []food.Drink{{}, {Brix: 10}, {Brix: 8, AlcoholPercent: 11}} {
		g := thermal.Glass{Drink: d, Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 150, DrinkC: honestplate.Some(4)}
		k, err := g.Likely(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		freezes, _ := d.FreezesC() // a drink that fills a glass
		fmt.Printf("%2.0f Brix, %2.0f %% alcohol: freezes at %.1f degC, ice gone %s\n", d.Brix, d.AlcoholPercent, freezes, fmt.Sprint(k.IceGone.Likely))
	}
	// Output:
	// 0 Brix,  0 % alcohol: freezes at 0.0 degC, ice gone 1:56:06
	// 10 Brix,  0 % alcohol: freezes at -0.7 degC, ice gone 2:37:10
	//  8 Brix, 11 % alcohol: freezes at -5.2 degC, ice gone 2:16:47
}
