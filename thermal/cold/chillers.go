package cold

import "example.org/honestplate"

// UsualChillers are what bottles and cans are chilled in.
type UsualChillers struct {
	// Refrigerator is still air at 4 degC, 7 W/(m2 K): published examples have 6 to 9
	// (read); 5..12 spans crowded and fanned ones.
	Refrigerator Medium
	// IcedWater is a bucket of water and ice at 0.5 degC around the bottle, 200
	// W/(m2 K): free convection of water near 0 degC on an upright face of 15 cm gives
	// 110 to 250 (see Surface.InWater of package heat), a turned bottle 1000; 100..600 (estimate).
	IcedWater Medium
	// SaltedIcedWater has a tenth of salt and stands at -5 degC (from memory).
	SaltedIcedWater Medium
}

// Chillers returns them.
func Chillers() UsualChillers {
	water := honestplate.Estimate{Low: 100, Likely: 200, High: 600}
	return UsualChillers{
		Refrigerator: Medium{Name: "refrigerator", TempC: 4, H: honestplate.Estimate{Low: 5, Likely: 7, High: 12}},
		IcedWater: Medium{Name: "iced water", TempC: 0.5, H: water, Water: true,
			Caution: "Glass from a hot room may crack in it: see Ware.Shock."},
		SaltedIcedWater: Medium{Name: "iced water with salt", TempC: -5, H: water, Water: true,
			Caution: "It freezes a soft drink within the hour, and bare skin sooner."},
	}
}
