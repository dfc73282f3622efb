package plate

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/words"
)

// A Pattern is how strips lie on a dish.
type Pattern int

const (
	// AlongCuts lays one strip over every cut, along it, half on either side: the
	// zero value. Pulled apart after baking, every slice carries its halves.
	AlongCuts Pattern = iota
	// Across lays parallel strips across the dish and its cuts, evenly spaced.
	Across
)

var patternNames = [...]string{"along the cuts", "across"}

// String names the pattern.
func (p Pattern) String() string { return words.Of("Pattern", int(p), patternNames[:]) }

// MarshalText writes the pattern's name.
func (p Pattern) MarshalText() ([]byte, error) { return words.Text("Pattern", int(p), patternNames[:]) }

// UnmarshalText reads what MarshalText writes.
func (p *Pattern) UnmarshalText(text []byte) error {
	return words.Read(p, "Pattern", text, patternNames[:])
}

// Strips says how an item in strips of one width and thickness is laid, so that its
// mass goes with its length.
type Strips struct {
	Pattern Pattern `json:"pattern,omitzero"` // how they lie
	// Count is the number of strips. AlongCuts takes one a cut and wants 0 here. Up to
	// 1000.
	Count int `json:"count,omitzero"`
	// TurnDegrees turns Across anticlockwise as seen from above; at 0 it runs left to
	// right, parallel to the picture. -360..360.
	TurnDegrees float64 `json:"turn_degrees,omitzero"`
	// Hub is the radius about the centre that strips along the cuts of a Round keep
	// free, m.
	Hub float64 `json:"hub_m,omitzero"`
	// Width is the strip's width, m: strips side by side must have room for it. 0 takes
	// any room, and counts as 8 mm where strips along the cuts meet.
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

const (
	maxStrips  = 1000
	defaultBar = 0.008 // m, width of a strip where none is said
)

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
// Errors: those of [portion.Declaration.Validate]; a [honestplate.InputError] for a dish or
// strips that make no sense, for a declaration without a mass, and where nothing would
// carry the mass; a [honestplate.RangeError] outside the stated limits.
func (s Strips) Lay(on Dish, d portion.Declaration) (Layout, error) {
	total, p, err := layable(on, d)
	if err != nil {
		return Layout{}, err
	}
	if err := s.check(p); err != nil {
		return Layout{}, err
	}
	l := Layout{Declaration: d, Dish: on, LeastHub: s.leastHub(p), how: s, plate: p}
	l.place(s.paths(p))
	if len(l.Segments) == 0 {
		return Layout{}, check.Input("Pattern", s.Pattern, "", "one that lays strips: an uncut dish has no cuts to lay along")
	}
	if cells := len(l.Strips) * len(p.slices); cells > maxCells {
		return Layout{}, check.Beyond("Count", float64(cells), maxCells, "strips times slices", "larger ones take minutes")
	}
	if err := l.share(total); err != nil {
		return Layout{}, err
	}
	return l, nil
}

func (s Strips) check(p plate) error {
	a, b := p.inner()
	err := cmp.Or(s.checkCount(),
		honestplate.InRange("TurnDegrees", s.TurnDegrees, -360, 360, "degrees", "a full turn"),
		honestplate.NotNegative("Hub", s.Hub, "m"),
		honestplate.InRange("Width", s.Width, 0, 2*min(p.a, p.b), "m", "the dish"))
	switch {
	case err != nil:
		return err
	case s.TurnDegrees != 0 && s.Pattern != Across:
		return check.Input("TurnDegrees", s.TurnDegrees, "degrees", "0, for only strips across turn")
	case s.Hub > 0 && (s.Pattern != AlongCuts || !p.round):
		return check.Input("Hub", s.Hub, "m", "0, for only cuts from a centre leave one free")
	case s.Hub >= min(a, b):
		return check.Input("Hub", s.Hub, "m", fmt.Sprintf("less than the laid radius, %.6g m", min(a, b)))
	}
	if room := s.room(p); s.Width > room*(1+1e-9) {
		return check.Input("Width", s.Width, "m", fmt.Sprintf("at most %.3g m, or a smaller Count: strips must not lie on each other", room))
	}
	return checkFavour(p, s.Favour, s.Weights)
}

// room is the distance between the middles of strips side by side, m; those along cuts
// have it from the hub on.
func (s Strips) room(p plate) float64 {
	if s.Count < 2 || s.Pattern == AlongCuts {
		return math.Inf(1)
	}
	_, normal := s.directions()
	return 2 * p.extent(normal) / float64(s.Count)
}

// leastHub is the radius inside which strips along neighbouring cuts from a centre lie on
// each other, 0 where none do.
func (s Strips) leastHub(p plate) float64 {
	if s.Pattern != AlongCuts || !p.round {
		return 0
	}
	half, hub := cmp.Or(s.Width, defaultBar)/2, 0.0
	for i, c := range p.cuts {
		u, v := c.q, p.cuts[(i+1)%len(p.cuts)].q
		// The corners of two strips with square ends meet where each is half a width
		// from the line between the cuts.
		angle := math.Acos(max(-1, min(1, u.dot(v)/(u.norm()*v.norm()))))
		if len(p.cuts) > 1 {
			hub = max(hub, half/math.Tan(angle/2))
		}
	}
	if hub <= s.Hub*(1+1e-9) || hub < 1e-9 {
		return 0
	}
	return hub
}

func (s Strips) checkCount() error {
	switch {
	case s.Pattern < 0 || int(s.Pattern) >= len(patternNames):
		return check.Input("Pattern", s.Pattern, "", "AlongCuts or Across")
	case s.Pattern == AlongCuts && s.Count != 0:
		return check.Input("Count", s.Count, "", "0, for there is one strip a cut")
	case s.Pattern != AlongCuts && (s.Count < 1 || s.Count > maxStrips):
		return check.Input("Count", s.Count, "", fmt.Sprintf("1 to %d", maxStrips))
	}
	return nil
}
