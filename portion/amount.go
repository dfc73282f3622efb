package portion

import (
	"cmp"
	"fmt"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// An Amount is a mass, a count or both, each with its tolerance.
type Amount struct {
	Grams      float64 `json:"grams,omitzero"`       // g; 0 if only a count is given
	StepGrams  float64 `json:"step_grams,omitzero"`  // step of the scale, g; 0 means 1 g
	MinusGrams float64 `json:"minus_grams,omitzero"` // how much less still agrees, g; at most Grams
	PlusGrams  float64 `json:"plus_grams,omitzero"`  // how much more still agrees, g
	Count      int     `json:"count,omitzero"`       // pieces; 0 if only a mass is given
	MinusCount int     `json:"minus_count,omitzero"` // how many fewer still agree; at most Count
	PlusCount  int     `json:"plus_count,omitzero"`  // how many more still agree
}

// limits are those of the mass.
func (a Amount) limits(guard honestplate.Optional) Limits {
	return Limits{honestplate.Some(a.Grams - a.MinusGrams), honestplate.Some(a.Grams + a.PlusGrams), guard}
}

// Validate returns nil for an amount that can be judged against; else an
// [honestplate.InputError] or [honestplate.RangeError], as [Declaration.Validate].
func (a Amount) Validate() error {
	d := Declaration{Grams: a.Grams, StepGrams: a.StepGrams, MinusGrams: a.MinusGrams,
		PlusGrams: a.PlusGrams, Count: a.Count}
	switch err := d.Validate(); {
	case err != nil:
		return err
	case a.MinusCount < 0 || a.MinusCount > a.Count:
		return check.Input("MinusCount", a.MinusCount, "", "0 or more, at most Count")
	case a.PlusCount < 0 || int64(a.PlusCount) > maxSteps || a.Count == 0 && a.PlusCount > 0:
		return check.Input("PlusCount", a.PlusCount, "", "0 or more, and 0 where no count is declared")
	}
	return nil
}

// Judge says what was weighed and counted is worth against the amount, with a guard band
// as in [Limits]. nil means not weighed, pieces 0 not counted. Errors: those of
// [Limits.Decide]; [honestplate.InputError] for what is below 0.
func (a Amount) Judge(w *Weighing, pieces int, guard honestplate.Optional) (Finding, error) {
	f := Finding{Decision: Decision{Verdict: Agrees, Probability: 1}}
	if pieces < 0 {
		return f, check.Input("Pieces", pieces, "", "0 or more")
	}
	if w != nil {
		if err := cmp.Or(honestplate.NotNegative("Grams", w.Grams, "g"), honestplate.NotNegative("Standard", w.Standard, "g")); err != nil {
			return f, err
		}
		f.Found, f.Standard = w.Grams, w.Standard
	}
	if a.Count > 0 {
		f.Pieces = pieces
		switch {
		case pieces == 0:
			f.set(CannotTell, "pieces not counted")
		case pieces < a.Count-a.MinusCount:
			f.set(Differs, fmt.Sprintf("%d pieces too few", a.Count-a.MinusCount-pieces))
		case pieces > a.Count+a.PlusCount:
			f.set(Differs, fmt.Sprintf("%d pieces too many", pieces-a.Count-a.PlusCount))
		}
	}
	if a.Grams == 0 {
		return f, nil
	}
	if w == nil {
		f.set(CannotTell, "not weighed")
		return f, nil
	}
	f.Limits = a.limits(guard)
	d, err := f.Limits.Decide(w.Grams, w.Standard)
	if err != nil {
		return f, err
	}
	f.Probability = d.Probability
	g := f.Limits.band(w.Standard)
	narrow := a.MinusGrams+a.PlusGrams < 2*g
	switch {
	case d.Verdict == Differs && w.Grams < a.Grams:
		f.set(Differs, "short")
	case d.Verdict == Differs:
		f.set(Differs, "over")
	case w.Standard == 0:
		f.set(CannotTell, "what the weighing may be wrong by is not stated")
	case w.Grams < w.LeastGrams:
		f.set(CannotTell, fmt.Sprintf("below the least load of the scale, %g g", w.LeastGrams))
	case d.Verdict == CannotTell && a.MinusGrams+a.PlusGrams == 0:
		f.set(CannotTell, "no tolerance is stated, and no scale is exact")
	case d.Verdict == CannotTell && narrow:
		f.set(CannotTell,
			fmt.Sprintf("the tolerance of %.3g g is too narrow for a weighing good to +- %.2g g",
				a.MinusGrams+a.PlusGrams, g))
	case d.Verdict == CannotTell:
		f.set(CannotTell, fmt.Sprintf("nearer to a limit than the weighing is good to, +- %.2g g", g))
	}
	return f, nil
}

// String writes an amount with its tolerances: "9 pieces (-0 +1), 62 g (-1 +2 g)".
func (a Amount) String() string {
	var parts []string
	if a.Count > 0 {
		text := fmt.Sprintf("%d pieces", a.Count)
		if a.Count == 1 {
			text = "1 piece"
		}
		if a.MinusCount > 0 || a.PlusCount > 0 {
			text += fmt.Sprintf(" (-%d +%d)", a.MinusCount, a.PlusCount)
		}
		parts = append(parts, text)
	}
	if a.Grams > 0 || a.Count == 0 {
		text := decimal.Plain(a.Grams) + " g"
		if a.MinusGrams > 0 || a.PlusGrams > 0 {
			text += fmt.Sprintf(" (-%s +%s g)", decimal.Plain(a.MinusGrams), decimal.Plain(a.PlusGrams))
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}
