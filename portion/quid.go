package portion

import (
	"fmt"
	"math"
	"strconv"
)

// An Ingredient is one part of a recipe by mass.
type Ingredient struct {
	Name  string  // for people; may be empty
	Grams float64 // as it goes in, g, 0 or more
}

// A QuidLine is one line of a quantitative ingredient declaration (QUID).
type QuidLine struct {
	Name    string  // of the ingredient
	Percent float64 // 100 x ingoing mass / finished mass; above 100 if the food lost moisture
	// Text is the percentage to a tenth, such as "62.5 %"; above 100 it is the mass
	// used for 100 g of the finished food, such as "115 g per 100 g".
	Text string
}

// Quid returns the percentages of ingredients in a finished food:
//
//	percent = 100 x ingoing mass / finished mass
//
// finished is the mass of the food as sold, g; 0 means nothing was lost or gained
// and it is the sum of the ingredients. After loss of moisture the percentages may
// sum to more than 100. Whether and how to declare is for local food law.
// Errors: InputError.
//
// Source: Regulation (EU) 1169/2011, annex VIII, 3 and 4 (read in German and
// Finnish authority texts); checked against printed examples.
func Quid(ingredients []Ingredient, finished float64) ([]QuidLine, error) {
	sum, err := sumOf(ingredients)
	if err != nil {
		return nil, err
	}
	if finished == 0 {
		finished = sum
	}
	if err := positive("finished mass", finished, "g"); err != nil {
		return nil, err
	}
	out := make([]QuidLine, len(ingredients))
	for i, g := range ingredients {
		p := 100 * (g.Grams / finished)
		if err := finite("percentage of "+g.Name, p, "%"); err != nil {
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
func sumOf(ingredients []Ingredient) (sum float64, err error) {
	if len(ingredients) == 0 {
		return 0, &InputError{"number of ingredients", 0, "", "at least 1"}
	}
	for i, g := range ingredients {
		if err := notNegative(ingredientField(i, g), g.Grams, "g"); err != nil {
			return 0, err
		}
		sum += g.Grams
	}
	return sum, positive("sum of the ingredients", sum, "g")
}

func ingredientField(i int, g Ingredient) string {
	if g.Name != "" {
		return "mass of " + g.Name
	}
	return fmt.Sprintf("mass of ingredient %d", i+1)
}

// WholePercents returns whole percentages that sum to exactly 100, by
// LargestRemainder: a tie goes to the larger mass, then to the earlier ingredient.
// Errors: InputError; RangeError as Method.Apportion.
func WholePercents(ingredients []Ingredient) ([]int64, error) {
	if _, err := sumOf(ingredients); err != nil {
		return nil, err
	}
	claims := make([]Claim, len(ingredients))
	for i, g := range ingredients {
		claims[i].Weight = g.Grams
	}
	return LargestRemainder.Apportion(100, claims)
}

// A Content is an ingredient's percentage of the declared mass.
type Content struct {
	Name    string  // for people; may be empty
	Percent float64 // 0..100
}

// ShareContents turns percentages into grams: the declared mass in whole steps,
// exactly, as near the percentages as the step allows. The percentages must sum to
// 100 (to 1e-9). Errors: those of Share; InputError for other percentages or a
// declaration without a mass.
func (d Declaration) ShareContents(contents []Content) (Shares, error) {
	if err := d.Validate(); err != nil {
		return Shares{}, err
	}
	if d.Grams == 0 {
		return Shares{}, &InputError{"declared mass (Grams)", 0, "g", "above 0 to share percentages of it"}
	}
	zones, sum := make([]Zone, len(contents)), 0.0
	for i, c := range contents {
		if err := within(fmt.Sprintf("percentage of ingredient %d %s", i+1, c.Name), c.Percent, 0, 100, "%", "a part of the whole"); err != nil {
			return Shares{}, err
		}
		zones[i] = Zone{Name: c.Name, Weight: c.Percent}
		sum += c.Percent
	}
	if len(contents) > 0 && math.Abs(sum-100) > 1e-9 {
		return Shares{}, &InputError{"sum of the percentages", sum, "%", "100"}
	}
	return d.Share(zones)
}

// AboutServings returns the number of servings to declare for a computed one, by
// the US rule: from 2 to 5 the nearest half, otherwise the nearest whole, to be
// introduced by "about". servings is above 0 and up to 1e6. Errors: InputError,
// RangeError.
//
// Source: US FDA, guide to nutrition labelling and education act requirements,
// attachment 6 (read).
func AboutServings(servings float64) (float64, error) {
	if err := positive("servings", servings, ""); err != nil {
		return 0, err
	}
	if err := within("servings", servings, 0, 1e6, "", "limit of this package"); err != nil {
		return 0, err
	}
	if servings >= 2 && servings <= 5 {
		return math.Round(2*servings) / 2, nil
	}
	return math.Round(servings), nil
}
