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
