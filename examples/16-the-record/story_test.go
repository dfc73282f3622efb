package main

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// Two months after the shoot a letter comes: the cheese in your picture looks like
// more than 62 grams. Nobody remembers. The stylist has had thirty plates since, the
// scale has moved house, and the client would like an answer by Friday. Or there is a
// sheet, written on the day, and the answer takes a minute.
//
// # What goes in
//
// Every item in the frame gets a line. Declared is what the buyer is promised. Planned
// is what the crew set out to show; for an advertised item it is the same. Weighed is
// what the scale found, with what the scale may be wrong by, rounded up. What stood in
// for something gets its name and its reason.
func Example_write() {
	scale := portion.Scale{StepGrams: 0.1}
	weighing, err := scale.Weigh(62.1)
	if err != nil {
		fmt.Println(err)
		return
	}
	cheese := portion.Amount{Grams: 62, StepGrams: 0.1}
	record := portion.Record{
		Picture: "Flatbread, one slice pulled",
		Date:    "2026-10-14",
		Items: []portion.RecordItem{
			{
				Item: "smoked cheese", Advertised: true,
				Declared: cheese, Planned: &cheese,
				Weighed: &portion.Weighed{Grams: weighing.Grams, ErrorGrams: math.Ceil(10*weighing.Expanded) / 10, Scale: "class III, 0.1 g"},
				How:     "laid over the cuts before baking; weighed before the oven",
			},
			{
				Item:    "steam",
				StandIn: &portion.StandIn{What: "a steamer behind the bread", Reason: "the lamps take the contrast of the real steam"},
			},
		},
		Signed: []portion.Signature{{Name: "R. Invented", Role: "food stylist", Date: "2026-10-14"}},
	}
	if err := record.Write(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// {
	//   "schema": "honestplate/record/1",
	//   "picture": "Flatbread, one slice pulled",
	//   "date": "2026-10-14",
	//   "items": [
	//     {
	//       "item": "smoked cheese",
	//       "advertised": true,
	//       "declared": {
	//         "grams": 62,
	//         "step_grams": 0.1
	//       },
	//       "planned": {
	//         "grams": 62,
	//         "step_grams": 0.1
	//       },
	//       "weighed": {
	//         "grams": 62.1,
	//         "error_grams": 0.2,
	//         "scale": "class III, 0.1 g"
	//       },
	//       "how": "laid over the cuts before baking; weighed before the oven"
	//     },
	//     {
	//       "item": "steam",
	//       "stand_in": {
	//         "what": "a steamer behind the bread",
	//         "reason": "the lamps take the contrast of the real steam"
	//       }
	//     }
	//   ],
	//   "signed": [
	//     {
	//       "name": "R. Invented",
	//       "role": "food stylist",
	//       "date": "2026-10-14"
	//     }
	//   ]
	// }
}

// That is the file to keep beside the picture. The schema line says which form it has,
// so that a program in ten years can tell. Numbers are decimals as they were written,
// and whoever reads the file with the library and writes it again gets the same bytes.
//
// # The sheet for people
//
// Statement sets a record as Markdown, for whoever uses the picture and does not read
// JSON. This one is half filled in, to show what it says of gaps: a line without a
// plan has "no plan", not an empty cell that could mean anything, and an unsigned
// sheet says so.
func Example_statement() {
	record := portion.Record{
		Picture: "Nine filled figs",
		Items: []portion.RecordItem{
			{
				Item: "filled figs", Advertised: true,
				Declared: portion.Amount{Grams: 120, StepGrams: 0.1, Count: 9},
				Weighed:  &portion.Weighed{Grams: 120.1, ErrorGrams: 0.2, Count: 9},
			},
			{
				Item:    "dew on the figs",
				StandIn: &portion.StandIn{What: "water from a spray", Reason: "dressing"},
			},
		},
	}
	fmt.Print(record.Statement())
	// Output:
	// # How this picture was made
	//
	// **Nine filled figs**
	//
	// | item | in the picture | declared | planned | weighed | weighed minus declared |
	// |---|---|---|---|---|---|
	// | filled figs | itself: the advertised product | 9 pieces, 120 g | no plan | 9 pieces, 120.1 g +- 0.2 g | +0.1 g, 0 pieces |
	// | dew on the figs | stand-in: water from a spray | nothing | no plan | not weighed | - |
	//
	// ## Stand-ins
	//
	// - water from a spray in place of dew on the figs: dressing
	//
	// ## Signed
	//
	// Not signed yet.
	//
	// This record documents the picture. Whether the picture may be used is for local advertising and weights-and-measures law.
}

// # What it refuses
//
// A record that cannot be trusted is worse than none, so it is checked when it is
// written and again when it is read. Three ways to get it wrong:
func Example_refusals() {
	declared := portion.Amount{Grams: 62, StepGrams: 0.5}
	generous := portion.Amount{Grams: 70, StepGrams: 0.5}
	for _, item := range []portion.RecordItem{
		{Item: "smoked cheese", Advertised: true, Declared: declared, StandIn: &portion.StandIn{What: "coloured wax", Reason: "does not dry"}},
		{Item: "smoked cheese", Advertised: true, Declared: declared, Planned: &generous},
		{Item: "steam", StandIn: &portion.StandIn{What: "a steamer"}},
	} {
		err := portion.Record{Picture: "Flatbread", Items: []portion.RecordItem{item}}.Validate()
		fmt.Println(err)
	}
	// Output:
	// honestplate: Items[0].StandIn: smoked cheese is the advertised product and must not be replaced; show the real product in its declared amount
	// honestplate: Items[0].Planned: smoked cheese is the advertised product and must not be exceeded; show the real product in its declared amount
	// honestplate: Items[0].StandIn.Reason is empty, want some text
}

// The first two cannot be written at all: a plan to show wax, or 70 g, is not a record
// of an honest picture. The third is only unfinished; it wants the reason. A file that
// someone edited by hand is read strictly, so that a misspelt word is an error and not
// a fact that silently went missing. Here it is "advertised" with a z, and a lenient
// reader would have taken the cheese for dressing.
func Example_readStrictly() {
	file := `{"schema": "honestplate/record/1", "picture": "Flatbread",
		"items": [{"item": "smoked cheese", "advertized": true, "declared": {"grams": 62}}]}`
	_, err := portion.ReadRecord(strings.NewReader(file))
	fmt.Println(err)
	// Output:
	// honestplate: items[0].advertized is unknown, want a field that the schema has
}

// # What was weighed is a fact
//
// One thing it does not refuse: a weight that is wrong. If the syrup came out at 43 g
// where 45 are declared, then 43 is what is written. Refusing it would only teach
// people to write 45. The verdict is a separate question, and it takes the scale into
// account. day(), in main.go, is the record of a day with five weighed items.
func Example_judge() {
	record := day()
	var b bytes.Buffer
	if err := record.Write(&b); err != nil {
		fmt.Println(err)
		return
	}
	read, err := portion.ReadRecord(&b) // what was written is what is read
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, item := range read.Items {
		if item.Weighed == nil {
			continue
		}
		verdict, err := item.Declaration().JudgePicture(portion.Weighing{Grams: item.Weighed.Grams, Expanded: item.Weighed.ErrorGrams})
		if err != nil && !errors.Is(err, honestplate.ErrAdvertised) {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-10s %s\n", item.Item, verdict.Reason)
	}
	// Output:
	// cheese     as declared: 62 g weighed, +- 0.5 g, against 62 g declared
	// figs       as declared: 120.1 g weighed, +- 0.2 g, against 120 g declared
	// syrup      short: 43 g weighed, +- 0.5 g, against 45 g declared
	// scoop      as declared: 63 g weighed, +- 1 g, against 62 g declared
	// porridge   as declared: 240 g weighed, +- 2 g, against 240 g declared
}

// Two grams of syrup are missing and the scale is good to half a gram: that is short,
// and it is better found while the jug is still on the table. The scoop is a gram over
// and passes, but look at why in the figure.
//
// Figure: weighed-less-declared
//
// The scoop was weighed on a scale that shows whole grams. Its box just reaches the
// line, as it would for 61 g on the other side. The figs, on a scale of tenths, have
// almost no box at all, so their 120.1 g say far more. A coarse scale agrees with
// everything. That is why the error stands in the record beside the weight: "as
// declared" is only worth as much as the scale that says it.
//
// # What could go wrong
//
// Weighed too late. After baking, melting or drying, a weight answers another question
// than the label asks. Write in "how" when it was weighed, and weigh before the oven.
//
// Filled in from memory. A record made up at the end of the day contains what people
// meant to do. Keep it open on the set and fill each line as the plate goes under the
// camera.
//
// A signature here is a name, not a seal. The file shows who says so; it cannot show
// that nobody changed it since. If that matters, keep a copy with someone else, or
// sign the file with the tools made for that.
//
// One picture, many crops. The record speaks of what lay on the table. If a later crop
// shows four of nine figs, or a retoucher adds a tenth, the record no longer describes
// the picture. Send it along with every version, and say what was retouched.
//
// The cautions field is for those who come after: food that stood under lamps is not
// eaten, which stand-ins were not food, which allergens were on the set. Fill it in
// even if it is obvious today.
//
// A record documents. It does not make a picture lawful, and it does not replace
// advice: what must be declared, shown and kept, and for how long, is for local law on
// advertising and on weights and measures.
//
// # Sources
//
// Errors of scales: OIML R 76-1, tables 3 and 6. How they combine, and the factor 2
// for about 95 %: JCGM 100:2008 (GUM), numbers from memory. That an advertised item
// has no stand-in and is planned as declared, that weights are written down as found,
// and that the record is kept on the set, is common practice, no source. The form of
// the file is this library's own. The day, its dishes, weights and names are invented.
func Example_sources() {}
