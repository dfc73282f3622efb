package thermal_test

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/heat"
)

// When does an iced drink look cold, and when must it be swapped? No ice, no runs.
func ExampleGlass_Clock() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	for _, ice := range []float64{0, 150} {
		g := thermal.Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 350 - ice, IceGrams: ice, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
		k, err := g.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f g of ice\n", ice)
		fmt.Println("  haze    ", k.Haze)
		fmt.Println("  beads   ", quarters(k.Beads.Window))
		fmt.Println("  runs    ", quarters(k.Runs.Window))
		fmt.Println("  ice gone", quarters(k.IceGone.Window))
		fmt.Printf("  fog up to %.0f mm, %.0f above the liquid; decided by %s\n", 1000*k.FogLine, 1000*(k.FogLine-k.LiquidLine), k.Beads.Decides[0].Input)
	}
	// Output:
	// 0 g of ice
	//   haze     0:16 (0:04..0:45)
	//   beads    28:00 (6:45..never)
	//   runs     never
	//   ice gone never
	//   fog up to 104 mm, 8 above the liquid; decided by what counts as beads
	// 150 g of ice
	//   haze     0:16 (0:04..0:44)
	//   beads    13:15 (5:45..38:15)
	//   runs     1:59:45 (55:15..never)
	//   ice gone 1:59:00 (1:31:45..2:38:00)
	//   fog up to 104 mm, 8 above the liquid; decided by what counts as beads
}

// A mug out of the freezer, a glass out of the refrigerator, both empty: how long do
// they stay white?
func ExampleGlass_Likely() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	for name, g := range map[string]thermal.Glass{
		"mug at -18 degC":  {Diameter: 0.085, Height: 0.12, WallThickness: 0.006, WallC: honestplate.Some(-18)},
		"glass at +4 degC": {Diameter: 0.075, Height: 0.14, WallC: honestplate.Some(4)},
	} {
		k, err := g.Likely(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: haze %s, thawed %s, dry %s\n", name, fmt.Sprint(k.Haze.Likely), fmt.Sprint(k.Thawed.Likely), fmt.Sprint(k.Dry.Likely))
	}
	// Unordered output:
	// mug at -18 degC: haze 0:06, thawed 6:45, dry 43:43
	// glass at +4 degC: haze 0:17, thawed never, dry 7:37
}

// A crew that has weighed its own glasses: beads at 30 g/m2 and not before. And the same
// drink in steel, which conducts better and radiates less.
func ExampleDefaultStages() {
	stages := thermal.DefaultStages()
	stages.Beads = honestplate.Exactly(30)
	room := thermal.Air{TempC: 23, RH: 0.6, Speed: 0.15}
	for _, c := range []struct {
		name       string
		wall       heat.Material
		thick      float64
		emissivity float64
	}{
		{"glass", heat.SodaLime(), 0.003, 0.94},
		{"steel", heat.Material{Conductivity: 16, Density: 7900, SpecificHeat: 500}, 0.0008, 0.15},
	} {
		g := thermal.Glass{
			Diameter: 0.075, DrinkGrams: 200, IceGrams: 150, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4),
			Wall: c.wall, WallThickness: c.thick, Emissivity: c.emissivity, Stages: stages,
		}
		k, err := g.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: beads %v\n", c.name, quarters(k.Beads.Window))
	}
	// Output:
	// glass: beads 13:30 (9:00..20:45)
	// steel: beads 12:00 (8:00..17:30)
}
