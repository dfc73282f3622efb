package rheology

import (
	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Liquid answers for what a pour needs to know of it at a temperature in degC.
// A temperature outside the liquid's range is a RangeError, NaN or Inf an
// InputError. All but Describe allocate nothing on success.
type Liquid interface {
	// Describe says what the liquid is, whose numbers these are and where they hold.
	Describe() Description
	// Viscosity is the dynamic viscosity in Pa s; for a liquid that thins under
	// shear, the value at the shear rate stated in its Description.
	Viscosity(tempC float64) (honestplate.Estimate, error)
	// Density is in kg/m3.
	Density(tempC float64) (honestplate.Estimate, error)
	// SurfaceTension is against air, in N/m.
	SurfaceTension(tempC float64) (honestplate.Estimate, error)
}

// A ShearDependent liquid also answers at a shear rate, in 1/s.
type ShearDependent interface {
	Liquid
	ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error)
}

// A Description says what a liquid is and how far it can be trusted.
type Description struct {
	Name      string  `json:"name"`             // what it is, for people
	Source    string  `json:"source"`           // author, year, title or table
	LowC      float64 `json:"low_c"`            // range of temperature, degC
	HighC     float64 `json:"high_c"`           // degC
	ShearRate float64 `json:"shear_rate_per_s"` // at which Viscosity holds, 1/s; 0 for a Newtonian liquid
	LowRate   float64 `json:"low_rate_per_s"`   // least shear rate of ViscosityAtRate, 1/s
	HighRate  float64 `json:"high_rate_per_s"`  // and the largest; 0 for no limit
	Band      string  `json:"band"`             // what the band of Viscosity is and from which data
}

// ViscosityAtRate returns the apparent viscosity of any liquid, in Pa s, at a
// shear rate in 1/s: that of a ShearDependent liquid at the rate, and the one
// viscosity of any other. A nil liquid, or one that answers with what is no viscosity, is
// an InputError.
func ViscosityAtRate(l Liquid, tempC, shearRate float64) (honestplate.Estimate, error) {
	if err := honestplate.NotNegative("ShearRate", shearRate, "1/s"); err != nil {
		return honestplate.Estimate{}, err
	}
	if check.IsNil(l) {
		return honestplate.Estimate{}, check.Missing("Liquid", "a liquid")
	}
	if s, ok := l.(ShearDependent); ok {
		return check.Viscosity(s.ViscosityAtRate(tempC, shearRate))
	}
	return check.Viscosity(l.Viscosity(tempC))
}

// viscosityAt is ViscosityAtRate or, if rate is negative, the viscosity at the liquid's own.
func viscosityAt(l Liquid, tempC, rate float64) (honestplate.Estimate, error) {
	if rate < 0 {
		return check.Viscosity(l.Viscosity(tempC))
	}
	return ViscosityAtRate(l, tempC, rate)
}

// A Yielding liquid stands still below a stress in Pa; the zero Estimate says that it
// has no such stress.
type Yielding interface {
	Liquid
	// YieldStress is in Pa.
	YieldStress(tempC float64) (honestplate.Estimate, error)
}
