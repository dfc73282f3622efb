package portion

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// A Lot is a batch of packages of one nominal quantity, to be judged by a sample.
type Lot struct {
	System      System  // AverageEU (zero value), Minimum or AverageUS
	Nominal     float64 // nominal quantity of a package, g, above 0
	Size        int     // packages in the batch; 1 or more
	Destructive bool    // weighing the contents destroys the package
}

// A Plan says how many packages to take and how many defective ones decide.
type Plan struct {
	First, Second int // packages of the first sample and of a second, 0 if there is none
	// The first sample is accepted with up to FirstAccept defective packages and
	// rejected from FirstReject on; between them the second is taken and both
	// together are judged by BothAccept.
	FirstAccept, FirstReject, BothAccept int
	MeanOf                               int // packages the test of the average uses
}

// Plan returns the EU reference test for the batch: double sampling of 30 + 30
// packages from batches of 100 to 500, 50 + 50 to 3200, 80 + 80 above; where
// contents are destroyed, 20. Of a batch below 100 every package is weighed, and
// none may be defective beyond 1 in 40.
//
// Errors: InputError; RangeError for a system that has no plan here: inspectors in
// the US take their plan from NIST Handbook 133.
//
// Source: Directive 76/211/EEC, annex II, 2.2, and UK SI 2006/659, schedule 2; read.
func (l Lot) Plan() (Plan, error) {
	if err := l.check(); err != nil {
		return Plan{}, err
	}
	if l.System != AverageEU {
		return Plan{}, &RangeError{"system", float64(l.System), float64(AverageEU), float64(AverageEU), "", "Directive 76/211/EEC, annex II"}
	}
	switch {
	case l.Size < 100:
		few := l.Size / 40
		return Plan{First: l.Size, FirstAccept: few, FirstReject: few + 1, MeanOf: l.Size}, nil
	case l.Destructive:
		return Plan{First: 20, FirstAccept: 1, FirstReject: 2, MeanOf: 20}, nil
	case l.Size <= 500:
		return Plan{30, 30, 1, 3, 4, 30}, nil
	case l.Size <= 3200:
		return Plan{50, 50, 2, 5, 6, 50}, nil
	default:
		return Plan{80, 80, 3, 7, 8, 50}, nil
	}
}

func (l Lot) check() error {
	if err := positive("nominal quantity (Nominal)", l.Nominal, "g"); err != nil {
		return err
	}
	if l.Size < 1 {
		return &InputError{"batch size (Size)", float64(l.Size), "", "1 or more"}
	}
	_, _, err := l.System.tolerance(l.Nominal)
	return err
}

// A LotVerdict is what a sample says about its batch.
type LotVerdict struct {
	Mean, StdDev float64 // of the contents, g; StdDev is 0 for one package
	// Limit is the least mean that passes: nominal - k s, with k from Student's
	// t for the sample's size, or the nominal quantity where all were weighed.
	Limit       float64
	Defective   int // packages short by more than the tolerance
	Inadequate  int // packages short by more than twice the tolerance (EU)
	LotDecision LotDecision
	Reason      string // in words
}

// A LotDecision ends a sampling, or asks for more.
type LotDecision string

// The decisions.
const (
	Accept     LotDecision = "accept"
	Reject     LotDecision = "reject"
	TakeSecond LotDecision = "take the second sample"
	LookUp     LotDecision = "look up the tolerance" // it is only recalled, and it matters
)

// Judge judges the batch by the contents of its sampled packages in grams: in the
// EU average system as many as Plan says (First, or First and Second together); in
// the others 2 or more, or all.
//
// EU: defective packages are counted against the plan, none may be short by twice
// the tolerable negative error, and the mean must be at least nominal - k s with
// k = t(0.995, n-1)/sqrt n of the first MeanOf packages. US: none may be short by
// more than the variation, and the mean must be at least nominal - k s with
// k = t(0.975, n-1)/sqrt n. Minimum: none below nominal. Where all packages of a
// batch are weighed, the mean must reach the nominal quantity.
//
// A guide for the studio, not an inspection. Errors: InputError, RangeError.
// Sources: as Plan; factors of SI 2006/659 (0.503, 0.379, 0.640; read); NIST
// Handbook 133, table 2-1, category A (from memory, recomputed).
func (l Lot) Judge(contents []float64) (LotVerdict, error) {
	if err := l.check(); err != nil {
		return LotVerdict{}, err
	}
	plan := Plan{First: len(contents), FirstReject: 1, MeanOf: len(contents)}
	if l.System == AverageEU {
		var err error
		if plan, err = l.Plan(); err != nil {
			return LotVerdict{}, err
		}
	}
	n := len(contents)
	if n != plan.First && (plan.Second == 0 || n != plan.First+plan.Second) {
		return LotVerdict{}, &InputError{"packages in the sample", float64(n), "", fmt.Sprintf("%d, or with the second sample %d", plan.First, plan.First+plan.Second)}
	}
	if n == 0 || n > l.Size || n < 2 && n < l.Size {
		return LotVerdict{}, &InputError{"packages in the sample", float64(n), "", fmt.Sprintf("2 to %d, the size of the batch", l.Size)}
	}
	for i, c := range contents {
		if !(c >= 0) || c > mostGrams {
			if err := notNegative(fmt.Sprintf("contents of package %d", i+1), c, "g"); err != nil {
				return LotVerdict{}, err
			}
			return LotVerdict{}, &RangeError{fmt.Sprintf("contents of package %d", i+1), c, 0, mostGrams, "g", "limit of this package"}
		}
	}
	return l.judge(contents, plan), nil
}

func (l Lot) judge(contents []float64, plan Plan) LotVerdict {
	tolerance, known, _ := l.System.tolerance(l.Nominal) // checked
	var v LotVerdict
	unsure := 0
	for _, c := range contents {
		switch l.System.standing(l.Nominal-c, tolerance, known) {
		case Inadequate:
			v.Inadequate++
			v.Defective++
		case Defective:
			v.Defective++
		case Undecided:
			unsure++
		}
	}
	sample := contents[:plan.MeanOf]
	v.Mean = stat.Mean(sample, nil)
	if len(sample) > 1 {
		v.StdDev = stat.StdDev(sample, nil)
	}
	v.Limit = l.Nominal
	if len(contents) < l.Size && l.System != Minimum {
		confidence := 0.995
		if l.System == AverageUS {
			confidence = 0.975
		}
		v.Limit -= meanFactor(len(sample), confidence) * v.StdDev
	}
	accept, reject := plan.FirstAccept, plan.FirstReject
	if len(contents) > plan.First {
		accept, reject = plan.BothAccept, plan.BothAccept+1
	}
	switch {
	case v.Inadequate > 0:
		v.LotDecision, v.Reason = Reject, fmt.Sprintf("%d short by more than twice the tolerance", v.Inadequate)
	case v.Defective >= reject:
		v.LotDecision, v.Reason = Reject, fmt.Sprintf("%d defective, %d reject", v.Defective, reject)
	case l.System != Minimum && v.Mean < v.Limit-1e-9:
		v.LotDecision, v.Reason = Reject, fmt.Sprintf("mean %.6g g, below %.6g g", v.Mean, v.Limit)
	case unsure > 0:
		v.LotDecision, v.Reason = LookUp, fmt.Sprintf("%d short; the allowable variation is only recalled", unsure)
	case v.Defective > accept:
		v.LotDecision, v.Reason = TakeSecond, fmt.Sprintf("%d defective: more than %d, fewer than %d", v.Defective, accept, reject)
	default:
		v.LotDecision, v.Reason = Accept, fmt.Sprintf("%d defective, mean %.6g g", v.Defective, v.Mean)
	}
	return v
}

// SampleFactor returns t(confidence, n-1)/sqrt n, the part of a sample's standard
// deviation by which its mean may fall short; t is Student's, one-sided. The EU
// reference test uses 0.995, NIST Handbook 133 0.975. n is 2 or more, confidence
// above 0.5 and below 1. Errors: InputError.
func SampleFactor(n int, confidence float64) (float64, error) {
	if n < 2 {
		return 0, &InputError{"sample size", float64(n), "", "2 or more"}
	}
	if !(confidence > 0.5 && confidence < 1) {
		return 0, &InputError{"confidence", confidence, "", "above 0.5 and below 1"}
	}
	return meanFactor(n, confidence), nil
}

func meanFactor(n int, confidence float64) float64 {
	return distuv.StudentsT{Sigma: 1, Nu: float64(n - 1)}.Quantile(confidence) / math.Sqrt(float64(n))
}
