package apportion

import (
	"math"
	"math/bits"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/decimal"
)

// Whole-number weights sum to less than 2^weightBits, which leaves room in
// 64 bits for rounding and in 128 for the product with a total.
const weightBits = 62

// mostRatio bounds the ratio of weights that are scaled in binary, so that even
// the lightest keeps some digits.
const mostRatio = 1e15

// tooUneven refuses weights of too large a ratio.
func tooUneven(field string, ratio float64) error {
	return &honestplate.RangeError{Field: field, Value: ratio, Low: 1, High: mostRatio, Unit: "largest weight over smallest",
		Source: "beyond, a float64 keeps no digits of the smallest beside the largest"}
}

// wholeWeights turns the claims' weights into whole numbers in the same
// proportions, and their sum. Weights are read as decimals of 15 digits, and if these
// fit the result is exact. Otherwise all are scaled by one power of two, chosen so that
// the sum fills 62 bits, and rounded; one above 0 stays so. Both ways the result does
// not depend on the order of the claims.
func wholeWeights(claims []Claim) ([]uint64, uint64, error) {
	w := make([]uint64, len(claims))
	if sum, ok := decimalWeights(w, claims); ok {
		return w, sum, nil
	}
	heaviest, lightest := 0.0, math.Inf(1)
	for _, c := range claims {
		if c.Weight > 0 {
			heaviest, lightest = max(heaviest, c.Weight), min(lightest, c.Weight)
		}
	}
	if ratio := heaviest / lightest; !(ratio <= mostRatio) {
		return nil, 0, tooUneven("Claims", ratio)
	}
	// First a scale that cannot overflow, to learn the sum; then the scale that
	// uses the room the sum leaves.
	_, exp := math.Frexp(heaviest)
	shift := weightBits - 1 - bits.Len(uint(len(claims))) - exp
	sum := scaleByTwo(w, claims, shift)
	if room := weightBits - 1 - bits.Len64(sum); room > 0 {
		sum = scaleByTwo(w, claims, shift+room)
	}
	return w, sum, nil
}

// scaleByTwo sets w to the weights times 2^shift, rounded, but at least 1 for a
// weight above 0.
func scaleByTwo(w []uint64, claims []Claim, shift int) (sum uint64) {
	for i, c := range claims {
		w[i] = uint64(math.RoundToEven(math.Ldexp(c.Weight, shift)))
		if c.Weight > 0 {
			w[i] = max(w[i], 1)
		}
		sum += w[i]
	}
	return sum
}

// decimalWeights sets w to the weights as decimals of 15 digits over the smallest place
// that any of them has. ok is false if the sum does not fit.
func decimalWeights(w []uint64, claims []Claim) (sum uint64, ok bool) {
	values := make([]float64, len(claims))
	for i, c := range claims {
		values[i] = c.Weight
	}
	whole, ok := decimal.Whole(values)
	if !ok {
		return 0, false
	}
	for i, n := range whole {
		w[i] = uint64(n)
		if sum += w[i]; sum >= 1<<weightBits {
			return 0, false
		}
	}
	return sum, true
}
