package portion_test

import (
	"fmt"
	"strings"

	"example.org/honestplate/portion"
)

func ExampleRecord_Statement() {
	r := portion.Record{
		Picture: "Flatbread, pulled slice (invented)",
		Date:    "2026-10-05",
		Items: []portion.RecordItem{
			{
				Item: "smoked cheese", Advertised: true,
				Declared: portion.Amount{Grams: 62, StepGrams: 0.5},
				Planned:  &portion.Amount{Grams: 62, StepGrams: 0.5},
				Weighed:  &portion.Weighed{Grams: 62, ErrorGrams: 0.5, Scale: "0.5 g scale"},
				How:      "laid over the cuts before baking",
			},
			{
				Item:     "ice",
				Declared: portion.Amount{Count: 4},
				StandIn:  &portion.StandIn{What: "acrylic cubes", Reason: "background, melts in minutes"},
			},
		},
		Cautions: []string{"not to be eaten after the shoot"},
	}
	fmt.Print(r.Statement())
	// Output:
	// # How this picture was made
	//
	// **Flatbread, pulled slice (invented)**, 2026-10-05
	//
	// | item | in the picture | declared | planned | weighed | weighed minus declared |
	// |---|---|---|---|---|---|
	// | smoked cheese | itself: the advertised product | 62 g | 62 g | 62 g +- 0.5 g (0.5 g scale) | 0 g |
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
	r := portion.Record{Picture: "x", Items: []portion.RecordItem{{
		Item: "cheese", Advertised: true, Declared: portion.Amount{Grams: 62},
		StandIn: &portion.StandIn{What: "wax", Reason: "holds its shape"},
	}}}
	fmt.Println(r.Validate())
	// Output:
	// honestplate: Items[0].StandIn: cheese is the advertised product and must not be replaced; show the real product in its declared amount
}

// Reading is strict: a field that the schema does not have is named, not dropped.
func ExampleReadRecord() {
	const text = `{
		"schema": "honestplate/record/1",
		"picture": "plate of olives (invented)",
		"items": [{"item": "olives", "declared": {"count": 9}, "weighed": {"count": 9}%s}]
	}`
	for _, more := range []string{"", `, "lens": "50 mm"`} {
		record, err := portion.ReadRecord(strings.NewReader(fmt.Sprintf(text, more)))
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(record.Items[0].Weighed.Count, record.Items[0].Item)
	}
	// Output:
	// 9 olives
	// honestplate: items[0].lens is unknown, want a field that the schema has
}
