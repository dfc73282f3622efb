package cold

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/internal/check"
)

// A Medium is what takes heat from food in a freezer: its temperature and how well
// it takes heat, wrapping and radiation included.
type Medium struct {
	Name    string  `json:"name,omitzero"`         // for people
	TempC   float64 `json:"temp_c,omitzero"`       // of the air, plate or ice, degC
	H       float64 `json:"h_w_m2k,omitzero"`      // heat transfer coefficient, W/(m2 K)
	HLow    float64 `json:"h_low_w_m2k,omitzero"`  // 95 % limits of H; 0 means H/1.5
	HHigh   float64 `json:"h_high_w_m2k,omitzero"` // 0 means H x 1.5
	Caution string  `json:"caution,omitzero"`      // what to mind, a sentence or two; may be empty
	Water   bool    `json:"water,omitzero"`        // it is water with ice, which keeps its temperature
}

// Check reports what is wrong with the medium: an [honestplate.InputError] for a coefficient
// that is not above 0 or limits that do not enclose it, a [honestplate.RangeError] for a
// temperature outside -90..30 degC.
func (m Medium) Check() error {
	if err := honestplate.InRange("TempC", m.TempC, food.ColdestC, 30, "degC", "range of the enthalpy curve of frozen food"); err != nil {
		return err
	}
	if err := honestplate.Positive("H", m.H, "W/(m2 K)"); err != nil {
		return err
	}
	low, high := m.limits()
	if !(low > 0 && low <= m.H) {
		return check.Input("HLow", m.HLow, "W/(m2 K)", "above 0, at most the likely value")
	}
	if !(high >= m.H) || honestplate.Finite("", high, "") != nil {
		return check.Input("HHigh", m.HHigh, "W/(m2 K)", "at least the likely value")
	}
	return nil
}

// Limits returns the 95 % limits of H with their defaults, or the error of Check.
func (m Medium) Limits() (low, high float64, err error) {
	if err := m.Check(); err != nil {
		return 0, 0, err
	}
	low, high = m.limits()
	return low, high, nil
}

func (m Medium) limits() (low, high float64) {
	low, high = m.HLow, m.HHigh
	if low == 0 {
		low = m.H / 1.5
	}
	if high == 0 {
		high = m.H * 1.5
	}
	return low, high
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
	return UsualFreezers{
		Home:           homeFreezer(),
		ServingCabinet: servingCabinet(),
		Deep:           deepFreezer(),
		Blast:          blastFreezer(),
		Plate:          plateFreezer(),
		DryIce:         dryIce(),
	}
}

func homeFreezer() Medium {
	return Medium{Name: "home freezer", TempC: -18, H: 8, HLow: 5, HHigh: 12,
		Caution: "Warm food in bulk warms the freezer; open it seldom."}
}

func servingCabinet() Medium {
	return Medium{Name: "serving cabinet", TempC: -13, H: 8, HLow: 5, HHigh: 12}
}

func deepFreezer() Medium {
	return Medium{Name: "deep freezer", TempC: -30, H: 8, HLow: 5, HHigh: 12,
		Caution: "Bare skin sticks to metal and food this cold: wear dry gloves."}
}

func blastFreezer() Medium {
	return Medium{Name: "blast freezer", TempC: -35, H: 28, HLow: 15, HHigh: 50,
		Caution: "Bare skin sticks to metal and food this cold: wear dry gloves. never shut anyone in."}
}

func plateFreezer() Medium {
	return Medium{Name: "plate freezer", TempC: -35, H: 180, HLow: 100, HHigh: 300,
		Caution: "Bare skin sticks to the plates: wear dry gloves."}
}

func dryIce() Medium {
	return Medium{Name: "dry ice", TempC: -78.5, H: 40, HLow: 20, HHigh: 80,
		Caution: "Dry ice burns skin at once and its gas suffocates: insulated gloves, eye protection, a ventilated room " +
			"(1 kg adds about 11,000 ppm CO2 to a closed 50 m3; the usual limit is 5,000), never a sealed container or a car " +
			"without ventilation, never in a drink that is served. Follow local rules."}
}
