package apportion

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// A Claim is one party's claim to whole units: seats, grams in steps, pieces.
type Claim struct {
	Weight float64 `json:"weight,omitzero"` // how much it should get relative to the others, 0 or more; 0 gets Min only
	Min    int64   `json:"min,omitzero"`    // at least so many units, 0 or more
	Max    int64   `json:"max,omitzero"`    // at most so many units; 0 means no maximum
}

// Apportion shares total units among the claims. The result sums to total
// exactly, keeps every minimum and maximum, and does not depend on the order of
// the claims except between claims that are equal in weight: ties go to the
// larger weight, then to the earlier claim.
//
// The arithmetic is in whole numbers. Weights are read as the decimals they print as,
// to 15 digits, so 0.1, 0.2, 0.3 share as 1, 2, 3 do, and so do three times as much,
// with the dust of that multiplication: no tie changes hands. Where the digits of all
// weights together are too many, the weights are taken to within 2^-62 of their sum,
// which moves no quota by more than a millionth of a unit; they may differ by a factor
// of 1e15.
//
// total is 0..1e12. Errors: [honestplate.RangeError] for a larger total or ratio of
// weights, and for more work than [QuotaMethod] can do; [honestplate.InputError] for no
// claims, for a weight or a bound that makes no sense and for an unknown method;
// [BoundsError] for minima above the total or maxima below it.
func (m Method) Apportion(total int64, claims []Claim) ([]int64, error) {
	if m < 0 || int(m) >= len(methodNames) {
		return nil, check.Input("Method", m, "", "a method of this package, LargestRemainder to Vinton")
	}
	if err := checkClaims(total, claims); err != nil {
		return nil, err
	}
	p, err := newParties(total, claims)
	if err != nil {
		return nil, err
	}
	switch m {
	case LargestRemainder:
		return p.largestRemainder(), nil
	case Vinton:
		return p.vinton()
	case QuotaMethod:
		if work := float64(total) * float64(len(claims)); work > quotaWork {
			return nil, check.Beyond("Total", float64(total), quotaWork/float64(len(claims)), "units", "the quota method goes unit by unit: more than a second's work with so many claims")
		}
		return p.byQuota(), nil
	default:
		return p.divide(m), nil
	}
}

// checkClaims refuses claims that make no sense or that no sharing can meet.
func checkClaims(total int64, claims []Claim) error {
	if total < 0 {
		return check.Input("Total", total, "units", "0 or more")
	}
	if total > decimal.MaxSteps {
		return check.Beyond("Total", float64(total), decimal.MaxSteps, "units", "products of units and weights are exact up to here")
	}
	if len(claims) == 0 {
		return check.Input("Claims", "empty", "", "at least one")
	}
	// What each asks for counts up to a little more than any total: the sums of a
	// million claims and more stay exact.
	const beyond = decimal.MaxSteps + 1
	least, most := int64(0), int64(0)
	for i, c := range claims {
		if err := c.check(i); err != nil {
			return err
		}
		high := c.Max
		if c.Weight == 0 {
			high = c.Min
		} else if c.Max == 0 {
			high = beyond
		}
		least, most = min(least+min(c.Min, beyond), math.MaxInt64/2), min(most+min(high, beyond), math.MaxInt64/2)
	}
	if least > total || most < total {
		return &BoundsError{Field: "Claims", Total: total, Least: least, Most: most}
	}
	return nil
}

// check refuses a claim that makes no sense. The field is named only in an error:
// naming a million would take longer than sharing.
func (c Claim) check(i int) error {
	field := func(name string) string { return fmt.Sprintf("Claims[%d].%s", i, name) }
	switch {
	case !(c.Weight >= 0) || math.IsInf(c.Weight, 1):
		return honestplate.NotNegative(field("Weight"), c.Weight, "")
	case c.Min < 0:
		return check.Input(field("Min"), c.Min, "units", "0 or more")
	case c.Max < 0:
		return check.Input(field("Max"), c.Max, "units", "0 or more")
	case c.Max != 0 && c.Max < c.Min:
		return check.Input(field("Max"), c.Max, "units", fmt.Sprintf("at least its minimum, %d", c.Min))
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
