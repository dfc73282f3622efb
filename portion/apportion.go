package portion

import (
	"fmt"
	"math"
)

// A Claim is one party's claim to whole units: seats, grams in steps, pieces.
type Claim struct {
	Weight float64 // how much it should get relative to the others, 0 or more; 0 gets Min only
	Min    int64   // at least so many units, 0 or more
	Max    int64   // at most so many units; 0 means no maximum
}

// Apportion shares total units among the claims. The result sums to total
// exactly, keeps every minimum and maximum, and does not depend on the order of
// the claims except between claims that are equal in weight: ties go to the
// larger weight, then to the earlier claim.
//
// The arithmetic is in whole numbers. Weights that are whole numbers or short
// decimals (up to 12 places) count exactly as written, so 0.1, 0.2, 0.3 share as
// 1, 2, 3 do. Others are taken to within 2^-62 of their sum, which moves no quota
// by more than a millionth of a unit; they may differ by a factor of 1e15.
//
// total is 0..1e12. Errors: RangeError for a larger total or ratio of weights, and
// for more work than QuotaMethod can do; InputError for no
// claims, for a weight or a bound that makes no sense, for minima above the total
// or maxima below it, and for an unknown method.
func (m Method) Apportion(total int64, claims []Claim) ([]int64, error) {
	return m.apportion(total, claims, claimWords())
}

// A wording is how a caller speaks of claims in messages.
type wording struct {
	field func(i int, field string) string // names a field of a claim
	unit  string                           // of amounts
	scale float64                          // amounts a unit
}

// claimWords speaks of claims by number, and of units.
func claimWords() wording {
	return wording{func(i int, field string) string { return fmt.Sprintf("%s of claim %d", field, i+1) }, "units", 1}
}

// apportion is Apportion in the caller's words.
func (m Method) apportion(total int64, claims []Claim, say wording) ([]int64, error) {
	if m < 0 || int(m) >= len(methodNames) {
		return nil, &InputError{"method", float64(m), "", "one of the methods of this package"}
	}
	if err := checkClaims(total, claims, say); err != nil {
		return nil, err
	}
	p, err := newParties(total, claims)
	if err != nil {
		return nil, err
	}
	switch m {
	case LargestRemainder:
		return p.largestRemainder(), nil
	case QuotaMethod:
		if work := float64(total) * float64(len(claims)); work > quotaWork {
			return nil, &RangeError{"total x number of zones", work, 0, quotaWork, "", "limit of this package for the quota method"}
		}
		return p.byQuota(), nil
	default:
		return p.divide(m), nil
	}
}

// checkClaims refuses claims that make no sense or that no sharing can meet.
func checkClaims(total int64, claims []Claim, say wording) error {
	if total < 0 {
		return &InputError{"total to share", float64(total), "units", "0 or more"}
	}
	if total > maxSteps {
		return &RangeError{"total to share", float64(total), 0, maxSteps, "units", "limit of this package"}
	}
	if len(claims) == 0 {
		return &InputError{"number of zones", 0, "", "at least 1"}
	}
	// Floating sums suffice to compare with the total: each term is capped, and
	// sums of whole numbers stay exact far beyond maxSteps.
	least, most := 0.0, 0.0
	for i, c := range claims {
		if !(c.Weight >= 0) || math.IsInf(c.Weight, 1) {
			return notNegative(say.field(i, "Weight"), c.Weight, "")
		}
		if c.Min < 0 || c.Max < 0 {
			return &InputError{say.field(i, "Min or Max"), float64(min(c.Min, c.Max)), "units", "0 or more"}
		}
		if c.Max != 0 && c.Max < c.Min {
			return &InputError{say.field(i, "Max"), float64(c.Max), "units", fmt.Sprintf("at least its minimum, %d", c.Min)}
		}
		least += float64(min(c.Min, maxSteps+1))
		switch {
		case c.Weight == 0:
			most += float64(min(c.Min, maxSteps+1))
		case c.Max == 0:
			most += maxSteps + 1
		default:
			most += float64(min(c.Max, maxSteps+1))
		}
	}
	if least > float64(total) {
		return &InputError{"sum of the minima", least * say.scale, say.unit,
			fmt.Sprintf("at most the total, %.6g %s", float64(total)*say.scale, say.unit)}
	}
	if most < float64(total) {
		return &InputError{"most that can be taken", most * say.scale, say.unit,
			fmt.Sprintf("at least the total, %.6g %s (weight 0 takes its minimum only)", float64(total)*say.scale, say.unit)}
	}
	return nil
}

// parties are claims in whole numbers.
type parties struct {
	total     int64    // units to share
	weight    []uint64 // whole-number weights
	claims    []Claim  // as given: their weights break ties
	weightSum uint64   // below 2^63
	low, high []int64  // bounds; high is at most the total
}

// newParties takes over checked claims.
func newParties(total int64, claims []Claim) (parties, error) {
	p := parties{total: total, claims: claims, low: make([]int64, len(claims)), high: make([]int64, len(claims))}
	var err error
	if p.weight, p.weightSum, err = wholeWeights(claims); err != nil {
		return p, err
	}
	for i, c := range claims {
		p.low[i], p.high[i] = c.Min, total
		if c.Max != 0 {
			p.high[i] = min(c.Max, total)
		}
		if c.Weight == 0 {
			p.high[i] = c.Min
		}
	}
	return p, nil
}
