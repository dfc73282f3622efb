package heat

import (
	"example.org/honestplate"
)

// A Material is what a wall or a solid piece is made of. A Glass takes the zero value as
// SodaLime; nothing else does.
type Material struct {
	Conductivity float64 `json:"conductivity_w_mk"`   // W/(m K)
	Density      float64 `json:"density_kg_m3"`       // kg/m3
	SpecificHeat float64 `json:"specific_heat_j_kgk"` // J/(kg K)
}

// SodaLime is ordinary glass: 1.0 W/(m K), 2500 kg/m3, 840 J/(kg K) (typical
// textbook values, from memory).
func SodaLime() Material { return Material{1.0, 2500, 840} }

// Validate returns an [honestplate.InputError] for a property that is not above 0, a [honestplate.RangeError] for
// one that no matter has: outside 1e-4..1e9 W/(m K) (a great number stands for a perfect
// conductor), 0.01..1e5 kg/m3 or 1..1e6 J/(kg K).
func (m Material) Validate() error {
	for _, v := range [...]struct {
		name      string
		value     float64
		low, high float64
		unit      string
	}{
		{"Conductivity", m.Conductivity, 1e-4, 1e9, "W/(m K)"},
		{"Density", m.Density, 0.01, 1e5, "kg/m3"},
		{"SpecificHeat", m.SpecificHeat, 1, 1e6, "J/(kg K)"},
	} {
		if err := honestplate.Positive(v.name, v.value, v.unit); err != nil {
			return err
		}
		if err := honestplate.InRange(v.name, v.value, v.low, v.high, v.unit, "any matter"); err != nil {
			return err
		}
	}
	return nil
}
