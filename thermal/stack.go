package thermal

// maxCells is the most cells of a stack.
const maxCells = 12

// A stack is a pile of layers under one surface that faces the air: the drink and
// wall of a glass, cheese on bread on a board, soup in a bowl. It is one-dimensional,
// per square metre of surface; cell 0 lies deepest, and the surface itself holds no
// heat.
//
// Each step is a linearly implicit trapezoid: the flux from the air is linearised
// about the surface's last temperature and all cells are solved together, so that
// the heat said to flow is exactly what the cells gain. It is of second order in the
// step but for the error of the linearisation, and stable for any step.
type stack struct {
	n          int
	temp, heat [maxCells]float64 // deg C; heat capacity, J/(m2 K)
	link       [maxCells]float64 // conductance from cell i to i+1, W/(m2 K)
	below      float64           // conductance from cell 0 to what lies below, W/(m2 K)
	belowC     float64           // its temperature
	source     float64           // heat into cell 0, W/m2
	top        float64           // conductance from the last cell to the surface, W/(m2 K)
	surface    float64           // deg C
	held       bool              // cell 0 keeps its temperature, as a drink with ice does
}

// A stackFlow is what flowed in a step, means over it.
type stackFlow struct {
	surface float64 // temperature of the surface, deg C
	heat    float64 // through the surface, W/m2
	below   float64 // from below, W/m2
	first   float64 // net heat of cell 0, W/m2: of a held cell, what it took up all the same
}

// stored is the heat in the cells, J/m2, against 0 degC.
func (s *stack) stored() float64 {
	sum := 0.0
	for i := range s.n {
		sum += s.heat[i] * s.temp[i]
	}
	return sum
}

// advance solves the stack over dt seconds with the flux f at the surface's present
// temperature.
//
// Unknown are the means over the step M = (old + new)/2, which turns the trapezoid
// into one tridiagonal system: 2c/dt (M - old) = flows(M).
func (s *stack) advance(dt float64, f Flux) stackFlow {
	// The surface holds no heat: top (Ts - M) = q0 + slope Ts, so that the heat into
	// the last cell is a + b M.
	q0, slope := f.Total()-f.Slope*s.surface, f.Slope
	a, b := s.top*q0/(s.top-slope), s.top*slope/(s.top-slope)

	var diag, m [maxCells]float64 // m is the right-hand side, then the means
	last := s.n - 1
	for i := range s.n {
		c := 2 * s.heat[i] / dt
		diag[i] = c + s.link[i]
		if i > 0 {
			diag[i] += s.link[i-1]
		}
		m[i] = c * s.temp[i]
	}
	diag[0] += s.below
	m[0] += s.below*s.belowC + s.source
	diag[last] -= s.link[last] + b // nothing beyond the last cell but the surface
	m[last] += a
	first := 0
	if s.held {
		first = 1
		m[0] = s.temp[0]
		m[1] += s.link[0] * s.temp[0]
	}
	// Thomas's algorithm; the matrix is symmetric and diagonally dominant.
	for i := first + 1; i < s.n; i++ {
		w := s.link[i-1] / diag[i-1]
		diag[i] -= w * s.link[i-1]
		m[i] += w * m[i-1]
	}
	m[last] /= diag[last]
	for i := last - 1; i >= first; i-- {
		m[i] = (m[i] + s.link[i]*m[i+1]) / diag[i]
	}

	flow := stackFlow{
		surface: (q0 + s.top*m[last]) / (s.top - slope),
		heat:    a + b*m[last],
		below:   s.below * (s.belowC - m[0]),
	}
	flow.first = flow.below + s.source
	if s.n > 1 {
		flow.first += s.link[0] * (m[1] - m[0])
	} else {
		flow.first += flow.heat
	}
	for i := first; i < s.n; i++ {
		s.temp[i] = 2*m[i] - s.temp[i]
	}
	s.surface = (q0 + s.top*s.temp[last]) / (s.top - slope)
	return flow
}
