package food

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
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
	if err := honestplate.In("Drink", drink.Check()); err != nil {
		return 0, err
	}
	if err := check.Fields("drinks in a vessel", check.Number("DrinkGrams", drinkGrams, 0.1, 1e6, "g"),
		check.Number("DrinkC", drinkC, drink.FreezesC(0), 100, "degC"), check.Number("IceC", iceC, -40, 0, "degC")); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("TargetC", targetC, drink.FreezesC(0), drinkC, "degC", "where the drink freezes, and what it is"); err != nil {
		return 0, err
	}
	per := heat.Fusion - heat.Ice().SpecificHeat*iceC + heat.WaterHeat*targetC
	grams = drinkGrams * drink.SpecificHeat() * (drinkC - targetC) / per
	if freezes := drink.FreezesC(grams / drinkGrams); targetC < freezes {
		return 0, &honestplate.RangeError{Field: "TargetC", Value: targetC, Low: freezes, High: drinkC, Unit: "degC",
			Source: "where the drink freezes, diluted by that ice"}
	}
	return grams, nil
}
