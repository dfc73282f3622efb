package ware_test

import (
	"fmt"

	"example.org/honestplate/thermal/ware"
)

// Boiling tea into a glass from the freezer?
func ExampleWare_Shock() {
	for _, w := range []ware.Ware{ware.Glassware().Annealed, ware.Glassware().Borosilicate, ware.Glassware().Tempered} {
		s, err := w.Shock(-18, 80)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s, %.0f K: %v\n", w.Name, -s.DeltaK, s)
	}
	// Output:
	// annealed soda-lime glass, 98 K: expect it to break
	// borosilicate glass, 98 K: may break
	// tempered soda-lime glass, 98 K: below the known limits
}
