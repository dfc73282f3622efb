package plate

import (
	"math"

	"example.org/honestplate/portion/apportion"
)

// partsInAll is the number of parts that lengths and areas are counted in: a part is
// far above the rounding noise of a length, and far below a step of any layout.
const partsInAll = 1e9

// wholeParts turns lengths or areas into whole parts of their sum, so that equal ones
// are equal and every tie is decided by the stated rule, on every processor alike. It
// returns the parts and their sum, 0 if nothing weighs anything.
//
// A value is cut off at an irrational place between two parts: no simple ratio lies
// on it, where the last bit would decide.
func wholeParts(values []float64) (parts []int64, all int64) {
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	parts = make([]int64, len(values))
	if !(sum > 0) {
		return parts, 0
	}
	for i, v := range values {
		if v > 0 {
			parts[i] = int64(math.Floor(float64(v/sum*partsInAll) + 1/math.Phi))
		}
		all += parts[i]
	}
	return parts, all
}

// shareByParts shares whole units in proportion to lengths or areas. ok is false if
// nothing weighs anything.
func shareByParts(total int64, values []float64) (units []int64, ok bool) {
	parts, all := wholeParts(values)
	claims := make([]apportion.Claim, len(parts))
	for i, n := range parts {
		claims[i].Weight = float64(n)
	}
	units, err := apportion.LargestRemainder.Apportion(total, claims)
	return units, all > 0 && err == nil
}
