package thermal_test

import (
	"fmt"

	"example.org/honestplate/thermal"
)

// Will a drink out of the refrigerator fog in this room? It does if it is colder than
// the dew point.
func ExampleAir_DewPointC() {
	for _, rh := range []float64{0.25, 0.35, 0.50, 0.65} {
		room := thermal.Air{TempC: 23, RH: rh}
		dew, err := room.DewPointC()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f %% RH: dew point %4.1f degC, a drink of 4 degC fogs: %t\n", 100*rh, dew, 4 < dew)
	}
	// Output:
	// 25 % RH: dew point  1.9 degC, a drink of 4 degC fogs: false
	// 35 % RH: dew point  6.7 degC, a drink of 4 degC fogs: true
	// 50 % RH: dew point 12.0 degC, a drink of 4 degC fogs: true
	// 65 % RH: dew point 16.1 degC, a drink of 4 degC fogs: true
}

// The room's humidity from a sling psychrometer, in a studio 1500 m up.
func ExampleAirFromWetBulb() {
	p, err := thermal.PressureAtAltitude(1500)
	if err != nil {
		fmt.Println(err)
		return
	}
	room, err := thermal.AirFromWetBulb(23, 15, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := room.HumidityRatio()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f kPa, RH %.0f %%, %.1f g of vapour per kg of dry air\n", p/1000, 100*room.RH, 1000*w)
	// Output:
	// 84.6 kPa, RH 45 %, 9.5 g of vapour per kg of dry air
}
