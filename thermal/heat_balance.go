package thermal

// A HeatBalance is the account of a computation, J; what came in is what is stored
// but for rounding.
type HeatBalance struct {
	Air     float64 `json:"air_j"`     // by convection, radiation and vapour through the outer wall
	Ends    float64 `json:"ends_j"`    // through the drink's surface, base and rim, or an empty glass's inside
	Light   float64 `json:"light_j"`   // absorbed
	Thawing float64 `json:"thawing_j"` // taken by melting frost, negative
	Stored  float64 `json:"stored_j"`  // gain of wall, drink and ice
}
