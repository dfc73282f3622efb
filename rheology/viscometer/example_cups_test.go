package viscometer_test

import (
	"fmt"
	"strings"

	"example.org/honestplate/rheology/viscometer"
)

// One liquid of 100 mm2/s in the cups that may be at hand: the numbers on them are not
// sizes.
func ExampleCupNamed() {
	for _, name := range []string{"ISO 4", "Ford 4", "Zahn 3", "Shell 3", "DIN 4"} {
		cup, err := viscometer.CupNamed(name)
		if err != nil {
			fmt.Println(err)
			return
		}
		t, err := cup.Time(100e-6)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v: %.0f s\n", cup, t.Seconds())
	}
	// Output:
	// ISO 2431, 4 mm: 75 s
	// Ford cup, ASTM D1200, number 4: 30 s
	// honestplate: Nu is 0.0001 m2/s, outside 0.00014625..0.00084825 m2/s (Zahn cup, ASTM D4212, number 3: take another cup, or another temperature)
	// Shell cup, ASTM D4212, number 3: 68 s
	// DIN 53211, 4 mm: 26 s
}

// The cups of one family, with what each can tell.
func ExampleCups() {
	for _, c := range viscometer.Cups() {
		if strings.HasPrefix(c.Name, "ISO") {
			low, high, err := c.Range()
			fmt.Printf("%v: %.0f to %.0f mm2/s, %v\n", c, low*1e6, high*1e6, err)
		}
	}
	// Output:
	// ISO 2431, 3 mm: 7 to 42 mm2/s, <nil>
	// ISO 2431, 4 mm: 34 to 135 mm2/s, <nil>
	// ISO 2431, 5 mm: 91 to 326 mm2/s, <nil>
	// ISO 2431, 6 mm: 188 to 684 mm2/s, <nil>
}
