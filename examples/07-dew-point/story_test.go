package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The glass came out of the refrigerator at 4 degC. On yesterday's set it was
// hazed over in half a minute; today, under the same lamps, it stays as clear as a
// window. Nothing is wrong with the glass. What changed is the room, and one number
// tells it before anything is poured: the dew point.
//
// # The number to read
//
// Air holds water vapour. Cool it, and at some temperature the vapour it holds is
// all it can hold: that is the dew point. A surface colder than the dew point
// collects water from the air; a warmer one stays dry, however long it stands
// there. The hygrometer on the set shows temperature and relative humidity, and
// the dew point follows from the two.
func Example_thisRoom() {
	room := thermal.Air{TempC: 23, RH: 0.50}
	dew, err := room.DewPointC()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("The dew point is %.1f degC.\n", dew)
	// Output:
	// The dew point is 12.0 degC.
}

// So in an ordinary room at 23 degC and 50 %, anything under 12 degC fogs: the
// glass from the refrigerator, the spoon from the ice bucket, the plate that was
// chilled for the sorbet. A drink poured at cellar temperature, 13 degC, does not.
// No lamp, no lens and no waiting changes that.
//
// # Which of these will fog?
//
// Make the list the way the crew asks: this thing, at this temperature, in this
// room. The difference between the dew point and the surface is what drives the
// water onto the glass, so it also ranks them: twice the difference, roughly twice
// the speed. Below 0 degC the water arrives as frost.
func Example_theTable() {
	room := thermal.Air{TempC: 23, RH: 0.50}
	dew, err := room.DewPointC()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, thing := range []struct {
		name  string
		tempC float64
	}{
		{"mug from the freezer", -18},
		{"glass with ice", 1},
		{"glass from the refrigerator", 4},
		{"white wine, cellar cool", 12.5},
		{"acrylic ice, as it lies there", 23},
	} {
		switch {
		case thing.tempC >= dew:
			fmt.Printf("%-30s never\n", thing.name)
		case thing.tempC < 0:
			fmt.Printf("%-30s frosts: %.0f below the dew point\n", thing.name, dew-thing.tempC)
		default:
			fmt.Printf("%-30s fogs: %.0f below\n", thing.name, dew-thing.tempC)
		}
	}
	// Output:
	// mug from the freezer           frosts: 30 below the dew point
	// glass with ice                 fogs: 11 below
	// glass from the refrigerator    fogs: 8 below
	// white wine, cellar cool        never
	// acrylic ice, as it lies there  never
}

// The last line is worth remembering. Stand-in ice at room temperature cools
// nothing, so a glass of it raises no fog: if the client sells a drink that is seen
// to be cold, either the ice is real or the cold is told some other way.
//
// # Changing the room
//
// From day to day humidity moves the dew point most. The figure shows rooms of three
// temperatures. Follow the middle line: between a heated winter studio at 30 % and a
// wet summer day at 70 % the dew point climbs from 4.5 to 17 degC, and with it the
// list of things that fog grows from "what holds ice, and little else" to "everything
// from the cellar".
//
// Figure: dew-point
//
// That gives two honest tools. To get fog in a dry room, raise the humidity (wet
// cloths, a humidifier, a kettle away from the set) or bring the surface colder.
// To keep glass clear in a damp room, dry the air or serve warmer. Ask the library
// how far to go: which humidity just fogs a glass at 4 degC?
func Example_howDry() {
	for percent := 20; percent <= 80; percent++ {
		room := thermal.Air{TempC: 23, RH: float64(percent) / 100}
		dew, err := room.DewPointC()
		if err != nil {
			fmt.Println(err)
			return
		}
		if dew > 4 {
			fmt.Printf("From %d %% on, a glass at 4 degC fogs in a room at 23 degC.\n", percent)
			return
		}
	}
	// Output:
	// From 29 % on, a glass at 4 degC fogs in a room at 23 degC.
}

// # Lamps warm the air
//
// Two hours later the hygrometer shows 38 %. Has the air dried? No: the lamps have warmed
// it. Its vapour is what it was, and so is its dew point.
func Example_lampsWarm() {
	morning := thermal.Air{TempC: 23, RH: 0.50}
	dew, err := morning.DewPointC()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, tempC := range []float64{23, 25, 27.5} {
		now, err := thermal.AirFromDewPoint(tempC, dew, 0)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.1f degC: shows %.0f %%, dew point %.1f degC\n", now.TempC, 100*now.RH, dew)
	}
	// Output:
	// 23.0 degC: shows 50 %, dew point 12.0 degC
	// 25.0 degC: shows 44 %, dew point 12.0 degC
	// 27.5 degC: shows 38 %, dew point 12.0 degC
}

// So read both dials, always, and keep the dew point as the number of the day. The clocks
// of this library do the same: a room's temperature and its dew point are what they take as
// uncertain, each by itself. A third number is mostly not measured at all, the speed of the
// air. Left out, it is that of a room with people, some 0.12 m/s, from 0.05 to 0.5; air
// that does not move at all has to be asked for.
func Example_theAir() {
	for _, room := range []struct {
		name string
		air  thermal.Air
	}{
		{"nobody measured", thermal.Air{TempC: 23, RH: 0.5}},
		{"a closed box", thermal.Air{TempC: 23, RH: 0.5, Still: true}},
		{"a fan", thermal.Air{TempC: 23, RH: 0.5, Speed: 1}},
	} {
		glass := thermal.Glass{Diameter: 0.075, DrinkGrams: 200, IceGrams: 120, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
		c, err := glass.Clock(room.air)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-16s beads %v\n", room.name, c.Beads.Round(time.Minute))
	}
	// Output:
	// nobody measured  beads 14:00 (6:00..40:00)
	// a closed box     beads 15:00 (6:00..44:00)
	// a fan            beads 8:00 (3:00..27:00)
}

// # When the hygrometer is wrong
//
// Cheap hygrometers are good to about five points of humidity. It is worth knowing
// what that does to the answer before betting a pour on it.
func Example_howSure() {
	for _, rh := range []float64{0.45, 0.50, 0.55} {
		dew, err := thermal.Air{TempC: 23, RH: rh}.DewPointC()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("shown %2.0f %%: dew point %4.1f degC\n", rh*100, dew)
	}
	// Output:
	// shown 45 %: dew point 10.4 degC
	// shown 50 %: dew point 12.0 degC
	// shown 55 %: dew point 13.5 degC
}

// Five points are one and a half degrees of dew point. For a glass at 4 degC that is
// neither here nor there; for the wine at 12.5 degC it decides. Where the surface is
// within two degrees of the dew point, put one glass on the set and look.
//
// # What could go wrong
//
// The air at the food is not the air at the hygrometer. A steaming dish, a crowd
// behind the camera and a wet backdrop raise the humidity where they are; a lamp
// warms the air, which lowers its relative humidity but leaves its dew point as it
// was. Put the instrument beside the food.
//
// The surface is not at the temperature of the drink. A warm glass filled with a
// cold drink has to cool first, and the outside of a thick base stays warm for
// minutes. The chapter on the cold glass follows it in time.
//
// Below 0 degC the library's dew point is the frost point: the temperature at which
// ice, not water, is in balance with the vapour. The two differ by about a tenth of
// the degrees below zero; instruments do not always say which they show.
//
// Water on the floor and lamps on stands do not go together. Keep kettles, wet
// cloths and humidifiers away from mains leads, and follow the local rules for
// electricity in wet places.
//
// # Sources
//
// The dew point inverts the saturation pressure of water vapour over water and over
// ice by the equations of the ASHRAE Handbook Fundamentals (SI) 2021, chapter 1,
// equations 5 and 6. The package's tests compare it with the Handbook's tables 2
// and 3 and with a grid of 216 rooms made with the general-purpose library
// psychrolib 1.1.1; the tables are in testdata, the agreement is on the agreement
// page. That cheap hygrometers are good to five points is common
// practice, no source. The things and temperatures listed are our own examples.
func Example_sources() {}
