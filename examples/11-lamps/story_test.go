package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/light"
	"example.org/honestplate/thermal/ware"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// Four crews light the same plate to the same brightness: one with a tungsten head,
// one with a discharge lamp, one with an LED panel, one with flash. The meter shows
// the same, the pictures match, and on one of the plates the chocolate is running.
// Light that is seen and light that heats are not the same thing.
//
// # Same lux, different heat
//
// A lux counts light as the eye weighs it. Food counts watts. A tungsten lamp sends
// nine tenths of its radiation beyond the red, where neither eye nor camera sees it
// and water drinks it. So ask for the watts behind 8000 lx, and for how much of them
// a white scoop and a dark chocolate keep.
func Example_sameLux() {
	fmt.Println("8000 lx      W/m2   white keeps   dark keeps")
	for s := light.Tungsten; s <= light.LED; s++ {
		lamp := light.Lamp{Source: s, Lux: 8000}
		falls, err := lamp.Irradiance()
		if err != nil {
			fmt.Println(err)
			return
		}
		white, err := light.WhiteFood().Absorbed(lamp)
		if err != nil {
			fmt.Println(err)
			return
		}
		dark, err := light.DarkFood().Absorbed(lamp)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-10s %6.0f %13.0f %12.0f\n", s, falls.Likely, white.Likely, dark.Likely)
	}
	// Output:
	// 8000 lx      W/m2   white keeps   dark keeps
	// tungsten      296           193          261
	// discharge      62            22           52
	// LED            26             4           22
}

// For equal brightness tungsten brings more than ten times the radiation of an LED,
// and a white food keeps a larger share of it: fifty times the heat in the end. A
// dark food takes what comes, whatever the lamp. Flash has no line here, since its
// lux at the meter are those of the modelling lamp; it gets its own below.
//
// # What that does to the food
//
// Two foods stand under these lamps: a scoop from the kitchen freezer, and a slab of
// dark chocolate 10 mm thick from a cool cupboard, on a board.
func Example_twoFoods() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	scoop := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: -18}
	slab := thermal.Softening{Food: food.SoftFoods().DarkChocolate, Form: heat.SlabForm, Thickness: 0.01, StartC: honestplate.Some(18), Below: ware.WoodTop}
	for s := light.Tungsten; s <= light.LED; s++ {
		lamp := light.Lamp{Source: s, Lux: 8000}
		ice, err := scoop.Clock(room, lamp)
		if err != nil {
			fmt.Println(err)
			return
		}
		choc, err := slab.Clock(room, lamp)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-10s scoop soft: %v; chocolate soft: %v\n", s, ice.Softens.Round(30*time.Second), choc.Softens.Round(5*time.Minute))
	}
	// Output:
	// tungsten   scoop soft: 5:00 (3:00..9:00); chocolate soft: never (25:00..never)
	// discharge  scoop soft: 6:00 (3:30..10:00); chocolate soft: never
	// LED        scoop soft: 6:00 (3:30..10:30); chocolate soft: never
}

// The chocolate does what everybody expects. Under the LED it does not soften in the
// two hours that the clock looks ahead, because nothing else on the set is warmer
// than it can stand. Under tungsten it may: the board under it takes heat away, and how
// well the light is known decides. (Times are likely, and in brackets
// earliest and latest, as min:s or h:min:s.)
//
// The scoop does not. From tungsten to LED it gains about a minute. It is forty
// degrees colder than the room, and the air, the walls and the moisture that freezes
// onto it bring it more heat than the lamp does. Cool light saves what is warm and
// hard: chocolate, butter, a glaze. For what is frozen, the start temperature and
// still air do more. Changing the lamps for the sake of ice cream is money in the
// wrong place.
//
// # One metre to one and a half
//
// The next best thing to another lamp is the same lamp further off. The light falls
// with the square of the distance, and heat and brightness fall together. From 1 m to
// 1.5 m both are divided by 2.25, which costs a little over one stop.
func Example_moveBack() {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	scoop := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: -18}
	near := light.Lamp{Watts: 1000, Source: light.Tungsten, Distance: 1, BeamDegrees: 50, Head: light.Fresnel}
	far, err := near.At(1.5)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, lamp := range []light.Lamp{near, far} {
		e, err := lamp.Irradiance()
		if err != nil {
			fmt.Println(err)
			return
		}
		c, err := scoop.Clock(room, lamp)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.1f m: about %.0f W/m2, soft at %v\n", lamp.Distance, e.Likely, c.Softens.Round(15*time.Second))
	}
	off, err := scoop.Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("off: soft at %v\n", off.Softens.Round(15*time.Second))
	// Output:
	// 1.0 m: about 390 W/m2, soft at 4:45 (2:30..8:30)
	// 1.5 m: about 173 W/m2, soft at 5:30 (3:00..9:30)
	// off: soft at 6:15 (3:30..10:30)
}

// Half a metre buys less than a minute, and beyond two metres there is little left to
// buy: the scoop softens almost as it would in the dark. Near the lamp the curve is
// steep, and there a step back is worth most. Better than any distance is the switch.
// Set the light on a stand-in, turn the lamps down, and bring the real one for the picture.
//
// Figure: distance
//
// # The flash that burns all day
//
// A flash tube gives its heat in a thousandth of a second and rests until the next pop. The
// modelling lamp beside it does not rest.
func Example_flash() {
	head := light.Lamp{Source: light.Flash, Distance: 1.2, BeamDegrees: 60}
	for _, use := range []struct {
		name            string
		pops, modelling float64
	}{
		{"500 J, four pops a minute, modelling lamp out", 4, 0},
		{"the same with the 250 W modelling lamp on", 4, 250},
		{"a burst: forty pops a minute, modelling out", 40, 0},
	} {
		head.Joules, head.PopsPerMinute, head.ModellingWatts = 500, use.pops, use.modelling
		e, err := head.Irradiance()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-46s %4.0f W/m2\n", use.name, e.Likely)
	}
	// Output:
	// 500 J, four pops a minute, modelling lamp out     5 W/m2
	// the same with the 250 W modelling lamp on       106 W/m2
	// a burst: forty pops a minute, modelling out      49 W/m2
}

// Switch the modelling lamp to proportional and low, or off once the light is set. It
// is most of what the food feels on a flash set, and next to nothing of what the
// camera sees. (The watts follow from the reflector, and are known to a factor of
// three; how the three lines compare is known better.)
//
// # Ice lets some of it through
//
// A cube is not a surface. Light goes in, and what comes out on the other side has
// heated nothing. How much stays depends on the source and on how far it travels.
func Example_clearIce() {
	for _, mm := range []float64{1, 30} {
		ice, err := light.ClearIce(mm / 1000)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f mm: tungsten %2.0f %%, discharge %2.0f %%, LED %.1f %%\n", mm, 100*ice.Tungsten, 100*ice.Discharge, 100*ice.LED)
	}
	// Output:
	// 1 mm: tungsten 40 %, discharge 14 %, LED 0.0 %
	// 30 mm: tungsten 65 %, discharge 29 %, LED 0.4 %
}

// The first millimetre takes two fifths of a tungsten lamp's radiation: that is the
// infrared which water stops at once, and it wets the lit face. The rest is taken
// along the way. A white LED passes thirty millimetres almost whole. Light an ice
// cube from behind with an LED and it glows and stays; with tungsten it glows and
// goes. Cloudy ice sends the light on longer ways and keeps up to twice as much.
//
// Figure: clear-ice
//
// # How well is it known?
//
// Watts and a beam angle do not fix the light at the plate. Heads differ in how much
// of it they catch.
func Example_meter() {
	byPower := light.Lamp{Watts: 1000, Source: light.Tungsten, Distance: 1.5, BeamDegrees: 50, Head: light.Fresnel}
	byMeter := light.Lamp{Source: light.Tungsten, Lux: 4700, Distance: 1.5}
	for _, l := range []struct {
		name string
		lamp light.Lamp
	}{{"from its power", byPower}, {"from a light meter", byMeter}} {
		e, err := l.lamp.Irradiance()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-18s %3.0f W/m2 (%.0f..%.0f)\n", l.name, e.Likely, e.Low, e.High)
	}
	// Output:
	// from its power     173 W/m2 (58..520)
	// from a light meter 174 W/m2 (129..235)
}

// Figure: beams
//
// So hold a light meter at the plate and give the library the lux. It then knows the
// heat to about a third, which is as well as the efficacy of lamps is known.
//
// # What could go wrong
//
// How much light a food keeps is the weakest number here. No published absorptances
// of foods under these sources were found; those of the library are estimates, good
// to 0.15 either way. Put a thermometer under the skin of one piece if it matters.
//
// Heat from a lamp also arrives as warm air. A hot head under a low ceiling warms the
// room by degrees in an hour, and the library knows only the room it is told of. Read
// the thermometer at the plate, lamps on.
//
// The law of the square holds from about five times the size of the lamp. A soft box
// of 90 cm at 1 m falls off more slowly. Filters that hold back infrared, and gels
// that keep it, are not in the sources' data.
//
// Hot lamps burn skin and set paper, gel and fabric alight; discharge lamps give off
// ultraviolet through a broken glass; flash heads hold charge after the plug is out.
// Keep the makers' distances, keep liquids from mains, follow local codes and leave
// the inside of heads to licensed people. These are estimates, not guarantees.
//
// # Sources
//
// Lumens per watt of lamps and of studio flash are compared with tables of an
// encyclopedia and makers' pages; peak intensities of stage heads with the
// photometric data of a university stage lighting course (Western Michigan
// University), from which the shares of the three heads were also taken. The share of
// a black body's radiation below a wavelength is Planck's, checked on Incropera and
// DeWitt, examples 12.5 and 12.8, and Cengel, Heat Transfer, examples 12-2 and 12-4.
// What ice absorbs is integrated over the optical constants of Warren and Brandt
// 2008. Cocoa butter's melting points: after Greweling, Chocolates and Confections,
// at second hand. Absorptances, modelling lamps and rooms are estimates or our own
// examples.
func Example_sources() {}
