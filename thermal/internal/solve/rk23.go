package solve

import "math"

// A rk23 integrates four ordinary equations by the embedded pair of Bogacki and
// Shampine (1989, A 3(2) pair of Runge-Kutta formulas; from memory): third order,
// the step from the difference to second order.
type Rk23 struct {
	Slope  func(t float64, y [4]float64) [4]float64
	Scale  [4]float64 // errors are measured in units of these
	Tol    float64    // allowed error of a step in those units
	Dt     float64
	first  [4]float64 // slope at the start, of the step before
	Primed bool
}

// step advances y from t by at most limit and returns the new time and state.
func (r *Rk23) Step(t float64, y [4]float64, limit float64) (float64, [4]float64) {
	if !r.Primed {
		r.first, r.Primed = r.Slope(t, y), true
	}
	add := func(a float64, k1 [4]float64, b float64, k2 [4]float64, c float64, k3 [4]float64) (out [4]float64) {
		for i := range len(y) {
			out[i] = y[i] + a*k1[i] + b*k2[i] + c*k3[i]
		}
		return out
	}
	for {
		h := min(r.Dt, limit)
		k1 := r.first
		k2 := r.Slope(t+h/2, add(h/2, k1, 0, k1, 0, k1))
		k3 := r.Slope(t+h*3/4, add(0, k1, h*3/4, k2, 0, k2))
		z := add(h*2/9, k1, h/3, k2, h*4/9, k3)
		k4 := r.Slope(t+h, z)
		wrong := 0.0
		for i := range len(y) {
			e := h * (-5.0/72*k1[i] + k2[i]/12 + k3[i]/9 - k4[i]/8)
			wrong = max(wrong, math.Abs(e)/(r.Tol*r.Scale[i]))
		}
		grow := min(4, 0.9/math.Cbrt(max(wrong, 1e-3)))
		if wrong <= 1 || h < 1e-6 {
			if h == r.Dt || grow < 1 {
				r.Dt = h * grow
			}
			r.first = k4
			return t + h, z
		}
		r.Dt = h * max(0.2, grow)
	}
}
