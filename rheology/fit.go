package rheology

import (
	"fmt"
	"math"
	"slices"

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
	FitNewtonian FlowKind = iota
	FitPowerLaw
	FitBingham
	FitCasson
	FitHerschelBulkley
	FitCarreau
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
func (f FlowFit) Viscosity(shearRate float64) (Estimate, error) {
	v, err := ApparentViscosity(f.Model, shearRate)
	if err != nil {
		return Estimate{}, err
	}
	p := len(f.Values)
	if f.Covar == nil || f.Kind < 0 || f.Kind >= flowKinds || f.Covar.SymmetricDim() != p || f.N <= p {
		return Estimate{}, &InputError{"number of points of the fit", float64(f.N), "", "a fit by FitFlow with more points than constants"}
	}
	g := make([]float64, p)
	shapeOf(f.Kind, 1).grad(shearRate, f.Values, g)
	gv := mat.NewVecDense(p, g)
	variance := mat.Inner(gv, f.Covar, gv)
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(f.N - p)}.Quantile(0.975)
	d := t * math.Sqrt(max(0, variance)) / shearRate
	if err := finite("confidence band of the fit", d, "Pa s"); err != nil {
		return Estimate{}, err
	}
	return Estimate{v, max(0, v-d), v + d}, nil
}

// A shape is a flow model as a weighted sum of functions of the rate: the sum's
// factors c are linear and solved exactly, so that the search is left with the 0, 1
// or 2 constants t that bend the curve.
type shape struct {
	names  []string
	linear int         // how many functions
	start  [][]float64 // where the search for t starts; empty for no t
	basis  func(r float64, t []float64, out *[2]float64)
	build  func(c [2]float64, t []float64) []float64 // constants
	model  func(p []float64) FlowModel
	grad   func(r float64, p, out []float64) // d stress / d constants
}

// rateScale is the geometric middle of the measured rates: dividing by it keeps the
// consistency K and the index N from chasing each other.
func shapeOf(k FlowKind, scale float64) shape {
	switch k {
	case FitNewtonian:
		return shape{
			names: []string{"viscosity"}, linear: 1,
			basis: func(r float64, _ []float64, out *[2]float64) { out[0] = r },
			build: func(c [2]float64, _ []float64) []float64 { return []float64{c[0]} },
			model: func(p []float64) FlowModel { return Newtonian{p[0]} },
			grad:  func(r float64, _, out []float64) { out[0] = r },
		}
	case FitPowerLaw:
		return shape{
			names: []string{"consistency", "index"}, linear: 1, start: [][]float64{{0.5}},
			basis: func(r float64, t []float64, out *[2]float64) { out[0] = math.Pow(r/scale, t[0]) },
			build: func(c [2]float64, t []float64) []float64 { return []float64{c[0] * math.Pow(scale, -t[0]), t[0]} },
			model: func(p []float64) FlowModel { return PowerLaw{p[0], p[1]} },
			grad: func(r float64, p, out []float64) {
				out[0] = math.Pow(r, p[1])
				out[1] = p[0] * out[0] * math.Log(r)
			},
		}
	case FitBingham:
		return shape{
			names: []string{"yield stress", "plastic viscosity"}, linear: 2,
			basis: func(r float64, _ []float64, out *[2]float64) { out[0], out[1] = 1, r },
			build: func(c [2]float64, _ []float64) []float64 { return []float64{c[0], c[1]} },
			model: func(p []float64) FlowModel { return Bingham{p[0], p[1]} },
			grad:  func(r float64, _, out []float64) { out[0], out[1] = 1, r },
		}
	case FitCasson:
		// stress = Plastic (sqrt(s) + sqrt(r))^2, s = Yield/Plastic in 1/s.
		return shape{
			names: []string{"yield stress", "plastic viscosity"}, linear: 1, start: [][]float64{{0}},
			basis: func(r float64, t []float64, out *[2]float64) {
				q := math.Sqrt(scale*math.Exp(t[0])) + math.Sqrt(r)
				out[0] = q * q
			},
			build: func(c [2]float64, t []float64) []float64 { return []float64{c[0] * scale * math.Exp(t[0]), c[0]} },
			model: func(p []float64) FlowModel { return Casson{p[0], p[1]} },
			grad: func(r float64, p, out []float64) {
				root := math.Sqrt(p[0]) + math.Sqrt(p[1]*r)
				out[0] = root / math.Sqrt(p[0])
				out[1] = root * math.Sqrt(r/p[1])
			},
		}
	case FitHerschelBulkley:
		return shape{
			names: []string{"yield stress", "consistency", "index"}, linear: 2, start: [][]float64{{0.5}},
			basis: func(r float64, t []float64, out *[2]float64) { out[0], out[1] = 1, math.Pow(r/scale, t[0]) },
			build: func(c [2]float64, t []float64) []float64 {
				return []float64{c[0], c[1] * math.Pow(scale, -t[0]), t[0]}
			},
			model: func(p []float64) FlowModel { return HerschelBulkley{p[0], p[1], p[2]} },
			grad: func(r float64, p, out []float64) {
				out[0] = 1
				out[1] = math.Pow(r, p[2])
				out[2] = p[1] * out[1] * math.Log(r)
			},
		}
	default: // Carreau: t is ln(Time x scale) and N
		return shape{
			names: []string{"viscosity at rest", "viscosity at high rate", "time", "index"}, linear: 2,
			start: [][]float64{{2, 0.5}, {-1, 0.4}, {5, 0.6}},
			basis: func(r float64, t []float64, out *[2]float64) {
				x := math.Exp(t[0]) * r / scale
				f := math.Pow(1+x*x, (t[1]-1)/2)
				out[0], out[1] = r*f, r*(1-f)
			},
			build: func(c [2]float64, t []float64) []float64 {
				return []float64{c[0], c[1], math.Exp(t[0]) / scale, t[1]}
			},
			model: func(p []float64) FlowModel { return Carreau{p[0], p[1], p[2], p[3]} },
			grad: func(r float64, p, out []float64) {
				x := p[2] * r
				u := 1 + x*x
				f := math.Pow(u, (p[3]-1)/2)
				out[0], out[1] = r*f, r*(1-f)
				out[2] = r * (p[0] - p[1]) * f * (p[3] - 1) * x * r / u
				out[3] = r * (p[0] - p[1]) * f * math.Log(u) / 2
			},
		}
	}
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
		return FlowFit{}, &InputError{"kind of flow model", float64(kind), "", "one of the named models"}
	}
	scale, err := checkFlowPoints(points)
	if err != nil {
		return FlowFit{}, err
	}
	s := shapeOf(kind, scale)
	if n := distinctRates(points); n < len(s.names) {
		return FlowFit{}, &InputError{"number of different shear rates", float64(n), "",
			fmt.Sprintf("%d or more for %s", len(s.names), kind)}
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
		return FlowFit{}, &InputError{"curvature of the flow curve", float64(len(points)), "points", "a curve that " + kind.String() + " can follow"}
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

// checkFlowPoints returns the geometric mean of the rates.
func checkFlowPoints(points []FlowPoint) (float64, error) {
	if len(points) == 0 {
		return 0, &InputError{"number of points", 0, "", "1 or more"}
	}
	var sum float64
	low, high := math.Inf(1), 0.0
	for _, p := range points {
		if err := within("shear rate", p.ShearRate, 1e-6, 1e8, "1/s", "what rheometers reach"); err != nil {
			return 0, err
		}
		if err := within("shear stress", p.Stress, 1e-9, 1e9, "Pa", "what rheometers reach"); err != nil {
			return 0, err
		}
		if err := within("weight", p.Weight, 0, 1e18, "", "sensible weights"); err != nil {
			return 0, err
		}
		sum += math.Log(p.ShearRate)
		low, high = min(low, p.ShearRate), max(high, p.ShearRate)
	}
	if len(points) > 1 && high < 1.5*low {
		return 0, &InputError{"spread of the shear rates", high / low, "", "a factor of 1.5 or more"}
	}
	return math.Exp(sum / float64(len(points))), nil
}

func distinctRates(points []FlowPoint) int {
	rates := make([]float64, len(points))
	for i, p := range points {
		rates[i] = p.ShearRate
	}
	slices.Sort(rates)
	return len(slices.Compact(rates))
}

func weight(p FlowPoint) float64 {
	if p.Weight == 0 {
		return 1
	}
	return p.Weight
}

type flowSearch struct {
	shape
	points []FlowPoint
	total  float64 // weighted sum of squared stresses
}

// rss is the least weighted sum of squares at bending constants t, relative to
// the total, or a steep wall outside their bounds.
func (f *flowSearch) rss(t []float64) float64 {
	if len(t) > 0 {
		n := t[len(t)-1]
		low, high := 0.02, 2.0
		if len(f.names) == 2 && f.linear == 1 && f.names[0] == "yield stress" {
			low, high = -30, 15 // ln of the Casson ratio
		}
		if n < low || n > high {
			return 2 + math.Abs(n)
		}
		if len(t) == 2 && math.Abs(t[0]) > 25 {
			return 2 + math.Abs(t[0])
		}
	}
	_, s := f.solve(t)
	return s / f.total
}

// solve returns the linear constants, none negative, and the weighted RSS.
func (f *flowSearch) solve(t []float64) (c [2]float64, rss float64) {
	var a00, a01, a11, b0, b1 float64
	var phi [2]float64
	for _, p := range f.points {
		f.basis(p.ShearRate, t, &phi)
		w := weight(p)
		a00 += w * phi[0] * phi[0]
		b0 += w * phi[0] * p.Stress
		if f.linear == 2 {
			a01 += w * phi[0] * phi[1]
			a11 += w * phi[1] * phi[1]
			b1 += w * phi[1] * p.Stress
		}
	}
	if f.linear == 1 {
		c[0] = b0 / a00
	} else if det := a00*a11 - a01*a01; det > 1e-14*a00*a11 {
		c[0], c[1] = (b0*a11-b1*a01)/det, (b1*a00-b0*a01)/det
		// A negative constant is set to zero and the other solved alone.
		if c[0] < 0 {
			c[0], c[1] = 0, b1/a11
		} else if c[1] < 0 {
			c[0], c[1] = b0/a00, 0
		}
	} else {
		c[0] = b0 / a00
	}
	for _, p := range f.points {
		f.basis(p.ShearRate, t, &phi)
		r := p.Stress - c[0]*phi[0] - c[1]*phi[1]
		rss += weight(p) * r * r
	}
	return c, rss
}

// aicc is Akaike's criterion with the small-sample term (Hurvich & Tsai 1989, from
// memory): n ln(RSS/n) + 2k + 2k(k+1)/(n-k-1), k the constants and the variance. An
// RSS below rounding counts as rounding.
func aicc(rss, total float64, n, constants int) float64 {
	k := float64(constants + 1)
	free := float64(n) - k - 1
	if free <= 0 {
		return math.Inf(1)
	}
	rss = max(rss, 1e-26*total)
	return float64(n)*math.Log(rss/float64(n)) + 2*k + 2*k*(k+1)/free
}

func covariance(s shape, values []float64, points []FlowPoint, rss float64) *mat.SymDense {
	p := len(values)
	if len(points) <= p {
		return nil
	}
	normal := mat.NewSymDense(p, nil)
	g := make([]float64, p)
	for _, pt := range points {
		s.grad(pt.ShearRate, values, g)
		normal.SymRankOne(normal, weight(pt), mat.NewVecDense(p, g))
	}
	// Scaled to a unit diagonal, since a consistency and an index differ by orders.
	d := make([]float64, p)
	for i := range p {
		d[i] = math.Sqrt(normal.At(i, i))
		if !(d[i] > 0) || math.IsInf(d[i], 0) {
			return nil
		}
	}
	for i := range p {
		for j := i; j < p; j++ {
			normal.SetSym(i, j, normal.At(i, j)/(d[i]*d[j]))
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(normal) || chol.Cond() > 1e14 {
		return nil
	}
	var inverse mat.SymDense
	if err := chol.InverseTo(&inverse); err != nil {
		return nil
	}
	v := rss / float64(len(points)-p)
	for i := range p {
		for j := i; j < p; j++ {
			inverse.SetSym(i, j, inverse.At(i, j)*v/(d[i]*d[j]))
		}
	}
	return &inverse
}
