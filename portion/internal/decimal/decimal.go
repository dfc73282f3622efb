// Package decimal reads float64 numbers as the decimals they print as and counts them
// in whole steps, exactly.
package decimal

import (
	"math"
	"math/big"
	"strconv"
)

// MaxSteps bounds every count of steps or pieces, so that no sum or product inside
// can overflow: a tonne on a scale of a microgram.
const MaxSteps = 1_000_000_000_000

// Step reads a scale's step in grams; 0, the zero value, means 1 g.
func Step(grams float64) Decimal {
	if grams == 0 {
		return Decimal{1, 0}
	}
	return Of(grams)
}

// Plain prints all the digits of a number, so that a message never rounds away the
// very difference it complains of.
func Plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// A Decimal is coef x 10^exp: a number as people write it. A float64 carries 15
// significant digits faithfully, so reading it to 15 digits gives back what was
// typed and drops the dust of earlier arithmetic: 0.1+0.2 is read as 0.3.
type Decimal struct {
	coef int64
	exp  int
}

// Of reads a finite float64 to 15 significant digits.
func Of(v float64) Decimal {
	var buf [32]byte
	text := strconv.AppendFloat(buf[:0], v, 'e', 14, 64)
	var d Decimal
	negative := false
	for i, c := range text {
		switch {
		case c == '-' && i == 0:
			negative = true
		case c >= '0' && c <= '9':
			d.coef = 10*d.coef + int64(c-'0')
		case c == 'e':
			// AppendFloat wrote this exponent: it always parses.
			d.exp, _ = strconv.Atoi(string(text[i+1:]))
		}
		if c == 'e' {
			break
		}
	}
	d.exp -= 14
	for d.coef != 0 && d.coef%10 == 0 {
		d.coef /= 10
		d.exp++
	}
	if d.coef == 0 {
		d.exp = 0
	}
	if negative {
		d.coef = -d.coef
	}
	return d
}

// rat returns the decimal as an exact fraction.
func (d Decimal) rat() *big.Rat {
	r := new(big.Rat).SetInt64(d.coef)
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(d.exp, -d.exp))), nil)
	if d.exp < 0 {
		return r.Quo(r, new(big.Rat).SetInt(ten))
	}
	return r.Mul(r, new(big.Rat).SetInt(ten))
}

// Times returns the float64 nearest to n times the decimal.
func (d Decimal) Times(n int64) float64 {
	// Both operands of one multiplication or division are exact, so the result
	// is correctly rounded. It covers every scale; the rest is completeness.
	const exact = 1 << 53
	if n == 0 || d.coef == 0 {
		return 0
	}
	if c := d.coef * n; c/n == d.coef && c > -exact && c < exact && d.exp >= -22 && d.exp <= 22 {
		if d.exp < 0 {
			return float64(c) / math.Pow10(-d.exp)
		}
		return float64(c) * math.Pow10(d.exp)
	}
	v, _ := new(big.Rat).Mul(d.rat(), new(big.Rat).SetInt64(n)).Float64()
	return v
}

// Around returns the whole numbers of steps at or below and at or above
// v/step, equal if v is a whole number of steps. v must be finite, 0 or more.
// ok is false if they exceed MaxSteps.
func Around(v float64, step Decimal) (floor, ceil int64, ok bool) {
	guess := math.Round(v / step.Times(1))
	if guess <= MaxSteps && step.Times(int64(guess)) == v {
		return int64(guess), int64(guess), true
	}
	if guess > MaxSteps {
		return 0, 0, false
	}
	q := new(big.Rat).Quo(Of(v).rat(), step.rat())
	whole, rest := new(big.Int).QuoRem(q.Num(), q.Denom(), new(big.Int))
	floor = whole.Int64() // at most the guess plus 1
	ceil = floor
	if rest.Sign() != 0 {
		ceil++
	}
	return floor, ceil, ceil <= MaxSteps
}

// CommonDivisor returns the greatest common divisor of a and b, 0 of 0 and 0.
func CommonDivisor(a, b int64) int64 {
	a, b = max(a, -a), max(b, -b)
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Whole returns the values, as the decimals they print as, over the smallest place that
// any of them has: whole numbers in the same proportions. Values must be finite, 0 or
// more; ok is false if one does not fit 62 bits.
func Whole(values []float64) (whole []int64, ok bool) {
	read, least := make([]Decimal, len(values)), math.MaxInt
	for i, v := range values {
		if read[i] = Of(v); read[i].coef != 0 {
			least = min(least, read[i].exp)
		}
	}
	whole = make([]int64, len(values))
	for i, d := range read {
		if d.coef == 0 {
			continue
		}
		if d.exp-least > 18 {
			return nil, false
		}
		n := d.coef
		for range d.exp - least {
			if n > (1<<62)/10 {
				return nil, false
			}
			n *= 10
		}
		whole[i] = n
	}
	return whole, true
}

// SplitUnit is how many parts Split makes of one.
const SplitUnit = 1_000_000_000_000_000

// Split returns the whole number in a value of 0 up to 1e15, read as the decimal it
// prints as, and what is above it in parts of SplitUnit, cut off there.
func Split(v float64) (whole, parts int64) {
	d := Of(v)
	power := func(n int) (p int64) {
		p = 1
		for range n {
			p *= 10
		}
		return p
	}
	switch {
	case d.exp >= 0:
		return d.coef * power(d.exp), 0
	case d.exp >= -15:
		p := power(-d.exp)
		return d.coef / p, d.coef % p * (SplitUnit / p)
	case d.exp >= -30: // of 15 digits none is whole
		return 0, d.coef / power(-d.exp-15)
	}
	return 0, 0
}

// FloorDiv returns a/b rounded down, for b above 0.
func FloorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// CeilDiv returns a/b rounded up, for b above 0.
func CeilDiv(a, b int64) int64 { return -FloorDiv(-a, b) }
