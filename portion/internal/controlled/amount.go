package controlled

import (
	"math"
	"math/bits"

	"example.org/honestplate/portion/internal/decimal"
)

// An Amount is a number of 0 or more, exactly: a whole number, and what is above it in
// units of 1e-15.
type Amount struct{ whole, part int64 }

const partsOfOne = decimal.SplitUnit

// Whole returns the amount of a whole number.
func Whole(n int64) Amount { return Amount{n, 0} }

// Decimal returns a number below 1e15 as the decimal it prints as.
func Decimal(v float64) Amount {
	whole, part := decimal.Split(v)
	return Amount{whole, part}
}

// Quotient returns n/d, cut off at the unit of an amount; n and d are below 2^62.
func Quotient(n, d int64) Amount {
	hi, lo := bits.Mul64(uint64(n%d), partsOfOne)
	part, _ := bits.Div64(hi, lo, uint64(d))
	return Amount{n / d, int64(part)}
}

// Plus returns the sum.
func (a Amount) Plus(b Amount) Amount {
	a.whole, a.part = a.whole+b.whole, a.part+b.part
	if a.part >= partsOfOne {
		a.whole, a.part = a.whole+1, a.part-partsOfOne
	}
	return a
}

// Float returns the nearest float64.
func (a Amount) Float() float64 { return float64(a.whole) + float64(a.part)/partsOfOne }

// floorUp splits an amount into a whole number and what is above it, 0 if within 1e-9 of
// a whole number. What is above is rounded to 2^-30, so that all sums of costs are exact
// and equal costs are equal on every machine.
func (a Amount) floorUp() (floor int64, up float64) {
	const near = partsOfOne / 1_000_000_000
	switch {
	case a.part <= near:
		return a.whole, 0
	case a.part >= partsOfOne-near:
		return a.whole + 1, 0
	}
	const unit = 1 << 30
	return a.whole, math.Round(min(max(float64(a.part)/partsOfOne*unit, 1), unit-1)) / unit
}
