package published

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/honestplate/testdata"
)

// Checks of how a liquid looks and of what freezes it. Of what was gathered for them,
// these are in no table: what the library's own model, or models of others, give beside
// measurements that are in milk_scattering and milk_colour (ratios and residuals, no
// observations of their own), and lists of formulas in words.
var rheologyLook = slices.Concat(lookLight, lookMilk, lookColour, lookSharp)

// printed reads a field as a number and half of its last printed digit; ok is false
// where the field is empty.
func printed(r testdata.Row, column string) (v, half float64, ok bool) {
	text := r.Text(column)
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, 0, false
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	e, _ := strconv.Atoi(exponent)
	_, decimals, _ := strings.Cut(mantissa, ".")
	return v, 0.5 * math.Pow(10, float64(e-len(decimals))), true
}

// figure is printed without its digits, NaN where the field is empty.
func figure(r testdata.Row, column string) float64 {
	v, _, ok := printed(r, column)
	if !ok {
		return math.NaN()
	}
	return v
}
