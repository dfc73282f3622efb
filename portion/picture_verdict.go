package portion

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// JudgePicture compares a weighing ([Scale.Weigh], or the sum of many) with the
// declared mass and its tolerance, MinusGrams and PlusGrams, by the rule of
// [Limits.Decide] with a guard band of the expanded uncertainty. A weighing that is not
// sure enough, or below the scale's least load, cannot tell: it neither agrees nor
// differs. Without a tolerance nothing agrees, since no scale is exact. Reason gives the
// verdict in words, for the record.
//
// A package may be a little short and still be legal; the picture of an advertised
// product should be neither short nor over: where it differs, a
// [honestplate.RefusedError] of the kind [honestplate.ErrAdvertised] comes beside the
// verdict (Exceed or Reduce). A stand-in or garnish only gets the verdict. Common
// practice, no source; local advertising law decides.
//
// Errors besides: those of [Declaration.Validate]; [honestplate.InputError] where no mass is declared
// or the weighing makes no sense.
func (d Declaration) JudgePicture(w Weighing) (Finding, error) {
	if err := d.Validate(); err != nil {
		return Finding{}, err
	}
	if d.Grams == 0 {
		return Finding{}, check.NoMass("to compare a weighing with")
	}
	err := cmp.Or(honestplate.NotNegative("Weighing.Grams", w.Grams, "g"), honestplate.NotNegative("Weighing.Expanded", w.Expanded, "g"),
		honestplate.NotNegative("Weighing.LeastGrams", w.LeastGrams, "g"))
	if err != nil {
		return Finding{}, err
	}
	a := Amount{Grams: d.Grams, MinusGrams: d.MinusGrams, PlusGrams: d.PlusGrams}
	w.Standard = w.Expanded / 2
	f, err := a.Judge(&w, 0, honestplate.Optional{})
	if err != nil {
		return Finding{}, err
	}
	f.Name, f.Reason = d.Item, cmp.Or(f.Reason, "as declared")
	if f.Verdict == CannotTell {
		f.Reason = "cannot tell, " + f.Reason
	}
	f.Reason += fmt.Sprintf(": %.6g g weighed, +- %.2g g, against %s declared", w.Grams, w.Expanded, a.String())
	if f.Verdict != Differs {
		return f, nil
	}
	act := Exceed
	if w.Grams < d.Grams {
		act = Reduce
	}
	return f, d.allows("Weighing", act)
}

// JudgeCount compares the pieces in the picture with the declared count. For an
// advertised item more is an [honestplate.RefusedError] that says Exceed, fewer one that
// says Reduce; others may differ. Common practice, no source; local advertising law
// decides. Errors besides: those of [Declaration.Validate]; [honestplate.InputError] where no count is
// declared or pieces is negative.
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
