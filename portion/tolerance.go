package portion

import (
	"math"

	"example.org/honestplate/portion/internal/check"
)

// The table of this file is about packages made up by mass or volume. It serves
// to judge whether what is in front of the camera is what the label says. It is
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
// OIML R 87 the rest, whole grams above 1000 g by its own rounding.
//
// It is a rule for packages that are made up in advance to one nominal quantity, and
// even there their average has to hold it. It is none for a portion that is served, a
// topping, a layer of a build or a picture, and gives nobody a right to show less: the
// tolerance of a picture is the one its maker signs ([example.org/honestplate/portion/record.Specification]). Errors:
// [honestplate.InputError], [honestplate.RangeError].
//
// Source: Council Directive 76/211/EEC, annex I, 2.4; rounding up: UK guidance on
// packaged goods (gov.uk); values of OIML R 87 through the St Lucia Metrology Act. All read;
// the rounding of OIML R 87 from memory.
func TolerableNegativeError(nominal float64) (float64, error) {
	if err := check.Sized("Nominal", nominal, 0, mostGrams, "g", massReason); err != nil {
		return 0, err
	}
	percent, grams := negativeError(nominal)
	if percent > 0 {
		grams = percentUp(percent, nominal)
	}
	return grams, nil
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
