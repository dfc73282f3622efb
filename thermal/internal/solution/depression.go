// Package solution says what sugar and alcohol do to water.
package solution

import "example.org/honestplate/thermal/internal/root"

// Leighton is whose table of freezing points it is.
const Leighton = "Leighton 1927 after Pickering 1891, in Goff & Hartel 2013, Table 6.1"

// depressionStep is the spacing of the table, g sucrose per 100 g water.
const depressionStep = 3.0

// depressionTable is the freezing point depression of sucrose in water, K, at
// 0, 3, 6 ... 180 g of sucrose per 100 g of water: Leighton 1927 after Pickering
// 1891, as printed by Goff & Hartel, Ice Cream, 7th ed. 2013, Table 6.1 (read in
// a copy). Printed to 0.01 K.
var depressionTable = [...]float64{
	0.0, 0.18, 0.35, 0.53, 0.72, 0.9, 1.1, 1.29, 1.47, 1.67,
	1.86, 2.03, 2.21, 2.4, 2.6, 2.78, 2.99, 3.2, 3.42, 3.63,
	3.85, 4.1, 4.33, 4.54, 4.77, 5.0, 5.26, 5.53, 5.77, 5.99,
	6.23, 6.5, 6.8, 7.04, 7.32, 7.56, 7.8, 8.04, 8.33, 8.62,
	8.92, 9.19, 9.45, 9.71, 9.96, 10.22, 10.47, 10.72, 10.97, 11.19,
	11.41, 11.63, 11.88, 12.14, 12.4, 12.67, 12.88, 13.08, 13.28, 13.48,
	13.68,
}

// Depression returns by how many kelvin sucrose lowers the freezing point of water, for
// grams of sucrose (or of its equivalent) per 100 g of water, and the slope of that: linear
// interpolation in the table of Leighton 1927 after Pickering 1891 (Goff & Hartel, Ice
// Cream, 2013, Table 6.1), good to the printed 0.01 K. The book's smooth fit 9e-5 x^2 +
// 0.0612 x misses the table by up to 0.32 K and is not used inside it.
//
// Above the table it goes on
// with the slope of the book's fit, 0.0612 + 1.8e-4 x: at 185 g this lands 0.14 K
// short of the book's own unexplained extension (14.27 K), where carrying the
// last interval on would be 0.27 K short. Towards the deepest temperatures it
// tends to 0.3 g of water per gram of sugar left unfrozen, which is what sugar
// solutions keep (from memory).
func Depression(x float64) (kelvin, slope float64) {
	const last = len(depressionTable) - 1
	const end = depressionStep * float64(last)
	if x >= end {
		return depressionTable[last] + (x-end)*(0.0612+9e-5*(x+end)), 0.0612 + 1.8e-4*x
	}
	i, f := root.Cell(x/depressionStep, len(depressionTable))
	rise := depressionTable[i+1] - depressionTable[i]
	return depressionTable[i] + f*rise, rise / depressionStep
}
