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

// # What the cream is for
//
// Not for a slower pour: over a jug's lip milk and cream take nearly the same time, and
// whoever wants it slower tilts less. Cream is for what the milk leaves and does: the coat on
// a flake, what clings to the bowl, bubbles that stay, drops that do not jump, and the look.
//
// # How thick is wanted?
//
// "Creamier" has to become a number. What the eye takes for cream is mostly the
// layer that stays on what the milk has touched, and that layer goes with the square
// root of the viscosity: for twice the coat, four times the thickness. Milk at 5 degC
// has about 3 mPa s (millipascal seconds; water has 1.5 at that temperature), thick
// cream perhaps 25. Somewhere between lies the pour. Three times milk is a fair
// first try: 10 mPa s, for a coat nearly twice that of milk.
//
// What goes on the scale? This one shows steps of 5 g.
func Example_grams() {
	recipe := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 800, StepGrams: 5, TempC: 5,
	}
	ready, err := recipe.Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("wanted   milk   cream   fat    likely, 95 % band, mPa s")
	for _, wanted := range []float64{6, 8, 10, 12, 15} {
		batch, err := ready.For(wanted / 1000)
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
	//    6    480 g   320 g   16 %    6.0 (4 to 13)
	//    8    360 g   440 g   21 %    8.0 (5 to 21)
	//   10    275 g   525 g   25 %   10.1 (7 to 30)
	//   12    215 g   585 g   27 %   12.0 (8 to 39)
	//   15    140 g   660 g   30 %   15.1 (9 to 52)
}

// 275 g of milk and 525 g of cream, then: two thirds cream, and with 25 % fat really a
// cream. The steps are not equal, for globules that crowd each other thicken ever
// faster: the first 320 g of cream double the thickness, and 120 g more bring it from 6
// to 8.
//
// # How sure is that?
//
// The last column is the honest part. The amounts are exact, the thickness is not:
// "10" may come out as 7 or as 30, for creams of one fat content really differ that
// much: what the dairy did and how long the cream has stood cold change it more
// than the fat does. Who knows the treatment says so: for plain cream the upper end falls to
// half, homogenised cream is thicker from the start, and one with a thickener obeys no table.
//
// Figure: creamier-pour
//
// The line is one law for milk and cream, hot and cold: fat globules crowding the plasma
// they float in. The formula of Bakshi and Smith, the only one found for the cold, lies
// two to four times over everybody's cream; it is where the band ends, not part of the line.
// The law is low against the table at 25 to 40 % and high against Earle's 20 %. (The two
// points under the band, in whole mPa s, put light cream below whole milk: as printed.)
//
// The dotted line is what mixing the logarithms alone would say of this milk and this cream:
// straight where the law sags, and so high between its ends. The library mixes
// logarithms too, and then names what the blend departs from that by.
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
		terms, err := batch.Departure()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: milk %g g, cream %g g\n", rule, batch.ThinGrams, batch.ThickGrams)
		fmt.Printf("  logarithms mixed %.1f mPa s, departure %.2f (%.2f to %.2f)\n",
			1e3*terms.LogMixedPaS, terms.E, terms.Low, terms.High)
	}
	// Output:
	// log-mixing by mass with its departure: milk 275 g, cream 525 g
	//   logarithms mixed 12.2 mPa s, departure -0.20 (-0.31 to -0.08)
	// log-mixing alone: milk 355 g, cream 445 g
	//   logarithms mixed 9.9 mPa s, departure 0.00 (-0.66 to 0.26)
}

// Eighty grams lie between the two. Which is right is shown by blends of which somebody
// printed both ends and the middle.
//
// Figure: blends
//
// Cold, log-mixing alone is a third too high in the mean; with its departure it is a seventh
// too low, from creams whose milk had no fat stated. Hot, the one is 6 % high and the other 9
// % low. Neither is nature, and beside the band it is not the thing to quarrel about. The
// next chapter ends the quarrel with a flow cup and a stop-watch.
//
// # What a slip costs
//
// Beside a band of 7 to 30 the scale's 5 g do not matter. Here are the slips in one list,
// because crews worry about the wrong one.
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
	// 5 g of cream too many           +1.4 %
	// 1 degC warmer on the set        -3.1 %
	// cream of 37 instead of 36 %     +4.6 %
	// 1 degC colder does as much as    11 g of cream
}

// A jug that stands beside the lamps for a quarter of an hour easily warms by more than
// 5 degC, and loses more thickness than any slip in the list.
// Keep the batch in iced water and fill the jug for each take.
//
// # What the camera sees of it
//
// Pour 200 g of each from the same jug, with the same hand: a lip 18 mm wide, the
// surface 8 mm above it. Then look: how long the pour lasts, what clings to the jug, the coat
// on the side of the bowl 5 seconds after the milk has gone down, and how long a bubble of
// half a millimetre needs to rise through 20 mm.
func Example_theCamera() {
	milk := rheology.Dairy{FatPercent: 3.5}
	blend, err := rheology.Blend(
		rheology.Part{Liquid: milk, Grams: 275},
		rheology.Part{Liquid: rheology.Dairy{FatPercent: 36}, Grams: 525})
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
		coat, err := bowl.Drain(l, 5, 5*time.Second)
		if err != nil {
			fmt.Println(err)
			return
		}
		clear, err := pour.BubblesClear(l, 5, 0.0005, 0.020)
		if err != nil {
			fmt.Println(err)
			return
		}
		d, c := poured.Duration, coat.Mean.Times(1000)
		fmt.Printf("pour %.0f s (%.0f to %.0f), clings %.1f g, coat %.2f mm (%.2f to %.2f), bubble %.1f s\n",
			d.Likely.After.Seconds(), d.Earliest.After.Seconds(), d.Latest.After.Seconds(),
			poured.LeftGrams.Likely, c.Likely, c.Low, c.High, clear.Likely.After.Seconds())
	}
	// Output:
	// pour 15 s (12 to 19), clings 0.1 g, coat 0.03 mm (0.03 to 0.04), bubble 0.7 s
	// pour 18 s (14 to 25), clings 0.3 g, coat 0.06 mm (0.05 to 0.11), bubble 1.6 s
}

// The pour itself gives little away. Over a jug's lip a thin liquid is held back by
// its own speed, not by its thickness, so three times the viscosity makes the pour
// only a fifth longer, less than one hand differs from the next. A slower pour is made with
// the hand: ask for that, not for still more cream.
//
// What the milk leaves is what changes. The coat nearly doubles, three times as much
// clings to the jug, and a bubble takes more than twice as long to rise. A drop jumps less
// where milk already lies (chapter 05). And the look: a thin coat of the blend is whiter
// and hides the flake sooner; a full bowl looks the same, or a little yellower.
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
// it has a stiffness that plain cream has not. Read the label.
// Stirring hard or shaking turns some of the fat to butter.
//
// Milk is an allergen, and a batch that stood on a set is not for drinking. Keep
// it cold, label it, throw it away. Lamps and their leads keep their distance from
// anything that is poured. Local rules for food and for electricity come first.
//
// # Sources
//
// Viscosity by fat: an emulsion law after Krieger and Dougherty 1959 (from memory) on the
// skim milk of Fernandez-Martin 1972, its constants fitted to the creams shown and to Phipps
// 1969; the library's documentation counts how many published values lie in the band.
// Bakshi and Smith 1984: the formula in the paper's abstract, for 0 to 30 degC and to 30 %
// fat. The points are a cream table of unknown origin (in whole mPa s, itself a straight
// line in fat, read) and Earle, Unit Operations in Food Processing, appendix (from
// memory), both in testdata/dairy_viscosity.csv. The blends are creams of a pump maker's
// chart (read), of Earle and of Steffe 1996 after Phipps (from memory), each between two
// others of its source: testdata/dairy_blends.csv; the hot ones follow a formula. The coat
// is Jeffreys 1930, "The draining of a vertical plate", as in Bird, Stewart and
// Lightfoot, Transport Phenomena, Problem 2D.2; the lip is a weir with the friction of a
// film added. That the coat is what reads as creamy, that three times milk is a fair
// first try, how much hands differ, and how fast a jug warms under lamps: common
// practice, no source.
// The bowl, the jug and the amounts are our own.
func Example_sources() {}
