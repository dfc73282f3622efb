package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The client sells the flakes. The milk comes from the shop round the corner, and
// on the monitor it is too thin: it runs off every flake and the bowl looks wet, not
// creamy. Somebody says: put cream in it. How much, and what will the camera see?
//
// # May it be blended?
//
// That is asked first. The milk in this bowl is not for sale, so a thicker one may
// stand in, if the record says so. Had the client sold the milk, it would go into
// the bowl as the customer gets it, and only its temperature could be chosen. The
// library wants to be told which it is, and refuses the second.
func Example_mayItBeBlended() {
	recipe := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 800, StepGrams: 5, TempC: 5,
		Advertised: true, // now the client sells the milk
	}
	_, err := recipe.For(0.010)
	fmt.Println(err)
	// Output:
	// honestplate: Advertised: milk, 3.5 % fat and cream, 36 % fat would be blended, and the advertised product is shown as it is sold; choose its temperature instead (ServeAt)
}

// # How thick is wanted?
//
// "Creamier" has to become a number. What the eye takes for cream is mostly the
// layer that stays on what the milk has touched, and that layer goes with the square
// root of the viscosity: for twice the coat, four times the thickness. Milk at 5 degC
// has about 3 mPa s (millipascal seconds; water has 1.5 at that temperature), thick
// cream perhaps 35. Somewhere between lies the pour. Three times milk is a fair
// first try: 10 mPa s, for a coat nearly twice that of milk.
//
// The next question is what goes on the scale. This kitchen scale shows steps of
// 5 g, so an answer of 418.3 g would be no answer.
func Example_grams() {
	recipe := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 800, StepGrams: 5, TempC: 5,
	}
	fmt.Println("wanted   milk   cream   fat    likely, 95 % band, mPa s")
	for _, wanted := range []float64{6, 8, 10, 12, 15} {
		batch, err := recipe.For(wanted / 1000)
		if err != nil {
			fmt.Println(err)
			return
		}
		mix, err := batch.Mix()
		if err != nil {
			fmt.Println(err)
			return
		}
		made, _ := rheology.CompositionOf(mix)
		p := batch.Predicted
		fmt.Printf("%4g   %4g g  %4g g   %2.0f %%   %4.1f (%.0f to %.0f)\n", wanted,
			batch.ThinGrams, batch.ThickGrams, made.FatPercent, 1e3*p.Likely, 1e3*p.Low, 1e3*p.High)
	}
	// Output:
	// wanted   milk   cream   fat    likely, 95 % band, mPa s
	//    6    585 g   215 g   12 %    6.0 (4 to 9)
	//    8    490 g   310 g   16 %    8.1 (5 to 14)
	//   10    420 g   380 g   19 %    9.9 (5 to 18)
	//   12    360 g   440 g   21 %   11.9 (6 to 23)
	//   15    285 g   515 g   24 %   15.0 (7 to 31)
}

// 420 g of milk and 380 g of cream, then: nearly half and half, and with 19 % fat
// really a light cream. The steps are not equal, for the rule that mixes them works
// on the logarithm: the first 215 g of cream double the thickness, and from 8
// to 15 mPa s it takes as much again.
//
// # How sure is that?
//
// The last column is the honest part. The amounts are exact, the thickness is not:
// "10" may come out as 5 or as 18. No better table would mend it, for creams of
// one fat content really differ that much. What the dairy did (heating,
// homogenising, a stabiliser) and how long the cream has stood cold change it more
// than the fat does.
//
// Figure: creamier-pour
//
// The band is drawn between two laws, one for fat globules that stay apart and one
// for globules that clump in the cold; the likely line is the middle. The points of
// 15 to 25 % fat lie below that line: where globules hardly clump, a blend comes out
// thinner, so be ready to add cream. (The two points under the band are from a
// table in whole mPa s that puts light cream below skim milk. We show it as
// printed.)
//
// The rule of mixing is in doubt as well. The library's own mixes the logarithms by
// mass; another goes by the shape that was found for hot cream.
func Example_rules() {
	recipe := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 800, StepGrams: 5, TempC: 5,
	}
	for _, rule := range []rheology.Rule{{}, {NoDeparture: true}} {
		recipe.Rule = rule
		batch, err := recipe.For(0.010)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-21v  milk %g g, cream %g g\n", rule, batch.ThinGrams, batch.ThickGrams)
	}
	// Output:
	// log-mixing by mass     milk 420 g, cream 380 g
	// emulsion rule          milk 380 g, cream 420 g
}

// Forty grams between the rules are little beside the band, so this is not the thing to
// quarrel about. The next chapter ends the quarrel with a flow cup and a stop-watch.
//
// # What a slip costs
//
// Beside a factor of two the scale's 5 g do not matter. It helps to see the slips in
// one list, because crews worry about the wrong one.
func Example_slips() {
	batch, err := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 800, StepGrams: 5, TempC: 5,
	}.For(0.010)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := batch.Sensitivity()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("5 g of cream too many           %+3.1f %%\n", 500*s.OneGram)
	fmt.Printf("1 degC warmer on the set        %+3.1f %%\n", 100*s.Warmer)
	fmt.Printf("cream of 37 instead of 36 %%     %+3.1f %%\n", 100*s.OneFatPercent)
	fmt.Printf("1 degC colder does as much as   %3.0f g of cream\n", s.GramsADegree)
	// Output:
	// 5 g of cream too many           +1.5 %
	// 1 degC warmer on the set        -3.3 %
	// cream of 37 instead of 36 %     +3.8 %
	// 1 degC colder does as much as    11 g of cream
}

// A jug that stands beside the lamps for a quarter of an hour warms by more than
// 5 degC easily, and loses more thickness than any slip of the scale.
// Keep the batch in iced water and fill the jug for each take.
//
// # What the camera sees of it
//
// Pour 200 g of each from the same jug, with the same hand: a lip 18 mm wide, the
// surface 8 mm above it. Then look at three things: how long the pour lasts, how thick
// the stream is after falling 15 cm, and the coat on the side of the bowl
// 5 seconds after the milk has gone down.
func Example_theCamera() {
	milk := rheology.Dairy{FatPercent: 3.5}
	blend, err := rheology.Blend(
		rheology.Part{Liquid: milk, Grams: 420},
		rheology.Part{Liquid: rheology.Dairy{FatPercent: 36}, Grams: 380})
	if err != nil {
		fmt.Println(err)
		return
	}
	jug := pour.Lip{Width: 0.018, Length: 0.010, Head: 0.008}
	bowl := pour.Wall{Height: 0.04}
	for _, l := range []rheology.Liquid{milk, blend} {
		poured, err := jug.Pour(l, 5, 200)
		if err != nil {
			fmt.Println(err)
			return
		}
		stream, err := poured.Stream(0.15)
		if err != nil {
			fmt.Println(err)
			return
		}
		coat, err := bowl.Drain(l, 5, 5*time.Second)
		if err != nil {
			fmt.Println(err)
			return
		}
		d, c := poured.Duration, coat.Mean.Times(1000)
		fmt.Printf("pour %.0f s (%.0f to %.0f), stream %.0f mm, coat %.2f mm (%.2f to %.2f)\n",
			d.Likely.After.Seconds(), d.Earliest.After.Seconds(), d.Latest.After.Seconds(),
			1e3*stream.Diameter, c.Likely, c.Low, c.High)
	}
	// Output:
	// pour 15 s (12 to 19), stream 3 mm, coat 0.03 mm (0.03 to 0.04)
	// pour 18 s (14 to 23), stream 3 mm, coat 0.06 mm (0.04 to 0.08)
}

// The stream itself gives little away. Over a jug's lip a thin liquid is held back by
// its own speed, not by its thickness, so three times the viscosity makes the pour
// only a fifth longer, less than one hand differs from the next, and the stream looks
// the same. A slower pour is made with the hand.
//
// The coat is what changes: nearly double, and even at the thin end of its band
// the blend leaves more than milk at the thick end of its own. That is worth knowing
// before anyone asks for still more cream to slow the pour down.
//
// Figure: coat
//
// Both coats drain in the same way, with one over the square root of the time.
// So the blend buys time as well: it looks after ten seconds as milk does after
// three.
//
// # What could go wrong
//
// The serving on the pack may say "with semi-skimmed milk". Then a creamy bowl
// shows something else than the customer will make. Whether that is allowed is for the
// client and local advertising law, not for a recipe; write the blend into the
// record either way.
//
// Cream that is whipped, soured or set with a thickener is not what is meant here:
// it has a stiffness that plain cream has not. Read the label, and take plain cream.
// Stirring hard or shaking turns some of the fat to butter.
//
// Milk is an allergen, and a batch that stood on a set is not for drinking. Keep
// it cold, label it, throw it away. Lamps and their leads keep their distance from
// anything that is poured. Local rules for food and for electricity come first.
//
// # Sources
//
// Viscosity by fat: between Phipps 1969 for globules that stay apart and Bakshi and
// Smith 1984, whose formula for 0 to 30 degC is in the paper's abstract. The middle
// between the two is the library's own choice; its documentation counts how many
// published values lie in the band. The points are a cream table of unknown origin (in
// whole mPa s, read) and Earle, Unit Operations in Food Processing, appendix (from
// memory), both in testdata/dairy_viscosity.csv. Blending goes by the logarithm of
// the viscosity and by mass, which on cold creams tends high. The coat
// is Jeffreys 1930, "The draining of a vertical plate", as in Bird, Stewart and
// Lightfoot, Transport Phenomena, Problem 2D.2; the lip is a weir with the friction of a
// film added. That the coat is what reads as creamy, that three times milk is a fair
// first try, how much hands differ, and how fast a jug warms under lamps: common
// practice, no source.
// The bowl, the jug and the amounts are our own.
func Example_sources() {}
