package flow

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/mat"
)

func (p Point) check() error {
	return cmp.Or(honestplate.InRange("ShearRate", p.ShearRate, 1e-6, 1e8, "1/s", "what rheometers reach"),
		honestplate.InRange("Stress", p.Stress, 1e-9, 1e9, "Pa", "what rheometers reach"),
		honestplate.InRange("Weight", p.Weight, 0, 1e18, "", "sensible weights"))
}

// checkPoints returns the geometric mean of the rates.
func checkPoints(points []Point) (float64, error) {
	if len(points) == 0 {
		return 0, check.Input("Points", 0, "points", "1 or more")
	}
	var sum float64
	var weighed int
	low, high := math.Inf(1), 0.0
	for i, p := range points {
		if err := p.check(); err != nil {
			return 0, honestplate.In(fmt.Sprintf("Points[%d]", i), err)
		}
		if p.Weight > 0 {
			weighed++
		}
		sum += math.Log(p.ShearRate)
		low, high = min(low, p.ShearRate), max(high, p.ShearRate)
	}
	if weighed > 0 && weighed < len(points) {
		return 0, check.Input("Points", float64(weighed), "points with a weight", "one for every point or for none")
	}
	if len(points) > 1 && high < 1.5*low {
		return 0, check.Input("Points", high/low, "between the shear rates", "a factor of 1.5 or more")
	}
	return math.Exp(sum / float64(len(points))), nil
}

func distinctRates(points []Point) int {
	rates := map[float64]bool{}
	for _, p := range points {
		rates[p.ShearRate] = true
	}
	return len(rates)
}

// weight of a point: instruments err in per cent.
func weight(p Point) float64 {
	if p.Weight == 0 {
		return 1 / (p.Stress * p.Stress)
	}
	return p.Weight
}

type search struct {
	shape
	points []Point
	total  float64 // weighted sum of squared stresses
}

// rss is the least weighted sum of squares at bending constants t, relative to
// the total, or a steep wall outside their bounds.
func (f *search) rss(t []float64) float64 {
	if len(t) > 0 {
		if n := t[len(t)-1]; n < f.least || n > f.most {
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
func (f *search) solve(t []float64) (c [2]float64, rss float64) {
	var a00, a01, a11, b0, b1 float64
	var phi [2]float64
	for _, p := range f.points {
		f.basis(p.ShearRate, t, &phi)
		w := weight(p)
		a00 += w * phi[0] * phi[0]
		a01 += w * phi[0] * phi[1] // 0 where there is one function
		a11 += w * phi[1] * phi[1]
		b0 += w * phi[0] * p.Stress
		b1 += w * phi[1] * p.Stress
	}
	if det := a00*a11 - a01*a01; det > 1e-14*a00*a11 {
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

// standardErrors are the roots of the diagonal of RSS/(n-p) times the inverse of the weighted
// normal matrix; nil where it has none.
func standardErrors(s shape, values []float64, points []Point, rss float64) []float64 {
	p, free := len(values), len(points)-len(values)
	if free <= 0 {
		return nil
	}
	// Each constant in units of itself, since a consistency and an index differ by orders.
	unit, none, constants := make([]float64, p), make([]float64, p), make([]float64, p)
	for i, v := range values {
		unit[i] = cmp.Or(v, 1)
	}
	jacobian := mat.NewDense(len(points), p, nil)
	fd.Jacobian(jacobian, func(stress, off []float64) {
		for i, v := range values {
			constants[i] = v + off[i]*unit[i]
		}
		m := s.model(constants)
		for i, pt := range points {
			stress[i] = math.Sqrt(weight(pt)) * m.Stress(pt.ShearRate)
		}
	}, none, &fd.JacobianSettings{Formula: fd.Central})
	var normal, inverse mat.SymDense
	normal.SymOuterK(1, jacobian.T())
	var chol mat.Cholesky
	if !chol.Factorize(&normal) || chol.Cond() > 1e14 || chol.InverseTo(&inverse) != nil {
		return nil
	}
	out := make([]float64, p)
	for i := range out {
		out[i] = math.Abs(unit[i]) * math.Sqrt(inverse.At(i, i)*rss/float64(free))
	}
	return out
}
