package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Measured is a liquid whose viscosity you measured yourself, from a cup time or
// on a rheometer: PaS at TempC replaces the table. How it changes with
// temperature (and shear rate), its density and surface tension stay those of
// Liquid. For cold cream, sauces and honey this is the answer that the tables
// cannot give.
type Measured struct {
	Liquid Liquid               // what it is
	TempC  float64              // temperature of the measurement, degC
	PaS    honestplate.Estimate `json:"pas"` // measured viscosity with its 95 % band, Pa s: Exactly, Within or Factor
}

// How far a slope in temperature can be off, as a share of the change in the
// logarithm of the viscosity: known cold milks and creams span 2390..2731 K in place
// of Bakshi's 2721.5, and remembered milk 15 % less.
const measuredSlope = 0.15

// Describe is that of the liquid, marked as measured.
func (m Measured) Describe() Description {
	if m.Liquid == nil {
		return Description{Name: "measured liquid"}
	}
	d := m.Liquid.Describe()
	d.Name += ", as measured"
	d.Source = "viscosity measured by the user; change with temperature: " + d.Source
	d.Band = "the measurement's own, widened by 15 % of the change in ln(viscosity) away from its temperature"
	return d
}

func (m Measured) check() error {
	if m.Liquid == nil {
		return check.Missing("Liquid", "a liquid whose shape in temperature to use")
	}
	return check.Band("PaS", m.PaS, 1e-9, 1e12, "Pa s", "anything that flows")
}

// Viscosity returns, in Pa s, the measured value moved to another temperature by
// the shape of the liquid:
//
//	eta(t) = PaS x eta_liquid(t)/eta_liquid(TempC)
//
// The band is the measurement's, joined in quadrature (in logarithms) by 15 % of
// the change in ln(eta): none at TempC, more the farther away. A PaS that is not
// positive or lies outside its own band is an InputError, one beyond 1e-9..1e12 Pa s a
// RangeError.
func (m Measured) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	// At the temperature of the measurement only the liquid's range matters.
	if l, ok := m.Liquid.(ranged); ok && tempC == m.TempC {
		if err := l.check(tempC); err != nil {
			return honestplate.Estimate{}, err
		}
		return m.PaS, nil
	}
	there, err := m.Liquid.Viscosity(m.TempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	here, err := m.Liquid.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return m.moved(here.Likely / there.Likely), nil
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s,
// the liquid's own scaled like Viscosity, whose measurement is taken to be at the
// shear rate that the liquid's Description states.
func (m Measured) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	e, err := m.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	base, err := m.Liquid.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	at, err := ViscosityAtRate(m.Liquid, tempC, shearRate)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	k := at.Likely / base.Likely
	// What the liquid does not know of its thinning widens the band, what it does
	// not know of its level is measured.
	low := min(1, (at.Low/at.Likely)/(base.Low/base.Likely))
	high := max(1, (at.High/at.Likely)/(base.High/base.Likely))
	return honestplate.Estimate{Low: e.Low * k * low, Likely: e.Likely * k, High: e.High * k * high}, nil
}

// YieldStress returns the liquid's yield stress in Pa scaled like its viscosity, band
// and all: a sauce measured twice as thick is taken to stand twice as steep. The zero
// Estimate if the liquid has none.
func (m Measured) YieldStress(tempC float64) (honestplate.Estimate, error) {
	e, err := m.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	y, ok := m.Liquid.(Yielding)
	if !ok {
		return honestplate.Estimate{}, nil
	}
	yield, err := y.YieldStress(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	base, err := m.Liquid.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	k := e.Likely / base.Likely
	return yield.Times(k), nil
}

func (m Measured) moved(ratio float64) honestplate.Estimate {
	if ratio == 1 {
		return m.PaS
	}
	s := measuredSlope * math.Log(ratio)
	low, high := math.Log(m.PaS.Likely/m.PaS.Low), math.Log(m.PaS.High/m.PaS.Likely)
	v := m.PaS.Likely * ratio
	return honestplate.Estimate{Low: v * math.Exp(-math.Hypot(low, s)), Likely: v, High: v * math.Exp(math.Hypot(high, s))}
}

// Density is that of the liquid, kg/m3.
func (m Measured) Density(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	return m.Liquid.Density(tempC)
}

// SurfaceTension is that of the liquid, N/m.
func (m Measured) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	return m.Liquid.SurfaceTension(tempC)
}
