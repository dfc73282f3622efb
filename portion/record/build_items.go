package record

import (
	"fmt"
	"math"
)

// Items returns the layers of a build as items of a record, all of them advertised:
// declared as specified, weighed as found and, where the state that was weighed is another
// than the declared one, counted back to it, which is said.
func (s Specification) Items(b Build) ([]Item, error) {
	found, err := s.Check(b)
	if err != nil {
		return nil, err
	}
	least, err := b.Scale.LeastLoad()
	if err != nil {
		return nil, err
	}
	items := make([]Item, len(s.Layers))
	for i, l := range s.Layers {
		f := found.Layers[i]
		items[i] = Item{Item: l.Name, Advertised: true, Declared: l.Declared}
		w := Weighed{Count: f.Pieces, Basis: l.Basis}
		if l.Declared.Grams > 0 {
			w.Grams, w.ErrorGrams = forPeople(f.Found, 2*f.Standard)
			w.LeastGrams = least
		}
		if was := b.Layers[i].Basis; was != "" && was != l.Basis {
			items[i].How = fmt.Sprintf("weighed %s, counted back to %s with a yield of %s", was, l.Basis, l.Yield)
		}
		if w.Grams > 0 || w.Count > 0 {
			items[i].Weighed = &w
		}
	}
	return items, nil
}

// forPeople rounds a mass and what it may be wrong by, which is rounded up, to two digits
// of the latter.
func forPeople(grams, wrongBy float64) (float64, float64) {
	places := max(0, 1-int(math.Floor(math.Log10(wrongBy))))
	if wrongBy == 0 || places > 12 {
		return grams, wrongBy
	}
	scale := math.Pow10(places)
	return math.Round(grams*scale) / scale, math.Ceil(wrongBy*scale*(1-1e-12)) / scale
}
