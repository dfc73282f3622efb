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
// Errors: those of [Declaration.Validate]; a [honestplate.InputError] for no zones and
// for a bad weight or bound; an [apportion.BoundsError] for bounds that no sharing can
// meet, which says how much to take off.
func (d Declaration) Share(zones []Zone) ([]Portion, error) {
	total, err := d.inSteps()
	if err != nil {
		return nil, err
	}
	if d.Grams == 0 {
		return d.shareCount(zones)
	}
	step := d.step()
	claims := make([]apportion.Claim, len(zones))
	for i, z := range zones {
		claims[i].Weight = z.Weight
		if z.MinGrams != 0 || z.MaxGrams != 0 {
			if err := z.boundsIn(i, step, &claims[i]); err != nil {
				return nil, err
			}
		}
	}
	got, err := apportion.LargestRemainder.Apportion(total, claims)
	if err != nil {
		return nil, inZones(err, step.Times(1))
	}
	out := make([]Portion, len(zones))
	for i := range out {
		out[i] = Portion{Name: zones[i].Name, Steps: got[i], Grams: step.Times(got[i])}
	}
	return out, nil
}

// shareCount spreads the declared pieces over the zones, within MinCount and
// MaxCount, also where a mass is declared beside the count.
func (d Declaration) shareCount(zones []Zone) ([]Portion, error) {
	if err := d.Validate(); err != nil {
		return nil, err
	}
	if d.Count == 0 {
		return nil, check.Input("Count", 0, "", "a declared count above 0 to share pieces")
	}
	claims := make([]apportion.Claim, len(zones))
	for i, z := range zones {
		for _, c := range [2]struct {
			name string
			n    int
		}{{"MinCount", z.MinCount}, {"MaxCount", z.MaxCount}} {
			if c.n < 0 {
				return nil, check.Input(fmt.Sprintf("Zones[%d].%s", i, c.name), c.n, "", "0 or more")
			}
		}
		claims[i] = apportion.Claim{Weight: z.Weight, Min: int64(z.MinCount), Max: int64(z.MaxCount)}
	}
	got, err := apportion.LargestRemainder.Apportion(int64(d.Count), claims)
	if err != nil {
		return nil, inZones(err, 0)
	}
	out := make([]Portion, len(zones))
	for i := range out {
		out[i] = Portion{Name: zones[i].Name, Steps: got[i], Count: int(got[i])}
	}
	return out, nil
}

// inZones puts an error about claims in the words of zones, whose units weigh so
// many grams, or are pieces.
func inZones(err error, stepGrams float64) error {
	var bounds *apportion.BoundsError
	if errors.As(err, &bounds) {
		return &apportion.BoundsError{Field: "Zones", Total: bounds.Total, Least: bounds.Least, Most: bounds.Most, StepGrams: stepGrams}
	}
	err = check.Rename(err, "Claims", "Zones")
	if stepGrams == 0 {
		return check.Rename(err, "Total", "Count")
	}
	return check.Rename(err, "Total", "Grams")
}

// boundsIn turns bounds in grams into whole steps within them.
func (z Zone) boundsIn(i int, step decimal.Decimal, c *apportion.Claim) error {
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
