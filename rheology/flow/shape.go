package flow

import "math"

// A shape is a flow model as a weighted sum of functions of the rate: the sum's
// factors c are linear and solved exactly, so that the search is left with the 0, 1
// or 2 constants t that bend the curve.
type shape struct {
	names []string
	start [][]float64 // where the search for t starts; empty for no t
	least float64     // of the last t
	most  float64
	basis func(r float64, t []float64, out *[2]float64)
	build func(c [2]float64, t []float64) []float64 // constants
	model func(p []float64) Model
}

// fitted are the models that can be fitted, from the fewest constants to the most.
var fitted = [...]Model{Newtonian{}, PowerLaw{}, Bingham{}, Casson{}, HerschelBulkley{}, Carreau{}}

// shapeOf returns the shape of a model that can be fitted. scale is the geometric middle of the
// measured rates; dividing by it keeps the consistency K and the index N from
// chasing each other.
func shapeOf(m Model, scale float64) (shape, bool) {
	switch m.(type) {
	case Newtonian:
		return shape{
			names: []string{"viscosity"},
			basis: func(r float64, _ []float64, out *[2]float64) { out[0] = r },
			build: func(c [2]float64, _ []float64) []float64 { return []float64{c[0]} },
			model: func(p []float64) Model { return Newtonian{p[0]} },
		}, true
	case PowerLaw:
		return shape{
			names: []string{"consistency", "index"}, start: [][]float64{{0.5}}, least: 0.02, most: 2,
			basis: func(r float64, t []float64, out *[2]float64) { out[0] = math.Pow(r/scale, t[0]) },
			build: func(c [2]float64, t []float64) []float64 { return []float64{c[0] * math.Pow(scale, -t[0]), t[0]} },
			model: func(p []float64) Model { return PowerLaw{p[0], p[1]} },
		}, true
	case Bingham:
		return shape{
			names: []string{"yield stress", "plastic viscosity"},
			basis: func(r float64, _ []float64, out *[2]float64) { out[0], out[1] = 1, r },
			build: func(c [2]float64, _ []float64) []float64 { return []float64{c[0], c[1]} },
			model: func(p []float64) Model { return Bingham{p[0], p[1]} },
		}, true
	case Casson:
		// stress = Plastic (sqrt(s) + sqrt(r))^2, s = Yield/Plastic in 1/s.
		return shape{
			names: []string{"yield stress", "plastic viscosity"}, start: [][]float64{{0}}, least: -30, most: 15,
			basis: func(r float64, t []float64, out *[2]float64) {
				q := math.Sqrt(scale*math.Exp(t[0])) + math.Sqrt(r)
				out[0] = q * q
			},
			build: func(c [2]float64, t []float64) []float64 { return []float64{c[0] * scale * math.Exp(t[0]), c[0]} },
			model: func(p []float64) Model { return Casson{p[0], p[1]} },
		}, true
	case HerschelBulkley:
		return shape{
			names: []string{"yield stress", "consistency", "index"}, start: [][]float64{{0.5}}, least: 0.02, most: 2,
			basis: func(r float64, t []float64, out *[2]float64) { out[0], out[1] = 1, math.Pow(r/scale, t[0]) },
			build: func(c [2]float64, t []float64) []float64 {
				return []float64{c[0], c[1] * math.Pow(scale, -t[0]), t[0]}
			},
			model: func(p []float64) Model { return HerschelBulkley{p[0], p[1], p[2]} },
		}, true
	case Carreau: // t is ln(Time x scale) and N
		return shape{
			names: []string{"viscosity at rest", "viscosity at high rate", "time", "index"},
			start: [][]float64{{2, 0.5}, {-1, 0.4}, {5, 0.6}}, least: 0.02, most: 2,
			basis: func(r float64, t []float64, out *[2]float64) {
				x := math.Exp(t[0]) * r / scale
				f := math.Pow(1+x*x, (t[1]-1)/2)
				out[0], out[1] = r*f, r*(1-f)
			},
			build: func(c [2]float64, t []float64) []float64 {
				return []float64{c[0], c[1], math.Exp(t[0]) / scale, t[1]}
			},
			model: func(p []float64) Model { return Carreau{p[0], p[1], p[2], p[3]} },
		}, true
	}
	return shape{}, false
}
