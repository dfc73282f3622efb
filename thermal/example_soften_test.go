package thermal_test

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/light"
)

// Three garnishes from the refrigerator under one tungsten lamp.
func ExampleSoftening() {
	room := thermal.Air{TempC: 23, RH: 0.5}
	key := light.Lamp{Source: light.Tungsten, Lux: 4000}
	for _, food := range []food.SoftFood{food.SoftFoods().WhippedCream, food.SoftFoods().Butter, food.SoftFoods().DarkChocolate} {
		piece := thermal.Softening{Food: food, Thickness: 0.03, StartC: honestplate.Some(6)}
		c, err := piece.Clock(room, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s softens %v", food.Name, c.Softens.Window)
		if len(c.Softens.Decides) > 0 {
			fmt.Printf("; %s decides", c.Softens.Decides[0].Input)
		}
		fmt.Println()
	}
	// Output:
	// whipped cream softens 2:26 (0:32..8:54); softening temperature decides
	// butter softens 16:55 (8:43..37:52); softening temperature decides
	// dark chocolate softens never (1:03:15..never); light decides
}

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
