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

// The room's humidity from a sling psychrometer, at sea level.
func ExampleAirFromWetBulb() {
	room, err := thermal.AirFromWetBulb(23, 15, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	dew, err := room.DewPointC()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("RH %.0f %%, dew point %.0f degC\n", 100*room.RH, dew)
	// Output:
	// RH 42 %, dew point 9 degC
}
