package portion

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// A Declaration says how much of an item is declared: a mass, a count, or both
// (9 pieces weighing 120 g). Amounts are whole steps of the scale or whole
// pieces; Validate says what is wrong with one that is not. The numbers are read
// as the decimals they print as, to 15 digits, so 62 g is exactly 124 steps of
// 0.5 g. The zero Declaration declares nothing and is invalid.
//
// What must be declared, and how, is for local law on labelling, advertising and
// weights and measures, which this package does not replace.
type Declaration struct {
	Item       string  `json:"item,omitzero"`        // what it is, for people; may be empty
	Grams      float64 `json:"grams,omitzero"`       // declared mass, g, up to 1e9; 0 if only a count is declared
	StepGrams  float64 `json:"step_grams,omitzero"`  // step of the scale, g, 1e-6..1e6; 0 means 1 g
	MinusGrams float64 `json:"minus_grams,omitzero"` // how much less still agrees in the picture, g, up to Grams
	PlusGrams  float64 `json:"plus_grams,omitzero"`  // how much more still agrees, g
	Count      int     `json:"count,omitzero"`       // declared number of pieces; 0 if only a mass is declared
	Advertised bool    `json:"advertised,omitzero"`  // the advertised product: not to be replaced, thinned, exceeded or reduced
}

// Validate returns nil for a usable declaration. Otherwise: a
// [honestplate.InputError] for an amount that is negative, not finite or missing; a
// [honestplate.RangeError] for one beyond the limits of the type. For a mass that is not
// whole steps the error says which are next.
func (d Declaration) Validate() error {
	_, err := d.inSteps()
	return err
}

// inSteps returns the declared amount in whole steps of the scale if a mass is
// declared, otherwise in pieces. Errors are those of [Declaration.Validate].
func (d Declaration) inSteps() (int64, error) {
	err := cmp.Or(checkMass("Grams", d.Grams), checkStep("StepGrams", d.StepGrams),
		check.Bounded("MinusGrams", d.MinusGrams, d.Grams, "g", "the declared mass"), checkMass("PlusGrams", d.PlusGrams))
	switch {
	case err != nil:
		return 0, err
	case d.Count < 0:
		return 0, check.Input("Count", d.Count, "", "0 or more")
	case int64(d.Count) > maxSteps:
		return 0, check.Beyond("Count", float64(d.Count), maxSteps, "pieces", stepsReason)
	case d.Grams == 0 && d.Count == 0:
		return 0, check.Input("Grams", "0 g", "", "a mass, or a Count, above 0")
	case d.Grams == 0 && d.PlusGrams > 0:
		return 0, check.Input("PlusGrams", d.PlusGrams, "g", "0 where no mass is declared")
	case d.Grams == 0:
		return int64(d.Count), nil
	}
	return steps("Grams", d.Grams, d.step())
}

// step returns the scale's step.
func (d Declaration) step() decimal.Decimal { return decimal.Step(d.StepGrams) }

// What an advertised item must not suffer, for [Declaration.Allows].
const (
	Replace = "replaced" // by a stand-in
	Thin    = "thinned"  // or blended with anything else
	Exceed  = "exceeded" // more shown than is declared
	Reduce  = "reduced"  // less shown than is declared
)

// Allows returns nil if the item may be replaced, thinned, exceeded or reduced because
// it only dresses the picture, and for an advertised one an [honestplate.RefusedError]
// of the kind [honestplate.ErrAdvertised]. The rule is common practice, no source;
// advertising law is local and decides.
func (d Declaration) Allows(act string) error { return d.allows("Advertised", act) }

// allows is Allows for what a field asks for.
func (d Declaration) allows(field string, act string) error {
	if !d.Advertised {
		return nil
	}
	return &honestplate.RefusedError{
		Field: field, Kind: honestplate.ErrAdvertised,
		Reason: fmt.Sprintf("%s is the advertised product and must not be %s", cmp.Or(d.Item, defaultName), act),
		Advice: "show the real product in its declared amount",
	}
}
