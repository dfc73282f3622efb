package main

import (
	"errors"
	"fmt"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The bowl is ready, the lamps are on, and in four minutes the oats will have drunk
// the milk. Someone says: use cream, it stays on top. Someone else says: may we? Every
// question of this trade begins there. Milk, ice, steam, syrup, the scoop: which of
// them has to be the real thing, and which may be something that behaves better under
// a lamp?
//
// # One question decides
//
// Ask of each thing in the frame: is this what the client sells with this picture? If
// so it is the advertised product. Then it is in the picture itself, not something
// that looks like it; not thinned with anything; not more of it than is declared, and
// not less. What only dresses the picture may be replaced. The library asks for that
// one fact about every item, Advertised, and draws the conclusions.
func Example_theFrame() {
	frame := []portion.Declaration{
		{Item: "oat porridge", Grams: 240, Advertised: true},
		{Item: "poached pear half", Count: 1, Advertised: true},
		{Item: "poured milk", Grams: 90},
		{Item: "crumbs on the table", Grams: 5},
	}
	for _, thing := range frame {
		verdict := "may be a stand-in"
		if err := thing.Allows(portion.Replace); errors.Is(err, honestplate.ErrAdvertised) {
			verdict = "itself"
		}
		fmt.Printf("%-20s %s\n", thing.Item, verdict)
	}
	// Output:
	// oat porridge         itself
	// poached pear half    itself
	// poured milk          may be a stand-in
	// crumbs on the table  may be a stand-in
}

// The porridge is sold; it comes without milk, and the milk only shows how one eats
// it. So the milk may be part cream. The next chapter mixes such a pour.
//
// # The same milk in another picture
//
// The answer belongs to the picture, not to the thing. Tomorrow the client is the
// dairy. The milk is now what is sold and the porridge dresses it, so the roles are
// exchanged and the cream has to go back into the refrigerator. There are four things
// one might do to an item, and for an advertised one the library refuses all four,
// each with its own words.
func Example_anotherPicture() {
	milk := portion.Declaration{Item: "milk", Grams: 90, Advertised: true}
	for _, act := range []string{portion.Replace, portion.Thin, portion.Exceed, portion.Reduce} {
		fmt.Println(milk.Allows(act))
	}
	// Output:
	// honestplate: Advertised: milk is the advertised product and must not be replaced; show the real product in its declared amount
	// honestplate: Advertised: milk is the advertised product and must not be thinned; show the real product in its declared amount
	// honestplate: Advertised: milk is the advertised product and must not be exceeded; show the real product in its declared amount
	// honestplate: Advertised: milk is the advertised product and must not be reduced; show the real product in its declared amount
}

// Thinning is the one that is easily forgotten. A syrup warmed until it runs is still
// the syrup. A syrup let down with water is another product, even if no eye could
// tell: what pours well in the picture would not be in the bottle. Temperature, time,
// light and the height of the jug are free; the recipe is not.
//
// # More is as wrong as less
//
// Nobody forgets that the picture must not be short. That it must not be over is
// harder to hold to, because a tenth olive looks generous and costs nothing. But the
// buyer gets nine.
func Example_theCount() {
	olives := portion.Declaration{Item: "olives", Count: 9, Advertised: true}
	for _, pieces := range []int{8, 9, 10} {
		if err := olives.JudgeCount(pieces); err != nil {
			fmt.Printf("%d pieces: %v\n", pieces, err)
		} else {
			fmt.Printf("%d pieces: as declared\n", pieces)
		}
	}
	// Output:
	// 8 pieces: honestplate: Pieces: olives is the advertised product and must not be reduced; show the real product in its declared amount
	// 9 pieces: as declared
	// 10 pieces: honestplate: Pieces: olives is the advertised product and must not be exceeded; show the real product in its declared amount
}

// Pieces can be counted; grams are weighed, and a scale has its own doubt. So someone has
// to say what still counts as 62 grams, and for the advertised product that is its maker,
// not the studio: here one gram either way. Then there are three answers, not two. What
// is inside by more than the scale's doubt agrees, what is outside by more differs, and
// between the two the scale cannot tell.
func Example_theScaleDecides() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, MinusGrams: 1, PlusGrams: 1, Advertised: true}
	scale := portion.Scale{StepGrams: 0.5}
	for _, reading := range []float64{60, 61, 62, 62.5, 65} {
		weighed, err := scale.Weigh(reading)
		if err != nil {
			fmt.Println(err)
			return
		}
		verdict, err := cheese.JudgePicture(weighed)
		refused := ""
		if errors.Is(err, honestplate.ErrAdvertised) {
			refused = ": refused"
		}
		fmt.Printf("%4.1f g %+.1f, +- %.1f g: %s%s\n", reading, verdict.Found-cheese.Grams, 2*verdict.Standard, verdict.Verdict, refused)
	}
	// Output:
	// 60.0 g -2.0, +- 0.7 g: differs: refused
	// 61.0 g -1.0, +- 0.7 g: cannot tell
	// 62.0 g +0.0, +- 0.7 g: agrees
	// 62.5 g +0.5, +- 0.7 g: cannot tell
	// 65.0 g +3.0, +- 0.7 g: differs: refused
}

// Half a gram over and the scale cannot tell? It shows half grams, it was verified once
// and has been in service since, and what is left of one gram after its doubt is three
// tenths. A scale of tenths, or one weight of 100 g to check it with, leaves more.
//
// # A package may; a picture may not
//
// There is a tolerance in law that tempts here. In the European average system a
// single package of 62 g may be 4.5 g short before it counts as defective. It exists
// because filling machines scatter, and the average of the batch must still be full. A
// picture is not a batch. It is one plate, made by hand with a scale beside it, and it
// stands for all of them. What remains is what the maker allows, and the doubt of the
// scale.
//
// Figure: picture-and-package
//
// # The ratio that is signed off
//
// Some recipes are not the studio's to change at all: the maker's technician has signed
// off a ratio. Then it stands in a specification, with how far it may be off, and the
// batch that was mixed is held against it. Any batch can be tried; what the steps of the
// scale do to the ratio is seen before it is poured.
func Example_signedOff() {
	dressing := portion.Formula{
		Parts:     []portion.Ingredient{{Name: "oil", Grams: 3}, {Name: "vinegar", Grams: 1}},
		StepGrams: 0.5,
	}
	scale := portion.Scale{StepGrams: 0.5, Check: portion.CheckWeight{Grams: 50, Reading: 50}}
	for _, grams := range []float64{5, 50} {
		batch, err := dressing.For(grams)
		if err != nil {
			fmt.Println(err)
			return
		}
		signed := record.Specification{Product: "dressing", Version: "1",
			Ratios: []record.Ratio{{Layer: "oil", To: "vinegar", Least: 2.8, Most: 3.2}}}
		mixed, shown := record.Build{Scale: scale}, 0.0
		for _, part := range batch {
			shown += part.Grams
			signed.Layers = append(signed.Layers, record.Layer{Name: part.Name,
				Declared: portion.Amount{Grams: part.Grams, StepGrams: 0.5, MinusGrams: 1, PlusGrams: 1}})
			mixed.Layers = append(mixed.Layers, record.Placed{Reading: shown})
		}
		found, err := signed.Check(mixed)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f g: %.1f g of oil, %.1f g of vinegar; %s\n", grams, batch[0].Grams, batch[1].Grams, found.Ratios[0])
	}
	// Output:
	// 5 g: 4.0 g of oil, 1.0 g of vinegar; oil / vinegar: cannot tell: 4.0 +- 1.9 against 2.8 to 3.2; nearer to a limit than the weighing is good to, +- 1.9
	// 50 g: 37.5 g of oil, 12.5 g of vinegar; oil / vinegar: agrees: 3.00 +- 0.12 against 2.8 to 3.2
}

// Five grams cannot be mixed to that ratio in half grams, and the scale could not even
// tell. Fifty can, and it can.
//
// # What is not so clear
//
// Ice in a drink that is sold. If the menu says "over ice", ice is part of what is
// served, and acrylic cubes would show a drink whose ice never melts. Then it is
// advertised. In a glass far out of focus that nobody sells it is dressing.
//
// Steam, fog and drops. They tell of hot and cold. On a product that is served hot,
// steam may be helped to be seen by light and a dark ground. If it comes from a
// machine, write that down as a stand-in like any other, and ask whether the real one
// is ever so hot.
//
// Dressing that makes a claim. A garnish that is not in the box must not look as if it
// were. If the buyer would count it, it is either declared or out of the frame.
//
// When in doubt, treat it as advertised. It costs ten minutes and never a campaign.
//
// # What could go wrong
//
// The library believes what it is told. If Advertised is set wrongly, everything after
// it is wrong in good order. Have the client confirm the list in writing before the
// shoot, item by item.
//
// A stand-in that is not written down becomes a lie by forgetting. The record (chapter
// 16) has a field for what it was and one for why, and it refuses a stand-in for the
// advertised product.
//
// Stand-ins are often not food. Keep glue, soap, oil for shine and acrylic away from
// what will be eaten, label them, and throw away any food they touched. Allergens
// count on the set too: a stand-in of nuts or milk is still nuts or milk.
//
// The law on advertising and on weights and measures differs from place to place and
// is stricter in some trades. This rule is a working habit, not legal advice; local
// law and whoever is licensed to read it decide.
//
// # Sources
//
// That the advertised item is neither replaced, thinned, exceeded nor reduced, that a
// signed-off ratio is a constraint, and that what dresses the picture may be a
// stand-in, is common practice, no source. The tolerable negative error of packages:
// Council Directive 76/211/EEC, annex I, 2.4, in the table tolerable_negative_error;
// the points in the figure are its rows. Errors of scales: OIML R 76-1, tables 3 and
// 6. How uncertainties combine: JCGM 100:2008 (GUM). The dishes and weights are
// invented.
func Example_sources() {}
