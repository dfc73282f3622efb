package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The picture is in everybody's head: honey comes off the spoon as a thread and lays
// itself down in rings, like rope on a deck. On the set it either does that at once or
// will not do it at all. The honey is the product, so nothing may be stirred into
// it. What is left to choose is its temperature, the height of the spout, and how
// fast it comes.
//
// # Does it coil?
//
// A thread coils when it is thick enough that bending it costs more than its own
// momentum brings, and when it has fallen far enough to be a thread: some ten times its
// width where it lands. Ask for a spout 12 mm wide, four temperatures, three heights.
func Example_doesItCoil() {
	spout := pour.Spout{Diameter: 0.012, Length: 0.020, Head: 0.060}
	for _, tempC := range []float64{10, 20, 30, 40} {
		poured, err := spout.Pour(rheology.Honey{}, tempC, 40)
		if err != nil {
			fmt.Println(err)
			return
		}
		for _, drop := range []float64{0.02, 0.05, 0.20} {
			stream, err := poured.Stream(drop)
			if err != nil {
				fmt.Println(err)
				return
			}
			coil, err := stream.Coil()
			if err != nil {
				fmt.Println(err)
				return
			}
			why := ""
			if !coil.Coils && coil.Slender < 10 {
				why = ", the fall is too short"
			} else if !coil.Coils {
				why = ", too runny for its speed"
			}
			fmt.Printf("%g degC from %2.0f cm: %s%s\n", tempC, 100*drop, coil.Regime, why)
		}
	}
	// Output:
	// 10 degC from  2 cm: no coil, the fall is too short
	// 10 degC from  5 cm: inertio-gravitational
	// 10 degC from 20 cm: inertial
	// 20 degC from  2 cm: no coil, the fall is too short
	// 20 degC from  5 cm: inertial
	// 20 degC from 20 cm: inertial
	// 30 degC from  2 cm: no coil, the fall is too short
	// 30 degC from  5 cm: inertial
	// 30 degC from 20 cm: inertial
	// 40 degC from  2 cm: no coil, the fall is too short
	// 40 degC from  5 cm: no coil, too runny for its speed
	// 40 degC from 20 cm: no coil, too runny for its speed
}

// So from 5 to 20 cm honey of up to 30 degC coils, and honey that was warmed to 40 to make
// it run does not.
// The names say what bends the thread. Inertial: it is flung round, fast and in
// small rings. Inertio-gravitational: weight and swing share the work, the rings are
// wider and slower, and the coil may jump between two rates without warning. A slow
// thread close to the plate can also be plainly gravitational or viscous, which
// are the calm ones.
//
// Figure: where-it-coils
//
// Under the areas the honey is still a column when it lands, and heaps up. Right of
// them it plunges in or spreads. What about other thick things, from 10 cm at room
// temperature?
func Example_otherThings() {
	spout := pour.Spout{Diameter: 0.012, Length: 0.020, Head: 0.060}
	for _, l := range []rheology.Liquid{rheology.Syrup{Of: "maple"}, rheology.Food("sweetened condensed milk"), rheology.Syrup{Of: "glucose"}} {
		poured, err := spout.Pour(l, 20, 40)
		if err != nil {
			fmt.Println(err)
			return
		}
		stream, err := poured.Stream(0.10)
		if err != nil {
			fmt.Println(err)
			return
		}
		coil, err := stream.Coil()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %s\n", l.Describe().Name, coil.Regime)
	}
	// Output:
	// maple syrup, 66.9 Brix: no coil
	// sweetened condensed milk: inertial
	// glucose syrup, 80 % solids: inertio-gravitational
}

// Maple syrup is too runny even from a refrigerator. It spreads and folds a little, and
// that is its picture; a coil of it would be a picture of something else.
//
// # Which way does it move?
//
// This is what one wants to know with a hand on the spout. If I go up, does it turn
// faster? If I let more come?
func Example_whichWay() {
	spout := pour.Spout{Diameter: 0.012, Length: 0.020, Head: 0.060}
	poured, err := spout.Pour(rheology.Honey{}, 15, 40)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, drop := range []float64{0.05, 0.20} {
		stream, err := poured.Stream(drop)
		if err != nil {
			fmt.Println(err)
			return
		}
		coil, err := stream.Coil()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("from %2.0f cm, %s: higher %s, more of it %s, colder %s\n",
			100*drop, coil.Regime, coil.Height, coil.Rate, coil.Thickness)
	}
	// Output:
	// from  5 cm, inertio-gravitational: higher faster, more of it slower, colder slower
	// from 20 cm, inertial: higher faster, more of it slower, colder slower
}

// Height is the easiest to change, and does the most: the thread thins as it falls, and a
// fine thread is easily bent. A fuller stream lands thicker and turns more slowly, with wider
// rings. Colder honey turns more slowly too, even though less of it comes out of the same
// spout. So for calm, broad rings: cool honey, a full spout, held low. For a fine, quick
// stack: go up.
//
// How often does it turn? Here the library is blunt.
func Example_howOften() {
	spout := pour.Spout{Diameter: 0.012, Length: 0.020, Head: 0.060}
	poured, err := spout.Pour(rheology.Honey{}, 15, 40)
	if err != nil {
		fmt.Println(err)
		return
	}
	stream, err := poured.Stream(0.05)
	if err != nil {
		fmt.Println(err)
		return
	}
	coil, err := stream.Coil()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f to %.0f turns a second, in rings of %.1f to %.0f mm across;\n",
		coil.Frequency.Low, coil.Frequency.High, 2000*coil.Radius.Low, 2000*coil.Radius.High)
	fmt.Printf("the thread itself is %.1f mm wide\n", 1000*stream.Diameter)
	// Output:
	// 1 to 15 turns a second, in rings of 2.6 to 28 mm across;
	// the thread itself is 2.6 mm wide
}

// That is not modesty. One end is sure: no ring is finer than the thread that lies in it, and
// the thread cannot turn faster than it arrives. The laws alone would pass that end. What crews
// see, several turns a second in rings of half a centimetre to one, lies well between the two
// (common practice, no source). The laws say how the rate changes with the flow, the height and
// the thickness; the number in front of them was not to be read anywhere, and no
// complete measured coil was found to take it from. One take with a stop-watch gives
// the number for this honey and this spout, and the arrows above say the rest.
//
// # How far it spreads
//
// The stack of rings is liquid and sinks. Then it creeps outwards, ever more slowly:
// twice the time makes it a tenth wider. Here are 40 g on a level plate that the honey
// meets at an angle of 40 degrees, with the band of the honey and of the law.
func Example_spreading() {
	spout := pour.Spout{Diameter: 0.012, Length: 0.020, Head: 0.060}
	for _, tempC := range []float64{10, 20, 40} {
		poured, err := spout.Pour(rheology.Honey{}, tempC, 40)
		if err != nil {
			fmt.Println(err)
			return
		}
		for _, after := range []time.Duration{time.Minute, 30 * time.Minute} {
			puddle, err := poured.Puddle(after, 40)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%g degC, %2.0f min: %.0f cm across (%.0f to %.0f), held by %s\n", tempC, after.Minutes(),
				200*puddle.Radius.Likely, 200*puddle.Radius.Low, 200*puddle.Radius.High, puddle.Held)
		}
	}
	// Output:
	// 10 degC,  1 min: 7 cm across (6 to 8), held by viscosity
	// 10 degC, 30 min: 15 cm across (14 to 17), held by viscosity
	// 20 degC,  1 min: 12 cm across (10 to 13), held by viscosity
	// 20 degC, 30 min: 16 cm across (14 to 19), held by surface tension
	// 40 degC,  1 min: 16 cm across (14 to 18), held by viscosity
	// 40 degC, 30 min: 16 cm across (14 to 19), held by surface tension
}

// Figure: spread
//
// All three end as the same puddle, for what stops it at last is surface tension at its
// edge, and that hardly knows the temperature. Cold buys time, not a smaller puddle. A
// smaller puddle takes less honey, a rim, or a plate that honey does not wet so well.
//
// # How long the bubbles stay
//
// Stirring and filling leave bubbles, and under the lamps each is a bright point. They
// rise at a speed that goes with the square of their size. The jar stands 8 cm deep.
func Example_bubbles() {
	roughly := func(d time.Duration) string {
		if d < 2*time.Minute {
			return fmt.Sprintf("%.0f s", d.Round(5*time.Second).Seconds())
		}
		if d < time.Hour {
			return fmt.Sprintf("%.0f min", d.Minutes())
		}
		return fmt.Sprintf("%.0f h", d.Hours())
	}
	for _, tempC := range []float64{20, 40} {
		for _, mm := range []float64{3, 1, 0.3} {
			wait, err := pour.BubblesClear(rheology.Honey{}, tempC, mm/1000, 0.08)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%g degC, bubbles of %g mm: from %s to %s\n", tempC, mm, roughly(wait.Earliest.After), roughly(wait.Latest.After))
		}
	}
	// Output:
	// 20 degC, bubbles of 3 mm: from 50 s to 5 min
	// 20 degC, bubbles of 1 mm: from 8 min to 46 min
	// 20 degC, bubbles of 0.3 mm: from 1 h to 9 h
	// 40 degC, bubbles of 3 mm: from 5 s to 30 s
	// 40 degC, bubbles of 1 mm: from 50 s to 5 min
	// 40 degC, bubbles of 0.3 mm: from 9 min to 54 min
}

// Figure: bubbles
//
// The large ones are gone while the camera is set up. The fine ones want a night, or an
// hour or so in a warm bath. Twenty degrees are worth a factor of about ten. So: fill and
// warm the day before, lid on; let it clear; cool it slowly to the temperature
// that coils; and do not stir again.
//
// # What could go wrong
//
// The verdict is for the likely honey. Jars differ by a factor of nearly two
// in thickness, which is some five degrees. Near the edge of the map, measure the
// jar, as the chapter on syrup does, and ask again.
//
// From high up the thread is a fraction of a millimetre. A draught moves it, and surface tension,
// which the model leaves out there, pulls it into beads before it lands. Shield it from fans, and
// stay where the thread is seen to be whole.
//
// Grainy honey, and honey that sets to a jelly when it is left alone, are other
// liquids. So is anything with a yield stress: chocolate stands where it fell.
//
// Warm the jar in a bath of hand-warm water. Hot syrup sticks to skin and burns, and
// glass from a cold shelf can crack in hot water. Honey on a floor is as slippery as oil;
// keep it off leads and lamps, and follow local codes for electricity. Honey is not
// for infants under a year, and what stood open under the lamps is not for eating.
//
// # Sources
//
// Coiling: the scalings of Ribe, Habibi and Bonn, "Liquid rope coiling" (from memory,
// not seen; the pendulum rate read in an abstract); the onset from Cruickshank and Munson
// 1981 (from memory). That the largest of the scalings governs is our choice. The
// thread's fall: Trouton's resistance and Clarke 1968, "Two-dimensional flow under
// gravity in a jet of viscous liquid", J. Fluid Mech. 31, 481 (from memory). Spreading:
// Huppert 1982, J. Fluid Mech. 121, 43 (abstract read, the numbers recalled; testdata/puddle_prefactors.csv);
// the flat puddle at rest from memory. Bubbles: Clift, Grace and Weber 1978,
// Bubbles, Drops, and Particles (read in tests of public code; testdata/bubble_rise.csv).
// Honey: Juszczak and Fortuna 2006, "Rheology of selected Polish honeys", J. Food Eng.
// 75 (abstract). Glucose syrup and condensed milk are typical values with wide
// bands. That draughts move a thread, and how jars are cleared of bubbles: common practice,
// no source. The spout, the 40 g and the contact angle are invented.
func Example_sources() {}
