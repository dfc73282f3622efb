package thermal

import "math"

// Validate returns an *InputError for a property that is not above 0. (A Glass
// takes the zero Material as soda-lime; nothing else does.)
func (m Material) Validate() error {
	if err := positive("conductivity", m.Conductivity, "W/(m K)"); err != nil {
		return err
	}
	if err := positive("density", m.Density, "kg/m3"); err != nil {
		return err
	}
	return positive("specific heat", m.SpecificHeat, "J/(kg K)")
}

// Diffusivity returns k/(rho c), m2/s. Errors as Validate.
func (m Material) Diffusivity() (float64, error) {
	if err := m.Validate(); err != nil {
		return 0, err
	}
	return m.diffusivity(), nil
}

func (m Material) diffusivity() float64 { return m.Conductivity / (m.Density * m.SpecificHeat) }

// Effusivity returns sqrt(k rho c), W s^0.5/(m2 K), which decides how warm a
// surface feels. Errors as Validate.
func (m Material) Effusivity() (float64, error) {
	if err := m.Validate(); err != nil {
		return 0, err
	}
	return math.Sqrt(m.Conductivity * m.Density * m.SpecificHeat), nil
}
