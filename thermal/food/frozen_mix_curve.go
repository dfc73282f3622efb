package food

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/root"
)

// hottest is the end of what is known of a mix, degC, as check.ColdestC is the other.
const hottest = 90.0

func inCurve(tempC float64) error {
	return honestplate.InRange("TempC", tempC, check.ColdestC, hottest, "degC", "range of the enthalpy curve")
}

// Enthalpy returns the heat in the mix, J/kg (air weighs nothing), at tempC, -90..90
// degC: 0 for the wholly melted mix at 0 degC. Errors as FrozenAtC. From the freezing
// curve,
//
//	h = sum x_i int_0^T c_i dT + w_u c_w T + w_ice (-L0 + int_0^T c_ice dT)
//
// with the solids and ice of Choi & Okos (1986), unfrozen water w_u at 4.18
// kJ/(kg K), L0 = 333.6 kJ/kg and w_u from IceShare. Nothing more freezes below
// -33 degC; what is left then, about 7 % of the mix, is more than its protein binds
// (0.4 kg/kg), so bound water sets no further limit. Composition formulas are not used: the enthalpy method of Pham is
// said by its own abstract (1995) to fail for ice cream, Tchigeov's ice fraction
// is 7 to 29 points too high, and taking all the water as ice makes the heat of
// melting at -13 degC 48 % too great.
func (m FrozenMix) Enthalpy(tempC float64) (float64, error) {
	if err := cmp.Or(m.check(), inCurve(tempC)); err != nil {
		return 0, err
	}
	return m.parts().enthalpy(tempC, m.ice(tempC)*m.water()), nil
}

// Curve returns the mix as what conducts heat, by volume, -89..89 degC: its Enthalpy at
// temperatures evenly spread in it, the freezing point among them. An invalid recipe is an
// input error.
//
// Conductivity: unfrozen part in parallel, ice in it by Levy, air cells between
// the effective medium and Maxwell's spheres, which differ by a factor of 1.4 at
// 90 % overrun; no published values for ice cream were found to check it, so
// allow x/: 1.25.
func (m FrozenMix) Curve() (heat.Curve, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	const steps, deep = 48, -40.0
	parts, water, density, freezeC := m.parts(), m.water(), m.density(), m.thawC(0)
	air := m.OverrunPercent / (100 + m.OverrunPercent)
	enthalpy := func(tempC float64) float64 { return parts.enthalpy(tempC, m.ice(tempC)*water) }
	temps := []float64{-89, -75, -60, -50}
	low, high := enthalpy(deep), enthalpy(freezeC)
	for i := range steps {
		h := low + (high-low)*float64(i)/steps
		t := root.Rising(func(t float64) float64 { return enthalpy(t) - h }, deep, freezeC)
		if t > temps[len(temps)-1]+1e-4 {
			temps = append(temps, t)
		}
	}
	temps = append(temps, freezeC)
	for _, t := range []float64{5, 20, 40, 65, 89} {
		if t > freezeC+1 {
			temps = append(temps, t)
		}
	}
	points := make(heat.Curve, len(temps))
	for i, t := range temps {
		k := foam(parts.conductivity(t, m.ice(t)*water), airConductivity(t), air)
		points[i] = heat.CurvePoint{TempC: t, Enthalpy: density * enthalpy(t), Conductivity: k}
	}
	return points, nil
}

// mixParts are mass fractions by component; waterPart is all the water.
type mixParts [componentCount]float64

// parts splits the recipe into components. Milk solids not fat are 38 % protein,
// 54 % lactose and 8 % ash; whey solids 13, 78 and 9 (typical, from memory). Other
// solids count as carbohydrate.
func (m FrozenMix) parts() mixParts {
	var p mixParts
	p[waterPart] = m.water()
	p[fatPart] = m.FatPercent / 100
	p[proteinPart] = (0.38*m.MSNFPercent + 0.13*m.WheySolidsPercent) / 100
	p[ashPart] = (0.08*m.MSNFPercent + 0.09*m.WheySolidsPercent) / 100
	p[carbohydratePart] = (0.54*m.MSNFPercent + 0.78*m.WheySolidsPercent + m.SucrosePercent +
		m.MonosaccharidePercent + m.GlucoseSyrupPercent + m.OtherSolidsPercent) / 100
	return p
}

// enthalpy is that at t with ice, kg per kg of mix, J/kg.
func (p mixParts) enthalpy(t, ice float64) float64 {
	h := (p[waterPart]-ice)*unfrozenWaterHeat*t + ice*(-heat.Fusion+heatFits[icePart].integral(t))
	for _, c := range [...]component{proteinPart, fatPart, carbohydratePart, ashPart} {
		h += p[c] * heatFits[c].integral(t)
	}
	return h
}

// conductivity is that without air, for the ice in kg per kg.
func (p mixParts) conductivity(t, ice float64) float64 {
	// The fits end at -40 degC; conductivity hardly changes below.
	t = max(t, -40)
	volume, k := 0.0, 0.0
	add := func(c component, mass float64) {
		v := mass / densityFits[c].at(t)
		volume += v
		k += v * conductivityFits[c].at(t)
	}
	for c := range icePart {
		mass := p[c]
		if c == waterPart {
			mass -= ice
		}
		add(c, mass)
	}
	k /= volume
	iceVolume := ice / densityFits[icePart].at(t)
	return levy(conductivityFits[icePart].at(min(t, 0)), k, iceVolume/(volume+iceVolume))
}
