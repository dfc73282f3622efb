package thermal

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solution"
	"example.org/honestplate/thermal/light"
)

// complete checks a glass and fills in its defaults.
func (g Glass) complete(a Air) (Glass, error) {
	usualInsideH := 150.0
	if g.DrinkGrams == 0 {
		usualInsideH = 3
	}
	g.WallThickness = cmp.Or(g.WallThickness, 0.003)
	g.Wall = cmp.Or(g.Wall, heat.SodaLime())
	g.InsideH = cmp.Or(g.InsideH, usualInsideH)
	g.EndsH = cmp.Or(g.EndsH, 6)
	g.Stages = cmp.Or(g.Stages, DefaultStages())
	g.WallC = some(g.WallC, a.TempC)
	g.Horizon = cmp.Or(g.Horizon, 4*time.Hour)
	freezes, drinkErr := g.Drink.FreezesC()
	const source = "glasses, mugs and cans"
	err := cmp.Or(inRoom(a, -30, 60, "rooms in which people work"), check.Fields(source,
		check.Number("Diameter", g.Diameter, 0.01, 1, "m"),
		check.Number("WallThickness", g.WallThickness, 1e-4, 0.02, "m"),
		check.Number("DrinkGrams", g.DrinkGrams, 0, 1e5, "g"),
		check.Number("IceGrams", g.IceGrams, 0, 1e5, "g"),
		check.Number("IceC", g.IceC.Value, -40, 0, "degC"),
		check.Number("WallC", g.WallC.Value, -60, 100, "degC"),
		check.Number("Emissivity", g.Emissivity, 0, 1, ""),
		check.Number("InsideH", g.InsideH, 0.01, 1e5, "W/(m2 K)"),
		check.Number("EndsH", g.EndsH, 0.01, 1000, "W/(m2 K)"),
		check.Number("Horizon", g.Horizon.Seconds(), 1, 48*3600, "s"),
	), wallCheck(g.Wall, source), g.Stages.check(), honestplate.In("Drink", drinkErr))
	if err == nil && g.DrinkGrams > 0 {
		err = cmp.Or(given("DrinkC", g.DrinkC, "the temperature of the drink as it is poured"),
			honestplate.InRange("DrinkC", g.DrinkC.Value, freezes, 100, "degC", "a drink that is neither freezing nor boiling"))
	}
	if err != nil {
		return g, err
	}
	g, err = g.completeIce()
	return g, cmp.Or(err, g.fits())
}

// fits checks the glass's geometry and heat against its contents.
func (g Glass) fits() error {
	bored := check.Not(g.bore() < 0.002, "Diameter", g.Diameter, "m", "2 mm more than two walls")
	if g.DrinkGrams == 0 {
		return cmp.Or(bored, check.Not(g.IceGrams > 0, "DrinkGrams", 0, "g", "above 0 where there is ice"),
			honestplate.InRange("Height", g.Height, 0.01, 1, "m", "the height of an empty glass must be given"))
	}
	perMetre := (g.DrinkGrams + g.IceGrams) / g.depth()
	return cmp.Or(bored, honestplate.InRange("DrinkGrams", g.DrinkGrams, max(0, 0.005*perMetre-g.IceGrams), perMetre-g.IceGrams, "g", "a depth of 5 mm to 1 m in the Diameter"),
		honestplate.InRange("Height", cmp.Or(g.Height, 0.1), 0.01, 1, "m", "glasses, mugs and cans"),
		check.Not(g.Height != 0 && g.WallThickness+g.depth() > g.Height, "Height", g.Height, "m", "above the liquid line; the drink does not fit"))
}

func (g Glass) bore() float64 { return g.Diameter - 2*g.WallThickness }

// depth of the liquid, m: floating ice displaces its own mass.
func (g Glass) depth() float64 {
	return (g.DrinkGrams + g.IceGrams) / 1000 / solution.Drink(g.Drink).Density() / (math.Pi / 4 * g.bore() * g.bore())
}

// light is what the drink absorbs per square metre of the glass's upright section. An
// empty glass lets nearly all through.
func (g Glass) light(lamps []light.Lamp) (honestplate.Estimate, error) {
	clear, err := light.ClearWater(g.bore())
	abs := cmp.Or(g.Absorptance, clear)
	if g.DrinkGrams == 0 {
		abs = light.Absorptance{}
	}
	light, lightErr := abs.Absorbed(lamps...)
	return light, cmp.Or(err, lightErr)
}

// rim is how far the wall stands out of the liquid, m.
func (g Glass) rim() float64 {
	if g.Height == 0 {
		return 0.2 * g.depth()
	}
	return g.Height - g.WallThickness - g.depth()
}

// Coefficients of the wall above the liquid, W/(m2 K).
const finOutside, finInside = 10.0, 6.0

// fade is the length over which the coldness of the wall fades above the liquid, m:
// (k w/(h_out + h_in))^(1/2), some 14 mm in glass of 3 mm.
func (g Glass) fade() float64 {
	return math.Sqrt(g.Wall.Conductivity * g.WallThickness / (finOutside + finInside))
}

// lines returns the liquid line and the highest fog above the table. Above the liquid
// the wall is a fin with an idle tip: its coldness fades as cosh((rim - x)/fade)/cosh(rim/fade).
func (g Glass) lines(airC, dewC, coldestC float64) (liquid, fog float64) {
	if g.DrinkGrams == 0 {
		if coldestC < dewC {
			fog = g.Height
		}
		return g.Height, fog
	}
	liquid = g.WallThickness + g.depth()
	if coldestC >= dewC {
		return liquid, 0
	}
	rim, fade := g.rim(), g.fade()
	// Saturated air fogs all that is colder than itself.
	share := max(0, airC-dewC) / (airC - coldestC)
	if rim/fade > 300 { // cosh would overflow: a long, thin fin
		return liquid, liquid + min(rim, -fade*math.Log(share))
	}
	if c := share * math.Cosh(rim/fade); c > 1 {
		return liquid, liquid + rim - fade*math.Acosh(c)
	}
	return liquid, liquid + rim
}

// outside is the outer surface below the liquid line in the air a, dry; of an empty
// glass all of it.
func (g Glass) outside() heat.Surface {
	length := g.Height
	if g.DrinkGrams > 0 {
		length = g.depth()
	}
	return heat.Surface{Shape: heat.VerticalCylinder, Length: length, Diameter: g.Diameter, Emissivity: g.Emissivity}
}

// side is the area of that surface, m2.
func (g Glass) side() float64 {
	if g.DrinkGrams > 0 {
		return math.Pi * g.Diameter * g.depth()
	}
	return math.Pi * g.Diameter * g.Height
}

// endsConductance is W/K between the drink and the room through its surface, base and
// the rim that sticks out of it.
//
// The rim is a fin whose root is the wetted wall, itself a fin in the drink: per metre
// of the rim's length their conductances are (h k w)^(1/2) tanh(length (h/(k w))^(1/2)),
// in series. Far below the line the wall lies between drink and room, nearer to the
// drink by the share s = h_in/(h_in + h_out); the rim is so much the less cold, and of
// what it brings down the share s goes into the drink, the rest keeps heat of the room
// from the wall below: hence s^2.
func (g Glass) endsConductance() float64 {
	face := math.Pi * g.bore() * g.bore() / 4
	kw := g.Wall.Conductivity * g.WallThickness
	fin := func(h, length float64) float64 { return math.Sqrt(h*kw) * math.Tanh(length*math.Sqrt(h/kw)) }
	wet, rim := g.InsideH+finOutside, g.rim()
	if rim <= 0 {
		return 2 * g.EndsH * face
	}
	s := g.InsideH / wet
	return 2*g.EndsH*face + math.Pi*g.Diameter*s*s/(1/fin(finOutside+finInside, rim)+1/fin(wet, g.depth()))
}
