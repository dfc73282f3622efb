package main

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"example.org/honestplate/portion"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The box says nine filled figs, 120 g. The kitchen made eighteen so that there is a
// choice. The stylist gave each of them points for its looks, 0 to 100, before anyone
// put one on the scale, so that the weight could not sway the eye. Then each was
// weighed to a tenth of a gram. In the code below figs() is this list.
func Example_theEighteen() {
	for i, fig := range figs() {
		fmt.Printf("%s %.1f g %2.0f", fig.Name, fig.Grams, fig.Score)
		if i%6 == 5 {
			fmt.Println()
		} else {
			fmt.Print("   ")
		}
	}
	// Output:
	// A1 13.4 g 71   A2 14.6 g 88   A3 12.5 g 93   A4 15.1 g 64   A5 13.9 g 79   A6 13.6 g 85
	// B1 15.8 g 97   B2 12.1 g 58   B3 14.3 g 96   B4 13.8 g 67   B5 14.8 g 92   B6 12.9 g 74
	// C1 14.4 g 91   C2 13.3 g 77   C3 15.4 g 90   C4 14.0 g 69   C5 12.3 g 80   C6 14.5 g 84
}

// # What the eye would take
//
// Take the nine with the most points and put them on the scale together.
func Example_theBestLooking() {
	prettiest, err := portion.Pick{Pieces: figs(), Count: 9}.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f g, %.0f points\n", prettiest.Grams, prettiest.Score)
	// Output:
	// 129.9 g, 816 points
}

// Ten grams too much: most of a whole fig. It is no accident. A full fig looks
// generous, so the eye chooses the heavy ones, and a picture that overshoots promises
// something the box does not hold. The figs are the product; nine of them must weigh
// 120 g. Swapping one for a smaller and then another, by hand, under the lamps, is
// slow and ends wherever patience ends.
//
// # How many ways there are
//
// How many sets of nine can be made of eighteen, and how many of them weigh 120.0 g?
// With eighteen pieces a machine can simply try them all. everyNine, in main.go, does
// that: it calls the function with the total in tenths of a gram and the points.
func Example_allOfThem() {
	sets, exact, best := 0, 0, 0
	everyNine(func(tenths, looks int) {
		sets++
		if tenths == 1200 {
			exact++
			best = max(best, looks)
		}
	})
	fmt.Printf("%d sets, %d of exactly 120.0 g, the best of them with %d points\n", sets, exact, best)
	// Output:
	// 48620 sets, 50 of exactly 120.0 g, the best of them with 742 points
}

// Fifty out of 48 620, so a hand that swaps at random finds one about every thousand
// tries. Trying them all stops being possible soon: twelve out of forty are five
// thousand million sets. Pick does not try them all. It works in whole tenths of a
// gram, prices the weight against the looks, and searches only among the sets that
// could still win; when it is done it says whether the answer is proven.
func Example_theNine() {
	best, err := portion.Pick{
		Pieces:    figs(),
		Count:     9,
		Grams:     120, // declared
		StepGrams: 0.1, // the scale's step
	}.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	var names []string
	for _, fig := range best.Pieces {
		names = append(names, fig.Name)
	}
	fmt.Println(names)
	fmt.Printf("%.1f g, %.0f points, no better set exists: %v\n", best.Grams, best.Score, best.Optimal)
	// Output:
	// [A2 A3 A6 B2 B3 B6 C1 C2 C5]
	// 120.0 g, 742 points, no better set exists: true
}

// The same 742 points that trying every set found. Honesty costs 74 points of 816,
// less than a tenth, and one plain fig, B2, is among the nine. The figure shows why.
// The band is every nine there is; its upper edge climbs with the weight. At 120 g
// most sets are light because their figs are small and plain, and a typical one
// reaches 706 points; the best one still beats seven in ten of all sets of any weight.
//
// Figure: looks-by-total
//
// # What a tolerance would buy
//
// A buyer of packages lives with a tolerance. In the European average system a package
// of 120 g may be 5.4 g short before it counts as defective. That allowance is for
// machines that fill thousands of boxes, not a right to show less, and it says nothing
// about showing more. Ask what it would buy all the same.
func Example_whatATolerance() {
	for _, tolerance := range []float64{0, 0.5, 1, 2, 5.4} {
		best, err := portion.Pick{
			Pieces: figs(), Count: 9, Grams: 120, StepGrams: 0.1,
			Tolerance: tolerance, NeverBelow: true,
		}.Best()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("up to %.1f g over: %.0f points at %.1f g\n", tolerance, best.Score, best.Grams)
	}
	// Output:
	// up to 0.0 g over: 742 points at 120.0 g
	// up to 0.5 g over: 746 points at 120.2 g
	// up to 1.0 g over: 748 points at 120.8 g
	// up to 2.0 g over: 767 points at 122.0 g
	// up to 5.4 g over: 796 points at 125.2 g
}

// Half a gram buys four points in 742: nobody will see them. A set that is exact costs
// nothing worth having, so take it and leave the argument out of the record.
//
// # When there is no such nine
//
// Had the kitchen made only the first ten, no nine of them would do. The library does
// not offer the nearest as if it were right; it says what can be reached, and then it
// is for people to decide: make more figs, or ask the client.
func Example_noSuchNine() {
	_, err := portion.Pick{Pieces: figs()[:10], Count: 9, Grams: 120, StepGrams: 0.1}.Best()
	var none *portion.InfeasibleError
	if errors.As(err, &none) {
		fmt.Printf("No nine of these weigh %.0f g. The lightest nine weigh %.1f g.\n", none.Pick.Grams, none.Above.Value)
	}
	// Output:
	// No nine of these weigh 120 g. The lightest nine weigh 123.3 g.
}

// # Two boxes at once
//
// The art director wants a second box beside the first: nine more figs, 120 g too. With
// the best nine gone, do the other nine weigh it?
func Example_twoBoxes() {
	box := portion.Pick{Pieces: figs(), Count: 9, Grams: 120, StepGrams: 0.1}
	two, err := box.Sets(2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d box of a possible %d\n", len(two.Sets), two.Most)

	all := 0.0
	for _, fig := range figs() {
		all += fig.Grams
	}
	fmt.Printf("all eighteen weigh %.1f g, two boxes 240 g\n", all)
	// Output:
	// 1 box of a possible 1
	// all eighteen weigh 250.7 g, two boxes 240 g
}

// No: all eighteen together are too heavy, whichever way they are parted. So the kitchen
// must make more, and how many more is a question of chance. Its figs weigh 13.9 g, give
// or take 1.1 g, and that is all the library needs: it draws trays of such figs and looks
// on each for the boxes.
func Example_howManyMore() {
	box := portion.Pick{Pieces: figs(), Count: 9, Grams: 120, StepGrams: 0.1}
	for _, chance := range []float64{0.5, 0.9, 0.99} {
		more, err := box.ToWeigh(2, chance, portion.PieceMass{MeanGrams: 13.9, SDGrams: 1.1})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f %%: weigh %.0f more (%.0f..%.0f)\n", 100*chance, more.Pieces.Likely, more.Pieces.Low, more.Pieces.High)
	}
	// Output:
	// 50 %: weigh 10 more (10..10)
	// 90 %: weigh 15 more (15..16)
	// 99 %: weigh 22 more (20..25)
}

// Sixteen would be prudent. The kitchen has filling for ten, an even chance, and is
// lucky. moreFigs() is the longer list.
//
// The obvious way is to take the best nine, then the best nine of the rest. Sets looks at
// both boxes at once: first that there are two, then that together they look best. Or,
// with LeastFirst, that the plainer of the two looks as good as it can.
func Example_bothBoxes() {
	box := portion.Pick{Pieces: moreFigs(), Count: 9, Grams: 120, StepGrams: 0.1}
	first, err := box.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	rest := box
	rest.Pieces = nil
	for i, fig := range box.Pieces {
		if !slices.Contains(first.Chosen, i) {
			rest.Pieces = append(rest.Pieces, fig)
		}
	}
	second, err := rest.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("one after the other: %.0f and %.0f points, %.0f in all\n", first.Score, second.Score, first.Score+second.Score)
	for _, least := range []bool{false, true} {
		box.LeastFirst = least
		two, err := box.Sets(2)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("at once: %.0f and %.0f points, %.0f in all, none better: %v\n", two.Sets[0].Score, two.Sets[1].Score, two.Score, two.Optimal)
	}
	// Output:
	// one after the other: 789 and 692 points, 1481 in all
	// at once: 751 and 735 points, 1486 in all, none better: true
	// at once: 743 and 743 points, 1486 in all, none better: true
}

// One after the other the second box gets what the first one leaves. At once the two look
// better together, and with LeastFirst neither looks like the second choice, here at no
// cost in points at all. Other trays are less kind: taken one after the other, the first
// box can use up the very figs without which there is no second.
//
// # On the plate, and on the scale
//
// Now they have to lie somewhere. Scatter finds nine spots that are clear of each
// other and of the rim, spread evenly without a pattern, and Assign gives every spot
// its fig, the best-looking nearest to the camera. No piece is left over and none is
// added. The sheet gives the order of placing: B3, with 96 points, comes last.
//
// Figure: nine-on-the-plate
//
// Before they are placed, all nine go on the scale once more, together. Nine single
// weighings carry nine roundings and nine times the scale's own error.
func Example_together() {
	scale := portion.Scale{StepGrams: 0.1}
	one, err := scale.Weigh(120.1)
	if err != nil {
		fmt.Println(err)
		return
	}
	nine, err := scale.Sum(14.6, 12.5, 13.6, 12.1, 14.3, 12.9, 14.4, 13.3, 12.3)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("one by one: 120 g to within %.1f g\n", nine.Expanded)
	fmt.Printf("together:   120 g to within %.1f g\n", one.Expanded)

	box := portion.Declaration{Item: "filled figs", Grams: 120, StepGrams: 0.1, MinusGrams: 1, PlusGrams: 1, Count: 9, Advertised: true}
	verdict, err := box.JudgePicture(one)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(verdict.Reason)
	// Output:
	// one by one: 120 g to within 1.1 g
	// together:   120 g to within 0.2 g
	// as declared: 120.1 g weighed, +- 0.24 g, against 120 g (-1 +1 g) declared
}

// # What could go wrong
//
// Cut fruit dries. A fig loses tenths of a gram in an hour on a warm set, so nine that
// weighed 120.0 g at ten weigh less at noon. Weigh, place and shoot in one go, or keep
// them covered and cool, and write down when they were weighed.
//
// Points are an opinion. Two people may score one fig five points apart; half a gram of
// tolerance bought four points in all nine. If several sets are close, lay out two and
// look.
//
// A pair that looks well side by side is not in the sum: points add up piece by piece.
// Use groups where the picture needs a cut one or one with a stem, so that one is
// taken from each.
//
// A big problem may end before it is proven. The answer then says how far from the
// best it can be, in Gap; give it more Effort, or be content.
//
// Fruit, nuts and dairy fillings are allergens; figs and fillings that stood on a warm
// set are not eaten. What a picture of a box must hold to is for local law on
// advertising and on weights and measures; this page is a help to the studio, not
// advice on law.
//
// # Sources
//
// The relaxation that prices weight against looks: Geoffrion, Lagrangean relaxation
// for integer programming (1974); the growing core of undecided pieces: Pisinger, A
// minimal algorithm for the 0-1 knapsack problem (1997); both from memory. The
// tolerable error: Council Directive 76/211/EEC, annex I, 2.4, in the table
// tolerable_negative_error. Scales: OIML R 76-1, tables 3 and 6; adding up errors:
// JCGM 100:2008 (GUM). Scoring before weighing, and neither exceeding nor reducing
// what is advertised, is common practice, no source. Drying by tenths of a gram an
// hour and the five points between two people are our own estimates. The figs are
// invented.
func Example_sources() {}
