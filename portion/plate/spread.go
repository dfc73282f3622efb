package plate

import (
	"math"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
)

// A Spread says how an item without shape is laid: grated, crumbled, sauced, evenly
// over the dish inside its free edge, so that its mass goes with the area.
type Spread struct {
	// Favour moves mass towards the camera as in [Strips]: at the near edge an area
	// carries (1+Favour) of the even share, at the far edge (1-Favour), linear between;
	// and it can mislead as there.
	Favour float64 `json:"favour,omitzero"`
	// Weights are further weights of the slices, as in [Strips].
	Weights []float64 `json:"weights,omitzero"`
}

// Lay shares the declared mass over the slices, in whole steps, in proportion to
// their area inside the free edge and the weights asked for, by largest remainder. Of
// equal answers the one that is its own mirror image, left and right of the camera, is
// taken. The Layout has no strips. Weigh out each slice's grams and spread them on it.
//
// Errors are those of [Strips.Lay].
func (s Spread) Lay(on Dish, d portion.Declaration) (Layout, error) {
	total, p, err := layable(on, d)
	if err != nil {
		return Layout{}, err
	}
	if err := checkFavour(p, s.Favour, s.Weights); err != nil {
		return Layout{}, err
	}
	l := Layout{Declaration: d, Dish: on, plate: p}
	weights := make([]float64, len(p.slices))
	for k := range weights {
		area, centre := p.covered(k)
		// The mean of a linear weight over an area is its value at the centre.
		weights[k] = p.weight(k, area, centre, s.Favour, s.Weights)
	}
	steps, ok := shareByParts(total, weights)
	if !ok {
		return Layout{}, check.Input("Weights", 0, "on every slice that is covered", "at least one above 0")
	}
	if m, ok := p.mirror(); ok {
		steps = mirrored(steps, total, weights, m)
	}
	l.carry(steps)
	return l, nil
}

// covered is the part of a slice inside the free edge: its area and its centre.
func (p plate) covered(k int) (area float64, centre Point) {
	a, b := p.inner()
	s := p.slices[k]
	if p.round {
		return math.Pi * a * a / float64(len(p.slices)), p.sectorCentre(k, a)
	}
	w, h := p.a/float64(p.columns), p.b/float64(p.rows)
	left, right := max(s.Centre.X-w, -a), min(s.Centre.X+w, a)
	near, far := max(s.Centre.Y-h, -b), min(s.Centre.Y+h, b)
	return math.Max(right-left, 0) * math.Max(far-near, 0), Point{(left + right) / 2, (near + far) / 2}
}
