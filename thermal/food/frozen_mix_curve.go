package food

import (
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/root"
)

// Curve returns the mix's enthalpy, ice and conductivity against temperature.
// An invalid recipe is an input error.
//
// Enthalpy, J/kg of mix, from the freezing curve:
//
//	h = sum x_i int_0^T c_i dT + w_u c_w T + w_ice (-L0 + int_0^T c_ice dT)
//
// with the solids and ice of Choi & Okos (1986), unfrozen water w_u at 4.18
// kJ/(kg K), L0 = 333.6 kJ/kg and w_u from FrozenAtC. Nothing more freezes below
// -33 degC; what is left then, about 7 % of the mix, is more than its protein binds
// (0.4 kg/kg), so bound water sets no further limit. Composition formulas are not used: the enthalpy method of Pham is
// said by its own abstract (1995) to fail for ice cream, Tchigeov's ice fraction
// is 7 to 29 points too high, and taking all the water as ice makes the heat of
// melting at -13 degC 48 % too great.
//
// Conductivity: unfrozen part in parallel, ice in it by Levy, air cells between
// the effective medium and Maxwell's spheres, which differ by a factor of 1.4 at
// 90 % overrun; no published values for ice cream were found to check it, so
// allow x/: 1.25. It takes some 30 us; keep the curve.
func (m FrozenMix) Curve() (*EnthalpyCurve, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	const frozenSteps, wide = 512, 5.0
	parts := m.parts()
	water := parts[waterPart]
	air := m.OverrunPercent / (100 + m.OverrunPercent)

	// The most that freezes, by bisection on the monotone freezing curve.
	most := root.Rising(func(frozen float64) float64 { return glassC - m.thawC(frozen) }, 0, 1-1e-6)

	points := make([]curvePoint, 0, frozenSteps+64)
	deepest := m.thawC(most)
	for t := ColdestC; t < deepest-1e-9; t += wide {
		points = append(points, parts.point(t, most*water, air))
	}
	// Even steps in 1/unfrozen are near even steps in temperature.
	top := 1 / (1 - most)
	for i := range frozenSteps {
		inverse := top + (1-top)*float64(i)/frozenSteps
		frozen := 1 - 1/inverse
		points = append(points, parts.point(m.thawC(frozen), frozen*water, air))
	}
	freeze := len(points)
	start := m.thawC(0)
	points = append(points, parts.point(start, 0, air))
	for t := wide * float64(int(start/wide)); t < hottest+wide/2; t += wide {
		if t > start {
			points = append(points, parts.point(t, 0, air))
		}
	}
	return newCurve(points, freeze, m.mixDensity()/(1+m.OverrunPercent/100)), nil
}

// mixParts are mass fractions by component; Water is all the water.
type mixParts [componentCount]float64

// parts splits the recipe into components. Milk solids not fat are 38 % protein,
// 54 % lactose and 8 % ash; whey solids 13, 78 and 9 (typical, from memory). Other
// solids count as carbohydrate.
func (m FrozenMix) parts() mixParts {
	var p mixParts
	p[waterPart] = m.WaterFraction()
	p[fatPart] = m.FatPercent / 100
	p[proteinPart] = (0.38*m.MSNFPercent + 0.13*m.WheySolidsPercent) / 100
	p[ashPart] = (0.08*m.MSNFPercent + 0.09*m.WheySolidsPercent) / 100
	p[carbohydratePart] = (0.54*m.MSNFPercent + 0.78*m.WheySolidsPercent + m.SucrosePercent +
		m.MonosaccharidePercent + m.GlucoseSyrupPercent + m.OtherSolidsPercent) / 100
	return p
}

// point returns the state at t with ice, kg per kg of mix.
func (p mixParts) point(t, ice, air float64) curvePoint {
	h := (p[waterPart]-ice)*unfrozenWaterHeat*t + ice*(-heat.Fusion+icePart.heatFit(t).integral(t))
	for _, c := range [...]component{proteinPart, fatPart, carbohydratePart, ashPart} {
		h += p[c] * c.heatFit(t).integral(t)
	}
	return curvePoint{h: h, tempC: t, ice: ice, k: foam(p.conductivity(t, ice), airConductivity(t), air)}
}

// conductivity is that without air, for the ice in kg per kg.
func (p mixParts) conductivity(t, ice float64) float64 {
	// The fits end at -40 degC; conductivity hardly changes below.
	t = max(t, -40)
	volume, k := 0.0, 0.0
	add := func(c component, mass float64) {
		v := mass / c.densityFit().at(t)
		volume += v
		k += v * c.conductivityFit().at(t)
	}
	for c := range icePart {
		mass := p[c]
		if c == waterPart {
			mass -= ice
		}
		add(c, mass)
	}
	k /= volume
	iceVolume := ice / icePart.densityFit().at(t)
	return levy(icePart.conductivityFit().at(min(t, 0)), k, iceVolume/(volume+iceVolume))
}
