package portion

import (
	"errors"
	"fmt"
	"strconv"
)

// maxSteps bounds every count of steps or pieces, so that no sum or product
// inside can overflow: a tonne on a scale of a microgram.
const maxSteps = 1_000_000_000_000

// Limits of masses, in grams: from a microgram balance to a thousand tonnes.
const (
	leastStepGrams = 1e-6
	mostStepGrams  = 1e6
	mostGrams      = 1e9
)

// ErrAdvertised marks what must not be done to an advertised item, for errors.Is.
var ErrAdvertised = errors.New("portion: the advertised product must be shown as it is")

// A Declaration says how much of an item is declared: a mass, a count, or both
// (9 pieces weighing 120 g). Amounts are whole steps of the scale or whole
// pieces; Validate says what is wrong with one that is not. The numbers are read
// as the decimals they print as, to 15 digits, so 62 g is exactly 124 steps of
// 0.5 g. The zero Declaration declares nothing and is invalid.
//
// What must be declared, and how, is for local law on labelling, advertising and
// weights and measures, which this package does not replace.
type Declaration struct {
	Item       string  // what it is, for people; may be empty
	Grams      float64 // declared mass, g, up to 1e9; 0 if only a count is declared
	StepGrams  float64 // step of the scale, g, 1e-6..1e6; 0 means 1 g
	MinusGrams float64 // how much less still agrees in the picture, g
	PlusGrams  float64 // how much more still agrees, g
	Count      int     // declared number of pieces; 0 if only a mass is declared
	Advertised bool    // the advertised product: not to be replaced, thinned, exceeded or reduced
}

// A StepError says that an amount is not a whole number of the scale's steps, and
// which neighbours are. errors.Is(err, ErrInput) holds.
type StepError struct {
	Field        string  // such as "Grams"
	Value        float64 // as given, g
	StepGrams    float64 // the step, g
	Below, Above float64 // the nearest allowed amounts, g
}

// Error says which amount it is and which amounts are next.
func (e *StepError) Error() string {
	return fmt.Sprintf("portion: %s is %s g, not a whole number of %s g steps; the nearest are %s g and %s g",
		e.Field, plain(e.Value), plain(e.StepGrams), plain(e.Below), plain(e.Above))
}

// Is reports that a StepError is an ErrInput.
func (e *StepError) Is(target error) bool { return target == ErrInput }

// plain prints all the digits of a number, so that a message never rounds away
// the very difference it complains of.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// Validate returns nil for a usable declaration. Otherwise: an InputError for an
// amount that is negative, not finite or missing; a RangeError for one beyond the
// limits of the type; a StepError for a mass that is not whole steps.
func (d Declaration) Validate() error {
	if err := notNegative("declared mass (Grams)", d.Grams, "g"); err != nil {
		return err
	}
	if err := notNegative("scale step (StepGrams)", d.StepGrams, "g"); err != nil {
		return err
	}
	if d.Count < 0 {
		return &InputError{"declared count (Count)", float64(d.Count), "", "0 or more"}
	}
	if int64(d.Count) > maxSteps {
		return &RangeError{"declared count (Count)", float64(d.Count), 0, maxSteps, "", "limit of this package"}
	}
	if d.Grams == 0 && d.Count == 0 {
		return &InputError{"declared amount (Grams or Count)", 0, "", "a mass or a count above 0"}
	}
	if d.StepGrams != 0 {
		if err := within("scale step (StepGrams)", d.StepGrams, leastStepGrams, mostStepGrams, "g", "limit of this package"); err != nil {
			return err
		}
	}
	if err := within("declared mass (Grams)", d.Grams, 0, mostGrams, "g", "limit of this package"); err != nil {
		return err
	}
	_, err := steps("Grams", d.Grams, d.step())
	return err
}

// Steps returns the declared amount in whole steps of the scale if a mass is
// declared, otherwise in pieces. Errors are those of Validate.
func (d Declaration) Steps() (int64, error) {
	if err := d.Validate(); err != nil {
		return 0, err
	}
	if d.Grams == 0 {
		return int64(d.Count), nil
	}
	return steps("Grams", d.Grams, d.step())
}

// step returns the scale's step; the zero value means 1 g.
func (d Declaration) step() decimal {
	if d.StepGrams == 0 {
		return decimal{1, 0}
	}
	return toDecimal(d.StepGrams)
}

// steps returns v grams as whole steps, or a StepError or RangeError naming the
// field. v must be finite and not negative.
func steps(field string, v float64, step decimal) (int64, error) {
	floor, ceil, ok := floorCeil(v, step)
	if !ok {
		return 0, &RangeError{field + " in steps", v / step.times(1), 0, maxSteps, "steps", "limit of this package"}
	}
	if floor != ceil {
		return 0, &StepError{field, v, step.times(1), step.times(floor), step.times(ceil)}
	}
	return floor, nil
}

// An Act is something one might do to an item for the picture.
type Act string

// What an advertised item must not suffer.
const (
	Replace Act = "replaced" // by a stand-in
	Thin    Act = "thinned"  // or blended with anything else
	Exceed  Act = "exceeded" // more shown than is declared
	Reduce  Act = "reduced"  // less shown than is declared
)

// An AdvertisedError says what was about to be done to an advertised item.
// errors.Is(err, ErrAdvertised) holds.
type AdvertisedError struct {
	Item string // the advertised item
	Act  Act    // what is refused
}

// Error names the item and what is refused.
func (e *AdvertisedError) Error() string {
	return fmt.Sprintf("portion: %s is the advertised product and must not be %s", oneLine(e.Item), e.Act)
}

// Is reports that an AdvertisedError is an ErrAdvertised.
func (e *AdvertisedError) Is(target error) bool { return target == ErrAdvertised }

// Allows returns an AdvertisedError if the item is advertised, and nil if it may
// be replaced, thinned, exceeded or reduced because it only dresses the picture.
// The rule is common practice, no source; advertising law is local and decides.
func (d Declaration) Allows(act Act) error {
	if d.Advertised {
		return &AdvertisedError{d.Item, act}
	}
	return nil
}
