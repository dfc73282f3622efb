package study

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// A Rough is how far outputs are only a surrogate's: nil for those of the model.
type Rough struct {
	Scatter []float64 // standard deviation of each output: of a time as a share of it
	Never   []float64 // the chance, 0..1, that it never happens, run by run
}

// A surrogate is what some outputs look like where runs have weight: each a quadratic in
// standardised values of the inputs, of a time its logarithm, with what the quadratic
// misses as scatter, and as another the chance that it never happens.
type surrogate struct {
	which   []int // outputs
	events  int   // the first outputs are times
	outputs int
	values  []quadratic
	never   []quadratic // without coefficients where none misses it, or all do
	scatter []float64
}

// newSurrogate fits a surrogate to runs: u are the standardised values, d a run.
func newSurrogate(seen Sight, outputs int, u []float64, d int, out, weights []float64) *surrogate {
	g := &surrogate{which: seen.Which, events: seen.Events, outputs: outputs, scatter: make([]float64, outputs)}
	missed := make([]float64, len(weights)) // 1 where an event never happens
	values, happens := make([]float64, len(weights)), make([]float64, len(weights))
	for _, e := range g.which {
		for i, v := range Column(out, e, outputs) {
			missed[i], values[i], happens[i] = 0, g.scaled(e, v), weights[i]
			if math.IsInf(v, 1) {
				missed[i], values[i], happens[i] = 1, 0, 0
			}
		}
		value, scatter := newQuadratic(u, d, values, happens)
		never, all := quadratic{d: d}, floats.Sum(happens)
		if some := floats.Sum(weights); all > 0 && all < some {
			never, _ = newQuadratic(u, d, missed, weights)
		}
		g.values, g.never, g.scatter[e] = append(g.values, value), append(g.never, never), scatter
	}
	return g
}

// scaled is what a quadratic is fitted to: the logarithm of a time and a second, since a
// time may be 0.
func (g *surrogate) scaled(e int, v float64) float64 {
	if e < g.events {
		return math.Log1p(v)
	}
	return v
}

// at returns the outputs for standardised values, and how rough they are.
func (g *surrogate) at(u *mat.Dense) ([]float64, *Rough) {
	n, _ := u.Dims()
	out := make([]float64, n*g.outputs)
	rough := &Rough{Scatter: g.scatter, Never: make([]float64, n*g.outputs)}
	for i := range n {
		x := u.RawRowView(i)
		for k, e := range g.which {
			v := g.values[k].at(x)
			if e < g.events {
				v = max(0, math.Expm1(min(v, 50)))
			}
			out[i*g.outputs+e] = v
			if g.never[k].c != nil {
				rough.Never[i*g.outputs+e] = min(max(g.never[k].at(x), 0.02), 0.98)
			}
		}
	}
	return out, rough
}

// A quadratic is a constant, d slopes and the coefficients of the products i <= j.
type quadratic struct {
	d int
	c []float64 // nil: 0 everywhere
}

func (q quadratic) at(x []float64) float64 {
	if q.c == nil {
		return 0
	}
	v, k := q.c[0], 1+q.d
	for i, a := range x {
		slope := q.c[1+i] + float64(floats.Dot(q.c[k:k+q.d-i], x[i:]))
		v += float64(slope * a)
		k += q.d - i
	}
	return v
}

// terms writes what the coefficients multiply, as many as into has room for.
func terms(x, into []float64) {
	into[0] = 1
	k := 1 + copy(into[1:], x)
	for i := 0; i < len(x) && k < len(into); i++ {
		for _, b := range x[i:] {
			into[k] = x[i] * b
			k++
		}
	}
}

// fewest is how many runs of equal weight a coefficient asks for.
const fewest = 3

// newQuadratic returns what fits y over the rows x best, and what it misses as a standard
// deviation: with products where there are enough runs, else slopes, else a constant.
func newQuadratic(x []float64, d int, y, weights []float64) (quadratic, float64) {
	q := quadratic{d, make([]float64, 1+d+d*(d+1)/2)}
	p, n := len(q.c), Effective(weights)*1.001
	if n < float64(fewest*p) {
		p = 1 + d
	}
	if n < float64(fewest*p) {
		p = 1
	}
	rows, least := 0, 1e-3*slices.Max(weights) // less does not bend it
	for _, w := range weights {
		if w > least {
			rows++
		}
	}
	if rows == 0 {
		return q, 0
	}
	a, b := mat.NewDense(rows, p, nil), mat.NewVecDense(rows, nil)
	rows = 0
	sum := 0.0
	for i, w := range weights {
		if w > least {
			sum += w
			row := a.RawRowView(rows)
			terms(x[i*d:(i+1)*d], row)
			floats.Scale(math.Sqrt(w), row)
			b.SetVec(rows, math.Sqrt(w)*y[i])
			rows++
		}
	}
	var square mat.SymDense
	square.SymOuterK(1, a.T())
	for j := range p { // what the runs do not tell stays near 0
		square.SetSym(j, j, square.At(j, j)+1e-6*sum)
	}
	var product, c, fitted mat.VecDense
	product.MulVec(a.T(), b)
	var cholesky mat.Cholesky
	if !cholesky.Factorize(&square) || cholesky.SolveVecTo(&c, &product) != nil {
		return q, math.Sqrt(floats.Dot(b.RawVector().Data, b.RawVector().Data) / sum)
	}
	copy(q.c, c.RawVector().Data)
	fitted.MulVec(a, &c)
	fitted.SubVec(b, &fitted)
	left := fitted.RawVector().Data
	return q, math.Sqrt(floats.Dot(left, left) / sum)
}
