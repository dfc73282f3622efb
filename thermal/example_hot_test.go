package thermal_test

import (
	"fmt"

	"example.org/honestplate/thermal"
)

// How long is the pull? 150 g of cheese on a round of 28 cm, on a wooden board.
func ExampleCheese_Clock() {
	room := thermal.Air{TempC: 23, RH: 0.5}
	k, err := thermal.Cheese{Grams: 150, Diameter: 0.28}.Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("strings from", k.Opens)
	fmt.Println("until       ", quarters(k.Closes.Window))
	fmt.Println("decided by  ", k.Closes.Decides[0].Input)
	// Output:
	// strings from 0:06 (0:00..0:25)
	// until        4:00 (1:45..8:15)
	// decided by   stretch limit
}

// Soup at 85 degC in a wide bowl: how long above 60 degC, how long does it steam?
func ExampleHotDish_Clock() {
	room := thermal.Air{TempC: 23, RH: 0.5}
	k, err := thermal.HotDish{Grams: 350, Diameter: 0.16, StartC: 85}.Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("above 60 degC for", quarters(k.Limit.Window))
	fmt.Printf("steams to %.0f degC, %v\n", k.SteamC, quarters(k.SteamEnds.Window))
	// Output:
	// above 60 degC for 5:00 (3:45..6:15)
	// steams to 51 degC, 8:00 (3:00..14:45)
}

// Does it steam? The cooler and damper the room, the more.
func ExampleAir_SteamGM3() {
	for _, room := range []thermal.Air{{TempC: 26, RH: 0.3}, {TempC: 20, RH: 0.5}, {TempC: 16, RH: 0.7}} {
		s, err := room.SteamGM3(65, 1)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f degC, %.0f %% RH: %.1f g/m3 of droplets\n", room.TempC, 100*room.RH, s)
	}
	// Output:
	// 26 degC, 30 % RH: 2.3 g/m3 of droplets
	// 20 degC, 50 % RH: 3.7 g/m3 of droplets
	// 16 degC, 70 % RH: 4.8 g/m3 of droplets
}
