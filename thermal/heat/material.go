package heat

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

// Aluminium is the wall of a can: 0.1 to 0.3 mm, give 0.0002 m (handbook values, from memory).
func Aluminium() Material {
	return Material{Conductivity: 200, Density: 2700, SpecificHeat: 900}
}
