package rheology

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Measured is a liquid whose viscosity you measured yourself, from a cup time (see
// CupReading.Measure of package viscometer) or on a rheometer: PaS at TempC and ShearRate
// replaces the table. How it changes with temperature and shear rate, its density and surface
// tension stay those of Liquid. For cold cream, sauces and honey this is the answer that the
// tables cannot give; a flow curve of your own goes into a [Custom].
//
// Of cream one measurement fixes the constant k of its law, see [Dairy], and with it the
// whole fat curve and how it warms: a [Blend] of it goes by that curve.
type Measured struct {
	Liquid    Liquid               `json:"liquid"`                    // what it is
	TempC     float64              `json:"temp_c"`                    // temperature of the measurement, degC
	PaS       honestplate.Estimate `json:"pas,omitzero"`              // measured viscosity with its 95 % band, Pa s: Exactly, Within or Factor
	ShearRate float64              `json:"shear_rate_per_s,omitzero"` // of the instrument, 1/s; 0: that at which Liquid states its viscosity
}

// How far a slope in temperature can be off, as a share of the change in the
// logarithm of the viscosity: known cold milks and creams span 2390..2731 K in place
// of Bakshi's 2721.5, and remembered milk 15 % less.
const measuredSlope = 0.15

// Describe is that of the liquid, marked as measured.
func (m Measured) Describe() Description {
	if check.IsNil(m.Liquid) {
		return Description{Name: "measured liquid"}
	}
	d := m.Liquid.Describe()
	d.Name += ", as measured"
	d.Source = "viscosity measured by the user; change with temperature: " + d.Source
	d.Band = "the measurement's own, widened by 15 % of the change in ln(viscosity) away from its temperature"
	return d
}

func (m *Measured) check() error {
	if check.IsNil(m.Liquid) {
		return check.Missing("Liquid", "a liquid whose shape in temperature to use")
	}
	if err := honestplate.NotNegative("ShearRate", m.ShearRate, "1/s"); err != nil {
		return err
	}
	return check.Band("PaS", m.PaS, 1e-9, 1e12, "Pa s", "anything that flows")
}

// Viscosity returns, in Pa s, the measured value moved to another temperature, and from
// the instrument's shear rate to that of the Description, by the shape of the liquid:
//
//	eta(t) = PaS x eta_liquid(t)/eta_liquid(TempC, ShearRate)
//
// The band is the measurement's, joined in quadrature (in logarithms) by 15 % of
// the change in ln(eta): none at TempC, more the farther away; and by what the liquid does
// not know of its thinning. A PaS that is not positive or lies outside its own band is an
// InputError, one beyond 1e-9..1e12 Pa s a RangeError.
func (m Measured) Viscosity(tempC float64) (honestplate.Estimate, error) { return m.at(tempC, -1) }

// at is Viscosity or, if rate is not negative, ViscosityAtRate.
func (m *Measured) at(tempC, rate float64) (honestplate.Estimate, error) {
	e, err := m.stated(tempC)
	switch d, ok := m.Liquid.(Dairy); {
	case err != nil || rate < 0:
		return e, err
	case m.ShearRate > 0 && rate == m.ShearRate && tempC == m.TempC:
		return m.PaS, nil
	case ok && rate == dairyRate, ok && d.FatPercent <= thinningFat && rate >= 0:
		return e, nil // stated at that rate, or no cream that thins
	}
	own, at, err := m.base(tempC, rate)
	return check.Answered("Measured.ViscosityAtRate", "Pa s", thinned(e, own, at), err)
}

// stated is the viscosity at the rate that the liquid states.
func (m *Measured) stated(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	level, err := m.level()
	if d, ok := m.Liquid.(Dairy); ok && tempC == m.TempC {
		if err == nil {
			err = d.checkRange(tempC)
		}
		return check.Unless(err, level)
	}
	there, err2 := m.shape(m.TempC)
	if err := cmp.Or(err, err2); err != nil {
		return honestplate.Estimate{}, err
	}
	now := there
	if tempC != m.TempC {
		now, err = m.shape(tempC)
	}
	return check.Answered("Measured.Viscosity", "Pa s", moved(level, now/there), err)
}

// level is the viscosity at TempC and the rate at which it is stated.
func (m *Measured) level() (honestplate.Estimate, error) {
	if m.ShearRate == 0 {
		return m.PaS, nil
	}
	own, at, err := m.base(m.TempC, m.ShearRate)
	return thinned(m.PaS, at, own), err
}

// base is the liquid at the rate it states and at another, both in Pa s.
func (m *Measured) base(tempC, rate float64) (own, at honestplate.Estimate, err error) {
	if d, ok := m.Liquid.(Dairy); ok {
		return honestplate.Exactly(1), exp(thinningAt(tempC, rate).ln(d.FatPercent, 0, 0, 0)), d.checkRange(tempC)
	}
	if own, err = check.Viscosity(m.Liquid.Viscosity(tempC)); err == nil {
		at, err = ViscosityAtRate(m.Liquid, tempC, rate)
	}
	return own, at, err
}

// thinned moves a value known at the rate of one of a liquid's viscosities to the rate of
// another. What the liquid does not know of its thinning widens the band, in quadrature of
// the logarithms; what it does not know of its level is measured.
func thinned(e, from, to honestplate.Estimate) honestplate.Estimate {
	k := to.Likely / from.Likely
	a := math.Log((to.Low / to.Likely) / (from.Low / from.Likely))
	b := math.Log((to.High / to.Likely) / (from.High / from.Likely))
	if a == 0 && b == 0 {
		return e.Times(k)
	}
	return widened(e, k, min(0, a, b), max(0, a, b))
}

// widened is k times an estimate, its band joined in quadrature of the logarithms by so much
// below and above.
func widened(e honestplate.Estimate, k, below, above float64) honestplate.Estimate {
	v := e.Likely * k
	low, high := math.Hypot(math.Log(e.Likely/e.Low), below), math.Hypot(math.Log(e.High/e.Likely), above)
	return honestplate.Estimate{Low: v * math.Exp(-low), Likely: v, High: v * math.Exp(high)}
}

// shape is how the liquid changes with temperature, in Pa s at the rate it states.
func (m *Measured) shape(tempC float64) (float64, error) {
	if d, ok := m.Liquid.(Dairy); ok {
		e := emulsionAt(tempC)
		return math.Exp(e.ln(d.FatPercent, m.coldK(d))), d.checkRange(tempC)
	}
	e, err := check.Viscosity(m.Liquid.Viscosity(tempC))
	return e.Likely, err
}

// coldK is K of the emulsion law after the measurement: the deviation from the table's
// cream is shared between K and the plasma as their bands go, least squares with one
// observation. So cream fixes K, and milk, in which K does nothing, does not. Thickened
// cream tells no K.
func (m Measured) coldK(d Dairy) float64 {
	prior := d.Treatment.coldK()
	if d.Treatment == Thickened || m.PaS.Likely <= 0 {
		return prior
	}
	const band = 1.2 // of K: from separate globules to homogenised cream
	e := emulsionAt(m.TempC)
	rate := cmp.Or(m.ShearRate, dairyRate)
	deviation := math.Log(m.PaS.Likely) - e.ln(d.FatPercent, prior) - thinningAt(m.TempC, rate).by(d.FatPercent)
	noise := 0.0
	if m.PaS.Low > 0 {
		noise = math.Log(m.PaS.High/m.PaS.Low) / 2
	}
	s := e.perK(d.FatPercent)
	gain := s * band * band / (s*s*band*band + plasmaBand*plasmaBand + noise*noise)
	return min(3.5, max(0.9, prior+gain*deviation))
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s: the
// liquid's own, moved to pass through the measurement at its ShearRate.
func (m Measured) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	if err := honestplate.NotNegative("ShearRate", shearRate, "1/s"); err != nil {
		return honestplate.Estimate{}, err
	}
	return m.at(tempC, shearRate)
}

// YieldStress returns the liquid's yield stress in Pa, scaled like its viscosity, band and
// all: a sauce measured twice as thick is taken to stand twice as steep. The zero Estimate if
// the liquid has none.
func (m Measured) YieldStress(tempC float64) (honestplate.Estimate, error) {
	e, err := m.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	yield, err := check.YieldStress(m.Liquid, tempC)
	if err != nil || yield == (honestplate.Estimate{}) {
		return honestplate.Estimate{}, err
	}
	base, err := check.Viscosity(m.Liquid.Viscosity(tempC))
	return check.Unless(err, yield.Times(e.Likely/base.Likely))
}

func moved(e honestplate.Estimate, ratio float64) honestplate.Estimate {
	if ratio == 1 {
		return e
	}
	s := measuredSlope * math.Log(ratio)
	return widened(e, ratio, s, s)
}

// Density is that of the liquid, kg/m3.
func (m Measured) Density(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	return check.Density(m.Liquid.Density(tempC))
}

// SurfaceTension is that of the liquid, N/m.
func (m Measured) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	e, err := m.Liquid.SurfaceTension(tempC)
	return check.Answered("Liquid.SurfaceTension", "N/m", e, err)
}
