package thermal_test

import (
	"fmt"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

// One test glass settles what this crew calls beads: the next glass is known far better,
// and the beads of another kind of glass too.
func ExampleGlass_Observe() {
	room := thermal.Air{TempC: 23, RH: 0.50, Speed: 0.15}
	glass := thermal.Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 120,
		DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
	before, err := glass.Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	seen := []thermal.Seen{{Event: "beads", At: 14 * time.Minute, Within: time.Minute}}
	_, lesson, err := glass.Observe(thermal.Lesson{}, seen, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	next, err := glass.Knowing(lesson, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("beads before", before.Beads.Round(time.Minute))
	fmt.Println("the next one", next.Beads.Round(time.Minute))
	// Output:
	// beads before 13:00 (6:00..39:00)
	// the next one 14:00 (10:00..21:00)
}
