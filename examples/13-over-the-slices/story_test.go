package main

import (
	"fmt"
	"math"
	"testing"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The flatbread comes out of the oven in one piece, and in the picture one slice is
// being pulled away. Cheese that was scattered breaks off at the cut. Cheese that was
// laid over the cut before baking melts across it and draws out between the slices, so
// that is where it goes: one strip over every cut, half of it on either side. The menu
// says 62 g of smoked cheese on the whole bread. The cheese is what is sold, so there
// are 62 g on the bread: no more because it photographs well, no less because it ran
// out.
//
// # Where two grams come from
//
// Eight slices, 62 g, a scale that shows half grams. The quick way is to divide and
// round: 7.75 g a slice, which the scale shows as 8.
func Example_divideAndRound() {
	const declared, slices, step = 62.0, 8, 0.5
	each := math.Round(declared/slices/step) * step
	fmt.Printf("%d slices of %.1f g are %.1f g; declared are %.1f g\n", slices, each, slices*each, declared)

	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	zones := make([]portion.Zone, slices)
	for i := range zones {
		zones[i].Weight = 1
	}
	shares, err := cheese.Share(zones)
	if err != nil {
		fmt.Println(err)
		return
	}
	total := 0.0
	for _, p := range shares {
		fmt.Printf("%.1f  ", p.Grams)
		total += p.Grams
	}
	fmt.Printf("= %.1f g\n", total)
	// Output:
	// 8 slices of 8.0 g are 64.0 g; declared are 62.0 g
	// 8.0  8.0  8.0  8.0  7.5  7.5  7.5  7.5  = 62.0 g
}

// Two grams too many, and nobody decided on them. Rounded down instead, two grams
// would be missing. This is the problem of sharing seats between districts: whole
// units, unequal claims, a total that may not move. It has been argued over for two
// centuries and the answers are known. The library counts in whole steps of the scale:
// 62 g are 124 half grams. It gives every slice the whole part of its share, and the
// steps that are left go to the largest remainders.
//
// # More of it where the lens looks
//
// Nearest to the camera the cheese is seen; behind the bread it is not. Favour moves
// grams from the far edge to the near one. With a favour of 40 %, a length of strip at the
// near edge is 40 % heavier than the even share, at the far edge 40 % lighter, and evenly
// between; whole strips, running inward, differ less. Nothing is added: what the
// front gains, the back gives. Numbers are in the order of placing, far side first, so
// that no sleeve passes over a finished strip.
func Example_overTheCuts() {
	bread := plate.Round{Diameter: 0.28, Edge: 0.02, Slices: 8}
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	layout, err := plate.Strips{
		Hub:    0.02, // the middle stays free: eight strips would meet there
		Favour: 0.4,
	}.Lay(bread, cheese)
	if err != nil {
		fmt.Println(err)
		return
	}
	total := 0.0
	for _, strip := range layout.Strips {
		fmt.Printf("strip %d: %3.0f mm, %.1f g\n", strip.Number, 1000*strip.Length, strip.Grams)
		total += strip.Grams
	}
	fmt.Printf("together %.1f g\n", total)
	// Output:
	// strip 1: 100 mm, 6.5 g
	// strip 2: 100 mm, 6.5 g
	// strip 3: 100 mm, 7.0 g
	// strip 4: 100 mm, 7.0 g
	// strip 5: 100 mm, 8.5 g
	// strip 6: 100 mm, 8.5 g
	// strip 7: 100 mm, 9.0 g
	// strip 8: 100 mm, 9.0 g
	// together 62.0 g
}

// The strips are all the same length; what differs is the weight, so the front ones
// are cut thicker. plated.Strips draws the sheet that lies on the bench.
//
// Figure: cheese-over-the-cuts
//
// Read its table both ways. A row is one strip and where its two halves end up; a
// column is one slice. Both sums are exact. From front to back the slices carry 9, 8.5,
// 8, 7 and 6 g, left and right alike: of several tables equally near the exact shares
// the one that is its own mirror image is taken. Not every amount has one; the odd step
// then lies on one side, and half a gram is below what any eye sees in melted cheese.
//
// How much favour is right? The figure below follows three slices. At 40 % the front
// slice carries about 9 g against 6 g at the back, which looks generous and leaves
// nobody with bare bread. From 70 % on the back has half of the front or less. The
// stairs may step back, since strips and slices must both come out in half grams; they
// never leave the band of one step about the exact share.
//
// Figure: favour
//
// # When a slice is what is sold
//
// All this keeps the total true. A shop that sells slices makes another promise: the
// one that fills the frame stands for the one in the bag, and a favoured one shows cheese
// that its buyer does not get. Say how much more is still fair, and ask.
func Example_bySlice() {
	bread := plate.Round{Diameter: 0.28, Edge: 0.02, Slices: 8}
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	for _, favour := range []float64{0, 0.1, 0.4} {
		layout, err := plate.Strips{Hub: 0.02, Favour: favour}.Lay(bread, cheese)
		if err != nil {
			fmt.Println(err)
			return
		}
		sold, err := layout.SliceSold(0.05)
		fmt.Printf("favour %.0f %%: slice %d shows %.1f g, an even one holds %.2f g", 100*favour, sold.MostSlice, sold.MostGrams, sold.EvenGrams)
		if err != nil {
			fmt.Printf(": %.0f %% too much, refused", 100*sold.Over)
		}
		fmt.Println()
	}
	// Output:
	// favour 0 %: slice 1 shows 8.0 g, an even one holds 7.75 g
	// favour 10 %: slice 1 shows 8.0 g, an even one holds 7.75 g
	// favour 40 %: slice 1 shows 9.0 g, an even one holds 7.75 g: 16 % too much, refused
}

// Beyond the allowance, to the next step of the scale, the advertised cheese is refused;
// garnish is only flagged. The numbers go into the record either way.
//
// # Slices one way, zones the other
//
// Strips suit cheese that draws. For grated cheese the question is a table: so much
// for every slice, and so much for the point, the middle and the crust side of each.
// Suppose the maker wants the points thinly covered, since they burn first, in the
// ratio 1 : 3 : 4, no slice under 6 g, and the slice in front heaviest. The stylist
// wants one thing more: plenty on the point of slice 1, where the focus lies.
func Example_slicesAndZones() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	table := portion.Table{
		Declaration: cheese,
		Columns:     []portion.Zone{{Name: "point", Weight: 1}, {Name: "middle", Weight: 3}, {Name: "crust", Weight: 4}},
	}
	for i, weight := range []float64{1.5, 1.2, 1, 0.8, 0.6, 0.8, 1, 1.2} {
		table.Rows = append(table.Rows, portion.Zone{Name: fmt.Sprint("slice ", i+1), Weight: weight, MinGrams: 6})
		table.Weights = append(table.Weights, []float64{1, 3, 4})
	}
	table.Weights[0][0] = 3 // the point of slice 1, in focus
	grid, err := table.Share()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("in grams   point  middle   crust   whole")
	for i, row := range grid.Rows {
		fmt.Printf("%-8s", row.Name)
		for j := range grid.Columns {
			fmt.Printf("%8.1f", grid.Grams[i][j])
		}
		fmt.Printf("%8.1f\n", row.Grams)
	}
	fmt.Printf("%-8s", "whole")
	for _, column := range grid.Columns {
		fmt.Printf("%8.1f", column.Grams)
	}
	fmt.Printf("%8.1f\n", cheese.Grams)
	// Output:
	// in grams   point  middle   crust   whole
	// slice 1      2.5     3.5     5.0    11.0
	// slice 2      1.0     3.5     4.5     9.0
	// slice 3      1.0     2.5     4.0     7.5
	// slice 4      0.5     2.5     3.0     6.0
	// slice 5      0.5     2.5     3.0     6.0
	// slice 6      0.5     2.5     3.0     6.0
	// slice 7      0.5     3.0     4.0     7.5
	// slice 8      1.0     3.5     4.5     9.0
	// whole        7.5    23.5    31.0    62.0
}

// A plain 1 : 3 : 4 would leave the point of slice 1 with 1.5 g; now it has 2.5. The
// gram was taken from the other points, because the points together may have 7.5 g and
// no more, and within slice 1 from its middle and crust, because the slice may have 11
// g. Both margins hold, so the favour is paid for in the open. Where the wishes
// contradict each other, say every point at zero and yet 7.5 g for the points, the
// library names the slices and zones that cannot agree; it does not hand back a table
// that fails to add up.
//
// # What the scale adds
//
// The plan is exact. The scale is not, and eight small weighings say less about their
// sum than one large one: each has its own rounding, and the error of the scale itself
// is repeated eight times over.
func Example_theScale() {
	strips := []float64{6.5, 6.5, 7, 7, 8.5, 8.5, 9, 9}
	for _, step := range []float64{0.5, 0.1} {
		scale := portion.Scale{StepGrams: step}
		once, err := scale.Weigh(62)
		if err != nil {
			fmt.Println(err)
			return
		}
		sum, err := scale.Sum(strips...)
		if err != nil {
			fmt.Println(err)
			return
		}
		least, err := scale.LeastLoad()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("shows %.1f g: in one load +- %.1f g, in eight +- %.1f g, least load %.0f g\n", step, once.Expanded, sum.Expanded, least)
	}
	// Output:
	// shows 0.5 g: in one load +- 0.7 g, in eight +- 4.8 g, least load 10 g
	// shows 0.1 g: in one load +- 0.2 g, in eight +- 1.0 g, least load 2 g
}

// So weigh the whole 62 g once, in one bowl, and let that be the number in the record.
// Then portion out of that bowl: the eight strips may be off by a little among
// themselves, but together they are what the bowl held. And use the finer scale:
// strips under 10 g are below the least load of the coarse one.
//
// # What could go wrong
//
// The scale steps are not the only grain. Cheese sticks to the board, the knife and
// the gloves. Weigh the bowl again when it is empty, and lay the last crumbs on.
//
// Baked cheese weighs less: it loses water and some fat. The 62 g are weighed as they
// go in, and that is what a recipe or a label of ingredients speaks of. Say so in the
// record; a number weighed after the oven is another number.
//
// Weights that come from outside, such as a ratio the maker's technician signed off,
// are constraints. Favour may share out what they leave open; it may not bend them.
// Ask before the shoot.
//
// Favour is honest only as long as the whole bread is what is sold, or within an
// allowance that somebody states. If the cheese is declared by the slice, each slice is
// its own declaration: share each over its own zones, and do not lend grams to a
// neighbour.
//
// Hot cheese holds its heat and sticks to skin; lift slices with a tool. Bread,
// parchment and cloths under hot lamps can scorch or burn. Cheese is an allergen, and
// food that has stood warm on a set is not eaten. What may be shown and what must be
// declared is for local law on advertising, labelling and weights and measures.
//
// # Sources
//
// The problem of whole seats, and the rule of the largest remainder with its rivals:
// Balinski and Young, The quota method of apportionment, American Mathematical Monthly
// 82 (1975), 701-730. The package is checked against its printed apportionments and
// others; they are in testdata, in the tables whose names begin with apportionment.
// The strips and slices of the sheet, each within a step of its exact share:
// controlled rounding after Bacharach, Matrix rounding problems, Management Science 12
// (1966), 732-742, and Cox, A constructive procedure for unbiased controlled rounding,
// Journal of the American Statistical Association 82 (1987), 520-524, both from
// memory. Tables with two exact margins: Balinski and Demange, Algorithms for
// proportional matrices in reals and integers, Mathematical Programming 45 (1989),
// 193-210, from memory, checked against printed matrices in the table biproportional.
// Errors and least loads of scales: OIML R 76-1, tables 3 and 6; how they add up: JCGM
// 100:2008 (GUM). That the arrangement of a food in a picture can mislead: Regulation
// (EU) 1169/2011, article 7(4). Ingoing mass as the measure of an ingredient: Regulation (EU)
// 1169/2011, annex VIII. That cheese is laid over the cuts before baking, that points
// burn first, and that the advertised item is neither exceeded nor reduced, is common
// practice, no source. What an eye sees in melted cheese is our own estimate. The
// bread, its cheese and all weights are invented.
func Example_sources() {}
