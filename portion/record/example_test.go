package record_test

import (
	"crypto/ed25519"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

func ExampleRecord_Statement() {
	r := record.Record{
		Revision: 1,
		Picture:  "Flatbread, pulled slice (invented)",
		Date:     "2026-10-05",
		Items: []record.Item{
			{
				Item: "smoked cheese", Advertised: true,
				Declared: portion.Amount{Grams: 62, StepGrams: 0.5, MinusGrams: 1, PlusGrams: 1},
				Planned:  &portion.Amount{Grams: 62, StepGrams: 0.5},
				Weighed:  &record.Weighed{Grams: 62, ErrorGrams: 0.5, Scale: "0.5 g scale"},
				How:      "laid over the cuts before baking",
			},
			{
				Item:     "ice",
				Declared: portion.Amount{Count: 4},
				StandIn:  &record.StandIn{What: "acrylic cubes", Reason: "background, melts in minutes"},
			},
		},
		Cautions: []string{"not to be eaten after the shoot"},
	}
	fmt.Print(r.Statement())
	// Output:
	// # How this picture was made
	//
	// **Flatbread, pulled slice (invented)**, 2026-10-05, revision 1 of this record
	//
	// | item | in the picture | declared | planned | weighed | against what is declared |
	// |---|---|---|---|---|---|
	// | smoked cheese | itself: the advertised product | 62 g (-1 +1 g) | 62 g | 62 g +- 0.5 g, 0.5 g scale | **agrees** (+0 g); over 99 % likely to conform |
	// | ice | stand-in: acrylic cubes | 4 pieces | no plan | not weighed | open |
	//
	// ## Stand-ins
	//
	// - acrylic cubes in place of ice: background, melts in minutes
	//
	// ## Placing and preparation
	//
	// - smoked cheese: laid over the cuts before baking
	//
	// ## Takes
	//
	// None recorded.
	//
	// ## What was done to the picture
	//
	// None recorded.
	//
	// ## Cautions
	//
	// - not to be eaten after the shoot
	//
	// ## Signed
	//
	// Not signed yet.
	//
	// This record documents the picture. Whether the picture may be used is for local advertising and weights-and-measures law.
}

// An advertised item cannot have a stand-in.
func ExampleRecord_Validate() {
	r := record.Record{Revision: 1, Picture: "x", Items: []record.Item{{
		Item: "cheese", Advertised: true, Declared: portion.Amount{Grams: 62},
		StandIn: &record.StandIn{What: "wax", Reason: "holds its shape"},
	}}}
	fmt.Println(r.Validate())
	// Output:
	// honestplate: Items[0].StandIn: cheese is the advertised product and must not be replaced; show the real product in its declared amount
}

// Reading is strict: a field that the schema does not have is named, not dropped.
func ExampleRead() {
	const text = `{
		"schema": "honestplate/record/2",
		"revision": 1,
		"picture": "plate of olives (invented)",
		"items": [{"item": "olives", "declared": {"count": 9}, "weighed": {"count": 9}, "verdict": "agrees"%s}]
	}`
	for _, more := range []string{"", `, "lens": "50 mm"`} {
		record, err := record.Read(strings.NewReader(fmt.Sprintf(text, more)))
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(record.Items[0].Weighed.Count, record.Items[0].Item)
	}
	// Output:
	// 9 olives
	// honestplate: items[0].lens is no field of the schema, or says nothing, want a field spelt as in the schema, and none that is 0, false, null or empty
}

// Two signed revisions of one record. The keys that may sign are pinned by whoever asks;
// these are made from text, for this example only.
func ExampleVerify() {
	stylist := ed25519.NewKeyFromSeed([]byte("32 bytes; a real key: from chance"[:32]))
	first := record.Record{Revision: 1, Picture: "plate of olives (invented)", Items: []record.Item{{Item: "olives"}}}
	second, err := first.Next()
	if err != nil {
		fmt.Println(err)
		return
	}
	second.Cautions = []string{"stones in the olives"}
	var kept []record.Revision
	for _, r := range []record.Record{first, second} {
		signature, err := r.Sign(stylist)
		if err != nil {
			fmt.Println(err)
			return
		}
		kept = append(kept, record.Revision{Record: r, Signature: signature})
	}
	pinned := stylist.Public().(ed25519.PublicKey)
	checks, err := record.Verify(kept, pinned)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(checks[1].Changed)
	kept[1].Record.Cautions = nil
	_, err = record.Verify(kept, pinned)
	fmt.Println(err)
	// Output:
	// [cautions previous revision]
	// honestplate: Revisions[1].Signature is of other bytes or by another key, want one that a pinned key made over exactly these bytes
}

// The sum of a picture's file goes into its take.
func ExampleFileSHA256() {
	sum, err := record.FileSHA256(strings.NewReader("abc"))
	fmt.Println(sum, err)
	// Output:
	// ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad <nil>
}

// A specification reads back as it was written; its sum names this version.
func ExampleSpecification_Ref() {
	file := `{"schema": "honestplate/specification/1", "product": "olives (invented)", "version": "7",
		"layers": [{"name": "olives", "declared": {"count": 9}}],
		"signed": {"name": "T. Invented", "date": "2026-01-10"}, "valid_until": "2026-12-31"}`
	var s record.Specification
	if err := json.Unmarshal([]byte(file), &s); err != nil {
		fmt.Println(err)
		return
	}
	ref, err := s.Ref()
	fmt.Printf("version %s, %.8s.., %v\n", ref.Version, ref.SHA256, err)
	fmt.Println(s.InForce("2027-01-01"))
	// Output:
	// version 7, 887bff89.., <nil>
	// honestplate: ValidUntil is 2026-12-31, want a day not before 2027-01-01: ask for the version in force
}
