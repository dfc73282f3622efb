package portion

import "fmt"

// A Method is a rule of apportionment. The zero value is LargestRemainder.
type Method int

// The methods, by their standard names. With weights v and a units held, a
// divisor method gives the next unit to the largest v/d(a). Definitions and names
// after Balinski and Young, The Quota Method of Apportionment, American
// Mathematical Monthly 82 (1975) 701-730; the formulas are from memory and
// checked against published apportionments.
const (
	// LargestRemainder (Hamilton, Hare-Niemeyer): floor of every exact quota
	// total x v / sum of v, the rest to the largest fractions. Keeps every share
	// within one unit of its quota, but raising the total may lower a share.
	LargestRemainder Method = iota
)

var methodNames = [...]string{"largest remainder"}

func (m Method) String() string {
	if m < 0 || int(m) >= len(methodNames) {
		return fmt.Sprintf("Method(%d)", int(m))
	}
	return methodNames[m]
}
