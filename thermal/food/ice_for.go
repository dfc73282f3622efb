package food

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solution"
)

// IceFor returns the mass of ice, g, at iceC (-40..0 degC) that all melts to bring a
// drink from drinkC to targetC with no heat from elsewhere, and what the drink is then
// diluted by: by the balance of heat
//
//	m_ice (L - c_ice T_ice + c_w T) = m_drink c (T_drink - T)
//
// A glass from the shelf adds its own, some 0.8 J/(g K) of it: Glass.IceFor of package thermal reckons it
// and the room. drinkC is up to 100 degC, targetC above the point where the diluted drink
// freezes and at most drinkC; else an [honestplate.InputError] or a
// [honestplate.RangeError].
func IceFor(drinkGrams float64, drink Drink, drinkC, iceC, targetC float64) (grams float64, err error) {
	freezes, err := drink.FreezesC()
	if err := cmp.Or(honestplate.In("Drink", err), check.Fields("drinks in a vessel", check.Number("DrinkGrams", drinkGrams, 0.1, 1e6, "g"),
		check.Number("DrinkC", drinkC, freezes, 100, "degC"), check.Number("IceC", iceC, -40, 0, "degC")),
		honestplate.InRange("TargetC", targetC, freezes, drinkC, "degC", "where the drink freezes, and what it is")); err != nil {
		return 0, err
	}
	d := solution.Drink(drink)
	per := heat.Fusion - heat.Ice().SpecificHeat*iceC + heat.WaterHeat*targetC
	grams = drinkGrams * d.SpecificHeat() * (drinkC - targetC) / per
	if err := honestplate.InRange("TargetC", targetC, d.FreezesC(grams/drinkGrams), drinkC, "degC", "where the drink freezes, diluted by that ice"); err != nil {
		return 0, err
	}
	return grams, nil
}
