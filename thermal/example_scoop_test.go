package thermal_test

import (
	"fmt"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/light"
)

// quarters rounds a window to quarters of a minute, fives to five minutes: nobody
// needs more.
func quarters(w honestplate.Window) honestplate.Window { return w.Round(15 * time.Second) }

func fives(w honestplate.Window) honestplate.Window { return w.Round(5 * time.Minute) }

// How long does a scoop hold under one tungsten head, straight from the serving
// cabinet and after a second, deeper freeze?
func ExampleScoop_Clock() {
	room := thermal.Air{TempC: 24, RH: 0.5}
	key := light.Lamp{Source: light.Tungsten, Lux: 5000} // metered at the plate
	for _, start := range []float64{-13, -30} {
		s := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: start}
		c, err := s.Clock(room, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("from %.0f degC\n", start)
		fmt.Println("  softens   ", quarters(c.Softens.Window))
		fmt.Println("  first drip", quarters(c.FirstDrip.Window))
		fmt.Println("  puddles   ", quarters(c.Puddles.Window))
		fmt.Println("  slumps    ", quarters(c.Slumps.Window))
		fmt.Println("  decided by", c.FirstDrip.Decides[0].Input)
	}
	// Output:
	// from -13 degC
	//   softens    3:00 (1:15..6:00)
	//   first drip 3:15 (1:15..never)
	//   puddles    0:30 (0:15..1:00)
	//   slumps     14:30 (9:00..never)
	//   decided by melt that clings
	// from -30 degC
	//   softens    9:00 (5:45..13:45)
	//   first drip 4:15 (1:45..never)
	//   puddles    1:45 (0:30..4:00)
	//   slumps     21:45 (14:30..never)
	//   decided by melt that clings
}

// What a scoop rests on decides how soon its foot wets the plate.
func ExampleRest() {
	room := thermal.Air{TempC: 24, RH: 0.5}
	for _, rest := range []thermal.Rest{thermal.OnPlate, thermal.OnChilledPlate, thermal.OnCone, thermal.OnNothing} {
		s := thermal.Scoop{Mix: food.Recipes().Gelato, Diameter: 0.05, StartC: -24, Rest: rest, PlateC: honestplate.Some(-18)}
		c, err := s.Likely(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		puddle := "no puddle"
		if c.Puddles.MayHappen() {
			puddle = fmt.Sprintf("puddle after %.0f min", c.Puddles.Likely.After.Minutes())
		}
		fmt.Printf("%v: %s, shape lost after %.0f min\n", rest, puddle, c.Slumps.Likely.After.Minutes())
	}
	// Output:
	// on a plate: puddle after 3 min, shape lost after 22 min
	// on a chilled plate: puddle after 20 min, shape lost after 22 min
	// on a cone: no puddle, shape lost after 22 min
	// on nothing: no puddle, shape lost after 22 min
}

// What does moving the lamp from 1 m to 1.5 m buy?
func ExampleScoop_Likely() {
	room := thermal.Air{TempC: 24, RH: 0.5}
	near := light.Lamp{Source: light.Tungsten, Lux: 12000, Distance: 1}
	far, err := near.At(1.5)
	if err != nil {
		fmt.Println(err)
		return
	}
	scoop := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: -24}
	for _, lamp := range []light.Lamp{near, far} {
		c, err := scoop.Likely(room, lamp)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("at %.1f m: drips after %.1f min\n", lamp.Distance, c.FirstDrip.Likely.After.Minutes())
	}
	// Output:
	// at 1.0 m: drips after 3.6 min
	// at 1.5 m: drips after 3.9 min
}

// When must scoops made at -6 degC go into the deep freezer to be at -27 degC in
// the core, and how hard are they after a night at home and two hours there?
func ExampleDeepFreeze() {
	scoops := thermal.DeepFreeze{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055,
		StartC: honestplate.Some(-6), TargetC: -27, Medium: cold.Freezers().Deep}
	w, err := scoops.Clock()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("in the deep freezer for", fives(w.Core.Window))
	ends, err := scoops.After(
		thermal.FreezeStage{Medium: cold.Freezers().Home, For: 10 * time.Hour},
		thermal.FreezeStage{Medium: cold.Freezers().Deep, For: 2 * time.Hour},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range ends {
		fmt.Printf("surface %.1f, mean %.1f, core %.1f degC\n", e.SurfaceC, e.MeanC, e.CoreC)
	}
	// Output:
	// in the deep freezer for 1:50:00 (1:15:00..2:55:00)
	// surface -18.0, mean -18.0, core -18.0 degC
	// surface -29.7, mean -29.7, core -29.7 degC
}
