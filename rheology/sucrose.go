package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Sucrose is pure sugar in water by its Brix (% sucrose by mass), 0..75, at
// 0..80 degC. The zero value is water. Above the solubility (64 Brix at 0, 67 at
// 20, 74 at 60 degC) the syrup is supersaturated: the numbers hold until it grains.
//
// Hot syrup sticks and burns: handle it as you would hot oil.
type Sucrose struct {
	Brix float64 `json:"brix"` // % sucrose by mass, 0..75
}

const (
	sourceGenotelle = "Genotelle's equation, in Mathlouthi & Genotelle 1995, Sucrose: properties and applications"
	sucroseHighBrix = 75.0
	sucroseHighC    = 80.0
)

// Describe says whose numbers these are.
func (s Sucrose) Describe() Description {
	return Description{
		Name:   fmt.Sprintf("sugar syrup, %.4g Brix", s.Brix),
		Source: sourceGenotelle + "; joined to water below 20 Brix",
		LowC:   0, HighC: sucroseHighC,
		Band: "+-2.5 % for 30..65 Brix and 20..60 degC, to +-6.5 % at 0 and 80 degC; 46 handbook values",
	}
}

func (s Sucrose) check(tempC float64) error {
	return cmp.Or(honestplate.InRange("Brix", s.Brix, 0, sucroseHighBrix, "% by mass", sourceGenotelle),
		honestplate.InRange("TempC", tempC, 0, sucroseHighC, "degC", sourceGenotelle))
}

// Viscosity returns the dynamic viscosity in Pa s:
//
//	log10 mu = 22.46 N - 0.114 + phi (1.1 + 43.1 N^1.25),  mu in mPa s
//	N = x/(1900 - 18 x), the mole ratio of sucrose, x in % by mass
//	phi = (30 - t)/(91 + t), t in degC
//
// less a correction of ours, for the equation is 0.5 to 0.8 % too thick for each degC below
// 20 from 40 Brix on, and 2 to 3 % at 20:
//
//	ln mu is lower by 0.0031 c u4/(1 + u4),  u = x/27,  c = (28 - t + sqrt((28 - t)^2 + 25))/2
//
// for 0..75 Brix and 0..80 degC. The equation does not reduce to water (3.5 % low
// at 20 degC, 3.6 % high at 80), so below 20 Brix it is multiplied by the power
// (1 - x/20) of that ratio and meets Water at 0.
//
// Genotelle's equation was read in a public program that cites Mathlouthi &
// Genotelle 1995. Band: +-2.5 % for 30..65 Brix and 20..60 degC; outside, 0.2 % more
// for each degC below 20 and above 60, 0.3 % for each Brix above 65; from 46 handbook
// values (testdata/sucrose_viscosity.csv: 5 read, 41 remembered), to some of which the
// correction is fitted.
func (s Sucrose) Viscosity(tempC float64) (honestplate.Estimate, error) {
	band := 0.025 + 0.002*max(0, 20-tempC) + 0.002*max(0, tempC-60) + 0.003*max(0, s.Brix-65)
	return check.Unless(s.check(tempC), honestplate.Within(genotelle(s.Brix, tempC), band))
}

// genotelle is the viscosity in Pa s.
func genotelle(x, t float64) float64 {
	n := x / (1900 - 18*x)
	phi := (30 - t) / (91 + t)
	ln := math.Ln10 * (22.46*n - 0.114 + phi*(1.1+43.1*n*math.Sqrt(math.Sqrt(n))))
	mu := 1e-3 * math.Exp(ln-coldSyrup(x, t))
	if x < 20 {
		none := 1e-3 * math.Exp(math.Ln10*(-0.114+1.1*phi))
		mu *= math.Pow(waterViscosity(t)/none, 1-x/20)
	}
	return mu
}

// coldSyrup is what the equation has too much of ln(mu), x in % by mass, t in degC: nothing
// in water and when warm, 0.3 % for each degC below about 25 from 40 Brix on, fitted to the
// handbook values below 30 degC.
func coldSyrup(x, t float64) float64 {
	u := x / 27
	u *= u
	u *= u
	below := 28 - t
	return 0.0031 * u / (1 + u) * (below + math.Sqrt(below*below+25)) / 2
}

// Density returns the density in kg/m3, water and dissolved sucrose side by side:
//
//	1/rho = (1 - w)/rho_water + w (v20 + 1.22e-7 (t - 20)),  w = x/100
//	v20 = 6.146e-4 + 1.53e-5 w + 1.28e-5 w^2   m3/kg
//
// v20 is our fit to ten values of NBS Circular 440 at 20 degC (from memory; worst
// residual 0.3 kg/m3); its growth with temperature is that of carbohydrate in
// Choi & Okos 1986. Band +-0.3 %, and 0.01 % more for each
// degC away from 20: testdata/sucrose_density.csv, 13 of 14 values inside. A table of
// saturated solutions steps away from all others at 25 degC and is not used from there.
func (s Sucrose) Density(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(s.check(tempC), honestplate.Within(sucroseDensity(s.Brix, tempC), 0.003+1e-4*math.Abs(tempC-20)))
}

func sucroseDensity(x, t float64) float64 {
	w := x / 100
	v := 6.146e-4 + w*(1.53e-5+w*1.28e-5) + 1.22e-7*(t-20)
	return 1 / ((1-w)/waterDensity(t) + w*v)
}

// SurfaceTension returns the surface tension against air in N/m: that of water
// plus 5.9 mN/m for each unit of mass fraction, drawn through water and one read
// value, 76 mN/m at 55 Brix and 20 degC. Band +-6 %: kitchen syrups are less clean.
func (s Sucrose) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(s.check(tempC), honestplate.Within(waterSurfaceTension(tempC)+5.9e-3*s.Brix/100, 0.06))
}
