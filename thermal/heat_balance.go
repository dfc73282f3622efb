package thermal

import "math"

// A HeatBalance is the account of a computation, J; what came in is what is stored
// but for rounding.
type HeatBalance struct {
	Air     float64 `json:"air_j"`     // by convection, radiation and vapour through the outer wall
	Ends    float64 `json:"ends_j"`    // through the drink's surface, base and rim, or an empty glass's inside
	Light   float64 `json:"light_j"`   // absorbed
	Thawing float64 `json:"thawing_j"` // taken by melting frost, negative
	Stored  float64 `json:"stored_j"`  // gain of wall, drink and ice
}

// Error returns the imbalance as a share of all heat exchanged.
func (b HeatBalance) Error() float64 {
	all := math.Abs(b.Air) + math.Abs(b.Ends) + math.Abs(b.Light) + math.Abs(b.Thawing) + math.Abs(b.Stored)
	if all == 0 {
		return 0
	}
	return math.Abs(b.Air+b.Ends+b.Light+b.Thawing-b.Stored) / all
}
