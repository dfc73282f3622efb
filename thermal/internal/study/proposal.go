package study

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// A proposal is the distribution to draw from: a mixture of normal distributions, half of
// it the last one, so that what the last one misses is still drawn.
type proposal []bell

// A bell is a normal distribution.
type bell struct {
	mean []float64
	axes *mat.Dense // columns
	sd   []float64  // along the axes
}

// upright is the standard normal distribution.
func upright(d int) bell {
	return bell{make([]float64, d), identity(d), slices.Repeat([]float64{1}, d)}
}

// share is that of a bell.
func (q proposal) share(k int) float64 {
	switch {
	case len(q) == 1:
		return 1
	case k == len(q)-1:
		return 0.5
	}
	return 0.5 / float64(len(q)-1)
}

// draw returns n values, bell by bell in turn, and the logarithms of their densities, but
// for a constant.
func (q proposal) draw(r *rand.Rand, n int) (x, logs []float64) {
	d, last := len(q[0].mean), len(q)-1
	x = make([]float64, n*d)
	along := make([]float64, d)
	for i := range n {
		k := last
		if last > 0 && i%2 == 1 {
			k = i / 2 % last
		}
		for j, sd := range q[k].sd {
			along[j] = sd * r.NormFloat64()
		}
		v := mat.NewVecDense(d, x[i*d:(i+1)*d])
		v.MulVec(q[k].axes, mat.NewVecDense(d, along))
		floats.Add(v.RawVector().Data, q[k].mean)
	}
	sum := make([]float64, n) // of densities, over the greatest so far, which logs holds
	logs = slices.Repeat([]float64{math.Inf(-1)}, n)
	for k, b := range q {
		factor := math.Log(q.share(k))
		for _, sd := range b.sd {
			factor -= math.Log(sd)
		}
		for i, square := range b.distances(x) {
			l := factor - 0.5*square
			most := max(l, logs[i])
			sum[i] = float64(sum[i]*math.Exp(logs[i]-most)) + math.Exp(l-most)
			logs[i] = most
		}
	}
	for i, s := range sum {
		logs[i] += math.Log(s)
	}
	return x, logs
}

// distances are the squares of how far values lie from the middle, in standard deviations.
func (b bell) distances(x []float64) []float64 {
	d := len(b.mean)
	scaled := mat.DenseCopyOf(b.axes)
	scaled.Apply(func(_, k int, v float64) float64 { return v / b.sd[k] }, scaled)
	var shift, along mat.Dense
	shift.Mul(mat.NewDense(1, d, b.mean), scaled)
	along.Mul(mat.NewDense(len(x)/d, d, x), scaled)
	out := make([]float64, len(x)/d)
	for i := range out {
		v := along.RawRowView(i)
		floats.Sub(v, shift.RawRowView(0))
		out[i] = floats.Dot(v, v)
	}
	return out
}

// fitBell fits a bell to weighted values, a little wider.
func fitBell(x, weights []float64, d int) bell {
	columns := make([][]float64, d)
	for j := range columns {
		columns[j] = stride(x, j, d)
	}
	b := NewBelief(columns, weights)
	sd, axes := axesOf(b.Cov)
	for k, v := range sd {
		sd[k] = math.Sqrt(1.15 * min(max(v, 1e-10), 2))
	}
	return bell{b.Mean, axes, sd}
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

// rootOf returns a covariance to a power: 0.5 is its symmetric square root, -0.5 the
// inverse of that.
func rootOf(cov *mat.SymDense, power float64) *mat.Dense {
	values, axes := axesOf(cov)
	var scaled, out mat.Dense
	scaled.Apply(func(_, k int, v float64) float64 { return v * math.Pow(max(values[k], 1e-12), power) }, axes)
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

// affine returns mean + root x for every run of x; a nil mean is 0.
func affine(mean []float64, root *mat.Dense, x []float64) []float64 {
	n, d := root.Dims()
	var out mat.Dense
	out.Mul(mat.NewDense(len(x)/d, d, x), root.T())
	v := out.RawMatrix().Data
	if mean != nil {
		for i := range v {
			v[i] += mean[i%n]
		}
	}
	return v
}
