package plate

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// A Scatter says how separate pieces are placed: evenly without a pattern, random but
// clear of each other, of the free edge and of the cuts.
type Scatter struct {
	Count    int     `json:"count,omitzero"`      // pieces, 1 to 1000
	Diameter float64 `json:"diameter_m,omitzero"` // of the circle that the largest piece needs, m, above 0
	Gap      float64 `json:"gap_m,omitzero"`      // least distance between two pieces' circles, m, 0 or more
	CutGap   float64 `json:"cut_gap_m,omitzero"`  // least distance between a piece's circle and a cut, m, 0 or more
	// OverCuts lets pieces lie on cuts; CutGap must then be 0.
	OverCuts bool   `json:"over_cuts,omitzero"`
	Seed     uint64 `json:"seed,omitzero"` // another seed places them otherwise, the same seed alike
}

// crowded says how many pieces found room. Another way of placing might fit more.
func (s Scatter) crowded(placed int) error {
	return &honestplate.RefusedError{
		Field: "Count", Kind: honestplate.ErrInfeasible,
		Reason: fmt.Sprintf("no room for %d pieces clear of edges, cuts and each other; room was found for %d", s.Count, placed),
		Advice: "place fewer or smaller pieces, allow smaller gaps, or take a larger dish",
	}
}

const maxSpots = 1000

// Place finds the spots. A single piece lies in the middle if it is clear there.
// Every slice is given its share of the pieces in proportion to its area, by largest
// remainder, and every spot keeps the distances asked for. The same Scatter gives the
// same spots everywhere.
//
// Errors: an [honestplate.InputError] for a dish or a scatter that makes no sense, a
// [honestplate.RefusedError] where room was not found.
func (s Scatter) Place(on Dish) (Placing, error) {
	p, err := plateOf(on)
	if err != nil {
		return Placing{}, err
	}
	if err := s.check(); err != nil {
		return Placing{}, err
	}
	at := []Point{{}}
	if s.Count > 1 || !s.clear(p, Point{}) {
		if at, err = s.scatter(p); err != nil {
			return Placing{}, err
		}
	}
	out := Placing{Scatter: s, Dish: on, Slices: slices.Clone(p.slices)}
	slices.SortStableFunc(at, p.farFirst)
	for i, x := range at {
		out.Spots = append(out.Spots, Spot{i + 1, x, p.sliceAt(x) + 1, -1})
	}
	return out, nil
}

func (s Scatter) check() error {
	switch err := cmp.Or(honestplate.Positive("Diameter", s.Diameter, "m"), honestplate.NotNegative("Gap", s.Gap, "m"),
		honestplate.NotNegative("CutGap", s.CutGap, "m")); {
	case s.Count < 1 || s.Count > maxSpots:
		return check.Input("Count", s.Count, "", fmt.Sprintf("1 to %d", maxSpots))
	case err != nil:
		return err
	case s.OverCuts && s.CutGap != 0:
		return check.Input("CutGap", s.CutGap, "m", "0 where pieces may lie over the cuts")
	}
	return nil
}

// roundoff is allowed for: a distance short by less counts as kept.
const roundoff = 1e-12

// clear reports whether a piece at x is clear of the edge and the cuts.
func (s Scatter) clear(p plate, x Point) bool {
	if p.inside(x) < s.Diameter/2-roundoff {
		return false
	}
	return s.OverCuts || p.fromCuts(x) >= s.Diameter/2+s.CutGap-roundoff
}
