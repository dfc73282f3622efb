package apportion

import (
	"cmp"
	"math/bits"
)

// A u128 is an unsigned whole number of 128 bits: products of weights and unit
// counts fit it exactly, so that comparisons of shares never round.
type u128 struct{ hi, lo uint64 }

func mul64(a, b uint64) u128 {
	hi, lo := bits.Mul64(a, b)
	return u128{hi, lo}
}

func (a u128) add(b u128) u128 {
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	hi, _ := bits.Add64(a.hi, b.hi, carry)
	return u128{hi, lo}
}

// sub returns a-b, which must not be negative.
func (a u128) sub(b u128) u128 {
	lo, borrow := bits.Sub64(a.lo, b.lo, 0)
	hi, _ := bits.Sub64(a.hi, b.hi, borrow)
	return u128{hi, lo}
}

func (a u128) compare(b u128) int {
	if c := cmp.Compare(a.hi, b.hi); c != 0 {
		return c
	}
	return cmp.Compare(a.lo, b.lo)
}

// compareProducts compares a x b with c x d, exactly, in 256 bits.
func compareProducts(a, b, c, d u128) int {
	if a.hi|b.hi|c.hi|d.hi == 0 {
		return mul64(a.lo, b.lo).compare(mul64(c.lo, d.lo))
	}
	ab, cd := mul128(a, b), mul128(c, d)
	for i := 3; i >= 0; i-- {
		if c := cmp.Compare(ab[i], cd[i]); c != 0 {
			return c
		}
	}
	return 0
}

// mul128 returns a x b as four words, the lowest first.
func mul128(a, b u128) (out [4]uint64) {
	low, high := mul64(a.lo, b.lo), mul64(a.hi, b.hi)
	out = [4]uint64{low.lo, low.hi, high.lo, high.hi}
	for _, mid := range [2]u128{mul64(a.lo, b.hi), mul64(a.hi, b.lo)} {
		var carry uint64
		out[1], carry = bits.Add64(out[1], mid.lo, 0)
		out[2], carry = bits.Add64(out[2], mid.hi, carry)
		out[3] += carry
	}
	return out
}
