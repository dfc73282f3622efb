package portion

import (
	"errors"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// A Zone is a part of the dish that receives some of what is declared.
type Zone struct {
	Name     string  `json:"name,omitzero"`      // for people; may be empty
	Weight   float64 `json:"weight,omitzero"`    // how much it should get relative to the others, 0 or more; 0 gets its minimum only
	MinGrams float64 `json:"min_grams,omitzero"` // at least this much, g; between steps it counts as the next step up
	MaxGrams float64 `json:"max_grams,omitzero"` // at most this much, g; 0 means no maximum; between steps, the next step down
	MinCount int     `json:"min_count,omitzero"` // at least so many pieces, where pieces are shared
	MaxCount int     `json:"max_count,omitzero"` // at most so many pieces, where pieces are shared; 0 means no maximum
}

// A Portion is what one zone gets.
type Portion struct {
	Name  string  `json:"name"`  // of the zone
	Steps int64   `json:"steps"` // whole steps of the scale, or pieces
	Grams float64 `json:"grams"` // exactly Steps times the step, to the nearest float64; 0 where pieces are shared
	Count int     `json:"count"` // pieces; 0 where mass is shared
}

// Share spreads the declared amount over the zones in proportion to their weights,
// within their minima and maxima: the mass in whole steps if a mass is declared,
// otherwise the pieces. Each zone is owed clamp(k weight, minimum, maximum) with one k
// for all ([apportion.Ideal]), and gets that rounded by [apportion.LargestRemainder],
// less than a step from it. The total is exact and ties go to the larger weight, then to
// the earlier zone. Raising a zone's weight never lowers its share and never changes the
// total; between two other zones a step may change hands, which the divisor methods of
// [apportion.Method] exclude.
//
// Errors: those of [Declaration.Validate]; an [honestplate.InputError] for no zones and
// for a bad weight or bound; an [apportion.BoundsError] for bounds that no sharing can
// meet, which says how much to take off.
func (d Declaration) Share(zones []Zone) ([]Portion, error) {
	total, err := d.inSteps()
	if err != nil {
		return nil, err
	}
	step := d.step()
	claims := make([]apportion.Claim, len(zones))
	for i, z := range zones {
		claims[i].Weight = z.Weight
		if d.Grams == 0 {
			err = z.pieceBounds(i, &claims[i])
		} else if z.MinGrams != 0 || z.MaxGrams != 0 {
			err = z.massBounds(i, step, &claims[i])
		}
		if err != nil {
			return nil, err
		}
	}
	got, err := apportion.LargestRemainder.Apportion(total, claims)
	if err != nil {
		return nil, d.inZones(err)
	}
	out := make([]Portion, len(zones))
	for i, n := range got {
		if out[i] = (Portion{Name: zones[i].Name, Steps: n}); d.Grams == 0 {
			out[i].Count = int(n)
		} else {
			out[i].Grams = step.Times(n)
		}
	}
	return out, nil
}

// inZones puts an error about claims in the words of zones.
func (d Declaration) inZones(err error) error {
	units, stepGrams := "Count", 0.0
	if d.Grams > 0 {
		units, stepGrams = "Grams", d.step().Times(1)
	}
	var bounds *apportion.BoundsError
	if errors.As(err, &bounds) {
		return &apportion.BoundsError{Field: "Zones", Total: bounds.Total, Least: bounds.Least, Most: bounds.Most, StepGrams: stepGrams}
	}
	return check.Rename(check.Rename(err, "Claims", "Zones"), "Total", units)
}

// pieceBounds takes over bounds in pieces.
func (z Zone) pieceBounds(i int, c *apportion.Claim) error {
	switch {
	case z.MinCount < 0:
		return check.Input(fmt.Sprintf("Zones[%d].MinCount", i), z.MinCount, "", "0 or more")
	case z.MaxCount < 0:
		return check.Input(fmt.Sprintf("Zones[%d].MaxCount", i), z.MaxCount, "", "0 or more")
	}
	c.Min, c.Max = int64(z.MinCount), int64(z.MaxCount)
	return nil
}

// massBounds turns bounds in grams into whole steps within them.
func (z Zone) massBounds(i int, step decimal.Decimal, c *apportion.Claim) error {
	// The fields are named only in an error: naming a million would take longer
	// than sharing.
	field := func(name string) string { return fmt.Sprintf("Zones[%d].%s", i, name) }
	if !(z.MinGrams >= 0) || math.IsInf(z.MinGrams, 1) {
		return honestplate.NotNegative(field("MinGrams"), z.MinGrams, "g")
	}
	if !(z.MaxGrams >= 0) || math.IsInf(z.MaxGrams, 1) {
		return honestplate.NotNegative(field("MaxGrams"), z.MaxGrams, "g")
	}
	if z.MaxGrams != 0 && z.MaxGrams < z.MinGrams {
		return check.Input(field("MaxGrams"), z.MaxGrams, "g", "at least MinGrams, "+decimal.Plain(z.MinGrams)+" g")
	}
	_, low, ok := decimal.Around(z.MinGrams, step)
	if !ok {
		return check.Beyond(field("MinGrams"), z.MinGrams/step.Times(1), maxSteps, "steps", stepsReason)
	}
	c.Min = low
	if z.MaxGrams == 0 {
		return nil
	}
	high, _, ok := decimal.Around(z.MaxGrams, step)
	if !ok {
		high = maxSteps // beyond any total: no maximum
	}
	if high == 0 && low == 0 {
		c.Weight = 0 // not one step fits: the zone gets nothing
		return nil
	}
	if high < low {
		return check.Input(field("MaxGrams"), z.MaxGrams, "g", "a whole step of "+decimal.Plain(step.Times(1))+" g between MinGrams and MaxGrams")
	}
	c.Max = high
	return nil
}
