package food_test

import (
	"fmt"

	"example.org/honestplate/thermal/food"
)

// How much ice from the freezer brings a quarter of a litre from 20 to 5 degC.
func ExampleIceFor() {
	grams, err := food.IceFor(250, food.Drink{}, 20, -10, 5)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f g\n", grams)
	// Output:
	// 42 g
}
