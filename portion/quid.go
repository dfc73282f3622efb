package portion

import (
	"fmt"
	"math"
	"strconv"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// An Ingredient is one part of a recipe by mass.
type Ingredient struct {
	Name  string  `json:"name,omitzero"`  // for people; may be empty
	Grams float64 `json:"grams,omitzero"` // as it goes in, g, 0 or more
}

// A QuidLine is one line of a quantitative ingredient declaration (QUID).
type QuidLine struct {
	Name    string  `json:"name"`    // of the ingredient
	Percent float64 `json:"percent"` // 100 x ingoing mass / finished mass; above 100 if the food lost moisture
	// Text is the percentage to a tenth, such as "62.5 %"; where all that is declared
	// sums to more than 100 % it is the mass used for 100 g of the finished food, such as
	// "115 g per 100 g".
	Text string `json:"text"`
}

// Quid returns the percentages of ingredients in a finished food:
//
//	percent = 100 x ingoing mass / finished mass
//
// of those whose quantity is to be declared. finished is the mass of the food as sold,
// g; 0 means that they are all of it and nothing was lost or gained. Where, after loss of
// moisture, one percentage or their total exceeds 100, all lines give the mass used for
// 100 g of the finished food instead. Volatile ingredients (by what is left) and concentrated or dried ones (which may go by
// what they were made from) have rules of their own that are not kept here. Whether and
// how to declare is for local food law. Errors: [honestplate.InputError].
//
// Source: Regulation (EU) 1169/2011, annex VIII, 3 and 4 (read in German and Finnish
// authority texts; that the total decides: from memory); checked against printed
// examples.
func Quid(ingredients []Ingredient, finished float64) ([]QuidLine, error) {
	sum, err := sumOf("Ingredients", ingredients)
	if err != nil {
		return nil, err
	}
	if finished == 0 {
		finished = sum
	}
	if err := honestplate.Positive("Finished", finished, "g"); err != nil {
		return nil, err
	}
	out, total := make([]QuidLine, len(ingredients)), 0.0
	for i, g := range ingredients {
		p := 100 * (g.Grams / finished)
		if err := honestplate.Finite(fmt.Sprintf("Ingredients[%d].Grams", i), p, "% of the finished mass"); err != nil {
			return nil, err
		}
		out[i] = QuidLine{Name: g.Name, Percent: p}
		total += p
	}
	unit := " %"
	if total > 100*(1+1e-12) { // more than the dust of a sum
		unit = " g per 100 g"
	}
	for i := range out {
		out[i].Text = quidText(out[i].Percent) + unit
	}
	return out, nil
}

// quidText rounds to a tenth, but neither what is there to nothing nor a part to all.
func quidText(percent float64) string {
	for scale := 10.0; scale < 1e9; scale *= 10 {
		rounded := math.Round(percent*scale) / scale
		if (rounded != 0 || percent == 0) && (rounded != 100 || percent >= 100*(1-1e-12)) {
			return strconv.FormatFloat(rounded, 'f', -1, 64)
		}
	}
	return strconv.FormatFloat(percent, 'g', 3, 64)
}

// sumOf checks ingredients and returns their mass.
func sumOf(field string, ingredients []Ingredient) (sum float64, err error) {
	if len(ingredients) == 0 {
		return 0, check.Input(field, "empty", "", "at least one")
	}
	for i, g := range ingredients {
		if err := honestplate.NotNegative(fmt.Sprintf("%s[%d].Grams", field, i), g.Grams, "g"); err != nil {
			return 0, err
		}
		sum += g.Grams
	}
	return sum, honestplate.Positive(field, sum, "g in all")
}
