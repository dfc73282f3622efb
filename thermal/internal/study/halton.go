package study

import (
	"math/rand/v2"
	"sync"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/distuv"
	"gonum.org/v1/gonum/stat/samplemv"
)

// haltonDims is the most inputs a study may have.
const haltonDims = 24

// halton returns n points of d standard normal values, point by point. Adding
// points or dimensions does not change the earlier ones.
func halton(n, d int) []float64 {
	points := usualPoints
	if n > usualSamples {
		points = func() *mat.Dense { return normalPoints(n) }
	}
	m := points()
	out := make([]float64, 0, n*d)
	for i := range n {
		out = append(out, m.RawRowView(i)[:d]...)
	}
	return out
}

// usualPoints are the points of a study of the usual size: a constant, computed
// when first wanted.
var usualPoints = sync.OnceValue(func() *mat.Dense { return normalPoints(usualSamples) })

// normalPoints returns n points of haltonDims values: Halton's sequence, scrambled
// after Owen 2017 (A randomized Halton algorithm, arXiv:1706.02808), through the
// normal quantile.
func normalPoints(n int) *mat.Dense {
	m := mat.NewDense(n, haltonDims, nil)
	samplemv.Halton{
		Kind: samplemv.Owen,
		Q:    distmv.NewUnitUniform(haltonDims, nil),
		Src:  rand.NewPCG(1, 2), // fixed: every run of a study is the same
	}.Sample(m)
	m.Apply(func(_, _ int, u float64) float64 {
		// A value may come out as exactly 0 or 1 only by rounding; the quantile
		// there would be infinite.
		const edge = 1e-9
		return distuv.UnitNormal.Quantile(min(max(u, edge), 1-edge))
	}, m)
	return m
}
