package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The clock of a cold glass says when beads come: somewhere between half of the
// likely time and three times it. Most of that is no physics: it is what this crew, under
// this light, through this lens, calls beads. No table will say. One glass set out before the first take will.
//
// # Before
//
// An iced glass in the studio, as in chapter 8, and how much of the width is the word.
func Example_before() {
	clock, err := iced().Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("beads", clock.Beads.Round(time.Minute))
	most := clock.Beads.Decides[0]
	fmt.Printf("%s, which hangs on: %s\n", most.Input, most.SharedWith)
	// Output:
	// beads 13:00 (6:00..39:00)
	// what counts as beads, which hangs on: crew
}

// # One test glass
//
// Fill one, start the watch, and call it when the camera sees beads. Here it is 14
// minutes, and nobody would swear to the minute. The clock now knows this glass, and,
// what matters more, the next: a thermal.Lesson keeps what the two share, and lets each
// have its own start, its own heat transfer and its own luck.
func Example_theTest() {
	_, lesson, err := iced().Observe(thermal.Lesson{}, called, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	next, err := iced().Knowing(lesson, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("the next glass: beads", next.Beads.Round(time.Minute))
	fmt.Println("and runs", next.Runs.Round(5*time.Minute))
	most := next.Beads.Decides[0]
	fmt.Printf("what is left is first of all: %s\n", most.Input)
	// Output:
	// the next glass: beads 14:00 (10:00..21:00)
	// and runs never (1:00:00..never)
	// what is left is first of all: heat transfer inside
}

// The width is down to a third, and the reason for it has changed.
//
// Figure: dew
//
// The bars are what was won. The area below them shows what the lesson is not: the dew on
// the glass is known hardly better than before. One word, beads, was settled, and only a
// little of the air.
//
// # How well was it read?
//
// A call is good to some time to both sides, and that is said with it. A sharper eye helps
// less than one would think.
func Example_howWell() {
	for _, within := range []time.Duration{15 * time.Second, time.Minute, 5 * time.Minute} {
		seen := thermal.Seen{Event: "beads", At: 14 * time.Minute, Within: within}
		_, lesson, err := iced().Observe(thermal.Lesson{}, []thermal.Seen{seen}, room)
		if err != nil {
			fmt.Println(err)
			return
		}
		next, err := iced().Knowing(lesson, room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("called to %v: the next glass beads %v\n", within, next.Beads.Round(time.Minute))
	}
	// Output:
	// called to 15s: the next glass beads 14:00 (10:00..21:00)
	// called to 1m0s: the next glass beads 14:00 (10:00..21:00)
	// called to 5m0s: the next glass beads 13:00 (8:00..22:00)
}

// To a quarter of a minute or to one, it is the same: what is left is not the watch. The
// next glass has a wall, a filling and a place in the draught of its own, and no test of
// its neighbour tells those. Only a very vague call costs something. So let the one who will
// call beads all day call them once, and do not fight over seconds. If the call was made
// while looking up from something else, say five minutes: a reading that claims more than
// it knows is worse than none.
//
// # Not yet counts too
//
// Nothing needs to have happened. At nine minutes somebody looks, and there are no beads.
func Example_notYet() {
	clock, _, err := iced().Observe(thermal.Lesson{}, []thermal.Seen{{Event: "beads", At: 9 * time.Minute, NotYet: true}}, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("beads of this glass", clock.Beads.Round(time.Minute))
	// Output:
	// beads of this glass 15:00 (9:00..41:00)
}

// # A scale
//
// A reading is as good as a call. Lift the ice out after 20 minutes, weigh it, good to
// 5 g: that says little of the word and more of the heat.
func Example_aReading() {
	before, err := iced().Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	after, _, err := iced().Observe(thermal.Lesson{}, []thermal.Seen{{Reading: "ice_grams", At: 20 * time.Minute, Value: 90, WithinValue: 5}}, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("ice gone", before.IceGone.Round(time.Minute))
	fmt.Println("weighed ", after.IceGone.Round(time.Minute))
	// Output:
	// ice gone 1:45:00 (1:20:00..2:21:00)
	// weighed  1:39:00 (1:21:00..2:03:00)
}

// # To another clock
//
// The lesson goes to whatever stands in the same room, for the same crew: another size
// of glass, in the same words.
func Example_anotherGlass() {
	tall := thermal.Glass{Diameter: 0.06, Height: 0.17, DrinkGrams: 200, IceGrams: 100, DrinkC: honestplate.Some(3)}
	before, err := tall.Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	_, lesson, err := iced().Observe(thermal.Lesson{}, called, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	after, err := tall.Knowing(lesson, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("tall glass, beads before", before.Beads.Round(time.Minute))
	fmt.Println("with what was learned   ", after.Beads.Round(time.Minute))
	// Output:
	// tall glass, beads before 16:00 (7:00..43:00)
	// with what was learned    16:00 (12:00..27:00)
}

// What is carried over is not a time but the inputs behind it. The lesson can say which.
func Example_whatIsCarried() {
	_, lesson, err := iced().Observe(thermal.Lesson{}, called, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, input := range lesson.Inputs() {
		fmt.Println(input)
	}
	// Output:
	// crew.beads
	// crew.dilution
	// crew.haze
	// crew.opaque
	// crew.runs
	// glass/product.pace
	// lamps.light
	// room.convection
	// room.dew_c
	// room.speed_m_s
	// room.temp_c
}

// The crew's words, the light and the air go to every clock in the room: a scoop has no
// beads, but it stands in the same draught. The glass's own pace goes to glasses alone.
// What a single unit had for itself (how full it was, how cold it came, where it stood)
// is not in the list, and no lesson narrows it: that is why no number of tests makes the
// next glass certain. Other events do not get wider by a lesson either, but most of them
// gain little: runs were possible from 54 minutes on, as chapter 8 has it, and are now
// from an hour. Who needs the runs has to wait for one.
//
// # What cannot be
//
// A slip of the pen must not teach. Beads after five seconds are beyond all that the clock
// can come to, and it says so.
func Example_whatCannotBe() {
	_, _, err := iced().Observe(thermal.Lesson{}, []thermal.Seen{{Event: "beads", At: 5 * time.Second}}, room)
	_, isRange := honestplate.Cause(err).(*honestplate.RangeError)
	fmt.Println("refused:", isRange)
	// Output:
	// refused: true
}

// A test may surprise and still be possible: beads at six minutes, say. The clock will
// believe it, and shift the day. Before you do, ask what is cheaper to be wrong: was the
// watch started at the filling, is the hygrometer beside the glass, was the glass wet or
// greasy, did it come from the back of the refrigerator? Then fill a second one. Two that
// agree are the room's; give the clock both, one after the other, by the lesson that the
// first returned. Two that do not agree are two glasses, and the window that holds both is
// the honest one.
//
// # What could go wrong
//
// The word must stay the word. Another eye, another lens or another light calls beads at
// other grams: then start from an empty lesson, or drop the crew's part with Without.
// Move the set and drop the room's.
//
// The test glass must be like the others: from the same fridge, as dry, as clean.
//
// The clock keeps a doubt of its own that no test removes (what the model leaves out, and
// what differs from one to the next), so that the window of the next glass does not shrink
// to the accuracy of the watch. Its size is an engineering estimate.
//
// Wet glass and mains do not go together: keep lamps and cables away from the test as from
// the take. A chilled glass may break under a hot lamp, or when something hot is poured into
// it: let it warm first. What stood out for the test is not drunk.
//
// # Sources
//
// The weighing of runs by what was seen is Bayes' rule; drawing anew where few runs are
// left is tempering after Neal 2001, Annealed importance sampling, Statistics and
// Computing 11:125. What counts as beads: no published value was found; the default is an
// engineering estimate.
func Example_sources() {}
