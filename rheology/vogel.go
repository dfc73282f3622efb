package rheology

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// A TemperaturePoint is a viscosity that you measured at a temperature.
type TemperaturePoint struct {
	TempC float64 `json:"temp_c"` // degC
	PaS   float64 `json:"pas"`    // dynamic viscosity, Pa s
}

// A Vogel is a viscosity as a function of temperature,
//
//	ln eta = A + B/(T - T0),  eta in Pa s, T in K
//
// which with T0 = 0 is the Arrhenius equation (from memory: Vogel 1921, Fulcher
// 1925, Tammann 1926). Make one with FitVogel.
type Vogel struct {
	A      float64 `json:"a"`      // of ln(eta), eta in Pa s
	B      float64 `json:"b_k"`    // K
	T0     float64 `json:"t0_k"`   // K
	LowC   float64 `json:"low_c"`  // where it holds: the measured points and 5 degC beyond
	HighC  float64 `json:"high_c"` // degC
	N      int     `json:"n"`      // number of points
	Spread float64 `json:"spread"` // half-width of the 95 % band of ln(eta)
}

const (
	vogelMargin = 5.0  // degC beyond the outermost points
	vogelRepeat = 0.10 // ln: what a kitchen viscometer repeats to, where points cannot tell
)

// FitVogel draws a Vogel through two or more measured points: two give the
// Arrhenius equation through both; three or more the Vogel equation with the least
// sum of squares in ln(eta), T0 between 0 K and 50 K below the coldest point. The
// range is that of the points and 5 degC beyond. The band is the points' own scatter
// (Student's t) where more than three points tell it, but at least +-10 %.
//
// The points must be at two temperatures or more, at least 2 degC apart, and the
// viscosity must fall with temperature overall: otherwise an InputError.
func FitVogel(points ...TemperaturePoint) (Vogel, error) {
	if len(points) < 2 {
		return Vogel{}, check.Input("Points", float64(len(points)), "points", "2 or more")
	}
	low, high := points[0].TempC, points[0].TempC
	for _, p := range points {
		if err := cmp.Or(honestplate.InRange("Points.TempC", p.TempC, -50, 250, "degC", "liquids of the kitchen"),
			honestplate.InRange("Points.PaS", p.PaS, 1e-5, 1e6, "Pa s", "liquids of the kitchen")); err != nil {
			return Vogel{}, err
		}
		low, high = min(low, p.TempC), max(high, p.TempC)
	}
	if high-low < 2 {
		return Vogel{}, check.Input("Points", high-low, "degC apart", "2 degC or more")
	}
	v := Vogel{LowC: low - vogelMargin, HighC: high + vogelMargin, N: len(points)}
	x, y := make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		y[i] = math.Log(p.PaS)
	}
	// The residual has one minimum in T0 for points that bend one way: a golden
	// section finds it, and its edge 0 K is the Arrhenius equation.
	sum := func(t0 float64) float64 {
		for i, p := range points {
			x[i] = 1 / (p.TempC + physics.Kelvin - t0)
		}
		v.T0 = t0
		v.A, v.B = stat.LinearRegression(x, y, nil, false)
		var s float64
		for i := range x {
			r := y[i] - v.A - v.B*x[i]
			s += r * r
		}
		return s
	}
	t0, rest := 0.0, sum(0)
	if len(points) > 2 {
		const golden = 0.6180339887498949
		a, b := 0.0, low+physics.Kelvin-50
		for b-a > 1e-6 {
			c, d := b-golden*(b-a), a+golden*(b-a)
			if sum(c) < sum(d) {
				b = d
			} else {
				a = c
			}
		}
		if s := sum((a + b) / 2); s < rest {
			t0 = (a + b) / 2
		}
	}
	rest = sum(t0)
	if !(v.B > 0) {
		return Vogel{}, check.Input("Points", v.B, "K for B", "a viscosity that falls as it warms")
	}
	v.Spread = vogelRepeat
	if free := len(points) - 3; free > 0 {
		t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(free)}.Quantile(0.975)
		v.Spread = max(v.Spread, t*math.Sqrt(rest/float64(free)))
	}
	return v, nil
}

// Viscosity returns the viscosity in Pa s inside the range of the points and 5 degC
// beyond, a RangeError outside.
func (v Vogel) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if v.N < 2 {
		return honestplate.Estimate{}, check.Input("Curve.N", float64(v.N), "points", "a curve made by FitVogel")
	}
	if err := honestplate.InRange("TempC", tempC, v.LowC, v.HighC, "degC", "your measured points"); err != nil {
		return honestplate.Estimate{}, err
	}
	e := honestplate.Factor(math.Exp(v.A+v.B/(tempC+physics.Kelvin-v.T0)), math.Exp(v.Spread))
	return check.Unless(check.Band("Curve", e, 1e-9, 1e12, "Pa s", "anything that flows"), e)
}
