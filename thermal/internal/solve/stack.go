package solve

import "math"

// maxCells is the most cells of a stack.
const maxCells = 80

// A stack is a pile of layers under one surface that faces the air: the drink and
// wall of a glass, cheese on bread on a board, soup in a bowl. It is one-dimensional,
// per square metre of surface; cell 0 lies deepest, and the surface itself holds no
// heat.
//
// The flux from the air is linearised about the surface's last temperature and all
// cells are solved together, so that the heat said to flow is exactly what the cells
// gain. A step is Alexander's (1977) diagonally implicit Runge-Kutta method of second
// order in two stages: it damps what is faster than the step, as thin cells are.
type Stack struct {
	Cells       int
	TempC, Heat [maxCells]float64 // deg C; heat capacity, J/(m2 K)
	Link        [maxCells]float64 // conductance from cell i to i+1, W/(m2 K)
	Below       float64           // conductance from cell 0 to what lies below, W/(m2 K)
	BelowC      float64           // its temperature
	Source      float64           // heat into cell 0, W/m2
	Top         float64           // conductance from the last cell to the surface, W/(m2 K)
	Surface     float64           // deg C
}

// A Flow is what flowed in a step, means over it.
type Flow struct {
	Surface float64 // temperature of the surface, deg C
	Heat    float64 // through the surface, W/m2
	Below   float64 // from below, W/m2
}

// stored is the heat in the cells, J/m2, against 0 degC.
func (s *Stack) Stored() float64 {
	sum := 0.0
	for i := range s.Cells {
		sum += s.Heat[i] * s.TempC[i]
	}
	return sum
}

// gamma is the diagonal of the two stages, 1 - 1/sqrt(2).
const gamma = 1 - 1/math.Sqrt2

// advance solves the stack over dt seconds with the flux at the surface's present
// temperature and its slope. The stages are
//
//	T1 = old + gamma dt F(T1)/c
//	new = old + (1 - gamma) dt F(T1)/c + gamma dt F(new)/c
//
// and since F is linear, all mean flows are those of M = (1 - gamma) T1 + gamma new.
func (s *Stack) Advance(dt, flux, fluxSlope float64) Flow {
	// The surface holds no heat: top (Ts - T) = q0 + slope Ts, so that the heat into the
	// last cell is a + b T.
	q0, slope := flux-fluxSlope*s.Surface, fluxSlope
	a, b := s.Top*q0/(s.Top-slope), s.Top*slope/(s.Top-slope)

	var diag, fixed, rate, stage [maxCells]float64 // rate is c/(gamma dt)
	last := s.Cells - 1
	for i := range s.Cells {
		rate[i] = s.Heat[i] / (gamma * dt)
		diag[i] = rate[i] + s.Link[i]
		if i > 0 {
			diag[i] += s.Link[i-1]
		}
	}
	diag[0] += s.Below
	fixed[0] = s.Below*s.BelowC + s.Source
	diag[last] -= s.Link[last] + b // nothing beyond the last cell but the surface
	fixed[last] += a
	// Thomas's algorithm; the matrix is symmetric and diagonally dominant.
	for i := 1; i < s.Cells; i++ {
		diag[i] -= s.Link[i-1] * s.Link[i-1] / diag[i-1]
	}
	for i := range s.Cells {
		stage[i] = fixed[i] + rate[i]*s.TempC[i]
	}
	s.solve(&diag, &stage)
	var mean [maxCells]float64
	for i := range s.Cells {
		mean[i] = (1 - gamma) * stage[i]
		stage[i] = fixed[i] + rate[i]*(s.TempC[i]+(1-gamma)/gamma*(stage[i]-s.TempC[i]))
	}
	s.solve(&diag, &stage)
	for i := range s.Cells {
		mean[i] += gamma * stage[i]
		s.TempC[i] = stage[i]
	}

	flow := Flow{
		Surface: (q0 + s.Top*mean[last]) / (s.Top - slope),
		Heat:    a + b*mean[last],
		Below:   s.Below * (s.BelowC - mean[0]),
	}
	s.Surface = (q0 + s.Top*s.TempC[last]) / (s.Top - slope)
	return flow
}

// solve substitutes forward and back; diag is eliminated already.
func (s *Stack) solve(diag, x *[maxCells]float64) {
	last := s.Cells - 1
	for i := 1; i < s.Cells; i++ {
		x[i] += s.Link[i-1] / diag[i-1] * x[i-1]
	}
	x[last] /= diag[last]
	for i := last - 1; i >= 0; i-- {
		x[i] = (x[i] + s.Link[i]*x[i+1]) / diag[i]
	}
}
