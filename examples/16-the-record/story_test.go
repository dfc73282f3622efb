package main

import (
	"crypto/ed25519"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// Two months after the shoot a letter comes: the cheese in your picture looks like
// more than 62 grams. Nobody remembers. The stylist has had thirty plates since, the
// scale has moved house, and the client would like an answer by Friday. Or there is a
// sheet, written on the day, and the answer takes a minute.
//
// # What goes in
//
// Every item in the frame gets a line. Declared is what the buyer is promised, with how
// far from it the maker lets it be. Planned is what the crew set out to show; for an
// advertised item it is the same. Weighed is what the scale found, with what the scale
// may be wrong by, rounded up. What stood in for something gets its name and its reason.
// Takes are the picture's files, each with the SHA-256 of its bytes, so that nobody has
// to wonder which picture the sheet is about; edits are what was done to it afterwards.
func Example_write() {
	scale := portion.Scale{StepGrams: 0.1, Check: portion.CheckWeight{Grams: 100, Reading: 100}}
	weighing, err := scale.Weigh(62.1)
	if err != nil {
		fmt.Println(err)
		return
	}
	sum, err := record.FileSHA256(strings.NewReader("the bytes of 0007.raw (invented)"))
	if err != nil {
		fmt.Println(err)
		return
	}
	cheese := portion.Amount{Grams: 62, StepGrams: 0.1, MinusGrams: 1, PlusGrams: 1}
	record := record.Record{
		Revision:   1,
		Picture:    "Flatbread, one slice pulled",
		Date:       "2026-10-14",
		SourceType: "digitalCapture",
		Takes:      []record.Take{{Number: 7, Time: "2026-10-14T14:47:05+02:00", File: "0007.raw", SHA256: sum, Chosen: true}},
		Items: []record.Item{
			{
				Item: "smoked cheese", Advertised: true,
				Declared: cheese, Planned: &cheese,
				Weighed: &record.Weighed{Grams: weighing.Grams, ErrorGrams: math.Ceil(10*weighing.Expanded) / 10,
					LeastGrams: weighing.LeastGrams, Scale: "0.1 g, checked with 100 g"},
				Favour: 0.2,
				How:    "laid over the cuts before baking; weighed before the oven",
			},
			{
				Item:    "steam",
				StandIn: &record.StandIn{What: "a steamer behind the bread", Reason: "the lamps take the contrast of the real steam"},
			},
		},
		Edits:  []record.Edit{{Action: "c2pa.cropped", What: "to a square; all eight slices stay in"}},
		Signed: []record.Signature{{Name: "R. Invented", Role: "food stylist", Date: "2026-10-14"}},
	}
	if err := record.Write(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// {
	//   "schema": "honestplate/record/2",
	//   "revision": 1,
	//   "picture": "Flatbread, one slice pulled",
	//   "date": "2026-10-14",
	//   "source_type": "digitalCapture",
	//   "takes": [
	//     {
	//       "number": 7,
	//       "time": "2026-10-14T14:47:05+02:00",
	//       "file": "0007.raw",
	//       "sha256": "170ba57de535180f040671c3259aa17c1e108c129cdda3bcc1818eb1034f5e69",
	//       "chosen": true
	//     }
	//   ],
	//   "items": [
	//     {
	//       "item": "smoked cheese",
	//       "advertised": true,
	//       "declared": {
	//         "grams": 62,
	//         "step_grams": 0.1,
	//         "minus_grams": 1,
	//         "plus_grams": 1
	//       },
	//       "planned": {
	//         "grams": 62,
	//         "step_grams": 0.1,
	//         "minus_grams": 1,
	//         "plus_grams": 1
	//       },
	//       "weighed": {
	//         "grams": 62.1,
	//         "error_grams": 0.1,
	//         "least_grams": 2,
	//         "scale": "0.1 g, checked with 100 g"
	//       },
	//       "favour": 0.2,
	//       "how": "laid over the cuts before baking; weighed before the oven",
	//       "verdict": "agrees"
	//     },
	//     {
	//       "item": "steam",
	//       "stand_in": {
	//         "what": "a steamer behind the bread",
	//         "reason": "the lamps take the contrast of the real steam"
	//       }
	//     }
	//   ],
	//   "edits": [
	//     {
	//       "action": "c2pa.cropped",
	//       "what": "to a square; all eight slices stay in"
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
// so that a program in ten years can tell. Nothing in it is 0, false or empty: what has
// nothing to say is left out, so that one record has one form. The verdict was not typed
// in; it follows from the numbers, and a file in which it does not is refused.
//
// # The sheet for people
//
// Statement sets a record as Markdown, for whoever uses the picture and does not read
// JSON. This one is half filled in, to show what it says of gaps. "None recorded" is not
// "none": a sheet cannot know what nobody wrote down.
func Example_statement() {
	record := record.Record{
		Revision: 1,
		Picture:  "Nine filled figs",
		Items: []record.Item{
			{
				Item: "filled figs", Advertised: true,
				Declared: portion.Amount{Grams: 120, StepGrams: 0.1, MinusGrams: 1, PlusGrams: 1, Count: 9},
				Weighed:  &record.Weighed{Grams: 120.1, ErrorGrams: 0.3, Count: 9},
			},
			{Item: "honey in lines", Favour: 0.3},
			{
				Item:    "dew on the figs",
				StandIn: &record.StandIn{What: "water from a spray", Reason: "dressing"},
			},
		},
	}
	fmt.Print(record.Statement())
	// Output:
	// # How this picture was made
	//
	// **Nine filled figs**, revision 1 of this record
	//
	// | item | in the picture | declared | planned | weighed | against what is declared |
	// |---|---|---|---|---|---|
	// | filled figs | itself: the advertised product | 9 pieces, 120 g (-1 +1 g) | no plan | 9 pieces, 120.1 g +- 0.3 g | **agrees** (+0.1 g); over 99 % likely to conform |
	// | honey in lines | itself | nothing | no plan | not weighed | - |
	// | dew on the figs | stand-in: water from a spray | nothing | no plan | not weighed | - |
	//
	// ## Stand-ins
	//
	// - water from a spray in place of dew on the figs: dressing
	//
	// ## Arranged towards the camera
	//
	// - honey in lines: up to 30 % more in front than an even share, and as much less behind. An arrangement can mislead although the total is true.
	//
	// ## Takes
	//
	// None recorded.
	//
	// ## What was done to the picture
	//
	// None recorded.
	//
	// ## Signed
	//
	// Not signed yet.
	//
	// This record documents the picture. Whether the picture may be used is for local advertising and weights-and-measures law.
}

// The favour stands there because a true total is not the whole truth. Whoever buys one
// slice looks at the slice in front; a picture has been objected to in which every gram
// was right and the arrangement was not.
//
// # What it refuses
//
// A record that cannot be trusted is worse than none, so it is checked when it is
// written and again when it is read. Four ways to get it wrong:
func Example_refusals() {
	declared := portion.Amount{Grams: 62, StepGrams: 0.5}
	generous := portion.Amount{Grams: 70, StepGrams: 0.5}
	for _, item := range []record.Item{
		{Item: "smoked cheese", Advertised: true, Declared: declared, StandIn: &record.StandIn{What: "coloured wax", Reason: "does not dry"}},
		{Item: "smoked cheese", Advertised: true, Declared: declared, Planned: &generous},
		{Item: "steam", StandIn: &record.StandIn{What: "a steamer"}},
		{Item: "smoked cheese", Advertised: true, Declared: declared, Weighed: &record.Weighed{}},
	} {
		err := record.Record{Revision: 1, Picture: "Flatbread", Items: []record.Item{item}}.Validate()
		fmt.Println(err)
	}
	// Output:
	// honestplate: Items[0].StandIn: smoked cheese is the advertised product and must not be replaced; show the real product in its declared amount
	// honestplate: Items[0].Planned: smoked cheese is the advertised product and must not be exceeded; show the real product in its declared amount
	// honestplate: Items[0].StandIn.Reason is empty, want some text
	// honestplate: Items[0].Weighed.Grams is 0 g, and no pieces, want what was weighed or counted, or no Weighed at all
}

// The first two cannot be written at all: a plan to show wax, or 70 g, is not a record
// of an honest picture. The others are only unfinished. A file that someone edited by
// hand is read strictly, so that a misspelt word is an error and not a fact that
// silently went missing. Here it is "advertised" with a z, and a lenient reader would
// have taken the cheese for dressing.
func Example_readStrictly() {
	file := `{"schema": "honestplate/record/2", "revision": 1, "picture": "Flatbread",
		"items": [{"item": "smoked cheese", "advertized": true, "declared": {"grams": 62}}]}`
	_, err := record.Read(strings.NewReader(file))
	fmt.Println(err)
	// Output:
	// honestplate: items[0].advertized is no field of the schema, or says nothing, want a field spelt as in the schema, and none that is 0, false, null or empty
}

// # What was weighed is a fact
//
// One thing it does not refuse: a weight that is wrong. If the syrup came out at 43 g
// where 45 are declared, then 43 is what is written, with its verdict. Refusing it would
// only teach people to write 45. day(), in main.go, is the record of a day with five
// weighed items.
func Example_judge() {
	for _, item := range day().Items {
		found, err := item.Verdict()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(found)
	}
	// Output:
	// cheese: agrees: 62.00 +- 0.80 against 61 to 63
	// figs: agrees: 120.10 +- 0.30 against 119 to 121
	// syrup: differs: 43.00 +- 0.80 against 44 to 46; short
	// scoop: cannot tell: 63.0 +- 1.5 against 60 to 64; nearer to a limit than the weighing is good to, +- 1.5 g
	// porridge: agrees: 240.0 +- 2.9 against 236 to 244
}

// Two grams of syrup are missing and the scale is good to less than one: that is short,
// and it is better found while the jug is still on the table. Nobody can say whether the
// scoop is right, though it is only a gram over: it was weighed on a scale that shows
// whole grams.
//
// Figure: weighed-less-declared
//
// In the figure the scoop's box lies across the line of what its maker allows. The figs,
// on a scale of tenths, have almost no box at all, so their 120.1 g say far more. A
// coarse scale does not agree with everything; it cannot tell. That is why what it may be
// wrong by stands in the record beside the weight.
//
// # Who changed it, and when
//
// A typed name is not a seal: whoever can edit the file can edit the name. So a record
// can be signed with a key, the signature kept in a file of its own, and every later
// version holds the SHA-256 of the one before. The keys of those who may sign come by
// another way than the record: on paper, from their site.
func Example_seal() {
	// Keys for this page only: a real one is made once, from chance, and kept secret.
	stylist := ed25519.NewKeyFromSeed([]byte(strings.Repeat("stylist ", 4)))
	client := ed25519.NewKeyFromSeed([]byte(strings.Repeat("client  ", 4)))
	pinned := []ed25519.PublicKey{stylist.Public().(ed25519.PublicKey), client.Public().(ed25519.PublicKey)}

	first := day()
	firstSeal, err := first.Sign(stylist)
	if err != nil {
		fmt.Println(err)
		return
	}
	second, err := first.Next()
	if err != nil {
		fmt.Println(err)
		return
	}
	second.Cautions = append(second.Cautions, "the scoop stood under lamps: not eaten")
	secondSeal, err := second.Sign(client)
	if err != nil {
		fmt.Println(err)
		return
	}

	kept := []record.Revision{{Record: first, Signature: firstSeal}, {Record: second, Signature: secondSeal}}
	checks, err := record.Verify(kept, pinned...)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, c := range checks {
		fmt.Printf("revision %d: key %d, SHA-256 %.8s.., changed %v\n", i+1, c.Key, c.SHA256, c.Changed)
	}

	// Someone makes the syrup agree.
	forged := kept[0].Record
	forged.Items = slices.Clone(forged.Items)
	forged.Items[2].Weighed = &record.Weighed{Grams: 45, ErrorGrams: 0.8, LeastGrams: 10}
	_, err = record.Verify([]record.Revision{{Record: forged, Signature: firstSeal}, kept[1]}, pinned...)
	fmt.Println(err)
	changed, err := forged.Changes(first)
	fmt.Println("against the good copy:", changed, err)
	// Output:
	// revision 1: key 0, SHA-256 ae53eedd.., changed []
	// revision 2: key 1, SHA-256 af25e980.., changed [cautions previous revision]
	// honestplate: Revisions[0].Signature is of other bytes or by another key, want one that a pinned key made over exactly these bytes
	// against the good copy: [items[2].verdict items[2].weighed.grams] <nil>
}

// The forged weight has an honest verdict, since that follows from the number; it is the
// signature that no longer fits. What a chain cannot show is that its end is missing:
// send the last SHA-256 to somebody else, the client, on the day.
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
// A signature proves who signed and that nothing was changed since. It does not prove
// that what was signed is true, nor when: times in the file are claims.
//
// One picture, many crops. The record speaks of what lay on the table. If a later crop
// shows four of nine figs, or a retoucher adds a tenth, the picture has changed: write it
// under edits, in a new revision, and send that along.
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
// for about 95 %: JCGM 100:2008 (GUM), numbers from memory. The three verdicts: JCGM
// 106:2012 (from memory) and ILAC-G8:09/2019, table 1, as laboratories give it (tables
// conformity_examples and guard_bands). Canonical bytes: RFC 8785; signatures: RFC 8032
// (tables jcs_documents and ed25519_vectors). Terms of edits: C2PA specification 2.2,
// table 8, and the IPTC's digital source types (picture_actions, picture_source_terms).
// That arrangement can mislead: Regulation (EU) 1169/2011, article 7(4); the picture that
// was objected to: press accounts of 2010. That an
// advertised item has no stand-in and is planned as declared, that weights are written
// down as found, and that the record is kept on the set, is common practice, no source.
// The form of the file is this library's own. The day, its dishes, weights and names are
// invented.
func Example_sources() {}
