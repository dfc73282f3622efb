// Package physics holds the constants and the quadrature rule that the packages of the
// tree share.
package physics

const (
	// Gravity is the standard acceleration of free fall, m/s2, exact by definition (3rd
	// CGPM, 1901). Its variation over the Earth, +-0.3 %, is far below every band here.
	Gravity = 9.80665
	// Kelvin is 0 degC in K.
	Kelvin = 273.15
	// LongestFall is the fall in m up to which the drag of the air on a stream is left out.
	LongestFall = 3.0
	// ThinLiquid is the viscosity in Pa s up to which the splash criteria of smooth dry
	// surfaces hold.
	ThinLiquid = 0.010
)

// Nodes and Weights are the Gauss-Legendre rule of five points on 0..1. gonum's quad has
// the rule but builds it on the heap at every call.
var (
	Nodes   = [5]float64{0.046910077030668, 0.230765344947158, 0.5, 0.769234655052842, 0.953089922969332}
	Weights = [5]float64{0.118463442528095, 0.239314335249683, 0.284444444444444, 0.239314335249683, 0.118463442528095}
)
