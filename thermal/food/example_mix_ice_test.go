package food_test

import (
	"fmt"

	"example.org/honestplate/thermal/food"
)

// Fifty grams of ice at its melting point in a tenth of a litre of warm water.
func ExampleMixIce() {
	m, err := food.MixIce(52, 0, 100, 40)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f degC, %.1f g of ice left in %.0f g of water\n", m.TempC, m.IceGrams, m.WaterGrams)
	// Output:
	// 0 degC, 1.8 g of ice left in 150 g of water
}
