package food_test

import (
	"fmt"

	"example.org/honestplate/thermal/food"
)

// Where each food goes soft and where it runs.
func ExampleSoftFood() {
	for _, f := range []food.SoftFood{
		food.SoftFoods().DarkChocolate, food.SoftFoods().MilkChocolate, food.SoftFoods().WhiteChocolate,
		food.SoftFoods().Butter, food.SoftFoods().WhippedCream, food.SoftFoods().SetCream,
	} {
		fmt.Printf("%s: soft at %g degC, runs at %g (%g..%g)\n", f.Name, f.SoftC.Likely, f.RunC.Likely, f.RunC.Low, f.RunC.High)
	}
	// Output:
	// dark chocolate: soft at 31 degC, runs at 33.8 (32.5..35)
	// milk chocolate: soft at 28.5 degC, runs at 32 (30..34)
	// white chocolate: soft at 27.5 degC, runs at 31 (29..33)
	// butter: soft at 18 degC, runs at 32 (28..35)
	// whipped cream: soft at 12 degC, runs at 20 (15..26)
	// whipped cream set with gelatin: soft at 20 degC, runs at 30 (25..35)
}
