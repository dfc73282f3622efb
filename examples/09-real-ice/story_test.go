package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/food"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// Two bowls stand on the trolley. One holds cubes from the freezer, the other holds
// cubes of acrylic that will look the same tomorrow. In the first picture of the day
// nobody can tell them apart. In the tenth everybody can: one glass is wet, pale and
// half empty of ice, the other is dry and perfect. Which bowl?
//
// Real ice does four things: it chills, it waters, it makes the glass fog, and it
// goes. Acrylic ice does none of them. So the question is what each of them claims.
//
// # Chills, waters, goes
//
// Take 180 g of a drink from the refrigerator and six real cubes of 28 mm, at -12
// degC from the ice bin, in a glass from the shelf. The clock of the glass follows all of
// it in one run: drink, ice, wall and what settles outside.
func Example_sixCubes() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	drink := thermal.Glass{
		DrinkGrams: 180, DrinkC: honestplate.Some(6), Diameter: 0.07, WallC: honestplate.Some(23),
		IceSize: 0.028, IceGrams: 120, IceC: honestplate.Some(-12),
	}
	c, err := drink.Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("as cold as it gets, %.0f degC: %v\n", c.ColdestC, c.Cold.Round(30*time.Second))
	fmt.Printf("a tenth of it is melt:       %v\n", c.Watered.Round(time.Minute))
	fmt.Printf("half of the ice has gone:    %v\n", c.IceHalf.Round(5*time.Minute))
	fmt.Printf("all of it:                   %v\n", c.IceGone.Round(5*time.Minute))
	// Output:
	// as cold as it gets, 1 degC: 4:30 (2:00..7:30)
	// a tenth of it is melt:       9:00 (5:00..15:00)
	// half of the ice has gone:    40:00 (30:00..55:00)
	// all of it:                   1:40:00 (1:15:00..2:10:00)
}

// A window reads: likely, and in brackets the earliest and the latest, min:s or
// h:min:s. The drink is colder within a few minutes. It then stays near freezing for
// about an hour, which is what ice is for, and pays for it with water. After ten minutes
// or so, 18 g of what is in the glass is not the drink. A clear spirit does not show it. A
// juice, an iced coffee and a cola do: they turn paler, and a pale layer floats on top.
//
// If the drink is what is sold, that is the limit that counts, not the look of the
// cubes. The recipe is the client's; a drink let down by a tenth is another recipe.
// Swap the glass, or put the ice in last.
//
// # Fewer and larger
//
// The same mass of ice in larger pieces has less surface. The clock asks how much
// that buys. The ball needs a glass that takes it.
func Example_shapes() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	for _, ice := range []struct {
		name  string
		shape thermal.IceShape
		size  float64
	}{
		{"crushed, 5 mm chips", thermal.IceChip, 0.005},
		{"cubes of 28 mm", thermal.IceCube, 0.028},
		{"one ball of 63 mm", thermal.IceBall, 0.063},
	} {
		c, err := thermal.Glass{
			DrinkGrams: 180, DrinkC: honestplate.Some(6), Diameter: 0.07, WallC: honestplate.Some(23),
			IceShape: ice.shape, IceSize: ice.size, IceGrams: 120, IceC: honestplate.Some(-12),
		}.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-20s cold at %v, watered at %v\n", ice.name, c.Cold.Round(30*time.Second), c.Watered.Round(time.Minute))
	}
	// Output:
	// crushed, 5 mm chips  cold at 1:00 (0:30..2:00), watered at 5:00 (2:00..10:00)
	// cubes of 28 mm       cold at 4:30 (2:00..7:30), watered at 9:00 (5:00..15:00)
	// one ball of 63 mm    cold at 8:30 (0:00..10:00), watered at 17:00 (8:00..29:00)
}

// Twice the time to the first water, then less than the bar tells its guests. Ice
// melts as fast as heat arrives, and in a cold drink the heat comes from the room, through
// the glass, whatever the shape of the ice. The shape decides how fast the first chill is over and how
// much warmer than the ice the drink stays: still water near 4 degC hardly rises or sinks,
// so a large ball has little to stir it.
//
// Figure: melt
//
// So the levers are elsewhere. Chill the drink first: every degree that the ice does
// not have to take out of 180 g saves some 2 g of melt. Chill the glass: one from the
// shelf costs 5 to 6 g. Use colder ice, but it may crack when it is wetted straight from a
// deep freezer. Keep the room cool and the fan off.
//
// # Lemonade is not water
//
// Meltwater is lighter than a sweet drink. It floats between the cubes and insulates them,
// until somebody stirs. A spirit, on the other hand, stays liquid below 0 degC, and the ice
// takes it there.
func Example_notWater() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	for _, d := range []struct {
		name  string
		drink food.Drink
	}{{"water, tea", food.Drink{}}, {"lemonade, 11 Brix", food.Drink{Brix: 11}}, {"spirit, 40 %", food.Drink{AlcoholPercent: 40}}} {
		c, err := thermal.Glass{
			DrinkGrams: 180, Drink: d.drink, DrinkC: honestplate.Some(20), Diameter: 0.07, WallC: honestplate.Some(23),
			IceSize: 0.028, IceGrams: 120, IceC: honestplate.Some(-12),
		}.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-18s coldest %.0f degC; watered at %v, half of the ice gone at %v\n", d.name, c.ColdestC, c.Watered.Round(30*time.Second), c.IceHalf.Round(time.Minute))
	}
	// Output:
	// water, tea         coldest 2 degC; watered at 1:00 (0:30..3:00), half of the ice gone at 19:00 (13:00..30:00)
	// lemonade, 11 Brix  coldest 4 degC; watered at 4:00 (1:00..10:30), half of the ice gone at 35:00 (18:00..1:09:00)
	// spirit, 40 %       coldest -5 degC; watered at 1:00 (0:00..2:00), half of the ice gone at 6:00 (2:00..11:00)
}

// How much the floating melt insulates has only been tried at a school: ice lasted five to
// seven times longer in milk, cola and juice than in water. Hence the wide window. One turn
// of the straw and the lemonade is water again.
//
// # How much ice
//
// Asked the other way round: what does it take to bring a quarter of a litre from the shelf
// to 5 degC? The balance of heat alone is one answer, the glass in its room another.
func Example_howMuchIce() {
	least, err := food.IceFor(250, food.Drink{}, 20, -12, 5)
	if err != nil {
		fmt.Println(err)
		return
	}
	glass := thermal.Glass{Diameter: 0.075, DrinkGrams: 250, DrinkC: honestplate.Some(20), IceC: honestplate.Some(-12)}
	grams, err := glass.IceFor(5, thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("by the balance %.0f g, all of it melted; in the glass %.0f g (%.0f to %.0f)\n", least, grams.Likely, grams.Low, grams.High)
	// Output:
	// by the balance 41 g, all of it melted; in the glass 73 g (56 to 114)
}

// # The fog outside
//
// Now the outside of the glass, four times. First comes a glass from the shelf, as
// warm as the room, with real ice. In the second the cubes are acrylic and lie in a
// drink from the refrigerator. They are not neutral there: 120 g of acrylic at 23
// degC in 180 g of drink at 6 degC settle at about 9 degC (1.47 kJ/(kg K) for
// acrylic, from memory). Stand-in ice warms a cold drink by three degrees unless it
// is chilled with it. Acrylic holds little heat, so the two together count as 222 g
// of drink. For the third, glass, drink and acrylic spent the night in the
// refrigerator. In the fourth everything is as warm as the room.
func Example_fog() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	for _, g := range []struct {
		name  string
		glass thermal.Glass
	}{
		{"real ice", thermal.Glass{Diameter: 0.07, DrinkGrams: 180, DrinkC: honestplate.Some(6), IceGrams: 120, IceC: honestplate.Some(-12), WallC: honestplate.Some(23)}},
		{"acrylic in a cold drink", thermal.Glass{Diameter: 0.07, DrinkGrams: 222, DrinkC: honestplate.Some(9), WallC: honestplate.Some(23)}},
		{"acrylic, drink and glass chilled", thermal.Glass{Diameter: 0.07, DrinkGrams: 222, DrinkC: honestplate.Some(6), WallC: honestplate.Some(6)}},
		{"all of it as warm as the room", thermal.Glass{Diameter: 0.07, DrinkGrams: 222, DrinkC: honestplate.Some(23), WallC: honestplate.Some(23)}},
	} {
		c, err := g.glass.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s\n  haze  %v\n  beads %v\n", g.name, c.Haze.Round(5*time.Second), c.Beads.Round(time.Minute))
	}
	// Output:
	// real ice
	//   haze  1:55 (0:55..4:35)
	//   beads 16:00 (8:00..42:00)
	// acrylic in a cold drink
	//   haze  never (1:35..never)
	//   beads never
	// acrylic, drink and glass chilled
	//   haze  0:20 (0:05..1:05)
	//   beads never (10:00..never)
	// all of it as warm as the room
	//   haze  never
	//   beads never
}

// With real ice the glass hazes in two minutes and beads in ten or twenty. With
// acrylic in a cold drink a glass from the shelf may haze or may not: the likely answer
// is never, because the cold of the drink is spent on the glass. Chilled together they do fog, at once, and
// beads stay unlikely, since no ice holds the glass cold while the water gathers. In
// the fourth glass nothing can happen: nothing in it is colder than the dew point.
//
// Figure: dew
//
// The grey-blue band of the real ice climbs through the beads; the green one of the chilled
// acrylic ends in their lower third.
//
// Water sprayed on a glass of acrylic ice shows what did not happen: a drink cold enough
// to fog it. Where the drink is served chilled and without ice, the third glass is the
// honest one: its fog is its own.
//
// # On the table
//
// A cube on the table goes from frosted to glistening in a minute or two. That is the
// moment at which real ice looks like ice, and acrylic, which is neither frosted nor
// wet, looks like acrylic (common practice, no source: a wipe of glycerine and water
// closes the gap).
func Example_table() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	c, err := thermal.IceOnTable{Shape: thermal.IceCube, Size: 0.028, StartC: -12}.Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("glistens from  %v\n", c.Shines.Round(15*time.Second))
	fmt.Printf("half melted at %v\n", c.HalfOff.Round(time.Minute))
	fmt.Printf("gone at        %v\n", c.Gone.Round(time.Minute))
	// Output:
	// glistens from  1:45 (1:15..2:15)
	// half melted at 15:00 (11:00..21:00)
	// gone at        36:00 (25:00..52:00)
}

// # What each of them claims
//
// Real ice claims that the drink was as cold, as full and as watered as it is seen.
// It must be real where ice is part of what is sold: the iced drink, the bag of ice,
// the dish on crushed ice. Acrylic ice claims nothing about the temperature; it may
// stand where ice only dresses the picture, and then it is written down. The record
// knows the difference.
func Example_record() {
	for _, advertised := range []bool{false, true} {
		ice := record.Item{
			Item: "ice cubes", Advertised: advertised,
			Declared: portion.Amount{Count: 6},
			StandIn:  &record.StandIn{What: "acrylic cubes", Reason: "long lighting set-up"},
		}
		r := record.Record{Revision: 1, Picture: "Lemonade in a tumbler (invented)", Items: []record.Item{ice}}
		if err := r.Validate(); err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println("recorded: acrylic cubes in place of", ice.Item)
	}
	// Output:
	// recorded: acrylic cubes in place of ice cubes
	// honestplate: Items[0].StandIn: ice cubes is the advertised product and must not be replaced; show the real product in its declared amount
}

// # What could go wrong
//
// The pour decides the fog as much as the room. The same glass with the same ice, filled
// from the shelf, from the cellar and from the refrigerator:
func Example_thePour() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	for _, pour := range []float64{22, 15, 5} {
		c, err := thermal.Glass{Diameter: 0.07, DrinkGrams: 180, DrinkC: honestplate.Some(pour), IceGrams: 120, IceC: honestplate.Some(-12)}.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("poured at %2.0f degC: haze %v, ice gone %v\n", pour, c.Haze.Round(15*time.Second), c.IceGone.Round(5*time.Minute))
	}
	// Output:
	// poured at 22 degC: haze 3:00 (1:30..7:00), ice gone 1:15:00 (55:00..1:45:00)
	// poured at 15 degC: haze 2:45 (1:15..6:00), ice gone 1:25:00 (1:05:00..2:00:00)
	// poured at  5 degC: haze 1:45 (0:45..4:15), ice gone 1:45:00 (1:20:00..2:15:00)
}

// A heavy foot is not in the model, and the drink is taken as mixed: a sweet one that nobody
// stirs is colder on top.
//
// What counts as haze or as a bead is an estimate, and so is the stirring in the
// drink: one turn of a straw may outdo the shape.
//
// Ice from below about -16 degC may crack when it is wetted: temper it first. Never
// put dry ice into a drink that is served, and do not lean over it: it suffocates and
// it burns by its cold. A hot glass filled with ice can break. Lamps, mains and wet
// sets do not go together. Acrylic cubes look like food: keep them out of a glass
// that someone may drink from, and count them in and out. Follow local rules for
// food, electricity and advertising.
//
// # Sources
//
// Latent and specific heats are
// checked on Brijlal and Subrahmanyam, Heat and Thermodynamics, example 4.3, and
// Ahuja, Chemical Engineering Thermodynamics, example 3.9; a ball melting in a stream
// of air on Dutta, Heat Transfer: Principles and Applications, example 4.4;
// properties of ice on the CRC Handbook and IAPWS R10-06 (2009), Table 6. That cold
// ice cracks when wetted: King and Fletcher 1976, J. Atmos. Sci. 33:97 (abstract).
// Ice in still water is compared with ice cylinders photographed in a tank (a university
// laboratory, github simenbootsma/SaltyIceMelt, read); ice in sweet drinks with a school's
// times (read). The dew point is that of the ASHRAE Handbook Fundamentals (SI) 2021, chapter 1. The
// stages of fog, the stirring and the tenth that counts as watered are engineering
// estimates, no source. Drinks, glasses and rooms are our own examples.
func Example_sources() {}
