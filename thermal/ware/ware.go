package ware

import (
	"cmp"
	"math"

	"example.org/honestplate/thermal/internal/check"
)

// A Ware is a kind of glassware, and what sudden differences of temperature it is
// known to stand.
type Ware struct {
	Name string `json:"name"` // for people
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
	return UsualGlassware{
		Annealed:     Ware{"annealed soda-lime glass", 30, 50},
		Tempered:     Ware{"tempered soda-lime glass", 200, 250},
		Borosilicate: Ware{"borosilicate glass", 90, 160},
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
// which it falls. What breaks is by the Ware's published limits, taken the same for
// heating, which is milder. Scratches, chips and thick bottoms break sooner. Wear eye
// protection, keep faces away, and warm or cool ware in steps; these are estimates, not
// guarantees.
func (w Ware) Shock(glassC, liquidC float64) (Shock, error) {
	if err := cmp.Or(check.Fields("glassware and what is poured into it",
		check.Number("GlassC", glassC, -100, 600, "degC"),
		check.Number("LiquidC", liquidC, -100, 300, "degC"),
		check.Number("LowK", w.LowK, 0, 1e4, "K"),
		check.Number("HighK", w.HighK, 0, 1e4, "K"),
	), check.Not(w.LowK > w.HighK, "LowK", w.LowK, "K", "at most the upper one")); err != nil {
		return Shock{}, err
	}
	d := math.Abs(glassC - liquidC)
	return Shock{DeltaK: glassC - liquidC, MayBreak: d >= w.LowK, Breaks: d >= w.HighK}, nil
}
