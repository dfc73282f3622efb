package main

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/rheology/pour"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// Everybody has held the bottle upside down, waited, knocked, and then had half of it on
// the plate. A sauce like that is not a thick liquid. Below some stress it does not run at
// all, above it it runs rather well, and the picture wants both: it must come out, and then
// it must stand.
//
// # Why it stays, why it gushes
//
// The stress at which it gives is its yield stress. A neck 20 mm wide and 30 mm long holds
// the sauce by its wall; the weight over it pulls. Structure that was left in peace builds
// up, so that ketchup that has stood starts at about twice the stress of ketchup that was
// just shaken. Hold 45 mm of each sauce over that neck.
func Example_theBottle() {
	for _, sauce := range []rheology.Food{"tomato ketchup", "mustard", "mayonnaise"} {
		for _, rested := range []bool{true, false} {
			neck := pour.Spout{Diameter: 0.020, Length: 0.030, Head: 0.045, Rested: rested}
			how := map[bool]string{true: "rested", false: "shaken"}[rested]
			poured, err := neck.Pour(sauce, 20, 20)
			switch {
			case errors.Is(err, honestplate.ErrNoFlow):
				fmt.Printf("%s, %s: stays\n", sauce, how)
			case err != nil:
				fmt.Println(err)
				return
			default:
				d := poured.Duration
				fmt.Printf("%s, %s: 20 g in %.0f s; may stay %v, may gush %v\n", sauce, how, d.Likely.After.Seconds(), poured.MayStay, poured.MayGush)
			}
		}
	}
	// Output:
	// tomato ketchup, rested: stays
	// tomato ketchup, shaken: 20 g in 18 s; may stay true, may gush true
	// mustard, rested: stays
	// mustard, shaken: stays
	// mayonnaise, rested: stays
	// mayonnaise, shaken: stays
}

// The likely time of the shaken ketchup is worth nothing by itself, and the library says
// so: makers differ by more than two times in the yield stress, and the pour hangs on what is
// left of the weight when the yield stress is taken off. It may stay, it may gush. Plan
// neither; make it give in small steps, from a squeeze bottle or a spoon, and out of the
// frame.
//
// # Measure it
//
// A rheometer of the kitchen's laboratory settles the sauce itself. This is its file, as such
// instruments write them, with semicolons, decimal commas and a line of units. The
// numbers are invented.
//
// ReadPoints goes by the headings, whatever their order, and converts their units. A column
// that has no name, a slip in a number or a viscosity that does not go with its stress is an error
// with line and column, not a point less.
func Example_theRheometer() {
	fmt.Println(strings.Join(strings.SplitAfter(export, "\n")[:4], "") + "...")
	points, err := flow.ReadPoints(strings.NewReader(export))
	if err != nil {
		fmt.Println(err)
		return
	}
	fits, err := flow.FitAll(points)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range fits {
		fmt.Printf("%-17s AICc %4.0f", f.Model, f.AICc)
		if len(f.Unmeasured) > 0 {
			fmt.Printf("  a guess: %s", strings.Join(f.Unmeasured, ", "))
		}
		fmt.Println()
	}
	best := fits[0]
	for i, name := range best.Names {
		fmt.Printf("%s %.3g +- %.1g\n", name, best.Values[i], best.Errors[i])
	}
	_, err = flow.ReadPoints(strings.NewReader(strings.Replace(export, "43,6", "4E,6", 1)))
	fmt.Println(err)
	// Output:
	// Meas. pts.;Shear rate;Shear stress;Viscosity;Temperature
	// ;[1/s];[Pa];[Pa.s];[degC]
	// 1;0,1;31,9;319;20,0
	// 2;0,316;34,6;109,5;20,0
	// ...
	// Herschel-Bulkley  AICc  -65
	// power law         AICc  -31
	// Casson            AICc  -26
	// Bingham           AICc  -16
	// Carreau           AICc  -16  a guess: viscosity at rest, time, viscosity at high rate
	// Newtonian         AICc    4
	// yield stress 26 +- 0.4
	// consistency 12.3 +- 0.4
	// index 0.316 +- 0.005
	// honestplate: Line[6].Column[3] is "4E,6", want a number
}

// Figure: flow-curve
//
// The least AICc is the best model. A curve without a yield stress lies far behind, and the one
// with a plateau at rest owns up that no point reaches its plateau.
//
// # From the fit to the plate
//
// With its density weighed the sauce is a liquid like the others. It was measured at 20 degC
// and may be asked some degrees away, with a wider band.
func Example_fromTheFitToThePour() {
	sauce, err := house()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, head := range []float64{0.025, 0.035, 0.045} {
		neck := pour.Spout{Diameter: 0.020, Length: 0.030, Head: head}
		poured, err := neck.Pour(sauce, 20, 20)
		if errors.Is(err, honestplate.ErrNoFlow) {
			fmt.Printf("%.0f mm over the neck: stays\n", head*1000)
			continue
		}
		if err != nil {
			fmt.Println(err)
			return
		}
		d := poured.Duration
		fmt.Printf("%.0f mm over the neck: 20 g in %.0f s (%.0f to %.0f), may gush %v\n", head*1000,
			d.Likely.After.Seconds(), d.Earliest.After.Seconds(), d.Latest.After.Seconds(), poured.MayGush)
	}
	for _, tempC := range []float64{12, 28} {
		y, err := sauce.YieldStress(tempC)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("at %g degC it stands up to %.0f Pa (%.0f to %.0f)\n", tempC, y.Likely, y.Low, y.High)
	}
	// Output:
	// 25 mm over the neck: 20 g in 431 s (66 to 10416), may gush true
	// 35 mm over the neck: 20 g in 10 s (4 to 34), may gush false
	// 45 mm over the neck: 20 g in 2 s (1 to 4), may gush false
	// at 12 degC it stands up to 31 Pa (25 to 38)
	// at 28 degC it stands up to 22 Pa (18 to 27)
}

// Measured, the same pour is known to three times or so; at the edge, where the weight hardly
// moves it, it may still do either, and says so. Ten millimetres more over the neck are forty
// times in the rate: that is why a hand finds nothing between a stay and a gush.
//
// # The dollop
//
// How it lies is the calm half of the story, for there the yield stress enters by its fifth
// root. Here are 20 g of each on a plate, and of the house's ketchup with a little water.
func Example_theDollop() {
	sauce, err := house()
	if err != nil {
		fmt.Println(err)
		return
	}
	show := func(name string, l rheology.Liquid) {
		lies, err := dollop(l)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-24s %2.0f mm across (%.0f to %.0f), %4.1f mm deep, held by %s\n", name,
			2000*lies.Radius.Likely, 2000*lies.Radius.Low, 2000*lies.Radius.High, 1000*lies.Depth, lies.Held)
	}
	show("mayonnaise", rheology.Food("mayonnaise"))
	show("mustard", rheology.Food("mustard"))
	show("tomato ketchup", rheology.Food("tomato ketchup"))
	show("the house's", sauce)
	for _, water := range []float64{5, 20, 50} {
		thinned, err := rheology.Blend(rheology.Part{Liquid: sauce, Grams: 100 - water}, rheology.Part{Liquid: rheology.Water{}, Grams: water})
		if err != nil {
			fmt.Println(err)
			return
		}
		show(fmt.Sprintf("the house's, %g %% water", water), thinned)
	}
	// Output:
	// mayonnaise               48 mm across (42 to 55), 11.9 mm deep, held by yield stress
	// mustard                  50 mm across (44 to 57),  9.7 mm deep, held by yield stress
	// tomato ketchup           57 mm across (47 to 68),  7.0 mm deep, held by yield stress
	// the house's              60 mm across (58 to 61),  6.3 mm deep, held by yield stress
	// the house's, 5 % water   62 mm across (59 to 64),  6.0 mm deep, held by yield stress
	// the house's, 20 % water  69 mm across (64 to 74),  4.9 mm deep, held by yield stress
	// the house's, 50 % water  92 mm across (78 to 108),  2.9 mm deep, held by yield stress
}

// Figure: dollop
//
// A spoon of water hardly shows; half of it water is a puddle. So a sauce that stands too
// stiffly may be loosened, where it is not what is advertised, and one that slumps wants to be
// strained or chilled rather than piled higher.
//
// # What stays on a wall
//
// The same stress holds a coat on whatever was dipped, of one thickness for good. On an
// upright chip 60 mm tall:
func Example_theCoat() {
	for _, sauce := range []rheology.Food{"tomato ketchup", "mayonnaise"} {
		coat, err := pour.Wall{Height: 0.06}.Drain(sauce, 20, 60e9)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: up to %.0f mm stands (%.0f to %.0f)\n", sauce, 1000*coat.Mean.Likely, 1000*coat.Mean.Low, 1000*coat.Mean.High)
	}
	// Output:
	// tomato ketchup: up to 3 mm stands (1 to 8)
	// mayonnaise: up to 10 mm stands (5 to 21)
}

// # What could go wrong
//
// A yield stress hangs on how it was measured and on what the sauce has been through. The
// file above is of a stirred sauce; a rested one is stiffer. Freezing, heat and a blender
// change it for good: measure what goes on the plate.
//
// The thinned sauce is an estimate. The yield stress is taken to fall with the third
// power of what is left of the sauce; second and fourth are the ends of its band. Blend
// some, and look.
//
// Bottles are not vented necks. Air has to come in past the sauce, and no law of that was
// found for one that stands. A squeeze bottle does the work by hand.
//
// Sauces with egg, and anything that stood out warm, are not eaten. Mustard, egg and milk are
// allergens: label what is on the set. What is advertised is shown as it is sold; whether it may
// be loosened or chilled for its picture is for the client and local advertising law.
//
// # Sources
//
// Ketchup, mustard and mayonnaise: Steffe 1996, Rheological Methods in Food Process
// Engineering, appendix (from memory); the yield stress of mustard and mayonnaise: Campanella
// and Peleg 1987, "Determination of the yield stress of semi-liquid foods from squeezing flow
// data", J. Food Sci. 52, 214 (abstract read, the figures from memory). The plug in a neck:
// Rabinowitsch and Mooney. The dollop integrates Coussot's flat deposit (read in a thesis's test
// values). That rested ketchup is about twice as stiff, and the powers of a blend, are from
// memory; that bottles are knocked and sauces strained is common practice, no source. The file,
// the density and the neck are invented.
func Example_sources() {}
