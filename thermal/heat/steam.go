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
// the mixture condenses, warming as it does; the most liquid is of the best mixture.
// Surfaces to 99 degC.
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

// mixingLiquid is the most liquid of any mixture, g/m3. A mixture that condenses ends on
// the saturation curve, and each temperature there belongs to one mixture, since enthalpy
// and water both mix along a line. The curve bends upwards, so that the water above it has
// one top, below 0 where nothing condenses; golden section finds it to 0.01 K.
func (a MoistAir) mixingLiquid(surfaceC, activity float64) float64 {
	const within, golden = 0.01, 0.6180339887498949 // K; the ratio
	p := a.pressure()
	roomW, gainW := a.ratio(), ratioFrom(activity*saturation(surfaceC), p)
	if gainW <= roomW || surfaceC-a.TempC < within { // a line that falls, or is a point, meets no curve
		return 0
	}
	roomH, gainH := enthalpy(a.TempC, roomW), enthalpy(surfaceC, gainW)
	gainW, gainH = gainW-roomW, gainH-roomH
	liquid := func(t float64) float64 {
		ws, water := ratioFrom(saturation(t), p), liquidHeat*t // J/kg of the droplets
		x := (enthalpy(t, ws) + water*(roomW-ws) - roomH) / (gainH - water*gainW)
		dry := 1 / dryVolume(t, ws, p) // kg of dry air per m3
		return 1000 * dry * (roomW + x*gainW - ws)
	}
	low, high := a.TempC, surfaceC
	left, right := high-golden*(high-low), low+golden*(high-low)
	l, r := liquid(left), liquid(right)
	for high-low > within {
		if l > r {
			high, right, r = right, left, l
			left = high - golden*(high-low)
			l = liquid(left)
		} else {
			low, left, l = left, right, r
			right = low + golden*(high-low)
			r = liquid(right)
		}
	}
	return max(0, l, r)
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
