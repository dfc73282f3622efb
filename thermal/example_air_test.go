package thermal_test

import (
	"fmt"

	"example.org/honestplate/thermal"
)

// A sensor on the wall says 23 degC and a dew point of 12.
func ExampleAirFromDewPoint() {
	room, err := thermal.AirFromDewPoint(23, 12, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("RH %.1f %%\n", 100*room.RH)
	// Output:
	// RH 49.9 %
}
