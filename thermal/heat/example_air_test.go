package heat_test

import (
	"fmt"

	"example.org/honestplate/thermal/heat"
)

// Will a drink out of the refrigerator fog in this room? It does if it is colder than
// the dew point.
func ExampleMoistAir_DewPointC() {
	for _, rh := range []float64{0.25, 0.35, 0.50, 0.65} {
		room := heat.MoistAir{TempC: 23, RH: rh}
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

// What a sling psychrometer reads in a studio 1500 m up, and how much vapour the air
// there holds.
func ExampleMoistAir_WetBulbC() {
	p, err := heat.PressureAtAltitude(1500)
	if err != nil {
		fmt.Println(err)
		return
	}
	room := heat.MoistAir{TempC: 23, RH: 0.45, PressurePa: p}
	wet, err := room.WetBulbC()
	if err != nil {
		fmt.Println(err)
		return
	}
	air, err := room.Properties()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f kPa, wet bulb %.1f degC, %.1f g of vapour per kg of dry air\n", p/1000, wet, 1000*air.HumidityRatio)
	// Output:
	// 84.6 kPa, wet bulb 15.0 degC, 9.4 g of vapour per kg of dry air
}

// Water's vapour from the freezer to the steam table: its pressure and the heat it
// gives up as frost or dew.
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
		latent, err := heat.LatentHeat(t)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3.0f degC: %5.0f Pa, %.0f kJ/kg\n", back, p, latent/1000)
	}
	// Output:
	// -18 degC:   125 Pa, 2838 kJ/kg
	//   4 degC:   813 Pa, 2491 kJ/kg
	//  23 degC:  2810 Pa, 2446 kJ/kg
	//  50 degC: 12350 Pa, 2382 kJ/kg
}
