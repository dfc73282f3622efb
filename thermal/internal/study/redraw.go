package study

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// A Belief is what is thought of the inputs of a study, and of others that hang together
// with them: a normal distribution in Dims standardised values, those of the study first.
type Belief struct {
	Dims int
	Base []float64 // standard normal values to draw with, Dims for each run
	Mean []float64
	Cov  *mat.SymDense
}

// Belief returns the mean and the covariance of columns under weights; nil columns are
// standard normal and hang together with nothing.
func NewBelief(base []float64, columns [][]float64, weights []float64) Belief {
	d := len(columns)
	b := Belief{Dims: d, Base: base, Mean: make([]float64, d), Cov: mat.NewSymDense(d, nil)}
	sum := floats.Sum(weights) // 0 where all columns are nil
	for j, c := range columns {
		if c == nil {
			b.Cov.SetSym(j, j, 1)
			continue
		}
		b.Mean[j] = floats.Dot(c, weights) / sum
		for k := range j + 1 {
			if columns[k] == nil {
				continue
			}
			v := 0.0
			for i, w := range weights {
				v += float64(w * (c[i] - b.Mean[j]) * (columns[k][i] - b.Mean[k]))
			}
			b.Cov.SetSym(j, k, v/sum)
		}
	}
	return b
}

const (
	scouts     = 1024 // runs that look for where to draw from
	mostScouts = 10   // how often they look
	scoutsLeft = 120  // of which so many must stay effective in one step
	mostDraws  = 3    // how often all are drawn again where too few count
)

// Redrawn are runs drawn anew: their values and outputs, and what was believed of them
// before anything was seen over where they were drawn from, on average 1.
type Redrawn struct{ Z, Out, Prior []float64 }

// Redraw draws runs from what is known once something was seen: logs returns the
// logarithms of the likelihoods of outputs, run by run. A few runs look for where the
// others are to be drawn from, with the likelihood raised to a power that grows to 1
// (tempering: Neal 2001, Annealed importance sampling, Statistics and Computing 11:125),
// each time from a distribution fitted to what the last ones found; then all are drawn.
func (s Study) Redraw(b Belief, logs func(out []float64) []float64) (Redrawn, error) {
	d, runs := b.Dims, len(b.Base)/b.Dims
	believed := rootOf(b.Cov)
	q := proposal{mean: make([]float64, d), axes: identity(d), narrow: slices.Repeat([]float64{1}, d), wide: slices.Repeat([]float64{1}, d)}
	power, all, again := 0.0, false, 0
	for step := 0; ; step++ {
		n := min(runs, scouts)
		if all || step >= mostScouts {
			n = runs
		}
		x, drawn := q.draw(b.Base[:n*d])
		z := affine(b.Mean, believed, x)
		out, err := s.At(z, d)
		if err != nil {
			return Redrawn{}, err
		}
		ll, prior := logs(out), make([]float64, n)
		for i := range prior {
			prior[i] = -0.5*floats.Dot(x[i*d:(i+1)*d], x[i*d:(i+1)*d]) - drawn[i]
		}
		if n == runs {
			if again++; again > mostDraws || Effective(powered(prior, ll, 1)) >= 1.5*FewestEffective {
				return Redrawn{z, out, powered(prior, ll, 0)}, nil
			}
		}
		enough := func(p float64) bool { return Effective(powered(prior, ll, p)) >= scoutsLeft }
		next := 1.0
		if !enough(next) {
			low, high := power, 1.0
			if all { // it may fall again
				low = 0
			}
			for range 40 {
				if mid := (low + high) / 2; enough(mid) {
					low = mid
				} else {
					high = mid
				}
			}
			next = low
			if !all {
				next = min(1, max(low, 1.3*power)) // it must go on
			}
		}
		all, power = all || next == 1, next
		q = propose(x, powered(prior, ll, power), d)
	}
}

// powered are the weights, on average 1, for a likelihood raised to a power.
func powered(prior, ll []float64, power float64) []float64 {
	w := make([]float64, len(ll))
	for i := range w {
		w[i] = prior[i] + float64(power*ll[i])
	}
	most := floats.Max(w)
	for i := range w {
		w[i] = math.Exp(w[i] - most)
	}
	floats.Scale(float64(len(w))/floats.Sum(w), w)
	return w
}

// A proposal is the distribution to draw from: of every four runs three from a normal
// distribution and one from a wider one, so that no weight grows beyond bounds.
type proposal struct {
	mean         []float64
	axes         *mat.Dense // columns
	narrow, wide []float64  // standard deviations along the axes
}

// draw returns values and the logarithms of their densities, but for a constant.
func (q proposal) draw(base []float64) (x, logs []float64) {
	d := len(q.mean)
	n := len(base) / d
	var along mat.Dense
	along.Mul(mat.NewDense(n, d, base), q.axes)
	logs = make([]float64, n)
	narrow, wide := 0.0, 0.0 // of the densities' factors
	for k := range d {
		narrow, wide = narrow-math.Log(q.narrow[k]), wide-math.Log(q.wide[k])
	}
	for i := range n {
		v := along.RawRowView(i)
		scale := q.narrow
		if i%4 == 3 {
			scale = q.wide
		}
		floats.Mul(v, scale)
		a, b := narrow, wide
		for k := range v {
			a -= 0.5 * v[k] * v[k] / (q.narrow[k] * q.narrow[k])
			b -= 0.5 * v[k] * v[k] / (q.wide[k] * q.wide[k])
		}
		most := max(a, b)
		logs[i] = most + math.Log(0.75*math.Exp(a-most)+0.25*math.Exp(b-most))
	}
	var out mat.Dense
	out.Mul(&along, q.axes.T())
	x = out.RawMatrix().Data
	for i := range x {
		x[i] += q.mean[i%d]
	}
	return x, logs
}

// propose fits a proposal to weighted values. Directions in which the spread is what
// chance makes of 1 are taken as untouched (the edges of Marchenko and Pastur 1967, from
// memory).
func propose(x, weights []float64, d int) proposal {
	columns := make([][]float64, d)
	for j := range columns {
		columns[j] = stride(x, j, d)
	}
	b := NewBelief(nil, columns, weights)
	values, axes := axesOf(b.Cov)
	q := proposal{mean: b.Mean, axes: axes, narrow: values, wide: make([]float64, d)}
	edge := 1 - min(math.Sqrt(float64(d)/Effective(weights)), 0.5)
	for k, v := range values {
		if v > edge*edge {
			q.narrow[k] = math.Sqrt(max(1, min(v, 2)))
		} else {
			q.narrow[k] = math.Sqrt(1.2 * max(v, 1e-8))
		}
		q.wide[k] = max(1.1*q.narrow[k], min(2.5*q.narrow[k], 1.1))
	}
	return q
}

// axesOf returns the variances of a covariance along its axes, and these.
func axesOf(cov *mat.SymDense) ([]float64, *mat.Dense) {
	d := cov.SymmetricDim()
	var e mat.EigenSym
	if !e.Factorize(cov, true) {
		return slices.Repeat([]float64{1}, d), identity(d)
	}
	var v mat.Dense
	e.VectorsTo(&v)
	// The sign of an axis must not decide what a run draws.
	for k := range d {
		column := mat.Col(nil, k, &v)
		if most := slices.MaxFunc(column, func(a, b float64) int { return cmp.Compare(math.Abs(a), math.Abs(b)) }); most < 0 {
			floats.Scale(-1, column)
			v.SetCol(k, column)
		}
	}
	return e.Values(nil), &v
}

// rootOf returns the symmetric square root of a covariance.
func rootOf(cov *mat.SymDense) *mat.Dense {
	values, axes := axesOf(cov)
	var scaled, out mat.Dense
	scaled.Apply(func(_, k int, v float64) float64 { return v * math.Sqrt(max(values[k], 0)) }, axes)
	out.Mul(&scaled, axes.T())
	return &out
}

func identity(d int) *mat.Dense {
	m := mat.NewDense(d, d, nil)
	for j := range d {
		m.Set(j, j, 1)
	}
	return m
}

// affine returns mean + root x for every run of x.
func affine(mean []float64, root *mat.Dense, x []float64) []float64 {
	d := len(mean)
	var out mat.Dense
	out.Mul(mat.NewDense(len(x)/d, d, x), root)
	v := out.RawMatrix().Data
	for i := range v {
		v[i] += mean[i%d]
	}
	return v
}
