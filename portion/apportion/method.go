package apportion

import (
	"math"

	"example.org/honestplate/portion/internal/decimal"
	"example.org/honestplate/portion/internal/words"
)

// A Method is a rule of apportionment. The zero value is LargestRemainder.
type Method int

// The methods, by their standard names. v is a weight, a the units already held;
// a divisor method gives the next unit to the largest v/d(a). Where d(0) = 0 the
// first unit comes before all others, to the largest weight first. Definitions:
// Balinski and Young, The Quota Method of Apportionment, American Mathematical
// Monthly 82 (1975) 701-730; formulas from memory, checked against its printed
// apportionments.
const (
	// LargestRemainder (Hamilton, Hare-Niemeyer): the floor of every exact quota,
	// the rest to the largest fractions. The quotas are those of [Ideal],
	// clamp(k v, Min, Max) with one k for all: total x v / sum of v where no bound
	// holds. Every share is within one unit of its quota, and raising a weight
	// never lowers its share; but a larger total can (the Alabama paradox).
	LargestRemainder Method = iota
	// Jefferson (D'Hondt), d(a) = a+1: favours the large.
	Jefferson
	// Webster (Sainte-Lague), d(a) = a + 1/2: rounds to the nearest; no bias.
	Webster
	// Adams, d(a) = a: favours the small; one unit each comes first.
	Adams
	// HuntingtonHill, d(a) = sqrt(a(a+1)): smallest relative differences; the
	// method of the US House since 1941. One unit each comes first.
	HuntingtonHill
	// Dean, d(a) = 2a(a+1)/(2a+1): amounts a unit nearest to each other. One unit
	// each comes first.
	Dean
	// QuotaMethod (Balinski and Young 1975): Jefferson, but at each total h only
	// those below their quota h v / sum of v may take the next unit: keeps the
	// upper quota and has no Alabama paradox. Its time grows with total x claims,
	// which must stay below 1e8.
	QuotaMethod
	// Vinton is the rule of the US censuses of 1850 to 1900, with one seat at least
	// for every state: the floor of every quota total x v / sum of v, or its bound,
	// the rest to the largest fractions. Bounds do not rescale the other quotas, so
	// that a share can be further from what is fair than with LargestRemainder;
	// where rounding cannot make up for the bounds the sharing is refused.
	Vinton
)

var methodNames = [...]string{"largest remainder", "Jefferson", "Webster", "Adams", "Huntington-Hill", "Dean", "quota method", "Vinton"}

// String returns the method's usual name.
func (m Method) String() string { return words.Of("Method", int(m), methodNames[:]) }

// MarshalText writes the method's name.
func (m Method) MarshalText() ([]byte, error) { return words.Text("Method", int(m), methodNames[:]) }

// UnmarshalText reads what MarshalText writes.
func (m *Method) UnmarshalText(text []byte) error {
	return words.Read(m, "Method", text, methodNames[:])
}

// firstFree reports whether the first unit comes before all others: d(0) = 0.
func (m Method) firstFree() bool { return m == Adams || m == HuntingtonHill || m == Dean }

// priority returns v/d(a) of a divisor method as a fraction, exactly, or its
// square for Huntington-Hill, which orders the same. v is below 2^63, a below
// 2^41, and above 0 where d(0) = 0: both parts fit 128 bits.
func (m Method) priority(v, a uint64) (num, den u128) {
	switch m {
	case Webster:
		return mul64(v, 2), u128{0, 2*a + 1}
	case Adams:
		return u128{0, v}, u128{0, a}
	case HuntingtonHill:
		return mul64(v, v), mul64(a, a+1)
	case Dean:
		return mul64(v, 2*a+1), mul64(2*a, a+1)
	default: // Jefferson
		return u128{0, v}, u128{0, a + 1}
	}
}

// round returns how many units a party of x = v/divisor takes: those with
// d(a) < x. Beyond any total it only says so.
func (m Method) round(x float64) int64 {
	if x > 2*decimal.MaxSteps {
		return 2 * decimal.MaxSteps
	}
	f := math.Floor(x)
	switch m {
	case Webster:
		return int64(x + 0.5)
	case Adams:
		return int64(math.Ceil(x))
	case HuntingtonHill:
		if x*x > f*(f+1) {
			f++
		}
	case Dean:
		if x*(2*f+1) > 2*f*(f+1) {
			f++
		}
	}
	return int64(f)
}
