package food

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// A Food is what a food is made of, mass fractions that add up to 1 within 2 %
// (they are scaled to 1), and where it starts to freeze. Frozen desserts have a
// FrozenMix instead, whose freezing curve is published.
type Food struct {
	Water        float64 `json:"water,omitzero"`        // bound water included
	Protein      float64 `json:"protein,omitzero"`      // binds 0.4 of its mass of water
	Fat          float64 `json:"fat,omitzero"`          // solid or liquid
	Carbohydrate float64 `json:"carbohydrate,omitzero"` // without fibre
	Fibre        float64 `json:"fibre,omitzero"`        // indigestible carbohydrate
	Ash          float64 `json:"ash,omitzero"`          // minerals and salt
	// FreezeC is the initial freezing point, degC, -30..-0.1; 0 means that it is
	// not known, and frozen properties are refused.
	FreezeC float64 `json:"freeze_c,omitzero"`
	// Porosity is the volume fraction of air, 0..0.6.
	Porosity float64 `json:"porosity,omitzero"`
}

// check reports what is wrong with the food: an [honestplate.InputError] for a fraction that
// is negative or a sum that is not 1, a [honestplate.RangeError] for a freezing point or porosity
// outside its range.
func (f Food) check() error {
	sum := 0.0
	for _, c := range foodComponents {
		if err := honestplate.NotNegative(c.String(), f.fraction(c), ""); err != nil {
			return err
		}
		sum += f.fraction(c)
	}
	if sum < 0.98 || sum > 1.02 {
		return check.Input("Food", sum, "", "1 within 2 %")
	}
	if err := honestplate.InRange("Porosity", f.Porosity, 0, 0.6, "", "effective medium, connected solid"); err != nil {
		return err
	}
	if f.FreezeC == 0 {
		return nil
	}
	return honestplate.InRange("FreezeC", f.FreezeC, -30, -0.1, "degC", "freezing points of foods")
}

// foodComponents are those that a Food is given by; ice forms from the water.
var foodComponents = [...]component{waterPart, proteinPart, fatPart, carbohydratePart, fibrePart, ashPart}

func (f Food) fraction(c component) float64 {
	switch c {
	case waterPart:
		return f.Water
	case proteinPart:
		return f.Protein
	case fatPart:
		return f.Fat
	case carbohydratePart:
		return f.Carbohydrate
	case fibrePart:
		return f.Fibre
	}
	return f.Ash
}

// parts returns the scaled fractions.
func (f Food) parts() mixParts {
	var p mixParts
	sum := f.Water + f.Protein + f.Fat + f.Carbohydrate + f.Fibre + f.Ash
	for _, c := range foodComponents {
		p[c] = f.fraction(c) / sum
	}
	return p
}

// boundShare is the water that protein keeps from freezing, kg per kg of protein:
// 0.4, Schwartzberg 1976 as cited by the ASHRAE handbook (read in a copy).
const boundShare = 0.4

// freezable is the water that can freeze, kg per kg.
func (p mixParts) freezable() float64 { return max(0, p[waterPart]-boundShare*p[proteinPart]) }

// state checks a temperature and returns the fractions and the ice at it.
func (f Food) state(tempC float64) (p mixParts, ice float64, err error) {
	if err := f.check(); err != nil {
		return p, 0, err
	}
	if err := honestplate.InRange("TempC", tempC, -40, 150, "degC", choiOkos); err != nil {
		return p, 0, err
	}
	p = f.parts()
	if f.FreezeC == 0 {
		return p, 0, honestplate.InRange("TempC", tempC, 0, 150, "degC", choiOkos)
	}
	if tempC < f.FreezeC {
		ice = p.freezable() * (1 - f.FreezeC/tempC)
	}
	return p, ice, nil
}

// IceFraction returns the ice, kg per kg of food, at tempC, -40..150 degC:
//
//	x_ice = (x_w - 0.4 x_p) (1 - Tf/T)
//
// with temperatures in degC. Source: Miles and Chen's form with Schwartzberg's bound
// water, as in the ASHRAE handbook (from memory; bound water read). For ice cream it
// stays within 2.3 points of the water frozen in Goff & Hartel's table. A food or
// temperature outside its range is an [honestplate.InputError] or [honestplate.RangeError].
func (f Food) IceFraction(tempC float64) (float64, error) {
	_, ice, err := f.state(tempC)
	return ice, err
}

// Density returns the density, kg/m3: (1 - porosity)/sum(x_i/rho_i), Choi & Okos
// 1986. Errors as IceFraction.
func (f Food) Density(tempC float64) (float64, error) {
	p, ice, err := f.state(tempC)
	if err != nil {
		return 0, err
	}
	volume := 0.0
	for _, c := range foodComponents {
		x := p[c]
		if c == waterPart {
			x -= ice
		}
		volume += x / c.densityFit().at(tempC)
	}
	volume += ice / icePart.densityFit().at(min(tempC, 0))
	return (1 - f.Porosity) / volume, nil
}

// SpecificHeat returns the specific heat without melting, J/(kg K): sum(x_i c_i),
// Choi & Okos 1986. Unfrozen water below 0 degC counts at 4.18 kJ/(kg K). Errors as
// IceFraction.
func (f Food) SpecificHeat(tempC float64) (float64, error) {
	p, ice, err := f.state(tempC)
	if err != nil {
		return 0, err
	}
	sum := ice * icePart.heatFit(tempC).at(min(tempC, 0))
	for _, c := range foodComponents[1:] {
		sum += p[c] * c.heatFit(tempC).at(tempC)
	}
	if tempC < 0 {
		return sum + (p[waterPart]-ice)*unfrozenWaterHeat, nil
	}
	return sum + p[waterPart]*waterPart.heatFit(tempC).at(tempC), nil
}

// Conductivity returns the thermal conductivity, W/(m K): components in parallel,
// ice in them by Levy, air by the effective medium, the order that Carson et al.
// 2016 recommend (abstract, read). Unfrozen +-10 %, frozen or porous +-20 %. Errors
// as IceFraction.
func (f Food) Conductivity(tempC float64) (float64, error) {
	p, ice, err := f.state(tempC)
	if err != nil {
		return 0, err
	}
	return effectiveMedium(p.conductivity(tempC, ice), airConductivity(tempC), f.Porosity), nil
}
