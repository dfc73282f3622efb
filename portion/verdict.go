package portion

import "fmt"

// A System is a way of keeping packages honest.
type System int

// The systems. Local law says which applies.
const (
	AverageEU System = iota // average not below nominal, few short by more than the tolerable negative error, none by twice
	Minimum                 // no package below its nominal quantity
	AverageUS               // average not below the label, none short by more than the maximum allowable variation
)

// A Standing says where one package stands.
type Standing string

// The standings of a package, from best to worst.
const (
	Full       Standing = "at or above the declared amount"
	Tolerated  Standing = "short, within the tolerance"
	Defective  Standing = "short by more than the tolerance"
	Inadequate Standing = "short by more than twice the tolerance: not to be sold"
	Undecided  Standing = "short, but the tolerance is only recalled: look it up"
)

// A PackageVerdict is what one weighing says about one package.
type PackageVerdict struct {
	Standing  Standing // where the package stands
	Shortfall float64  // nominal less contents, g; below 0 if there is more
	Tolerance float64  // tolerable shortfall, g; 0 in the minimum system
	// Sure says that the uncertainty of the weighing cannot change the standing.
	Sure bool
}

// JudgePackage compares the contents of one package, weighed to plus or minus
// uncertainty, with its nominal quantity, all in grams. One package never proves a
// batch: for that see Lot. Errors: InputError, RangeError.
func (s System) JudgePackage(nominal, contents, uncertainty float64) (PackageVerdict, error) {
	if err := notNegative("contents", contents, "g"); err != nil {
		return PackageVerdict{}, err
	}
	if err := notNegative("uncertainty of the weighing", uncertainty, "g"); err != nil {
		return PackageVerdict{}, err
	}
	tolerance, known, err := s.tolerance(nominal)
	if err != nil {
		return PackageVerdict{}, err
	}
	at := func(contents float64) Standing { return s.standing(nominal-contents, tolerance, known) }
	v := PackageVerdict{Standing: at(contents), Shortfall: nominal - contents, Tolerance: tolerance}
	v.Sure = at(contents-uncertainty) == v.Standing && at(contents+uncertainty) == v.Standing
	return v, nil
}

// tolerance returns the tolerable shortfall and whether it was read in a source.
func (s System) tolerance(nominal float64) (grams float64, known bool, err error) {
	switch s {
	case AverageEU:
		grams, err = TolerableNegativeError(nominal)
		return grams, true, err
	case Minimum:
		return 0, true, positive("nominal quantity", nominal, "g")
	case AverageUS:
		v, err := MaximumAllowableVariation(nominal)
		return v.Grams, v.Read, err
	default:
		return 0, false, &InputError{"system", float64(s), "", "one of the systems of this package"}
	}
}

func (s System) standing(shortfall, tolerance float64, known bool) Standing {
	const dust = 1e-9 // of subtracting decimals
	switch {
	case shortfall <= dust:
		return Full
	case !known:
		return Undecided
	case shortfall <= tolerance+dust:
		return Tolerated
	case s == AverageEU && shortfall > 2*tolerance+dust:
		return Inadequate
	default:
		return Defective
	}
}

// A PictureVerdict says whether what lies in front of the camera is what is
// declared.
type PictureVerdict struct {
	Difference  float64 // weighed less declared, g
	Uncertainty float64 // of the weighing, expanded, g
	// Agrees says that the difference is within the uncertainty.
	Agrees bool
	Reason string // in words, for the record
}

// JudgePicture compares a weighing (Scale.Weigh, or the sum of many) with the
// declared mass. A package may be a little short and still be legal; the picture
// of an advertised product should be neither short nor over: where the difference
// exceeds the expanded uncertainty, the error of an advertised item is an
// AdvertisedError (Exceed or Reduce) beside the verdict. A stand-in or garnish only
// gets the verdict. Common practice, no source; local advertising law decides.
//
// Errors besides: those of Validate; InputError where no mass is declared or the
// weighing makes no sense.
func (d Declaration) JudgePicture(w Weighing) (PictureVerdict, error) {
	if err := d.Validate(); err != nil {
		return PictureVerdict{}, err
	}
	if d.Grams == 0 {
		return PictureVerdict{}, &InputError{"declared mass (Grams)", 0, "g", "above 0 to compare a weighing with"}
	}
	if err := notNegative("weighed mass", w.Grams, "g"); err != nil {
		return PictureVerdict{}, err
	}
	if err := notNegative("uncertainty of the weighing", w.Expanded, "g"); err != nil {
		return PictureVerdict{}, err
	}
	v := PictureVerdict{Difference: w.Grams - d.Grams, Uncertainty: w.Expanded}
	const dust = 1e-9
	weighed := fmt.Sprintf("%.6g g weighed, +- %.2g g, against %s g declared", w.Grams, w.Expanded, plain(d.Grams))
	var act Act
	switch {
	case v.Difference > v.Uncertainty+dust:
		v.Reason, act = "over: "+weighed, Exceed
	case v.Difference < -v.Uncertainty-dust:
		v.Reason, act = "short: "+weighed, Reduce
	default:
		v.Agrees, v.Reason = true, "as declared: "+weighed
		return v, nil
	}
	return v, d.Allows(act)
}

// JudgeCount compares the pieces in the picture with the declared count. For an
// advertised item more is an AdvertisedError that says Exceed, fewer one that says
// Reduce; others may differ. Common practice, no source; local advertising law
// decides. Errors besides: those of Validate; InputError where no count is declared
// or pieces is negative.
func (d Declaration) JudgeCount(pieces int) error {
	if err := d.Validate(); err != nil {
		return err
	}
	if d.Count == 0 {
		return &InputError{"declared count (Count)", 0, "", "above 0 to compare a count with"}
	}
	switch {
	case pieces < 0:
		return &InputError{"pieces in the picture", float64(pieces), "", "0 or more"}
	case pieces > d.Count:
		return d.Allows(Exceed)
	case pieces < d.Count:
		return d.Allows(Reduce)
	}
	return nil
}
