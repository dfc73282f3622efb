package thermal

// chenLow is the temperature at which Chen's enthalpy is 0, degC.
const chenLow = -40.0

const chen = "Chen 1985"

// Enthalpy returns the enthalpy, J/kg, from 0 at -40 degC to tempC, at most 60 degC.
// Frozen, with temperatures in degC and Tr = -40,
//
//	H = (T - Tr) [1550 + 1260 x_s - (x_w - x_b) L0 Tf/(Tr T)]
//
// and from there on, unfrozen, H(Tf) + (T - Tf) (4190 - 2300 x_s - 628 x_s^3), with
// x_s the solids and x_b = 0.4 x_protein the bound water. Source: Chen 1985, in the
// ASHRAE Refrigeration handbook (read in a copy); found best of the
// composition formulas by Fricke & Becker 2001 (abstract, read). It fails for fats
// and ice cream, says Pham (1995, abstract): for those use FrozenMix.
//
// A freezing point that is not given is an *InputError; others as IceFraction.
func (f Food) Enthalpy(tempC float64) (float64, error) {
	p, err := f.chen(tempC)
	if err != nil {
		return 0, err
	}
	solids := 1 - p[Water]
	frozen := func(t float64) float64 {
		return (t - chenLow) * (1550 + 1260*solids - p.freezable()*fusion*f.FreezeC/(chenLow*t))
	}
	if tempC <= f.FreezeC {
		return frozen(tempC), nil
	}
	return frozen(f.FreezeC) + (tempC-f.FreezeC)*(4190-2300*solids-628*solids*solids*solids), nil
}

// ApparentHeat returns the specific heat with melting, J/(kg K): the slope of
// Enthalpy, at the freezing point that of the frozen side. Errors as Enthalpy.
func (f Food) ApparentHeat(tempC float64) (float64, error) {
	p, err := f.chen(tempC)
	if err != nil {
		return 0, err
	}
	solids := 1 - p[Water]
	if tempC <= f.FreezeC {
		return 1550 + 1260*solids - p.freezable()*fusion*f.FreezeC/(tempC*tempC), nil
	}
	return 4190 - 2300*solids - 628*solids*solids*solids, nil
}

func (f Food) chen(tempC float64) (mixParts, error) {
	if err := f.Validate(); err != nil {
		return mixParts{}, err
	}
	if f.FreezeC == 0 {
		return mixParts{}, &InputError{"initial freezing point", 0, "degC", "given, for an enthalpy"}
	}
	return f.parts(), within("temperature", tempC, chenLow, 60, "degC", chen)
}

// Points returns enthalpy and conductivity from -40 to 60 degC as the solver takes
// them (see Body), on the density at 5 degC: the piece keeps its outline. Errors as
// Enthalpy.
func (f Food) Points() (Curve, error) {
	const steps = 40
	if _, err := f.chen(chenLow); err != nil {
		return nil, err
	}
	rho, err := f.Density(5)
	if err != nil {
		return nil, err
	}
	var out Curve
	add := func(tempC float64) error {
		h, err := f.Enthalpy(tempC)
		if err != nil {
			return err
		}
		k, err := f.Conductivity(tempC)
		out = append(out, CurvePoint{tempC, rho * h, k})
		return err
	}
	most := 1 - f.FreezeC/chenLow // even steps of ice, which are even steps of heat
	for i := range steps + 1 {
		if err := add(max(chenLow, f.FreezeC/(1-most*(1-float64(i)/steps)))); err != nil {
			return nil, err
		}
	}
	for _, t := range [...]float64{5, 20, 40, 60} {
		if err := add(t); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// Freezable returns the food as the freezing formulas take it: unfrozen properties
// at 5 degC, frozen ones at -20 degC, the heat of freezing all its water. A freezing
// point that is not given is an *InputError; others as Validate.
func (f Food) Freezable() (Freezable, error) {
	if f.FreezeC == 0 {
		return Freezable{}, &InputError{"initial freezing point", 0, "degC", "given, for a food to freeze"}
	}
	out := Freezable{FreezeC: f.FreezeC}
	var err error
	for _, v := range [...]struct {
		to   *float64
		of   func(float64) (float64, error)
		temp float64
	}{
		{&out.Density, f.Density, 5}, {&out.Heat, f.SpecificHeat, 5},
		{&out.FrozenDensity, f.Density, -20}, {&out.FrozenHeat, f.SpecificHeat, -20}, {&out.FrozenK, f.Conductivity, -20},
		{&out.Latent, func(float64) (float64, error) { return f.FreezingHeat() }, 0},
	} {
		if *v.to, err = v.of(v.temp); err != nil {
			return Freezable{}, err
		}
	}
	return out, nil
}

// Watery returns a Freezable for a food of which only the water, 0.1..1 by mass, the
// freezing point and the density are known, by Earle's rough rules (Unit Operations
// in Food Processing, appendix, read; the heats are Siebel's):
//
//	c = 3350 w + 840,  frozen 1260 w + 840 J/(kg K)
//	L = 335 kJ/kg x w,  k frozen = 2.4 w + 0.26 (1 - w) W/(m K)
//
// For milk 3 to 5 % off. Other water, a freezing point outside -30..0 degC and a density
// outside 1..1e4 kg/m3 are a *RangeError.
func Watery(water, freezeC, density float64) (Freezable, error) {
	if err := within("water", water, 0.1, 1, "", "Earle's rules"); err != nil {
		return Freezable{}, err
	}
	if err := within("freezing point", freezeC, -30, 0, "degC", "foods"); err != nil {
		return Freezable{}, err
	}
	if err := within("density", density, 1, 1e4, "kg/m3", "foods"); err != nil {
		return Freezable{}, err
	}
	return Freezable{
		FreezeC: freezeC, Density: density, Heat: 3350*water + 840, Latent: 335e3 * water,
		FrozenK: 2.4*water + 0.26*(1-water), FrozenHeat: 1260*water + 840,
	}, nil
}
