package thermal

import (
	"math"
	"time"
)

// A Freezable is a food as the closed freezing formulas see it: one freezing point
// and one heat, which suits meat, fruit, bread and dough. It does not suit a frozen
// dessert, which gives up its heat over 20 K: use DeepFreeze for that.
type Freezable struct {
	FreezeC       float64 // initial freezing point, degC, below 0 or 0
	Density       float64 // unfrozen, kg/m3
	Heat          float64 // specific heat unfrozen, J/(kg K)
	Latent        float64 // heat of freezing, J per kg of food
	FrozenK       float64 // conductivity frozen, W/(m K)
	FrozenHeat    float64 // specific heat frozen, J/(kg K)
	FrozenDensity float64 // kg/m3; 0 means Density
}

func (f Freezable) frozenDensity() float64 {
	if f.FrozenDensity == 0 {
		return f.Density
	}
	return f.FrozenDensity
}

// A Freezing is a piece of food put into a freezer.
type Freezing struct {
	Food   Freezable // what freezes
	Size   Size      // its shape
	Medium Medium    // the freezer
	StartC float64   // of the food, degC; not used by Plank
	EndC   float64   // wanted at the centre, degC; not used by Plank
}

// check validates what both formulas need.
func (f Freezing) check() error {
	if err := f.Medium.Validate(); err != nil {
		return err
	}
	for _, v := range [...]struct {
		name, unit string
		value      float64
	}{
		{"density", "kg/m3", f.Food.Density}, {"frozen density", "kg/m3", f.Food.frozenDensity()},
		{"latent heat", "J/kg", f.Food.Latent}, {"frozen conductivity", "W/(m K)", f.Food.FrozenK},
	} {
		if err := positive(v.name, v.value, v.unit); err != nil {
			return err
		}
	}
	if err := within("freezing point", f.Food.FreezeC, -30, 0, "degC", "foods"); err != nil {
		return err
	}
	if f.Medium.TempC >= f.Food.FreezeC {
		return &InputError{"temperature of the medium", f.Medium.TempC, "degC", "below the freezing point of the food"}
	}
	return nil
}

// Plank returns the time that a piece at its freezing point takes to freeze
// through, its heat capacity left out:
//
//	t = rho L/(Tf - Ta) (P a/h + R a^2/k)
//
// with a the thickness or diameter, m, and shape constants P, R: slab 1/2, 1/8; long
// cylinder 1/4, 1/16; ball 1/6, 1/24; bar and brick by Plank's formula of 1941. It is
// short by what cooling before and after takes: methods differ by 25 % on one slab.
//
// Source: Plank 1913 and 1941 (from memory; slab checked on Geankoplis, Transport
// Processes and Unit Operations, example 5.5-2). A short cylinder is an
// *InputError, as are properties not above 0 and a medium not below the freezing
// point; a freezing point outside -30..0 degC is a *RangeError.
func (f Freezing) Plank() (time.Duration, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	p, r, a, err := f.Size.plank()
	if err != nil {
		return 0, err
	}
	heat := f.Food.Density * f.Food.Latent / (f.Food.FreezeC - f.Medium.TempC)
	return seconds(heat * (p*a/f.Medium.H + r*a*a/f.Food.FrozenK)), nil
}

// Pham returns the time from the starting temperature until the centre has the
// wanted one:
//
//	t = d/(E h) (dH1/dT1 + dH2/dT2) (1 + Bi/2),  Bi = h d/k
//	Tfm = 1.8 + 0.263 Tc + 0.105 Ta
//	dH1 = rho_u c_u (Ti - Tfm),  dT1 = (Ti + Tfm)/2 - Ta
//	dH2 = rho_f [L + c_f (Tfm - Tc)],  dT2 = Tfm - Ta
//
// with d half the thickness or the radius, m, Ti, Tc, Ta the temperatures of start,
// centre at the end and medium, E the shape factor (see ShapeFactor). Its author
// claims +-10 %; for watery foods, Bi 0.02..11.
//
// Source: Pham 1986, Simplified equation for predicting the freezing time of
// foodstuffs (from memory, as in Singh & Heldman, Introduction to Food
// Engineering, ch. 7). Errors as Plank; a Biot number outside the range is a
// *RangeError, temperatures out of order are an *InputError.
func (f Freezing) Pham() (time.Duration, error) {
	if err := f.check(); err != nil {
		return 0, err
	}
	if err := positive("specific heat", f.Food.Heat, "J/(kg K)"); err != nil {
		return 0, err
	}
	if err := positive("frozen specific heat", f.Food.FrozenHeat, "J/(kg K)"); err != nil {
		return 0, err
	}
	if err := within("starting temperature", f.StartC, f.Food.FreezeC, 60, "degC", "above freezing, Pham 1986"); err != nil {
		return 0, err
	}
	ta, tc, ti := f.Medium.TempC, f.EndC, f.StartC
	if err := finite("wanted temperature", tc, "degC"); err != nil {
		return 0, err
	}
	if !(ta < tc && tc < f.Food.FreezeC) {
		return 0, &InputError{"wanted temperature", tc, "degC", "between the medium and the freezing point"}
	}
	axes, err := f.Size.axes()
	if err != nil {
		return 0, err
	}
	d := axes[0].half
	for _, a := range axes {
		d = min(d, a.half)
	}
	bi := f.Medium.H * d / f.Food.FrozenK
	if err := within("Biot number", bi, 0.02, 11, "", "Pham 1986"); err != nil {
		return 0, err
	}
	tfm := 1.8 + 0.263*tc + 0.105*ta
	if !(ta < tfm && tfm < ti) {
		return 0, &RangeError{"mean freezing temperature", tfm, ta, ti, "degC", "Pham 1986: between medium and start"}
	}
	dh1 := f.Food.Density * f.Food.Heat * (ti - tfm)
	dh2 := f.Food.frozenDensity() * (f.Food.Latent + f.Food.FrozenHeat*(tfm-tc))
	dt1, dt2 := (ti+tfm)/2-ta, tfm-ta
	e := f.Size.factor(axes, bi)
	return seconds(d / (e * f.Medium.H) * (dh1/dt1 + dh2/dt2) * (1 + bi/2)), nil
}

// brickPlank returns Plank's constants for a brick whose other sides are b1 <= b2
// times the shortest (Plank 1941, from memory; b1 = b2 = 1 gives 1/6 and 1/24, an
// endless plate 1/2 and 1/8).
func brickPlank(b1, b2 float64) (p, r float64) {
	p = b1 * b2 / (2 * (b1*b2 + b1 + b2))
	s := math.Sqrt((b1-b2)*(b1-1) + (b2-1)*(b2-1))
	if s < 1e-3 {
		// Near the cube the formula is 0/0; it is flat there.
		b2 += 1e-3
		s = math.Sqrt((b1-b2)*(b1-1) + (b2-1)*(b2-1))
	}
	l, m := (b1+b2+1+s)/3, (b1+b2+1-s)/3
	term := func(x float64) float64 {
		if x <= 1 {
			return 0 // (x - 1) ln(x - 1) tends to 0
		}
		return (x - 1) * (b1 - x) * (b2 - x) * math.Log(x/(x-1))
	}
	return p, (term(l)-term(m))/(8*s) + (2*b1+2*b2-1)/72
}
