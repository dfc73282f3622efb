package portion_test

import (
	"fmt"

	"example.org/honestplate/portion"
)

// Three good slices wanted at 95 %, six in ten come out: prepare eight. If that rate
// rests on ten takes only, prepare more.
func ExampleHeroes_Units() {
	known := portion.Heroes{SuccessRate: 0.6, Wanted: 3, Confidence: 0.95}
	n, err := known.Units()
	fmt.Println(n, err)
	judged := portion.Heroes{Takes: 10, Good: 6, Wanted: 3, Confidence: 0.95}
	n, err = judged.Units()
	fmt.Println(n, err)
	p, err := judged.Chance(8)
	fmt.Printf("with 8 units: %.0f %%, %v\n", 100*p, err)
	// Output:
	// 8 <nil>
	// 11 <nil>
	// with 8 units: 89 %, <nil>
}
