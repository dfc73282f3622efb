package ware

import (
	"cmp"
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
)

// A Ware is a kind of glassware, and what sudden differences of temperature it is
// known to stand.
type Ware struct {
	Name string        `json:"name"` // for people
	Wall heat.Material `json:"wall"` // its Conductivity counts
	// YoungPa, Poisson and Expansion are the elastic modulus, Pa, Poisson's ratio and
	// the thermal expansion, 1/K.
	YoungPa   float64 `json:"young_pa"`
	Poisson   float64 `json:"poisson"`
	Expansion float64 `json:"expansion_1_k"`
	// LowK is the sudden difference from which it may break, HighK that from which it
	// should be expected to, K.
	LowK  float64 `json:"low_k"`
	HighK float64 `json:"high_k"`
}

// UsualGlassware is what glasses are made of.
type UsualGlassware struct {
	// Annealed is ordinary soda-lime glass, blown or pressed: it can break from 30 to
	// 50 K (a glassmaker's page, read; bottles are customarily tested at 42 K, from memory).
	Annealed Ware
	// Tempered is toughened soda-lime ware: 200 to 250 K by the usual design figure
	// (from memory; a maker claims 300), but a scratch or a chip undoes it.
	Tempered Ware
	// Borosilicate is laboratory and oven glass: it generally stands more than 90 K (a
	// test laboratory's page, read); thin ware 100..160 K by catalogues (from memory).
	Borosilicate Ware
}

// Glassware returns them.
func Glassware() UsualGlassware {
	lab := heat.Material{Conductivity: 1.1, Density: 2230, SpecificHeat: 830}
	return UsualGlassware{
		Annealed:     Ware{"annealed soda-lime glass", heat.SodaLime(), 70e9, 0.22, 9e-6, 30, 50},
		Tempered:     Ware{"tempered soda-lime glass", heat.SodaLime(), 70e9, 0.22, 9e-6, 200, 250},
		Borosilicate: Ware{"borosilicate glass", lab, 64e9, 0.2, 3.3e-6, 90, 160},
	}
}

// A Shock is the check of a sudden change of temperature.
type Shock struct {
	// DeltaK is the difference, K, positive for a hot glass cooled, the worse way: it
	// puts the surface in tension.
	DeltaK float64 `json:"delta_k"`
	// MayBreak is from the Ware's LowK on, Breaks from its HighK on.
	MayBreak bool `json:"may_break"`
	Breaks   bool `json:"breaks"`
	// StressPa is the greatest surface stress of a flawless plate, Pa, by the
	// thermoelastic formula; tension for a hot glass cooled. Practical strength of used
	// annealed glass is 20..50 MPa (from memory).
	StressPa float64 `json:"stress_pa"`
}

// String says what the Ware's limits say: "below the known limits", "may break" (temper
// the glass in steps, or change the ware) or "expect it to break" (do not).
func (s Shock) String() string {
	switch {
	case s.Breaks:
		return "expect it to break"
	case s.MayBreak:
		return "may break"
	}
	return "below the known limits"
}

// Shock checks glassware at glassC into which a liquid at liquidC is poured, or on
// which it falls. The wall is thickness m (0 means 3 mm) and the liquid's heat transfer
// coefficient h W/(m2 K) (0 means 1000, a pour).
//
//	stress = E alpha dT/(1 - nu) / (1.5 + 3.25/Bi - 0.5 exp(-16/Bi)), Bi = h thickness/(2 k)
//
// A plate suddenly cooled on its faces (Manson; Kingery 1955, Factors affecting thermal
// stress resistance of ceramic materials; from memory). What breaks is by the Ware's
// published limits alone, taken the same for heating, which is milder. Scratches, chips
// and thick bottoms break sooner. Wear eye protection, keep faces away, and warm or cool
// ware in steps; these are estimates, not guarantees.
func (w Ware) Shock(glassC, liquidC, thickness, h float64) (Shock, error) {
	thickness, h = cmp.Or(thickness, 0.003), cmp.Or(h, 1000)
	if err := cmp.Or(check.Fields("glassware and what is poured into it",
		check.Number("GlassC", glassC, -100, 600, "degC"),
		check.Number("LiquidC", liquidC, -100, 300, "degC"),
		check.Number("Thickness", thickness, 1e-4, 0.05, "m"),
		check.Number("H", h, 0.1, 1e5, "W/(m2 K)"),
		check.Number("Wall.Conductivity", w.Wall.Conductivity, 0.01, 1000, "W/(m K)"),
		check.Number("YoungPa", w.YoungPa, 1e6, 1e12, "Pa"),
		check.Number("Poisson", w.Poisson, 0, 0.5, ""),
		check.Number("Expansion", w.Expansion, 0, 1e-3, "1/K"),
		check.Number("LowK", w.LowK, 0, 1e4, "K"),
		check.Number("HighK", w.HighK, 0, 1e4, "K"),
	), check.Not(w.LowK > w.HighK, "LowK", w.LowK, "K", "at most the upper one")); err != nil {
		return Shock{}, err
	}
	s := Shock{DeltaK: glassC - liquidC}
	d := math.Abs(s.DeltaK)
	s.MayBreak, s.Breaks = d >= w.LowK, d >= w.HighK
	bi := h * thickness / 2 / w.Wall.Conductivity
	s.StressPa = w.YoungPa * w.Expansion * s.DeltaK / (1 - w.Poisson) / (1.5 + 3.25/bi - 0.5*math.Exp(-16/bi))
	return s, nil
}
