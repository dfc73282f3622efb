package food

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solution"
)

// A Drink is what a glass or bottle holds: water with sugar and alcohol. The zero value
// is water, and does for tea and coffee.
type Drink struct {
	// Brix is the dissolved solids, taken as sucrose, g in 100 g of the drink, 0..65:
	// cola and juice have some 10 to 12, milk may be given as 10.
	Brix float64 `json:"brix,omitzero"`
	// AlcoholPercent is the alcohol by volume, 0..50: beer 5, wine 12, whisky 40.
	AlcoholPercent float64 `json:"alcohol_percent,omitzero"`
}

// FreezesC returns the temperature at which the drink begins to freeze, degC, by the
// depressions of sugar (Leighton 1927 after Pickering 1891) and of alcohol together. A
// drink that is mostly something else is an [honestplate.RangeError].
func (d Drink) FreezesC() (float64, error) {
	s := solution.Drink(d)
	if err := cmp.Or(check.Fields("drinks that are poured, and the table of freezing points",
		check.Number("Brix", d.Brix, 0, 65, "g/100 g"),
		check.Number("AlcoholPercent", d.AlcoholPercent, 0, 50, "% by volume")),
		honestplate.InRange("Brix", d.Brix, 0, 100*(0.7-s.Ethanol()), "g/100 g", "a drink of which three tenths are water")); err != nil {
		return 0, err
	}
	return s.FreezesC(0), nil
}
