package plate

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
)

// Strips says how an item in strips of one width and thickness is laid, so that its
// mass goes with its length: one strip over every cut, along it, half on either side.
// Pulled apart after baking, every slice carries its halves.
type Strips struct {
	// Hub is the radius about the centre that strips on a Round keep free, m.
	Hub float64 `json:"hub_m,omitzero"`
	// Width is the strip's width, m, at most that of the dish; 0 counts as 8 mm. Strips
	// meet at the centre of a Round: [Layout.LeastHub] says where those of this width
	// lie on each other.
	Width float64 `json:"width_m,omitzero"`
	// Favour moves mass towards the camera: at the near edge of the dish a length
	// of strip carries (1+Favour) of the even share, at the far edge (1-Favour),
	// linear between. 0..0.9; 0 is even. It moves grams, it never adds any. Where a slice
	// is what is sold, the one in front then shows more than its buyer gets: a true total
	// does not keep an arrangement from misleading (Regulation (EU) 1169/2011, article
	// 7(4)). [Layout.SliceSold] says by how much; keep it in the record: see [example.org/honestplate/portion/record.Item].
	Favour float64 `json:"favour,omitzero"`
	// Weights are further weights of the slices, by slice number: a ratio the maker
	// has signed off, or 0 for a slice that gets nothing. Empty means all 1.
	Weights []float64 `json:"weights,omitzero"`
}

const defaultWidth = 0.008 // m, of a strip where none is said

// Lay lays the declared mass on the dish in strips and shares it, in whole steps of
// the scale, over the segments that the cuts make of them, in proportion to length
// and the weights asked for: what a strip carries on a slice, each strip and each
// slice are all within a step of their exact shares ([apportion.ControlledRounding]), and the
// total is exact. Of equally near answers the one that is its own mirror image, left and
// right of the camera, is taken, and of several such the one with the most even slices.
//
// Laid over the cuts before baking the item is still the declared amount: no more, no
// less.
//
// Errors: those of [portion.Declaration.Validate]; an [honestplate.InputError] for a dish or
// strips that make no sense, for an uncut dish, for a declaration without a mass, and
// where nothing would carry the mass; an [honestplate.RangeError] outside the stated limits.
func (s Strips) Lay(on Dish, d portion.Declaration) (Layout, error) {
	total, p, err := layable(on, d)
	if err != nil {
		return Layout{}, err
	}
	if err := s.check(p); err != nil {
		return Layout{}, err
	}
	l := Layout{Declaration: d, Dish: on, LeastHub: s.leastHub(p), plate: p}
	l.place(s)
	if len(l.Segments) == 0 {
		return Layout{}, check.Input("Dish.Slices", "uncut where strips may lie", "",
			"a cut inside the free edge and outside the hub")
	}
	if cells := len(l.Strips) * len(p.slices); cells > maxCells {
		return Layout{}, check.Beyond("Dish.Slices", float64(cells), maxCells, "strips times slices",
			"larger ones take minutes")
	}
	if err := l.share(total); err != nil {
		return Layout{}, err
	}
	return l, nil
}

func (s Strips) check(p plate) error {
	a, b := p.inner()
	err := cmp.Or(honestplate.NotNegative("Hub", s.Hub, "m"),
		honestplate.InRange("Width", s.Width, 0, 2*min(p.a, p.b), "m", "the dish"))
	switch {
	case err != nil:
		return err
	case s.Hub > 0 && !p.round:
		return check.Input("Hub", s.Hub, "m", "0, for only cuts from a centre leave one free")
	case s.Hub >= min(a, b):
		return check.Input("Hub", s.Hub, "m", fmt.Sprintf("less than the laid radius, %.6g m", min(a, b)))
	}
	return checkFavour(p, s.Favour, s.Weights)
}

// along is the middle line of the strip over a cut, outside the hub and inside the free
// edge; ok is false where the cut lies in the edge.
func (s Strips) along(p plate, cut path) (line path, ok bool) {
	a, b := p.inner()
	if p.round {
		d := cut.q.times(1 / cut.q.norm()) // the cut begins at the centre
		return path{d.times(s.Hub), d.times(a)}, true
	}
	inside := func(x Point) Point { return Point{max(-a, min(x.X, a)), max(-b, min(x.Y, b))} }
	return path{inside(cut.p), inside(cut.q)}, p.inside(cut.at(0.5)) > 0
}

// leastHub is the radius inside which strips along neighbouring cuts from a centre lie on
// each other, 0 where none do.
func (s Strips) leastHub(p plate) float64 {
	if !p.round {
		return 0
	}
	// The corners of two strips with square ends meet where each is half a width from the
	// line between the cuts.
	hub := cmp.Or(s.Width, defaultWidth) / 2 / math.Tan(p.sector/2)
	if hub <= s.Hub*(1+1e-9) || hub < 1e-9 {
		return 0
	}
	return hub
}
