package thermal

import (
	"math/rand/v2"
	"sync"

	"gonum.org/v1/gonum/stat/distuv"
)

// haltonPrimes are the bases of the sequence, one a dimension.
var haltonPrimes = [haltonDims]int{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79, 83, 89}

// haltonDims is the most inputs a study may have.
const haltonDims = 24

// halton returns n points of d standard normal values, point by point. Adding
// points or dimensions does not change the earlier ones.
func halton(n, d int) []float64 {
	points := usualPoints
	if n > BandSamples {
		points = func() [][]float64 { return normalPoints(n) }
	}
	columns := points()
	out := make([]float64, n*d)
	for j := range d {
		for i := range n {
			out[i*d+j] = columns[j][i]
		}
	}
	return out
}

// usualPoints are the points of a study of the usual size: a constant, computed
// when first wanted.
var usualPoints = sync.OnceValue(func() [][]float64 { return normalPoints(BandSamples) })

// normalPoints returns n values for each dimension: the radical inverse of
// 0, 1, 2 ... with each digit's values permuted at random, a different permutation
// for each digit (Owen 2017, A randomized Halton algorithm, arXiv:1706.02808),
// through the normal quantile.
//
// gonum has this as stat/samplemv.Halton, but that package needs a further module
// (golang.org/x/tools, through stat/distmv), which users of this library would
// inherit for these few lines.
func normalPoints(n int) [][]float64 {
	rnd := rand.New(rand.NewPCG(1, 2)) // fixed: every run of a study is the same
	out := make([][]float64, haltonDims)
	for j, base := range haltonPrimes {
		u := make([]float64, n)
		div, weight := 1, 1/float64(base)
		for ; weight > 1e-17; weight /= float64(base) {
			perm := rnd.Perm(base)
			for i := range u {
				digit := 0
				if div <= n { // beyond, every index has the digit 0
					digit = i / div % base
				}
				u[i] += float64(perm[digit]) * weight
			}
			if div <= n {
				div *= base
			}
		}
		// A value may come out as exactly 0 or 1 only by rounding; the quantile
		// there would be infinite.
		const edge = 1e-9
		for i, v := range u {
			u[i] = distuv.UnitNormal.Quantile(min(max(v, edge), 1-edge))
		}
		out[j] = u
	}
	return out
}
