package rheology

import (
	"fmt"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/stat/distuv"
)

// A FlowPoint is one reading of a flow curve.
type FlowPoint struct {
	ShearRate float64 // 1/s, above 0
	Stress    float64 // Pa, above 0
	Weight    float64 // 1/variance of the stress, up to a common factor; 0 means 1
}

// A FlowKind names a flow model to fit.
type FlowKind int

// The models that FitFlow knows, from the fewest constants to the most.
const (
	FitNewtonian       FlowKind = iota // one constant: viscosity
	FitPowerLaw                        // two: consistency, index
	FitBingham                         // two: yield stress, plastic viscosity
	FitCasson                          // two: yield stress, plastic viscosity
	FitHerschelBulkley                 // three: yield stress, consistency, index
	FitCarreau                         // four: the two viscosities, time, index
	flowKinds
)

// String is the model's usual name.
func (k FlowKind) String() string {
	if k < 0 || k >= flowKinds {
		return fmt.Sprintf("flow kind %d", int(k))
	}
	return [...]string{"Newtonian", "power law", "Bingham", "Casson", "Herschel-Bulkley", "Carreau"}[k]
}

// A FlowFit is a flow model fitted to points.
type FlowFit struct {
	Kind   FlowKind      // which model
	Model  FlowModel     // with the fitted constants
	Names  []string      // of the constants, in the order of the model's fields
	Values []float64     // of the constants, in the model's units
	Covar  *mat.SymDense // covariance of the constants; nil where there are no more points than constants
	RSS    float64       // weighted sum of squared residuals
	AICc   float64       // Akaike's criterion for small samples: least is best; +Inf with too few points
	N      int           // number of points
}

// StandardError returns the standard error of the i-th constant, NaN if the points
// do not tell it.
func (f FlowFit) StandardError(i int) float64 {
	if f.Covar == nil || i < 0 || i >= len(f.Values) {
		return math.NaN()
	}
	return math.Sqrt(f.Covar.At(i, i))
}

// Viscosity returns the apparent viscosity in Pa s of the fitted curve at a shear
// rate in 1/s, with the 95 % confidence band that the points' scatter leaves it:
//
//	+- t(0.975, n-p) sqrt(g' C g)/rate,  g = d stress/d constants, C = Covar
//
// It trusts the model's form, so it says little beyond the measured rates. Without a
// covariance, an InputError.
func (f FlowFit) Viscosity(shearRate float64) (honestplate.Estimate, error) {
	v, err := ApparentViscosity(f.Model, shearRate)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	p := len(f.Values)
	if f.Covar == nil || f.Kind < 0 || f.Kind >= flowKinds || f.Covar.SymmetricDim() != p || f.N <= p {
		return honestplate.Estimate{}, check.Input("number of points of the fit", float64(f.N), "", "a fit by FitFlow with more points than constants")
	}
	g := make([]float64, p)
	shapeOf(f.Kind, 1).grad(shearRate, f.Values, g)
	gv := mat.NewVecDense(p, g)
	variance := mat.Inner(gv, f.Covar, gv)
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(f.N - p)}.Quantile(0.975)
	d := t * math.Sqrt(max(0, variance)) / shearRate
	if err := honestplate.Finite("confidence band of the fit", d, "Pa s"); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Estimate{Low: max(0, v-d), Likely: v, High: v + d}, nil
}

// FitFlow fits one flow model to points by weighted least squares in the stress:
// linear constants are solved exactly, the bending ones are searched with gonum's
// optimize (Nelder-Mead) between index 0.02 and 2. Constants are 0 or more. The
// covariance is RSS/(n-p) times the inverse of the weighted normal matrix at the
// solution.
//
// It wants at least as many points as constants, at that many different rates
// spread over a factor of 1.5 or more; otherwise an InputError, as for a rate,
// stress or weight that is not a positive number.
func FitFlow(kind FlowKind, points []FlowPoint) (FlowFit, error) {
	if kind < 0 || kind >= flowKinds {
		return FlowFit{}, check.Input("kind of flow model", float64(kind), "", "one of the named models")
	}
	scale, err := checkFlowPoints(points)
	if err != nil {
		return FlowFit{}, err
	}
	s := shapeOf(kind, scale)
	if n := distinctRates(points); n < len(s.names) {
		return FlowFit{}, check.Input("number of different shear rates", float64(n), "", fmt.Sprintf("%d or more for %s", len(s.names), kind))
	}
	f := &flowSearch{shape: s, points: points}
	for _, p := range points {
		f.total += weight(p) * p.Stress * p.Stress
	}
	best, rss := []float64(nil), math.Inf(1)
	if len(s.start) == 0 {
		rss = f.rss(nil)
	}
	for _, start := range s.start {
		result, err := optimize.Minimize(optimize.Problem{Func: f.rss}, start,
			&optimize.Settings{Converger: &optimize.FunctionConverge{Absolute: 1e-15, Relative: 1e-11, Iterations: 12}, MajorIterations: 400},
			&optimize.NelderMead{})
		// Stopping at the limit of iterations is as good as the curve allows; only a
		// search that never began has no result.
		if result == nil {
			return FlowFit{}, fmt.Errorf("rheology: fit of %s: %w", kind, err)
		}
		if result.F < rss {
			best, rss = result.X, result.F
		}
	}
	c, rss := f.solve(best)
	fit := FlowFit{Kind: kind, Names: s.names, Values: s.build(c, best), RSS: rss, N: len(points)}
	fit.Model = s.model(fit.Values)
	if err := CheckFlow(fit.Model); err != nil {
		return FlowFit{}, check.Input("curvature of the flow curve", float64(len(points)), "points", "a curve that "+kind.String()+" can follow")
	}
	fit.AICc = aicc(rss, f.total, len(points), len(s.names))
	fit.Covar = covariance(s, fit.Values, points, rss)
	return fit, nil
}

// BestFlow fits every model that the points allow and returns the fits in the order
// of AICc, the best first. Models within about 2 of the best are as good: take the
// one with the fewest constants.
func BestFlow(points []FlowPoint) ([]FlowFit, error) {
	if _, err := checkFlowPoints(points); err != nil {
		return nil, err
	}
	var fits []FlowFit
	var last error
	for kind := range flowKinds {
		fit, err := FitFlow(kind, points)
		if err != nil {
			last = err
			continue
		}
		fits = append(fits, fit)
	}
	if len(fits) == 0 {
		return nil, last
	}
	slices.SortStableFunc(fits, func(a, b FlowFit) int {
		switch {
		case a.AICc < b.AICc:
			return -1
		case a.AICc > b.AICc:
			return 1
		}
		return 0
	})
	return fits, nil
}
