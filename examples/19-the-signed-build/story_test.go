package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// Two people stand at the bench. One builds; the other has the folder of the client's
// product technician, page eleven: heel, sauce, patty, cheese, pickles, crown, in that
// order, so many grams of each. When the picture is out, someone may buy three of these
// burgers and lay them beside it. Then it is good to know that the one in the picture was
// built as it is sold, and better to have it from a scale than from memory.
//
// # What was signed
//
// A specification is that page as data: the layers in build order, a mass with how far
// it may be off, a count where people count, and the state that is meant, since 113 g of
// patty are usually raw. Who signed it and until when it holds is part of it. The sum of
// its bytes names this version and no other.
func Example_theSheet() {
	specified := cheeseburger()
	for _, l := range specified.Layers {
		line := fmt.Sprintf("%-8s %5.1f g -%.1f +%.1f %s", l.Name, l.Declared.Grams, l.Declared.MinusGrams, l.Declared.PlusGrams, l.Basis)
		fmt.Println(strings.TrimSpace(line))
	}
	ref, err := specified.Ref()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("version %s, SHA-256 %.12s.., signed by %s\n", ref.Version, ref.SHA256, ref.SignedBy)
	for _, day := range []string{"2026-10-14", "2027-01-04"} {
		fmt.Println(day, specified.InForce(day))
	}
	// Output:
	// heel      28.0 g -2.0 +2.0
	// sauce     11.0 g -1.5 +1.5
	// patty    113.0 g -4.0 +4.0 raw
	// cheese    14.0 g -1.0 +1.0
	// pickles    5.5 g -1.0 +1.0
	// crown     27.0 g -2.0 +2.0
	// version 2026-2, SHA-256 1dee069409a0.., signed by T. Invented
	// 2026-10-14 <nil>
	// 2027-01-04 honestplate: ValidUntil is 2026-12-31, want a day not before 2027-01-04: ask for the version in force
}

// In January there will be another sheet, and a picture taken by this one would show
// last year's burger.
//
// # Before anything is weighed
//
// A tolerance can be narrower than a scale can judge. That is no reason to weigh
// carefully; it is a reason to fetch another scale, and better known before the patty is
// on the grill. BeforeWeighing builds the sheet in perfection, every layer in the middle
// of what is allowed, and asks what the scale could make of it.
func Example_theScale() {
	for _, step := range []float64{2, 0.5, 0.1} {
		found, err := cheeseburger().BeforeWeighing(benchScale(step))
		if err != nil {
			fmt.Println(err)
			return
		}
		var cannot []string
		for _, f := range found.Layers {
			if f.Verdict != portion.Agrees {
				cannot = append(cannot, f.Name)
			}
		}
		fmt.Printf("shows %.1f g: %s", step, found.Verdict)
		if len(cannot) > 0 {
			fmt.Printf(" for %s", strings.Join(cannot, ", "))
		}
		fmt.Println()
	}
	// Output:
	// shows 2.0 g: cannot tell for heel, sauce, cheese, pickles, crown
	// shows 0.5 g: cannot tell for pickles
	// shows 0.1 g: agrees
}

// Figure: which-scale-can-tell
//
// And a load below the least for which a scale is made, twenty steps of a shop's, is no
// load for it: pickles of 5.5 g on a scale of half grams. The scale of tenths it is. It
// was checked with a weight of 200 g this morning: a plate on a scale says what it was
// worth on the day it was verified, a weight says what it is worth today.
//
// # Layer upon layer
//
// The scale is set to zero once, and then the burger grows on it. Each layer is the
// difference of two readings, so neighbours share one: what a reading takes from one
// layer it gives to the next. Check knows that, and holds every layer against its line.
func Example_theBuild() {
	found, err := cheeseburger().Check(hero())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range append(append(found.Layers, found.Total), found.Ratios...) {
		fmt.Println(f)
	}
	fmt.Println("the build", found.Verdict)
	for _, f := range found.Layers {
		if f.AddGrams < 0 {
			fmt.Printf("take off %.1f g of %s\n", -f.AddGrams, f.Name)
		}
	}
	// Output:
	// heel: agrees: 28.400 +- 0.082 against 26 to 30
	// sauce: agrees: 10.900 +- 0.082 against 9.5 to 12.5
	// patty: agrees: 113.500 +- 0.094 against 109 to 117
	// cheese: differs: 16.500 +- 0.082 against 13 to 15; over
	// pickles: agrees: 6.400 +- 0.082 against 4.5 to 6.5
	// crown: agrees: 26.900 +- 0.082 against 25 to 29
	// total: agrees: 202.60 +- 0.12 against 187 to 210
	// cheese / patty: differs: 0.14537 +- 0.00078 against 0.11 to 0.14; outside the ratio that is signed off
	// the build differs
	// take off 2.5 g of cheese
}

// Figure: layers-of-the-hero
//
// The cheese is a slice and a corner of another, which looks well and is not what is
// sold. The total would never have told: two and a half grams are lost in two hundred.
// The cheese's own line does, and so does the ratio to the patty.
//
// # One zero or six
//
// Taring before every layer is a habit from recipes, where only the layer counts. For a
// whole it costs: six zeros are six more readings. With one zero the total is as sure as
// one weighing, however many layers it has.
func Example_oneZero() {
	specified := cheeseburger()
	for _, tared := range []bool{false, true} {
		b := record.Build{Scale: portion.Scale{StepGrams: 0.5, Check: portion.CheckWeight{Grams: 200, Reading: 200}}, Tared: tared}
		shown := 0.0
		for _, l := range specified.Layers {
			if shown += l.Declared.Grams; tared {
				shown = l.Declared.Grams
			}
			b.Layers = append(b.Layers, record.Placed{Reading: shown, Pieces: l.Declared.Count})
		}
		found, err := specified.Check(b)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("tared %-5v: heel +- %.1f g, total +- %.1f g\n", tared, 2*found.Layers[0].Standard, 2*found.Total.Standard)
	}
	// Output:
	// tared false: heel +- 0.4 g, total +- 0.6 g
	// tared true : heel +- 0.4 g, total +- 1.1 g
}

// # Raw and cooked
//
// The sheet says 113 g raw; what comes off the grill weighs less. The yield turns one
// into the other, and what is not known of the yield comes with it. It has to be measured
// in this kitchen, patty by patty, before and after. With a yield known to two hundredths
// of itself a cooked patty can be told; known to a tenth it cannot.
func Example_cooked() {
	for _, within := range []float64{0.02, 0.1} {
		specified, b := cheeseburger(), hero()
		specified.Layers[2].Yield = honestplate.Within(0.75, within)
		for i := 2; i < len(b.Layers); i++ {
			b.Layers[i].Reading -= 28.3 // the patty lost a quarter on the grill
		}
		b.Layers[2].Basis = record.Cooked
		found, err := specified.Check(b)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(found.Layers[2])
	}
	// Output:
	// patty: agrees: 113.6 +- 2.3 against 109 to 117
	// patty: cannot tell: 114 +- 11 against 109 to 117; the tolerance of 8 g is too narrow for a weighing good to +- 11 g
}

// # Into the record
//
// For take 2 the corner of cheese came off. Items turns the build into lines of a record,
// and the record names the sheet by its sum: whoever has both files can see that the one
// was held against the other.
func Example_record() {
	specified, b := cheeseburger(), hero()
	for i := 3; i < len(b.Layers); i++ {
		b.Layers[i].Reading -= 2.5
	}
	items, err := specified.Items(b)
	if err != nil {
		fmt.Println(err)
		return
	}
	ref, err := specified.Ref()
	if err != nil {
		fmt.Println(err)
		return
	}
	record := record.Record{
		Revision: 1, Picture: "Cheeseburger, three quarters", Date: "2026-10-14",
		Takes:         []record.Take{{Number: 1}, {Number: 2, File: "0002.raw", Chosen: true}},
		Specification: &ref,
		Items:         items,
		Cautions:      []string{"milk, wheat, egg, mustard on the set; nothing that stood under lamps was eaten"},
	}
	fmt.Fprint(os.Stdout, record.Statement())
	// Output:
	// # How this picture was made
	//
	// **Cheeseburger, three quarters**, 2026-10-14, revision 1 of this record
	//
	// Held against the specification of cheeseburger (invented), version 2026-2, signed by T. Invented, valid until 2026-12-31 (SHA-256 1dee069409a0f1645510eeca19ad24762e40d9d4ea70d7bddca1f75c1727f97b).
	//
	// | item | in the picture | declared | planned | weighed | against what is declared |
	// |---|---|---|---|---|---|
	// | heel | itself: the advertised product | 28 g (-2 +2 g) | no plan | 28.4 g +- 0.083 g | **agrees** (+0.4 g); over 99 % likely to conform |
	// | sauce | itself: the advertised product | 11 g (-1.5 +1.5 g) | no plan | 10.9 g +- 0.082 g | **agrees** (-0.1 g); over 99 % likely to conform |
	// | patty | itself: the advertised product | 113 g (-4 +4 g) | no plan | 113.5 g +- 0.094 g, raw | **agrees** (+0.5 g); over 99 % likely to conform |
	// | cheese | itself: the advertised product | 14 g (-1 +1 g) | no plan | 14 g +- 0.082 g | **agrees** (+0 g); over 99 % likely to conform |
	// | pickles | itself: the advertised product | 3 pieces (-0 +1), 5.5 g (-1 +1 g) | no plan | 3 pieces, 6.4 g +- 0.082 g | **agrees** (+0.9 g); over 99 % likely to conform |
	// | crown | itself: the advertised product | 27 g (-2 +2 g) | no plan | 26.9 g +- 0.083 g | **agrees** (-0.1 g); over 99 % likely to conform |
	//
	// ## Stand-ins
	//
	// None recorded.
	//
	// ## Takes
	//
	// - 1
	// - 2, 0002.raw: **chosen**
	//
	// ## What was done to the picture
	//
	// None recorded.
	//
	// ## Cautions
	//
	// - milk, wheat, egg, mustard on the set; nothing that stood under lamps was eaten
	//
	// ## Signed
	//
	// Not signed yet.
	//
	// This record documents the picture. Whether the picture may be used is for local advertising and weights-and-measures law.
}

// # What could go wrong
//
// The page in the folder may be old. InForce asks; the client confirms which version is
// sold where the picture will be shown.
//
// Right grams, wrong picture. A build can hold every line and still look like more: all
// the sauce pressed to the front edge, the pickles pulled forward, the crown set back.
// Shape and arrangement can mislead like quantity. Build it as the kitchen builds it.
//
// The scale walks. A warm plate on a cold scale, a draught, a hand on the bench: readings
// drift by more than their rounding. Weigh the finished plate again; if it is not the sum,
// none of the layers is what it seems.
//
// The tolerance is the maker's, and signed. A studio that widens it until everything
// agrees has written that down too.
//
// Nothing here makes it safe to eat. Raw patties, warm lamps and cut dairy are kept and
// thrown away by the local food code, allergens are named to everyone on the set, and
// hands are washed between the raw and the cooked.
//
// Weights-and-measures and advertising law are local; the tolerance of a package is no
// tolerance of a picture, and a verdict of this library is no legal opinion.
//
// # Sources
//
// Differences of readings and what they share: JCGM 100:2008 (GUM), 5.2.2, from memory,
// in the table cumulative_weighings. The verdicts, the probability beside them and the
// index in the first figure: JCGM 106:2012, 7 and 8, from memory (tables
// conformity_examples and layer_decisions), with the guard bands of ILAC-G8:09/2019,
// table 1, as laboratories give them. Errors of scales: OIML R 76-1. That arrangement can
// mislead: Regulation (EU) 1169/2011, article 7(4). That a declared patty is the raw one,
// and that a build is signed by the maker's technician, is common practice, no source. The
// burger, its yield and its technician are invented.
func Example_sources() {}
