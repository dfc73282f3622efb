package plate

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// A Segment is the part of a strip that one slice carries.
type Segment struct {
	Strip int `json:"strip"` // number of the strip, from 1
	Slice int `json:"slice"` // number of the slice, from 1
	// Length is half of that from From to To, m: the strip lies half on either side of a
	// cut.
	Length float64 `json:"length_m"`
	Grams  float64 `json:"grams"` // whole steps
	From   Point   `json:"from"`  // where the segment begins
	To     Point   `json:"to"`    // and ends
	weight float64
}

// A Strip is one piece to weigh out, cut to length and lay.
type Strip struct {
	Number int     `json:"number"`   // from 1, in the order of placing: far side first, nearest last
	Length float64 `json:"length_m"` // m
	Grams  float64 `json:"grams"`    // whole steps: the sum of its segments
	path   path
}

// A Layout is a dish with a declared amount laid out on it. The strips' grams and
// the slices' grams each sum to the declared amount, exactly, in whole steps.
type Layout struct {
	Declaration portion.Declaration // what was laid
	Dish        Dish                // what it lies on
	Strips      []Strip             // in the order of placing; none for a Spread
	Slices      []Slice             // one a slice, in order of number
	Segments    []Segment           // by strip, in order along it
	// LeastHub is set where strips lie on each other near the centre, m: a
	// Strips.Hub of so much keeps them apart. 0 where they do not.
	LeastHub float64
	plate    plate
}

// MarshalJSON refuses: a Layout is a result that only Lay can make. Send what it was
// made from.
func (l Layout) MarshalJSON() ([]byte, error) {
	return nil, check.Input("Layout", "a result, not to be sent", "", "the strips, the dish and the declaration, and lay again")
}

const (
	maxCells     = 10_000 // of the table of strips and slices
	maxLaidSteps = 1e6    // of the declared mass
)

// layable checks what every layout needs: a mass in not too many steps, and a dish.
func layable(on Dish, d portion.Declaration) (total int64, p plate, err error) {
	if err = d.Validate(); err != nil {
		return 0, p, honestplate.In("Declaration", err)
	}
	if d.Grams == 0 {
		return 0, p, honestplate.In("Declaration", check.NoMass("to lay it out"))
	}
	total, _, _ = decimal.Around(d.Grams, decimal.Step(d.StepGrams)) // whole steps: it is valid
	if total > maxLaidSteps {
		return 0, p, check.Beyond("Declaration.Grams", float64(total), maxLaidSteps, "steps", "no crew weighs so finely: take a coarser step")
	}
	p, err = plateOf(on)
	return total, p, err
}

// checkFavour checks how slices are favoured.
func checkFavour(p plate, favour float64, weights []float64) error {
	if err := honestplate.InRange("Favour", favour, 0, 0.9, "", "the far edge must keep some of its share"); err != nil {
		return err
	}
	if len(weights) != 0 && len(weights) != len(p.slices) {
		return check.Input("Weights", len(weights), "weights", fmt.Sprintf("none, or one for each of the %d slices", len(p.slices)))
	}
	for i, w := range weights {
		if err := honestplate.InRange(fmt.Sprintf("Weights[%d]", i), w, 0, 1e9, "", "a ratio to the other slices"); err != nil {
			return err
		}
	}
	return nil
}

// weight is what a length or an area of a slice, with its middle at x, weighs in sharing.
func (p plate) weight(slice int, size float64, x Point, favour float64, weights []float64) float64 {
	size *= 1 - float64(favour*x.Y)/p.b
	if len(weights) > 0 {
		size *= weights[slice]
	}
	return size
}
