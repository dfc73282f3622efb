package portion

import "math"

// The tables of this file are about packages made up by mass or volume. They serve
// to judge whether what is in front of the camera is what the label says. They are
// no legal advice: which rule holds, and for what, is for local weights and
// measures law and its inspectors.

// TolerableNegativeError returns, in grams (or millilitres), by how much a package
// of the nominal quantity may fall short before it counts as defective in the EU
// average system, from the table
//
//	nominal quantity   up to 50   100     200    300   500   1000   10 000   15 000   above
//	tolerable error        9 %   4.5 g   4.5 %   9 g   3 %   15 g    1.5 %    150 g    1 %
//
// A result from a percentage is rounded up to the next tenth of a gram. The
// nominal quantity is above 0 and up to 1e9 g; the e mark covers 5 g to 10 kg,
// OIML R 87 the rest. Errors: InputError, RangeError.
//
// Source: Council Directive 76/211/EEC, annex I, 2.4; rounding up: UK guidance on
// packaged goods (gov.uk). Both read.
func TolerableNegativeError(nominal float64) (float64, error) {
	if err := positive("nominal quantity", nominal, "g"); err != nil {
		return 0, err
	}
	if err := within("nominal quantity", nominal, 0, mostGrams, "g", "limit of this package"); err != nil {
		return 0, err
	}
	percent, grams := negativeError(nominal)
	if percent > 0 {
		grams = percentUp(percent, nominal)
	}
	return grams, nil
}

// FillDeviation returns by how much one fill of an automatic filling machine may
// differ from the mean, in grams, in service and accuracy class X(1): the
// percentages and amounts of TolerableNegativeError, not rounded. Where the food
// comes in pieces and one weighs more than a tenth of that, the limit is widened
// by 1.5 x piece, up to 9 % of the fill. A useful measure of how evenly pieces can
// be shared. fill is above 0 and up to 1e9 g, piece 0 or more. Errors: InputError,
// RangeError.
//
// Source: UK SI 2000/388, schedule 5 (OIML R 61); read.
func FillDeviation(fill, piece float64) (float64, error) {
	if _, err := TolerableNegativeError(fill); err != nil {
		return 0, err
	}
	if err := notNegative("piece", piece, "g"); err != nil {
		return 0, err
	}
	percent, grams := negativeError(fill)
	limit := grams + percent/100*fill
	if piece > 0.1*limit {
		limit = max(limit, min(limit+1.5*piece, 0.09*fill))
	}
	return limit, nil
}

// negativeError returns the row of the table for a quantity: a percentage or an
// amount, the other being 0.
func negativeError(nominal float64) (percent, grams float64) {
	switch {
	case nominal <= 50:
		return 9, 0
	case nominal <= 100:
		return 0, 4.5
	case nominal <= 200:
		return 4.5, 0
	case nominal <= 300:
		return 0, 9
	case nominal <= 500:
		return 3, 0
	case nominal <= 1000:
		return 0, 15
	case nominal <= 10_000:
		return 1.5, 0
	case nominal <= 15_000:
		return 0, 150
	default:
		return 1, 0
	}
}

// percentUp returns a percentage of v, rounded up to the next tenth. Products that
// are whole tenths stay, whatever their last bit says.
func percentUp(percent, v float64) float64 {
	tenths := percent * v / 10
	return math.Ceil(tenths*(1-1e-12)) / 10
}

// A Variation is a maximum allowable variation of US packages.
type Variation struct {
	Grams float64 // how much one package may fall short, g
	// Read says that this row of the table was read in a source. If false it is
	// recalled and must not decide: look it up.
	Read bool
}

// MaximumAllowableVariation returns by how much one package labelled by weight may
// fall short in the US. Only the row from 81 to below 117 g (0.18 to 0.26 lb,
// 7.2 g) was read; the others are from memory and say so. The label is above 0 and
// below 1125 g. Errors: InputError, RangeError.
//
// Source: NIST Handbook 133, chapter 2, table 2-5.
func MaximumAllowableVariation(labelled float64) (Variation, error) {
	if err := positive("labelled quantity", labelled, "g"); err != nil {
		return Variation{}, err
	}
	last := usVariations[len(usVariations)-1]
	if labelled >= last.below {
		return Variation{}, &RangeError{"labelled quantity", labelled, 0, last.below, "g", "NIST Handbook 133, table 2-5, as far as recalled"}
	}
	if labelled < 36 {
		return Variation{Grams: labelled / 10}, nil
	}
	for _, row := range usVariations {
		if labelled < row.below {
			return Variation{row.grams, row.read}, nil
		}
	}
	return Variation{}, nil // not reached: labelled is below the last row's end
}

// usVariations is table 2-5 above 36 g: each row holds below its limit, g.
var usVariations = [...]struct {
	below, grams float64
	read         bool
}{
	{54, 3.6, false}, {81, 5.4, false}, {117, 7.2, true}, {154, 9.0, false},
	{208, 10.8, false}, {263, 12.7, false}, {317, 14.5, false}, {381, 16.3, false},
	{426, 18.1, false}, {489, 19.9, false}, {571, 21.7, false}, {635, 23.5, false},
	{698, 25.4, false}, {771, 27.2, false}, {852, 29.0, false}, {970, 31.7, false},
	{1125, 35.3, false},
}

// CheckScale says whether a scale is fine enough to judge a package by a
// tolerance: in the EU the error of measuring may be a fifth of the tolerable
// negative error, in the US the scale's division a sixth of the allowable
// variation. Sources: Directive 76/211/EEC, annex II; NIST Handbook 133, chapter 2
// (both read). Errors: InputError.
func CheckScale(tolerance, scaleError, stepGrams float64) (eu, us bool, err error) {
	if err := positive("tolerance", tolerance, "g"); err != nil {
		return false, false, err
	}
	if err := notNegative("scale error", scaleError, "g"); err != nil {
		return false, false, err
	}
	if err := positive("scale step", stepGrams, "g"); err != nil {
		return false, false, err
	}
	return scaleError <= tolerance/5, stepGrams <= tolerance/6, nil
}
