package thermal

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/light"
)

// IceFor returns the mass of ice, g, with which the glass's drink comes down to targetC
// in the room a under the lamps, the band of which is that of its likely coldest
// temperature reaching targetC with the ice stirred as little and as much as Glass.IceH
// allows: more ice than [food.IceFor] says, since the glass and the room take their share and
// the last of it melts late. IceGrams is not used. What five times the drink does not
// reach is a [honestplate.RangeError].
func (g Glass) IceFor(targetC float64, a Air, lamps ...light.Lamp) (honestplate.Estimate, error) {
	if err := honestplate.Finite("TargetC", targetC, "degC"); err != nil {
		return honestplate.Estimate{}, err
	}
	coldest := func(grams, stir float64) (float64, error) {
		g := g
		g.IceGrams = grams
		f, err := g.frame(a, lamps)
		if err != nil {
			return 0, err
		}
		f.model.ice.stirring *= stir
		m, _, err := f.likely()
		return m.done.coldestDrink, err
	}
	find := func(stir float64) (float64, error) {
		low, high := 0.0, 5*g.DrinkGrams
		c, err := coldest(high, stir)
		if err != nil {
			return 0, err
		}
		if c > targetC {
			return 0, &honestplate.RangeError{Field: "TargetC", Value: targetC, Low: c, High: g.DrinkC.Value, Unit: "degC",
				Source: "what five times the drink in ice comes to"}
		}
		for range 24 {
			mid := (low + high) / 2
			c, err := coldest(mid, stir)
			if err != nil {
				return 0, err
			}
			if c > targetC {
				low = mid
			} else {
				high = mid
			}
		}
		return high, nil
	}
	limits := stirring
	if g.IceH != (honestplate.Estimate{}) {
		limits = g.IceH.Times(1 / g.IceH.Likely)
	}
	var out honestplate.Estimate
	for _, v := range []struct {
		to   *float64
		stir float64
	}{{&out.High, limits.Low}, {&out.Likely, 1}, {&out.Low, limits.High}} {
		var err error
		if *v.to, err = find(v.stir); err != nil {
			return honestplate.Estimate{}, err
		}
	}
	out.Low, out.High = min(out.Low, out.Likely), max(out.High, out.Likely)
	return out, nil
}
