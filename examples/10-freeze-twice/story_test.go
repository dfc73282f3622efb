package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/light"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The scoops were made last night and slept in the kitchen freezer at -18 degC. Under
// the key light the first one loses its edges in five minutes, and the food stylist
// asks for the deep freezer down the road. Is it worth the drive? And if so, when
// must the scoops go in? A scoop that is frozen twice, first at home and then deeper,
// is an old habit of the trade (common practice, no source). What it buys can be
// counted.
//
// # What is left to freeze
//
// Ice cream does not freeze at one temperature. Sugar and milk salts hold back part
// of the water, and the colder it gets the more of it turns to ice. The library
// builds that curve from the recipe. So ask it where the cold of a scoop sits.
func Example_cold() {
	mix := food.Recipes().VanillaIceCream
	soft, err := mix.Enthalpy(-6)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, tempC := range []float64{-6, -12, -18, -24, -30} {
		ice, err := mix.IceShare(tempC)
		if err != nil {
			fmt.Println(err)
			return
		}
		heat, err := mix.Enthalpy(tempC)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3.0f degC: %2.0f %% of the water is ice, %3.0f kJ/kg from soft\n",
			tempC, 100*ice, (soft-heat)/1000)
	}
	// Output:
	// -6 degC: 54 % of the water is ice,   0 kJ/kg from soft
	// -12 degC: 74 % of the water is ice,  53 kJ/kg from soft
	// -18 degC: 82 % of the water is ice,  81 kJ/kg from soft
	// -24 degC: 86 % of the water is ice, 100 kJ/kg from soft
	// -30 degC: 88 % of the water is ice, 115 kJ/kg from soft
}

// From -6 to -18 degC each degree is worth about 7 kJ/kg, most of it ice that must
// melt again. From -18 to -30 degC a degree is worth less than 3: almost all that can
// freeze has frozen, and what is left to gain is mostly plain cold. The second freeze
// gives 12 degrees more, but only two fifths of what the first 12 gave.
//
// Figure: freezing-curve
//
// # What it buys under the lamp
//
// That decides it nearly. Put the same ball under the same lamp from three
// temperatures: the serving cabinet, the kitchen freezer, the deep freezer.
func Example_hold() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	key := light.Lamp{Source: light.Tungsten, Lux: 5000} // metered at the plate
	for _, startC := range []float64{-12, -18, -30} {
		scoop := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: startC}
		c, err := scoop.Clock(room, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("from %.0f degC: soft at %v, shape lost at %v\n", startC,
			c.Softens.Round(30*time.Second), c.Slumps.Round(30*time.Second))
		fmt.Printf("  first drip at %v\n", c.FirstDrip.Round(30*time.Second))
	}
	// Output:
	// from -12 degC: soft at 2:30 (1:00..5:30), shape lost at 14:30 (9:00..never)
	//   first drip at 3:00 (1:30..never)
	// from -18 degC: soft at 5:30 (3:00..9:30), shape lost at 18:00 (12:00..never)
	//   first drip at 3:30 (1:30..never)
	// from -30 degC: soft at 9:00 (6:00..14:00), shape lost at 22:30 (15:30..never)
	//   first drip at 4:00 (2:00..never)
}

// The times read likely, and in brackets earliest and latest; never means that it may
// stand for the two hours that the clock looks ahead. The second freeze buys
// three to four minutes: a lit side that stays crisp for nine instead of five or six.
// For a shot that needs three good minutes that is one take more from the same scoop.
// The step before it, from the serving cabinet to the kitchen freezer, is worth
// nearly as much and costs nothing: whatever else is done, never shoot straight from
// the cabinet.
//
// The first drip gains half a minute and no more: it comes from the thin edge that the dipper
// leaves, of which more below. (The call sheet counts it as the end. So its scoop, from -34
// degC, is good for three minutes.)
//
// Figure: hold
//
// # When it must go in
//
// The deep freezer here stands at -30 degC with still air. The core is to be at -27
// degC, three degrees short of the freezer, because the last degrees take for ever.
// Waiting for the latest time of the band is the plan; the likely time is a coin
// toss.
func Example_goesIn() {
	call := time.Date(2026, time.May, 4, 9, 0, 0, 0, time.UTC)
	for _, startC := range []float64{-6, -18} {
		in, err := thermal.DeepFreeze{
			Mix: food.Recipes().VanillaIceCream, Diameter: 0.055,
			StartC: honestplate.Some(startC), TargetC: -27, Medium: cold.Freezers().Deep,
		}.Clock()
		if err != nil {
			fmt.Println(err)
			return
		}
		start, ever := in.Core.Latest.BackFrom(call)
		if !ever {
			fmt.Println("never in this freezer")
			continue
		}
		start = start.Truncate(15 * time.Minute)
		fmt.Printf("from %.0f degC it takes %v; for %s, in by %s\n", startC,
			in.Core.Round(15*time.Minute), call.Format("15:04"), start.Format("15:04"))
	}
	// Output:
	// from -6 degC it takes 1:45:00 (1:15:00..3:00:00); for 09:00, in by 06:00
	// from -18 degC it takes 1:00:00 (30:00..1:30:00); for 09:00, in by 07:15
}

// (The band is rounded to the nearest quarter of an hour, the start down to the quarter
// before.) So the night in the kitchen freezer nearly halves the morning. That is the whole
// point of freezing twice where the deep freezer is somebody else's: the slow part,
// in which the water freezes, is done at home while everybody sleeps, and the costly
// hours are few.
//
// The band is wide because of one thing, the air in the freezer. A lone scoop on a
// wire shelf is at its early end. Thirty scoops in lidded tubs are at the late end,
// or beyond it. Leave room between them.
//
// The kitchen freezer alone will not do it, and the library does not pretend that it
// might.
func Example_tooWarm() {
	_, err := thermal.DeepFreeze{
		Mix: food.Recipes().VanillaIceCream, Diameter: 0.055,
		StartC: honestplate.Some(-6), TargetC: -27, Medium: cold.Freezers().Home,
	}.Clock()
	fmt.Println(err)
	// Output:
	// honestplate: TargetC is -27 degC, outside -17.8..-6 degC (the freezer: at least 0.2 K above its temperature)
}

// # The way to the plate
//
// What was bought is easily given back. Follow one scoop through the night, the
// morning, and a walk of two minutes across the studio.
func Example_theWay() {
	walk := cold.Medium{Name: "studio air, walking", TempC: 23, H: honestplate.Factor(12, 1.5)}
	ends, err := thermal.DeepFreeze{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: honestplate.Some(-6)}.After(
		thermal.FreezeStage{Medium: cold.Freezers().Home, For: 10 * time.Hour},
		thermal.FreezeStage{Medium: cold.Freezers().Deep, For: 90 * time.Minute},
		thermal.FreezeStage{Medium: walk, For: 2 * time.Minute},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, when := range []string{"in the morning", "deep-frozen", "at the plate"} {
		fmt.Printf("%-15s surface %3.0f, mean %3.0f, core %3.0f degC\n", when, ends[i].SurfaceC, ends[i].MeanC, ends[i].CoreC)
	}
	// Output:
	// in the morning  surface -18, mean -18, core -18 degC
	// deep-frozen     surface -29, mean -29, core -29 degC
	// at the plate    surface -19, mean -24, core -29 degC
}

// Two minutes in the open take five degrees of the mean and ten of the surface, which
// is what the lamp sees first. The scoop starts its clock from the mean. Carry it in
// an insulated box, and put the box beside the set, not beside the freezer.
//
// The other give-away is the plate. A ball that stands on a plate of the room's
// temperature melts at the foot long before the lamp has done anything.
func Example_thePlate() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	key := light.Lamp{Source: light.Tungsten, Lux: 5000}
	for _, rest := range []thermal.Rest{thermal.OnPlate, thermal.OnChilledPlate} {
		c, err := thermal.Scoop{
			Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: -30, Rest: rest, PlateC: honestplate.Some(-18),
		}.Clock(room, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-18s puddle at %v, shape lost at %v\n", rest, c.Puddles.Round(30*time.Second), c.Slumps.Round(30*time.Second))
	}
	// Output:
	// on a plate         puddle at 2:00 (0:30..4:30), shape lost at 22:30 (15:30..never)
	// on a chilled plate puddle at 13:00 (8:30..30:30), shape lost at 22:30 (15:30..never)
}

// A plate from the kitchen freezer costs nothing and buys minutes: no puddle until melt
// runs down from above. The shape does not hang on the plate, since a melting foot lets
// the ball sink and no more. Do that first.
//
// # What it is made of decides more
//
// Why is the loss of shape so badly known? Because it does not hang on the cold alone.
// Published mixes that differed in the kind of their fat, in how it was built and in
// whether they had once been warm let 8 to 44 % drip in 150 minutes. Some commercial ice creams hardly drip at all.
// Say what stands on the plate, if you know it.
func Example_structure() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	key := light.Lamp{Source: light.Tungsten, Lux: 5000}
	for _, of := range []food.Structure{food.NaturalStructure, food.StabilisedStructure, food.DestabilisedStructure} {
		c, err := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: -18, Structure: of}.Clock(room, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v:\n  wet and shiny %v, drips %v, shape lost %v\n", of,
			c.Shines.Round(30*time.Second), c.FirstDrip.Round(30*time.Second), c.Slumps.Round(30*time.Second))
	}
	// Output:
	// natural:
	//   wet and shiny 7:00 (4:30..10:30), drips 3:30 (1:30..9:00), shape lost 16:00 (11:30..25:00)
	// stabilised:
	//   wet and shiny 7:00 (4:30..10:30), drips 3:30 (1:30..20:00), shape lost 21:30 (13:30..41:00)
	// much destabilised fat:
	//   wet and shiny 7:00 (4:30..10:30), drips 23:00 (4:30..never), shape lost never (29:30..never)
}

// Home-made ice cream without gums runs as soon as it melts. Where an emulsifier has
// clumped the fat the foam stands by itself, melted or not. The first drip has a cause of
// its own: the thin edge that the dipper leaves is warm on both sides and goes before the
// ball does. A student's log of five scoops on cones, straight from the dipper at 21
// degC, has first drips after 90 to 295 seconds. Cut the edge off with a warm knife, if
// that is how it is served, and the drip waits for the ball.
//
// # What could go wrong
//
// A scoop at -30 degC takes frost from the air at once: some 15 g/m2 in the first
// three minutes at 50 % humidity, a dull bloom that hides the texture. It glistens
// only when it is nearly soft. If the picture wants gloss, colder is not better; if
// it wants the ridges of the scoop, it is.
//
// Hard is not workable. Shape the balls before the first freeze, at scooping
// temperature; at -30 degC they chip. Ridges made in soft ice cream are the real
// product; nothing is added to make it stand.
//
// The conductivity of ice cream was not found published; the band allows a quarter
// either way. The limits at which a scoop counts as soft, or its shape as lost, are
// estimates and inputs. No published times of a scoop under lamps were found.
// Laboratories see the first drip of 80 to 100 g at 20 to 25 degC after 10 to 30
// minutes without lamps (from memory). Time your first scoop and believe that.
//
// Bare skin sticks to what comes from a deep freezer: gloves. Dry ice is quicker
// still and not a shortcut to take lightly. It burns skin, and its gas suffocates in
// closed rooms and cars; never seal it in. What was thawed under the lamps is not
// refrozen to be eaten. Hot lamps burn and set fire. Follow local codes and licensed
// practice.
//
// # Sources
//
// The freezing curve is the method of Leighton 1927 as given by Goff and Hartel, Ice
// Cream, 7th edition 2013, chapter 6; the points in the figure are their Table 6.2,
// which is calculated, not measured. That serving aims at 65 to 70 % of the water
// frozen was read on a dairy science page. Heat transfer in a household freezer, 8
// W/(m2 K), is Cengel's value for apples; the band of 5 to 12 is from textbooks, from
// memory. The shares that dripped: Dairy Science and Technology 2010, dst0953, Table IV
// (testdata/drip_150min.csv); the student's log: testdata/course_scoops.csv. Specific heats are those of Choi and Okos 1986. The recipe is a typical
// one, and the rooms, lamps and times of day are our own examples.
func Example_sources() {}
