package flow

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"gonum.org/v1/gonum/optimize"
)

// A Point is one reading of a flow curve.
type Point struct {
	ShearRate float64 `json:"shear_rate_per_s"` // 1/s, above 0
	Stress    float64 `json:"stress_pa"`        // Pa, above 0
	Weight    float64 `json:"weight,omitzero"`  // 1/variance of the stress, up to a common factor; 0 means 1/Stress2: instruments err in per cent
}

// A Fitted is a flow model fitted to points.
type Fitted struct {
	Model  Model     // with the fitted constants
	Names  []string  // of the constants, in the order of the model's fields
	Values []float64 // of the constants, in the model's units
	Errors []float64 // standard errors of the constants; nil where there are no more points than constants
	AICc   float64   // Akaike's criterion for small samples: least is best; +Inf with too few points
	// Unmeasured names the constants that the points do not reach, so that they are guesses of
	// the model's form: a "viscosity at rest" and its "time" where the curve still thins at the
	// lowest rate, a "viscosity at high rate" that is less than half of what was measured last,
	// a "yield stress" of less than half the lowest stress.
	Unmeasured []string
}

// MarshalJSON refuses: what is worth keeping of a fit is its points and its Model.
func (Fitted) MarshalJSON() ([]byte, error) {
	return nil, &honestplate.InputError{Field: "Fitted", Got: "a fit", Want: "its Model, or the points to fit again"}
}

// Fit fits the constants of one flow model, such as HerschelBulkley{}, to points by least
// squares in the stress, in per cent of it unless the points have weights: the weight of a
// point is 1/Stress2 where it is 0; give every point the weight 1 for equal errors in Pa.
// Linear constants are solved exactly, the bending ones are searched with gonum's
// optimize (Nelder-Mead) between index 0.02 and 2. Constants are 0 or more.
//
// It wants at least as many points as constants, at that many different rates
// spread over a factor of 1.5 or more; otherwise an InputError, as for a rate
// or stress that is not a positive number and for weights of some points alone.
func Fit(model Model, points []Point) (Fitted, error) {
	scale, err := checkPoints(points)
	if err != nil {
		return Fitted{}, err
	}
	s, known := shapeOf(model, scale)
	if !known {
		return Fitted{}, check.Missing("Model", "Newtonian{}, PowerLaw{}, Bingham{}, Casson{}, HerschelBulkley{} or Carreau{}")
	}
	if n := distinctRates(points); n < len(s.names) {
		return Fitted{}, check.Input("Points", float64(n), "different shear rates", fmt.Sprintf("%d or more for %s", len(s.names), model))
	}
	f := &search{shape: s, points: points}
	for _, p := range points {
		f.total += weight(p) * p.Stress * p.Stress
	}
	best, rss := []float64(nil), math.Inf(1)
	for _, start := range s.start {
		result, err := optimize.Minimize(optimize.Problem{Func: f.rss}, start,
			&optimize.Settings{Converger: &optimize.FunctionConverge{Absolute: 1e-15, Relative: 1e-11, Iterations: 12}, MajorIterations: 400},
			&optimize.NelderMead{})
		// Stopping at the limit of iterations is as good as the curve allows; only a
		// search that never began has no result.
		if result == nil {
			return Fitted{}, fmt.Errorf("fit of %v: %w", model, err)
		}
		if result.F < rss {
			best, rss = result.X, result.F
		}
	}
	c, rss := f.solve(best)
	fit := Fitted{Names: s.names, Values: s.build(c, best)}
	fit.Model = s.model(fit.Values)
	if err := makesSense(fit.Model); err != nil {
		return Fitted{}, check.Input("Points", float64(len(points)), "points", "a curve that "+model.String()+" can follow")
	}
	fit.Unmeasured = unmeasured(fit, points)
	fit.AICc = aicc(rss, f.total, len(points), len(s.names))
	fit.Errors = standardErrors(s, fit.Values, points, rss)
	return fit, nil
}

// FitAll fits every model that the points allow and returns the fits in the order
// of AICc, the best first. Models within about 2 of the best are as good: take the
// one with the fewest constants.
func FitAll(points []Point) ([]Fitted, error) {
	if _, err := checkPoints(points); err != nil {
		return nil, err
	}
	var fits []Fitted
	var last error
	for _, model := range fitted {
		fit, err := Fit(model, points)
		if err != nil {
			last = err
			continue
		}
		fits = append(fits, fit)
	}
	if len(fits) == 0 {
		return nil, last
	}
	slices.SortStableFunc(fits, func(a, b Fitted) int { return cmp.Compare(a.AICc, b.AICc) })
	return fits, nil
}
