package thermal_test

import (
	"fmt"

	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/heat"
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
	p, err := heat.PressureAtAltitude(1500)
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

// Water's vapour from the freezer to the steam table: its pressure, the heat it gives up
// as frost or dew, and the half per cent that ideal gases leave out.
func ExampleSaturationPressure() {
	for _, t := range []float64{-18, 4, 23, 50} {
		p, err := heat.SaturationPressure(t)
		if err != nil {
			fmt.Println(err)
			return
		}
		back, err := heat.SaturationTemperature(p)
		if err != nil {
			fmt.Println(err)
			return
		}
		heat, err := heat.LatentHeat(t)
		if err != nil {
			fmt.Println(err)
			return
		}
		f, err := thermal.EnhancementFactor(t, heat.StandardPressure)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3.0f degC: %5.0f Pa, %.0f kJ/kg, factor %.4f\n", back, p, heat/1000, f)
	}
	// Output:
	// -18 degC:   125 Pa, 2838 kJ/kg, factor 1.0044
	//   4 degC:   813 Pa, 2491 kJ/kg, factor 1.0040
	//  23 degC:  2810 Pa, 2446 kJ/kg, factor 1.0041
	//  50 degC: 12350 Pa, 2382 kJ/kg, factor 1.0053
}

// The same room said in four ways.
func ExampleAirFromDewPoint() {
	room, err := thermal.AirFromDewPoint(23, 12, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := room.HumidityRatio()
	if err != nil {
		fmt.Println(err)
		return
	}
	h, err := room.Enthalpy()
	if err != nil {
		fmt.Println(err)
		return
	}
	byRatio, err := thermal.AirFromHumidityRatio(23, w, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	byHeat, err := thermal.AirFromEnthalpy(h, w, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("RH %.1f %%, %.1f %%, %.1f %% at %.1f degC\n", 100*room.RH, 100*byRatio.RH, 100*byHeat.RH, byHeat.TempC)
	// Output:
	// RH 49.9 %, 49.9 %, 49.9 % at 23.0 degC
}
