package main

import (
	"fmt"
	"testing"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// Milk goes into the bowl from a jug held at a comfortable height. One take lands like
// silk; the next puts freckles on the table, the spoon and the front of the lens.
// What changed? The height, a little, and what was already in the bowl. How much of
// that can be known before the milk is opened?
//
// # What lands
//
// A stream that falls gets faster and so thinner. Both count for a splash, and they
// pull against each other: speed makes droplets, and a narrow stream needs more of it.
// This is cold milk over a jug's lip 20 mm wide, under 8 mm of head.
func Example_theStream() {
	jug := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}
	poured, err := jug.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, drop := range []float64{0.05, 0.10, 0.25, 0.50} {
		s, err := poured.Stream(drop)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("after %2.0f cm: %.1f m/s, %.0f mm wide; whole for %.1f to %.1f m\n",
			drop*100, s.Speed, s.Diameter*1e3, s.BreakUp.Low, s.BreakUp.High)
	}
	// Output:
	// after  5 cm: 1.0 m/s, 4 mm wide; whole for 0.3 to 1.7 m
	// after 10 cm: 1.4 m/s, 4 mm wide; whole for 0.3 to 1.7 m
	// after 25 cm: 2.2 m/s, 3 mm wide; whole for 0.3 to 1.7 m
	// after 50 cm: 3.1 m/s, 2 mm wide; whole for 0.3 to 1.7 m
}

// How long it stays whole is the least certain of these. The length comes from polished
// round capillaries; a lip's sheet is flat, swings and carries the noise of the hand, so
// that the short end is a third of the likely length: a full stream may be ragged from 30 cm
// on. From a round spout the length is good to a factor of 1.6, hence "perhaps". A
// trickle breaks soon in any case. Every stream carries waves of its own making, and they
// pinch it into drops nearly twice as wide as the thread; the finer the thread, the sooner.
func Example_theTrickle() {
	for _, mm := range []float64{3, 6} {
		spout := pour.Spout{Diameter: mm / 1000, Length: 0.010, Head: 0.030}
		poured, err := spout.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 50)
		if err != nil {
			fmt.Println(err)
			return
		}
		for _, drop := range []float64{0.10, 0.25, 0.60} {
			s, err := poured.Stream(drop)
			if err != nil {
				fmt.Println(err)
				return
			}
			lands := "whole"
			if s.Broken {
				lands = "drops"
			} else if s.MayBreak {
				lands = "perhaps drops"
			}
			fmt.Printf("spout %.0f mm, after %2.0f cm: %s, %.1f mm\n", mm, drop*100, lands, s.Diameter*1e3)
		}
	}
	// Output:
	// spout 3 mm, after 10 cm: whole, 1.7 mm
	// spout 3 mm, after 25 cm: perhaps drops, 1.4 mm
	// spout 3 mm, after 60 cm: drops, 2.5 mm
	// spout 6 mm, after 10 cm: whole, 3.6 mm
	// spout 6 mm, after 25 cm: whole, 2.9 mm
	// spout 6 mm, after 60 cm: whole, 2.4 mm
}

// That matters for the table. A whole stream splashes with its head, once, as it
// lands; then it runs into its own pool and throws less. A broken stream splashes with
// every drop.
//
// # Ask all of them
//
// Since the 1990s several laboratories have let single drops fall on plates and films
// and written down where droplets began to fly. The library does not pick one. It asks each,
// says where it was found, and leaves out those that were found for something else: a well
// known one for dry surfaces is for the spray of a nozzle, and would have milk splash from 5
// cm up.
// Here is the milk after 25 cm, on a dry glazed plate and into milk that already lies
// there. A stream's head is taken as a drop of the stream's width.
func Example_everyCriterion() {
	jug := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}
	poured, err := jug.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		fmt.Println(err)
		return
	}
	stream, err := poured.Stream(0.25)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, film := range []float64{0, 0.002, 0.010} {
		splash, err := stream.Splash(pour.Target{Film: film})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%g mm of milk in the bowl, lands at %.1f m/s: %s\n", film*1000, splash.Speed, splash.Summary)
		for _, v := range splash.Verdicts {
			if v.Applies {
				fmt.Printf("  %-34s %s from %.1f m/s\n", v.Criterion, v.Outcome, v.ThresholdSpeed)
			}
		}
	}
	// Output:
	// 0 mm of milk in the bowl, lands at 2.2 m/s: criteria disagree
	//   Vander Wal, Berger and Mozes 2006  droplets thrown along the surface from 2.0 m/s
	//   Riboux and Gordillo 2014           droplets thrown along the surface from 2.6 m/s
	// 2 mm of milk in the bowl, lands at 2.2 m/s: crown without droplets
	//   Rioboo and others 2003, crown      crown from 1.0 m/s
	//   Rioboo and others 2003, droplets   crown that throws droplets from 2.3 m/s
	//   Cossali, Coghe and Marengo 1997    crown that throws droplets from 3.7 m/s
	//   Vander Wal, Berger and Mozes 2006  crown that throws droplets from 2.6 m/s
	// 10 mm of milk in the bowl, lands at 2.2 m/s: crown without droplets
	//   Rioboo and others 2003, crown      crown from 1.0 m/s
	//   Okawa, Shiraishi and Mori 2006     crown that throws droplets from 2.3 m/s
}

// On the dry plate the lowest and the highest threshold differ by a third; over a film by
// more, for one law has the film hold the splash down and the other does not. In height a
// third in speed is nearly double, for the speed goes with its root. None of them is wrong.
// They were found with other liquids, other drops and other plates, and each put its
// findings in another formula.
//
// The figure shows what that means for the hand with the jug.
//
// Figure: by-height
//
// # Height, and what is in the bowl
//
// Turn it into heights. From which fall on does the first criterion say droplets, and
// from which do all of them?
func Example_heightAndFilm() {
	jug := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}
	poured, err := jug.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, film := range []float64{0, 0.002, 0.010} {
		fall, err := poured.GreatestFall(pour.Target{Film: film})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2g mm of milk: pour no higher than %.0f cm; all say droplets from %.0f cm\n", film*1000, 100*fall.Low, 100*fall.High)
	}
	// Output:
	// 0 mm of milk: pour no higher than 21 cm; all say droplets from 41 cm
	//  2 mm of milk: pour no higher than 26 cm; all say droplets from 103 cm
	// 10 mm of milk: pour no higher than 26 cm; all say droplets from 26 cm
}

// Three things to take to the set. Held under 21 cm the jug keeps even a dry plate clean, by
// these laws. A little milk poured in quietly beforehand buys some centimetres more; by one
// law it keeps the plate clean up to a metre. And where only one law applies, as over the deep pool, "no higher" and
// "all" agree because nobody else was asked, not because the answer is better known.
//
// A pour that runs on into its own pool is another matter: it throws little and drags air
// under, and the froth of that is what a crew sees first. No law of it is used here.
//
// A film lets a crown rise first: a rim that stands up and falls back whole.
// That is often the picture that was wanted. How large, and how short?
func Example_theCrown() {
	jug := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}
	poured, err := jug.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		fmt.Println(err)
		return
	}
	stream, err := poured.Stream(0.10)
	if err != nil {
		fmt.Println(err)
		return
	}
	crown, err := stream.Crown(0.0005)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("in half a millimetre of milk: %.0f to %.0f cm across, over in %.2f to %.2f s\n",
		200*crown.Largest.Low, 200*crown.Largest.High, crown.Lasts.Earliest.After.Seconds(), crown.Lasts.Latest.After.Seconds())
	// Output:
	// in half a millimetre of milk: 2 to 6 cm across, over in 0.03 to 0.08 s
}

// A twentieth of a second, give or take: no hand on a shutter catches that. It takes a
// trigger, or a burst.
//
// # Thickness
//
// Cream is thicker than milk. Surely it splashes less? Pour four liquids from the
// same jug and read the lowest and highest threshold for each.
func Example_thickness() {
	jug := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}
	for _, l := range []rheology.Liquid{
		rheology.Dairy{FatPercent: 3.5}, rheology.Dairy{FatPercent: 12}, rheology.Dairy{FatPercent: 30}, rheology.Syrup{Of: "maple"},
	} {
		poured, err := jug.Pour(l, 6, 200)
		if err != nil {
			fmt.Println(err)
			return
		}
		stream, err := poured.Stream(0.25)
		if err != nil {
			fmt.Println(err)
			return
		}
		dry, err := stream.Splash(pour.Target{})
		if err != nil {
			fmt.Println(err)
			return
		}
		wet, err := stream.Splash(pour.Target{Film: 0.010})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-24s dry from %.1f to %.1f m/s, 10 mm from %.1f; lands at %.1f\n",
			l.Describe().Name, dry.Threshold.Low, dry.Threshold.High, wet.Threshold.Low, stream.Speed)
	}
	// Output:
	// milk, 3.5 % fat          dry from 2.0 to 2.6 m/s, 10 mm from 2.3; lands at 2.2
	// half-cream, 12 % fat     dry from 1.3 to 2.5 m/s, 10 mm from 2.5; lands at 2.2
	// cream, 30 % fat          dry from 1.4 to 3.1 m/s, 10 mm from 3.3; lands at 2.2
	// maple syrup, 66.9 Brix   dry from 4.7 to 16.2 m/s, 10 mm from 10.7; lands at 2.1
}

// Into a pool, thicker is calmer: five times the viscosity raises the threshold by two
// fifths or so. On a dry smooth plate the two laws say the opposite. By one of them it is the air
// that lifts the sheet which the impact throws out, and a thicker liquid does not mend that. They
// were found with thin liquids, up to 10 mPa s; drawn on, they would make heavy cream the worst
// splasher of all, which anybody who has poured it knows it is not. Up to 5 mPa s published
// experiments do not agree which way thickness works, and the library leaves the two as they are.
// From there on it lets the threshold rise with the fifth root of the thickness, as another
// law has it. The figure takes one drop of 3 mm and changes nothing but its viscosity.
//
// Figure: by-thickness
//
// So between milk and half-cream the library cannot say which is cleaner on a dry plate: the
// first height of half-cream is 9 cm. From there on every spoon of cream calms it. Cold syrup
// splashes by no criterion from a height that a table allows; warmed to 29 degC, as on the call
// sheet, it may from half a metre on.
//
// # What to do with it
//
// To keep the table clean, start with a film, lower the jug under the first height of
// the list, or let the first of the milk run down a spoon. To get the splash on
// purpose, go above the last height, and mask everything.
// In between, which is where most jugs are held, pour one test with what is
// nearly out of date. It costs a minute and knows more than all the formulas.
//
// # What could go wrong
//
// The criteria are for single drops that fall straight on a level, plain surface. On
// cereal, fruit or the slope of a bowl none of them was found: for a rough surface the
// library says so, and gives no height. A stream that meets a spoon, a flake or a fruit leaves it as
// a sheet, and that is the commonest splash of a cereal picture; no law of it is used here either.
//
// The head of the pour is what the hand makes it. A jerk at the start sends a thicker
// lump ahead of the stream, and lumps splash sooner. Start with the lip over the
// bowl's wall.
//
// Milk and lamps: a drop on a hot bulb can burst it, and milk in a connector is mains on
// the floor. Keep lamps, leads and power packs out of the reach of the droplets, use
// guarded fixtures, and follow local codes for electricity near liquids. Wipe the
// floor before the next take. Milk that stood under the lamps is not for drinking.
//
// # Sources
//
// Mundo, Sommerfeld and Tropea 1995, "Droplet-wall collisions" (read second-hand; the range
// of its spray from memory). Mutchler and Hansen 1970, "Splash of a waterdrop at terminal
// velocity", Science 169, 1311 (abstract read). Vander
// Wal, Berger and Mozes 2006, "The splash/non-splash boundary upon a dry surface and
// thin fluid film" (abstract read). Riboux and Gordillo 2014, "Experiments of drops
// impacting a smooth solid surface", Phys. Rev. Lett. 113, 024507, with the threshold of
// Pierzyna and others 2021 (both read in public code, whose test values are in
// testdata/splash_riboux_gordillo.csv). Cossali, Coghe and Marengo 1997, "The impact
// of a single drop on a wetted solid surface" (formula from memory, abstract read). Okawa, Shiraishi
// and Mori 2006, and the crown of Rioboo and others 2003 and of Yarin and Weiss 1995 (from memory).
// The join at 5 mPa s, and the way from a film to a pool, are ours. Break-up: Grant and Middleman 1966, "Newtonian jet stability", A.I.Ch.E. J. 12, 669
// (read second-hand), stretched by our own account of the fall. That heavy cream
// hardly splashes, that a spoon or a film calms a pour, and that a jerk makes it worse:
// common practice, no source. The jugs and spouts are invented.
func Example_sources() {}
