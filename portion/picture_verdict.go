package portion

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// A PictureVerdict says whether what lies in front of the camera is what is
// declared.
type PictureVerdict struct {
	Difference  float64 `json:"difference_grams"`  // weighed less declared, g
	Uncertainty float64 `json:"uncertainty_grams"` // of the weighing, expanded, g
	// Agrees says that the difference is within the uncertainty.
	Agrees bool   `json:"agrees"`
	Reason string `json:"reason"` // in words, for the record
}

// JudgePicture compares a weighing (Scale.Weigh, or the sum of many) with the
// declared mass. A package may be a little short and still be legal; the picture
// of an advertised product should be neither short nor over: where the difference
// exceeds the expanded uncertainty, the error of an advertised item is an
// AdvertisedError (Exceed or Reduce) beside the verdict. A stand-in or garnish only
// gets the verdict. Common practice, no source; local advertising law decides.
//
// Errors besides: those of [Declaration.Validate]; [honestplate.InputError] where no
// mass is declared or the weighing makes no sense.
func (d Declaration) JudgePicture(w Weighing) (PictureVerdict, error) {
	if err := d.Validate(); err != nil {
		return PictureVerdict{}, err
	}
	if d.Grams == 0 {
		return PictureVerdict{}, noMass("to compare a weighing with")
	}
	err := cmp.Or(honestplate.NotNegative("Weighing.Grams", w.Grams, "g"), honestplate.NotNegative("Weighing.Expanded", w.Expanded, "g"))
	if err != nil {
		return PictureVerdict{}, err
	}
	v := PictureVerdict{Difference: w.Grams - d.Grams, Uncertainty: w.Expanded}
	const roundoff = 1e-9 // of subtracting decimals
	weighed := fmt.Sprintf("%.6g g weighed, +- %.2g g, against %s g declared", w.Grams, w.Expanded, decimal.Plain(d.Grams))
	var act string
	switch {
	case v.Difference > v.Uncertainty+roundoff:
		v.Reason, act = "over: "+weighed, Exceed
	case v.Difference < -v.Uncertainty-roundoff:
		v.Reason, act = "short: "+weighed, Reduce
	default:
		v.Agrees, v.Reason = true, "as declared: "+weighed
		return v, nil
	}
	return v, d.allows("Weighing", act)
}

// JudgeCount compares the pieces in the picture with the declared count. For an
// advertised item more is an AdvertisedError that says Exceed, fewer one that says
// Reduce; others may differ. Common practice, no source; local advertising law decides.
// Errors besides: those of [Declaration.Validate]; [honestplate.InputError] where no
// count is declared or pieces is negative.
func (d Declaration) JudgeCount(pieces int) error {
	switch err := d.Validate(); {
	case err != nil:
		return err
	case d.Count == 0:
		return check.Input("Count", 0, "", "a declared count above 0 to compare a count with")
	case pieces < 0:
		return check.Input("Pieces", pieces, "", "0 or more")
	case pieces > d.Count:
		return d.allows("Pieces", Exceed)
	case pieces < d.Count:
		return d.allows("Pieces", Reduce)
	}
	return nil
}
