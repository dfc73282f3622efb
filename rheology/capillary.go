package rheology

import (
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"gonum.org/v1/gonum/interp"
	"gonum.org/v1/gonum/stat"
)

// A pipe or capillary viscometer gives the wall stress against 8V/D. What the liquid
// does is stress against the true wall shear rate.

// RabinowitschMooney turns the readings of a capillary or pipe, 8V/D in ShearRate
// and the wall stress in Stress, into the flow curve:
//
//	rate = (3n' + 1)/(4n') x 8V/D,  n' = d ln(stress)/d ln(8V/D)
//
// with n' from a monotone cubic through the points in logarithms (gonum's
// Fritsch-Butland). The points, three or more, are returned in rising order; the
// stress must rise with the rate, otherwise an InputError. Noise in the stress goes
// straight into n': smooth poor readings first, or use FitPowerLawLog and FromPipe.
func RabinowitschMooney(points []FlowPoint) ([]FlowPoint, error) {
	if len(points) < 3 {
		return nil, check.Input("number of points", float64(len(points)), "", "3 or more")
	}
	if _, err := checkFlowPoints(points); err != nil {
		return nil, err
	}
	out := slices.Clone(points)
	slices.SortFunc(out, func(a, b FlowPoint) int {
		if a.ShearRate < b.ShearRate {
			return -1
		}
		return 1
	})
	x, y := make([]float64, len(out)), make([]float64, len(out))
	for i, p := range out {
		x[i], y[i] = math.Log(p.ShearRate), math.Log(p.Stress)
		if i > 0 && (x[i] <= x[i-1] || y[i] <= y[i-1]) {
			return nil, check.Input("wall stress at a higher 8V/D", p.Stress, "Pa", "above the stress before it, at a different 8V/D")
		}
	}
	var spline interp.FritschButland
	if err := spline.Fit(x, y); err != nil {
		return nil, err
	}
	for i := range out {
		n := spline.PredictDerivative(x[i])
		if err := honestplate.InRange("local index n'", n, 0.01, 5, "", "what liquids do"); err != nil {
			return nil, err
		}
		out[i].ShearRate *= (3*n + 1) / (4 * n)
	}
	return out, nil
}

// FitPowerLawLog fits a power law by a straight line through the logarithms, weighted
// by Weight (0 means 1): equal shares count alike, as on the graph paper of the
// textbooks. FitFlow minimises the stress itself. At least two different rates.
func FitPowerLawLog(points []FlowPoint) (PowerLaw, error) {
	if _, err := checkFlowPoints(points); err != nil {
		return PowerLaw{}, err
	}
	if len(points) < 2 {
		return PowerLaw{}, check.Input("number of points", float64(len(points)), "", "2 or more")
	}
	x, y, w := make([]float64, len(points)), make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		x[i], y[i], w[i] = math.Log(p.ShearRate), math.Log(p.Stress), weight(p)
	}
	a, n := stat.LinearRegression(x, y, w, false)
	m := PowerLaw{math.Exp(a), n}
	return m, CheckFlow(m)
}

// FromPipe turns the constants K', n of stress against 8V/D into those of the liquid:
// K = K' (4n/(3n+1))^n. Some textbooks print K' under the letter K.
func (m PowerLaw) FromPipe() PowerLaw {
	return PowerLaw{m.K * math.Pow(4*m.N/(3*m.N+1), m.N), m.N}
}

// ForPipe is the inverse of FromPipe: K' = K ((3n+1)/(4n))^n.
func (m PowerLaw) ForPipe() PowerLaw {
	return PowerLaw{m.K * math.Pow((3*m.N+1)/(4*m.N), m.N), m.N}
}
