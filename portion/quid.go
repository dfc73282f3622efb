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
	// Text is the percentage to a tenth, such as "62.5 %"; above 100 it is the mass
	// used for 100 g of the finished food, such as "115 g per 100 g".
	Text string `json:"text"`
}

// Quid returns the percentages of ingredients in a finished food:
//
//	percent = 100 x ingoing mass / finished mass
//
// finished is the mass of the food as sold, g; 0 means nothing was lost or gained
// and it is the sum of the ingredients. After loss of moisture the percentages may
// sum to more than 100. Whether and how to declare is for local food law.
// Errors: [honestplate.InputError].
//
// Source: Regulation (EU) 1169/2011, annex VIII, 3 and 4 (read in German and
// Finnish authority texts); checked against printed examples.
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
	out := make([]QuidLine, len(ingredients))
	for i, g := range ingredients {
		p := 100 * (g.Grams / finished)
		if err := honestplate.Finite(fmt.Sprintf("Ingredients[%d].Grams", i), p, "% of the finished mass"); err != nil {
			return nil, err
		}
		out[i] = QuidLine{g.Name, p, quidText(p)}
	}
	return out, nil
}

func quidText(percent float64) string {
	tenth := strconv.FormatFloat(math.Round(percent*10)/10, 'f', -1, 64)
	if percent > 100 {
		return tenth + " g per 100 g"
	}
	return tenth + " %"
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
