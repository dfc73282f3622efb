package sharp

import (
	_ "embed"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/table"
)

// A Setting of a flash unit.
type Setting struct {
	Power    string   `json:"power"`    // share of full power, as it stands on the unit: "1/16"
	Exposure Exposure `json:"exposure"` // how long it burns there
	// Known says where the time is from: "read" at a maker or a measurement, "memory"
	// where it is recalled.
	Known string `json:"known"`
}

// A Unit is a flash with its settings from the brightest down.
type Unit struct {
	Name     string    `json:"name"`     // its kind, no maker
	Settings []Setting `json:"settings"` // from the brightest down
	Note     string    `json:"note"`     // what to know before trusting it
}

// Units lists flash units of the kinds that are about, none by its maker's name. A unit on
// the camera and one with a switch (IGBT) get shorter as they are turned down; studio
// packs that regulate by voltage get longer, and only their full power is known. Buy by
// the maker's t0.1.
func Units() []Unit { return table.Read[[]Unit](unitTable) }

//go:embed units.json
var unitTable []byte

// For returns the brightest setting whose light lasts no longer than seconds, its tail
// counted: [Camera.Freezes] says how long that is. It reads the settings that are given,
// and nothing between them. A unit that has none is refused ([honestplate.ErrInfeasible]).
func (u Unit) For(seconds float64) (Setting, error) {
	if err := honestplate.Positive("seconds", seconds, "s"); err != nil {
		return Setting{}, err
	}
	shortest := 0.0
	for i, s := range u.Settings {
		t, err := s.Exposure.Seconds()
		if err != nil {
			return Setting{}, honestplate.In(fmt.Sprintf("Settings[%d].Exposure", i), err)
		}
		if t.Likely <= seconds {
			return s, nil
		}
		if i == 0 || t.Likely < shortest {
			shortest = t.Likely
		}
	}
	if len(u.Settings) == 0 {
		return Setting{}, &honestplate.InputError{Field: "Settings", Got: "none", Want: "at least one setting"}
	}
	return Setting{}, &honestplate.RefusedError{Field: "seconds", Kind: honestplate.ErrInfeasible,
		Reason: fmt.Sprintf("the shortest light of the unit lasts 1/%.0f s, wanted is 1/%.0f s", 1/shortest, 1/seconds),
		Advice: "take a shorter flash, a lower magnification or a larger circle of confusion"}
}
