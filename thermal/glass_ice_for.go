package thermal

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/root"
	"example.org/honestplate/thermal/light"
)

// IceFor returns the mass of ice, g, with which the glass's drink comes down to targetC
// in the room a under the lamps, the band of which is that of its likely coldest
// temperature reaching targetC with the ice stirred as little and as much as Glass.IceH
// allows: more ice than [food.IceFor] says, since the glass and the room take their share and
// the last of it melts late. IceGrams is not used. What five times the drink does not
// reach is an [honestplate.RangeError].
func (g Glass) IceFor(targetC float64, a Air, lamps ...light.Lamp) (honestplate.Estimate, error) {
	var failed error
	over := func(grams, stir float64) float64 { // how much warmer than the target it stays, K
		g := g
		g.IceGrams = grams
		f, err := g.frame(a, lamps)
		if err == nil {
			f.model.ice.stirring *= stir
			f.model, _, err = f.nominal(nil)
		}
		failed = cmp.Or(failed, err)
		return f.model.done.coldestDrink - targetC
	}
	most := 5 * g.DrinkGrams
	find := func(stir float64) float64 {
		if left := over(most, stir); failed == nil && left > 0 {
			failed = &honestplate.RangeError{Field: "TargetC", Value: targetC, Low: targetC + left, High: g.DrinkC.Value, Unit: "degC",
				Source: "what five times the drink in ice comes to"}
		}
		return root.RisingTo(func(grams float64) float64 {
			if failed != nil {
				return 0
			}
			return -over(grams, stir)
		}, 0, most, 1e-7*most)
	}
	if err := honestplate.Finite("TargetC", targetC, "degC"); err != nil {
		return honestplate.Estimate{}, err
	}
	limits := stirring
	if g.IceH != (honestplate.Estimate{}) {
		limits = g.IceH.Times(1 / g.IceH.Likely)
	}
	likely := find(1)
	out := band(min(find(limits.High), likely), likely, max(find(limits.Low), likely))
	if failed != nil {
		return honestplate.Estimate{}, failed
	}
	return out, nil
}
