package thermal_test

import (
	"fmt"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

// One test glass settles what this crew calls beads: how wide the windows of the next
// glass are, and as a share of what they were. Other words gain a little; the ice, of
// which beads say nothing, stays as it was, to the tenth that the 256 runs of a Clock are
// good for.
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
	for _, event := range []string{"opaque", "beads", "watered", "ice gone"} {
		was, is := before.Kept.Event(event).Window, next.Kept.Event(event).Window
		width := is.Latest.After - is.Earliest.After
		share := width.Seconds() / (was.Latest.After - was.Earliest.After).Seconds()
		fmt.Printf("%-8s %v, now %v: %.1f as wide\n", event, was.Round(time.Minute), is.Round(time.Minute), share)
	}
	// Output:
	// opaque   3:00 (1:00..9:00), now 3:00 (1:00..7:00): 0.8 as wide
	// beads    13:00 (6:00..39:00), now 14:00 (10:00..21:00): 0.3 as wide
	// watered  14:00 (8:00..24:00), now 14:00 (9:00..26:00): 1.1 as wide
	// ice gone 1:45:00 (1:20:00..2:21:00), now 1:45:00 (1:20:00..2:26:00): 1.1 as wide
}
