package thermal_test

import (
	"fmt"

	"example.org/honestplate/thermal"
)

// Three garnishes from the refrigerator under one tungsten lamp.
func ExampleSoftening() {
	room := thermal.Air{TempC: 23, RH: 0.5}
	key := thermal.Lamp{Source: thermal.Tungsten, Lux: 4000}
	for _, food := range []thermal.SoftFood{thermal.WhippedCream(), thermal.Butter(), thermal.DarkChocolate()} {
		piece := thermal.Softening{Food: food, Thickness: 0.03, StartC: 6}
		c, err := piece.Clock(room, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s softens %v", food.Name, c.Softens)
		if len(c.Decides) > 0 {
			fmt.Printf("; %s decides", c.Decides[0].Input)
		}
		fmt.Println()
	}
	// Output:
	// whipped cream softens 2:57 (0:25..9:32); softening temperature decides
	// butter softens 19:12 (9:00..36:45); softening temperature decides
	// dark chocolate softens never (47:49..never); softening temperature decides
}
