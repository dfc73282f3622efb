package cold

import "example.org/honestplate"

// A Medium is what takes heat from food in a freezer: its temperature and how well
// it takes heat, wrapping and radiation included.
type Medium struct {
	Name  string  `json:"name,omitzero"`   // for people
	TempC float64 `json:"temp_c,omitzero"` // of the air, plate or ice, degC, -90..30
	// H is the heat transfer coefficient, W/(m2 K), above 0. What is known to no better
	// than a guess is honestplate.Factor(h, 1.5).
	H       honestplate.Estimate `json:"h_w_m2k,omitzero"`
	Caution string               `json:"caution,omitzero"` // what to mind, a sentence or two; may be empty
	Water   bool                 `json:"water,omitzero"`   // it is water with ice, which keeps its temperature
}

// UsualFreezers are what portions are frozen in; change TempC to what your thermometer says.
type UsualFreezers struct {
	// Home is still air at -18 degC, 8 W/(m2 K): the value used for apples in a
	// household freezer by Cengel (read); 5..12 spans textbook still-air freezers (from
	// memory) and their radiation.
	Home Medium
	// ServingCabinet is a scooping cabinet at -13 degC with the air of a HomeFreezer.
	// Scooping is at -14..-12 degC (trade pages, read).
	ServingCabinet Medium
	// Deep is a chest or upright freezer at -30 degC with still air.
	Deep Medium
	// Blast is moving air at -35 degC: 17..40 W/(m2 K) in published examples
	// (Geankoplis 5.5-2 and 5.5-1, read), 15..50 in textbooks (from memory).
	Blast Medium
	// Plate is contact between plates at -35 degC; 100..300 W/(m2 K) after
	// packaging (textbook range, from memory). For flat packs only.
	Plate Medium
	// DryIce is food packed in carbon dioxide pellets at -78.5 degC. The coefficient is
	// an engineering estimate, no source: the gas the pellets give off keeps them from
	// touching, so it is nearer to a blast than to a plate.
	DryIce Medium
}

// Freezers returns them.
func Freezers() UsualFreezers {
	still := honestplate.Estimate{Low: 5, Likely: 8, High: 12}
	const gloves = "Bare skin sticks to metal and food this cold: wear dry gloves."
	return UsualFreezers{
		Home:           Medium{Name: "home freezer", TempC: -18, H: still, Caution: "Warm food in bulk warms the freezer; open it seldom."},
		ServingCabinet: Medium{Name: "serving cabinet", TempC: -13, H: still},
		Deep:           Medium{Name: "deep freezer", TempC: -30, H: still, Caution: gloves},
		Blast: Medium{Name: "blast freezer", TempC: -35, H: honestplate.Estimate{Low: 15, Likely: 28, High: 50},
			Caution: gloves + " Never shut anyone in."},
		Plate: Medium{Name: "plate freezer", TempC: -35, H: honestplate.Estimate{Low: 100, Likely: 180, High: 300},
			Caution: "Bare skin sticks to the plates: wear dry gloves."},
		DryIce: Medium{Name: "dry ice", TempC: -78.5, H: honestplate.Estimate{Low: 20, Likely: 40, High: 80},
			Caution: "Dry ice burns skin at once and its gas suffocates: insulated gloves, eye protection, a ventilated room " +
				"(1 kg adds about 11,000 ppm CO2 to a closed 50 m3; the usual limit is 5,000), never a sealed container or a car " +
				"without ventilation, never in a drink that is served. Follow local rules."},
	}
}
