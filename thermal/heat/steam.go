package heat

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/root"
)

// SteamGM3 returns what one sees above a surface at surfaceC with this water activity (0..1,
// 1 for water and soup), hot and moist: not the vapour but the droplets that form where it
// mixes with cooler air, as the most liquid water that any mixture holds, g/m3; 0 where
// nothing is seen. Breath on a day of 7 degC carries about 1.2 and is just seen (computed
// from an everyday observation); below some 0.3 steam shows against a dark ground with
// light from behind or not at all (engineering estimate: no published threshold was found).
//
// The vapour at the surface, a_w p_ws(T_s), mixes with the room's along a straight
// line of vapour pressure against temperature. Where the line lies above saturation,
// the mixture condenses, warming as it does; the most liquid is found by trying 200
// mixtures. Surfaces to 99 degC.
//
// Source: mixing of moist air (ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, adiabatic
// mixing); the criterion is that of cloud physics (mixing clouds), from memory.
func (a MoistAir) SteamGM3(surfaceC, activity float64) (float64, error) {
	if err := cmp.Or(honestplate.In("Air", a.check()), check.Fields("an open surface of food, up to boiling",
		check.Number("SurfaceC", surfaceC, -50, 99, "degC"), check.Number("Activity", activity, 0, 1, ""))); err != nil {
		return 0, err
	}
	if pw, most := activity*saturation(surfaceC), 0.99*a.pressure(); pw > most {
		return 0, &honestplate.RangeError{Field: "SurfaceC", Value: surfaceC, Low: -50, High: boiling(most / activity), Unit: "degC",
			Source: "at most 99 % of the air pressure may be vapour"}
	}
	return a.mixingLiquid(surfaceC, activity), nil
}

// mixingLiquid is the most liquid of any mixture, g/m3: the best of 24, refined by
// golden section.
func (a MoistAir) mixingLiquid(surfaceC, activity float64) float64 {
	if surfaceC <= a.TempC {
		return 0
	}
	p := a.pressure()
	hotW, roomW := ratioFrom(activity*saturation(surfaceC), p), a.ratio()
	hotH, roomH := enthalpy(surfaceC, hotW), enthalpy(a.TempC, roomW)
	liquid := func(x float64) float64 {
		return liquidOf(x*hotW+(1-x)*roomW, x*hotH+(1-x)*roomH, surfaceC, p)
	}
	const n = 24
	best, at := 0.0, 0.0
	for i := 1; i < n; i++ {
		if l := liquid(float64(i) / n); l > best {
			best, at = l, float64(i)/n
		}
	}
	if best == 0 {
		// A sliver near either end: the tangent says whether there is one.
		return max(liquid(0.5/n), liquid(1-0.5/n))
	}
	const golden = 0.6180339887498949
	low, high := at-1.0/n, at+1.0/n
	for range 14 {
		left, right := high-golden*(high-low), low+golden*(high-low)
		if l, r := liquid(left), liquid(right); l > r {
			best, high = max(best, l), right
		} else {
			best, low = max(best, r), left
		}
	}
	return best
}

// liquidOf is the liquid in air of w kg of water per kg of dry air and an enthalpy of h
// J/kg, g/m3; hottest is a temperature that it does not reach.
func liquidOf(w, h, hottest, p float64) float64 {
	// Is it over-saturated at the temperature it would have without condensing?
	t := (h - 2.501e6*w) / (1006 + 1860*w)
	if w <= ratioFrom(saturation(t), p) {
		return 0
	}
	// Condensing keeps the enthalpy: find T with h = 1006 T + Ws(T)(...) + (w - Ws) 4186 T.
	t = root.Newton(func(t float64) (float64, float64) {
		ln, relative := lnSaturation(t + kelvin)
		ps := math.Exp(ln)
		ws := ratioFrom(ps, p)
		f := enthalpy(t, ws) + (w-ws)*4186*t - h
		slope := 1006 + ws*1860 + (w-ws)*4186 + ws*relative*p/(p-ps)*(2.501e6-2326*t)
		return f, f / slope
	}, t, hottest, t, 1e-9)
	ws := ratioFrom(saturation(t), p)
	dry := p / (dryGas * (t + kelvin) * (1 + 1.607858*ws)) // kg of dry air per m3
	return 1000 * dry * (w - ws)
}

// SteamFromC returns the lowest temperature of a surface with a water activity, deg C,
// whose steam somewhere carries liquidGM3 of droplets, 0..20 g/m3: what is seen needs
// about 1 (0.3 to 2, see SteamGM3); for 0 nothing forms below it. It lies lower where the
// room is cool and damp; 100 means that none does below boiling. To 0.001 K.
func (a MoistAir) SteamFromC(liquidGM3, activity float64) (float64, error) {
	if err := cmp.Or(honestplate.In("Air", a.check()), check.Fields("steam of food and drink",
		check.Number("LiquidGM3", liquidGM3, 0, 20, "g/m3"), check.Number("Activity", activity, 0, 1, ""))); err != nil {
		return 0, err
	}
	low := a.steamThreshold(activity)
	if liquidGM3 == 0 || low >= 100 {
		return low, nil
	}
	high := min(99, boiling(0.99*a.pressure()))
	over := func(t float64) float64 { return a.mixingLiquid(t, activity) - liquidGM3 }
	if low >= high || over(high) < 0 {
		return 100, nil
	}
	return root.RisingTo(over, low, high, 1e-3), nil // the liquid grows with the surface
}

// steamThreshold is the lowest surface temperature from which some mixture is
// over-saturated. The line from the room's point that touches the saturation curve
// touches it at one temperature; the surface is where its own vapour meets that line,
// there or, if its water activity is below 1, above.
func (a MoistAir) steamThreshold(activity float64) float64 {
	pw, slope := a.vapour(), 0.0
	high := min(99, 0.99*boiling(a.pressure()))
	above := func(t float64) float64 { // the tangent at t passes the room's point; rises with t
		ln, relative := lnSaturation(t + kelvin)
		saturated := math.Exp(ln)
		slope = saturated * relative
		return pw + slope*(t-a.TempC) - saturated
	}
	if high <= a.TempC || above(high) < 0 {
		return 100
	}
	touch := root.Rising(above, a.TempC, high)
	above(touch) // for the slope there
	reaches := func(t float64) float64 { return activity*saturation(t) - pw - slope*(t-a.TempC) }
	if reaches(high) < 0 {
		return 100
	}
	return root.Rising(reaches, touch, high)
}
