package portion_test

import (
	"fmt"
	"time"

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

// A scoop that holds three minutes, of which the stylist needs one, gives four takes
// of half a minute; each is good one time in three. Two good scoops are wanted.
func ExampleUnitRate() {
	rate, takes, err := portion.UnitRate(1.0/3, 3*time.Minute, time.Minute, 30*time.Second)
	if err != nil {
		fmt.Println(err)
		return
	}
	n, err := portion.Heroes{SuccessRate: rate, Wanted: 2}.Units()
	fmt.Printf("%d takes, %.0f %% a scoop, %d scoops, %v\n", takes, 100*rate, n, err)
	// Output:
	// 4 takes, 80 % a scoop, 4 scoops, <nil>
}
