package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Glycerol is glycerol and water, the clear Newtonian test liquid, by its glycerol
// content, 0..100 % by mass, at 0..100 degC. A mixture of known strength checks a
// flow cup. The zero value is water by Cheng's formula, 0.5 % from Water.
type Glycerol struct {
	Percent float64 `json:"percent"` // glycerol, % by mass, 0..100
}

const (
	sourceCheng = "Cheng 2008, Ind. Eng. Chem. Res. 47, Formula for the viscosity of a glycerol-water mixture"
	sourceVolk  = "Volk & Kaehler 2018, Exp. Fluids 59, Density model for aqueous glycerol solutions"
)

// Describe says whose numbers these are.
func (g Glycerol) Describe() Description {
	return Description{
		Name:   fmt.Sprintf("glycerol-water, %.4g %% glycerol", g.Percent),
		Source: sourceCheng + "; density " + sourceVolk,
		LowC:   0, HighC: 100,
		Band: "+-4 % for 10 degC and warmer, +-9 % at 0 degC; 107 published values, 56 of them from memory",
	}
}

func (g Glycerol) check(tempC float64) error {
	return cmp.Or(honestplate.InRange("Percent", g.Percent, 0, 100, "% by mass", sourceCheng),
		honestplate.InRange("TempC", tempC, 0, 100, "degC", sourceCheng))
}

// Viscosity returns the dynamic viscosity in Pa s:
//
//	mu = mu_w^a mu_g^(1-a)
//	mu_w = 1.790 exp[(-1230 - t) t/(36100 + 360 t)],  mu_g = 12100 exp[(-1233 + t) t/(9900 + 70 t)]  mPa s
//	a = 1 - c + p q c (1 - c)/(p c + q (1 - c)),  p = 0.705 - 0.0017 t,  q = (4.9 + 0.036 t) p^2.5
//
// c the mass fraction of glycerol, t in degC, 0..100: Cheng 2008, read. Band +-4 %, and
// 0.5 % more for each degC below 10, from testdata/glycerol_water.csv: 92 % of 107
// values inside. Segur & Oberstar lie within 3.4 %; Melinder strays to -8 % (0 degC,
// 58 %) and +8 % (40 degC, 63 %), and the unit of his file was inferred.
func (g Glycerol) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(g.check(tempC), honestplate.Within(math.Exp(lnCheng(g.Percent/100, tempC)), 0.04+0.005*max(0, 10-tempC)))
}

// lnCheng is ln of the viscosity in Pa s, c the mass fraction of glycerol.
func lnCheng(c, t float64) float64 {
	lnW := math.Log(1.790e-3) + (-1230-t)*t/(36100+360*t)
	lnG := math.Log(12.100) + (-1233+t)*t/(9900+70*t)
	p := 0.705 - 0.0017*t
	q := (4.9 + 0.036*t) * p * p * math.Sqrt(p)
	a := 1 - c + p*q*c*(1-c)/(p*c+q*(1-c))
	return a*lnW + (1-a)*lnG
}

// Density returns the density in kg/m3,
//
//	rho = k [ c/rho_g + (1 - c)/rho_w ]^-1,  rho_g = 1273.3 - 0.6121 t,  rho_w of Water
//	k = 1 + A sin(pi c^1.31)^0.81,  A = 1.78e-6 t^2 - 1.82e-4 t + 1.41e-2
//
// stated for 15..30 degC: Volk & Kaehler 2018, read; used on to 0..100 with a band of
// +-0.115 % inside and 0.01 % more for each degC outside; from testdata/glycerol_water.csv:
// 96 % of Melinder's 50 values inside. The formula's authors claim less, and Melinder's
// values lie 0.1 % below it at 19..33 %.
func (g Glycerol) Density(tempC float64) (honestplate.Estimate, error) {
	c, t := g.Percent/100, tempC
	k := 1 + (1.78e-6*t*t-1.82e-4*t+1.41e-2)*math.Pow(max(0, math.Sin(math.Pi*math.Pow(c, 1.31))), 0.81)
	rho := k / (c/(1273.3-0.6121*t) + (1-c)/waterDensity(t))
	return check.Unless(g.check(t), honestplate.Within(rho, 0.00115+1e-4*(max(0, 15-t)+max(0, t-30))))
}

// SurfaceTension returns the surface tension against air in N/m, by mass between
// Water and glycerol's 0.0633 at 25 degC (read in a table of constants), which falls
// 0.06 mN/m each degC (from memory); band +-3 %.
func (g Glycerol) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	c := g.Percent / 100
	return check.Unless(g.check(tempC), honestplate.Within((1-c)*waterSurfaceTension(tempC)+c*(0.0633-6e-5*(tempC-25)), 0.03))
}
