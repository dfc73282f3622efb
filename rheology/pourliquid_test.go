package rheology_test

import "example.org/honestplate/rheology"

// A given is a liquid of given properties, for tests of what pours it.
type given struct {
	eta, rho, sigma float64
	band            float64 // fraction of the viscosity
}

func (g given) Describe() rheology.Description {
	return rheology.Description{Name: "given", Source: "a test", LowC: -50, HighC: 150}
}
func (g given) Viscosity(float64) (rheology.Estimate, error) {
	return rheology.Within(g.eta, g.band), nil
}
func (g given) Density(float64) (rheology.Estimate, error) { return rheology.Exactly(g.rho), nil }
func (g given) SurfaceTension(float64) (rheology.Estimate, error) {
	return rheology.Exactly(g.sigma), nil
}
