package portion

import (
	"fmt"
	"math"
)

// A Zone is a part of the dish that receives some of what is declared.
type Zone struct {
	Name     string  // for people; may be empty
	Weight   float64 // how much it should get relative to the others, 0 or more; 0 gets its minimum only
	MinGrams float64 // at least this much, g; between steps it counts as the next step up
	MaxGrams float64 // at most this much, g; 0 means no maximum; between steps, the next step down
	MinCount int     // at least so many pieces, where pieces are shared
	MaxCount int     // at most so many pieces, where pieces are shared; 0 means no maximum
}

// A Portion is what one zone gets.
type Portion struct {
	Name  string  // of the zone
	Steps int64   // whole steps of the scale, or pieces
	Grams float64 // exactly Steps times the step, to the nearest float64; 0 where pieces are shared
	Count int     // pieces; 0 where mass is shared
}

// Shares is a declared amount spread over zones. The steps sum to the declared
// amount exactly.
type Shares struct {
	Declaration Declaration // what was shared
	Portions    []Portion   // one a zone, in the order of the zones
}

// TotalSteps returns the sum of the portions: the declared amount.
func (s Shares) TotalSteps() int64 {
	var sum int64
	for _, p := range s.Portions {
		sum += p.Steps
	}
	return sum
}

// Share spreads the declared amount over the zones in proportion to their
// weights, within their minima and maxima, by LargestRemainder: the mass in whole
// steps if a mass is declared, otherwise the pieces. The total is exact and ties
// go to the larger weight, then to the earlier zone. Raising a zone's weight never
// lowers its share and never changes the total; between two other zones a step may
// change hands, which the divisor methods of ShareBy exclude.
//
// Errors: those of Validate; an InputError for no zones, for a bad weight or
// bound (named by its zone) or for bounds that no sharing can meet.
func (d Declaration) Share(zones []Zone) (Shares, error) {
	return d.ShareBy(LargestRemainder, zones)
}

// ShareBy is Share by a method of your choice.
func (d Declaration) ShareBy(m Method, zones []Zone) (Shares, error) {
	if err := d.Validate(); err != nil {
		return Shares{}, err
	}
	if d.Grams == 0 {
		return d.ShareCount(m, zones)
	}
	step := d.step()
	claims := make([]Claim, len(zones))
	for i, z := range zones {
		c := Claim{Weight: z.Weight}
		if z.MinGrams != 0 || z.MaxGrams != 0 {
			if err := gramBounds(i, z, step, &c); err != nil {
				return Shares{}, err
			}
		}
		claims[i] = c
	}
	total, err := steps("Grams", d.Grams, step)
	if err != nil {
		return Shares{}, err
	}
	got, err := m.apportion(total, claims, gramWords(zones, step))
	if err != nil {
		return Shares{}, err
	}
	s := Shares{d, make([]Portion, len(zones))}
	for i := range s.Portions {
		s.Portions[i] = Portion{Name: zones[i].Name, Steps: got[i], Grams: step.times(got[i])}
	}
	return s, nil
}

// ShareCount spreads the declared pieces over the zones, within MinCount and
// MaxCount, also where a mass is declared beside the count.
func (d Declaration) ShareCount(m Method, zones []Zone) (Shares, error) {
	if err := d.Validate(); err != nil {
		return Shares{}, err
	}
	if d.Count == 0 {
		return Shares{}, &InputError{"declared count (Count)", 0, "", "above 0 to share pieces"}
	}
	claims := make([]Claim, len(zones))
	for i, z := range zones {
		if z.MinCount < 0 || z.MaxCount < 0 {
			return Shares{}, &InputError{zoneField(i, z, "MinCount or MaxCount"), float64(min(z.MinCount, z.MaxCount)), "", "0 or more"}
		}
		claims[i] = Claim{z.Weight, int64(z.MinCount), int64(z.MaxCount)}
	}
	words := gramWords(zones, decimal{1, 0})
	words.unit = "pieces"
	got, err := m.apportion(int64(d.Count), claims, words)
	if err != nil {
		return Shares{}, err
	}
	s := Shares{d, make([]Portion, len(zones))}
	for i := range s.Portions {
		s.Portions[i] = Portion{Name: zones[i].Name, Steps: got[i], Count: int(got[i])}
	}
	return s, nil
}

// gramBounds turns a zone's bounds in grams into whole steps within them.
func gramBounds(i int, z Zone, step decimal, c *Claim) error {
	// The fields are named only in an error: naming a million would take longer
	// than sharing.
	if !(z.MinGrams >= 0) || math.IsInf(z.MinGrams, 1) {
		return notNegative(zoneField(i, z, "MinGrams"), z.MinGrams, "g")
	}
	if !(z.MaxGrams >= 0) || math.IsInf(z.MaxGrams, 1) {
		return notNegative(zoneField(i, z, "MaxGrams"), z.MaxGrams, "g")
	}
	if z.MaxGrams != 0 && z.MaxGrams < z.MinGrams {
		return &InputError{zoneField(i, z, "MaxGrams"), z.MaxGrams, "g", "at least MinGrams, " + plain(z.MinGrams) + " g"}
	}
	_, least, ok := floorCeil(z.MinGrams, step)
	if !ok {
		return &RangeError{zoneField(i, z, "MinGrams") + " in steps", z.MinGrams / step.times(1), 0, maxSteps, "steps", "limit of this package"}
	}
	c.Min = least
	if z.MaxGrams == 0 {
		return nil
	}
	most, _, ok := floorCeil(z.MaxGrams, step)
	if !ok {
		most = maxSteps // beyond any total: no maximum
	}
	if most == 0 && least == 0 {
		c.Weight = 0 // not one step fits: the zone gets nothing
		return nil
	}
	if most < least {
		return &InputError{zoneField(i, z, "MaxGrams"), z.MaxGrams, "g", "a whole step of " + plain(step.times(1)) + " g between MinGrams and MaxGrams"}
	}
	c.Max = most
	return nil
}

// gramWords speaks of zones, and of amounts in grams.
func gramWords(zones []Zone, step decimal) wording {
	return wording{func(i int, field string) string { return zoneField(i, zones[i], field) }, "g", step.times(1)}
}

// zoneField names a field of a zone for a message.
func zoneField(i int, z Zone, field string) string {
	if z.Name != "" {
		return fmt.Sprintf("%s of zone %q", field, z.Name)
	}
	return fmt.Sprintf("%s of zone %d", field, i+1)
}
