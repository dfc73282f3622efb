package rheology

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// A TemperaturePoint is a viscosity that you measured at a temperature.
type TemperaturePoint struct {
	TempC float64 // degC
	PaS   float64 // dynamic viscosity, Pa s
}

// A Vogel is a viscosity as a function of temperature,
//
//	ln eta = A + B/(T - T0),  eta in Pa s, T in K
//
// which with T0 = 0 is the Arrhenius equation (from memory: Vogel 1921, Fulcher
// 1925, Tammann 1926). Make one with FitVogel.
type Vogel struct {
	A, B, T0    float64 // T0 in K, B in K
	LowC, HighC float64 // where it holds: the measured points and 5 degC beyond
	N           int     // number of points
	Spread      float64 // half-width of the 95 % band of ln(eta)
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
		return Vogel{}, &InputError{"number of measured points", float64(len(points)), "", "2 or more"}
	}
	low, high := points[0].TempC, points[0].TempC
	for _, p := range points {
		if err := within("measured temperature", p.TempC, -50, 250, "degC", "liquids of the kitchen"); err != nil {
			return Vogel{}, err
		}
		if err := within("measured viscosity", p.PaS, 1e-5, 1e6, "Pa s", "liquids of the kitchen"); err != nil {
			return Vogel{}, err
		}
		low, high = min(low, p.TempC), max(high, p.TempC)
	}
	if high-low < 2 {
		return Vogel{}, &InputError{"span of the measured temperatures", high - low, "degC", "2 degC or more"}
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
			x[i] = 1 / (p.TempC + kelvin - t0)
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
		a, b := 0.0, low+kelvin-50
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
		return Vogel{}, &InputError{"change of viscosity with temperature", v.B, "K", "a viscosity that falls as it warms"}
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
func (v Vogel) Viscosity(tempC float64) (Estimate, error) {
	if v.N < 2 {
		return Estimate{}, &InputError{"number of measured points", float64(v.N), "", "a curve made by FitVogel"}
	}
	if err := within("temperature", tempC, v.LowC, v.HighC, "degC", "your measured points"); err != nil {
		return Estimate{}, err
	}
	e := Factor(math.Exp(v.A+v.B/(tempC+kelvin-v.T0)), math.Exp(v.Spread))
	if err := checkBand("viscosity of the fitted curve", e); err != nil {
		return Estimate{}, err
	}
	return e, nil
}

// ActivationEnergy returns the slope of ln(eta) as an energy in J/mol, R B
// [T/(T - T0)]^2, R = 8.314 J/(mol K): the number in which papers compare liquids.
func (v Vogel) ActivationEnergy(tempC float64) (float64, error) {
	if _, err := v.Viscosity(tempC); err != nil {
		return 0, err
	}
	t := tempC + kelvin
	return 8.314462618 * v.B * (t / (t - v.T0)) * (t / (t - v.T0)), nil
}

// Own is a liquid of your own: from a few viscosities measured at different
// temperatures (Curve, by FitVogel), or from a flow curve measured at one (Flow, by
// FitFlow), or both, when Curve moves the flow curve in temperature.
type Own struct {
	Name             string    // what you call it
	Curve            Vogel     // viscosity against temperature; zero if only Flow is known
	Flow             FlowModel // flow curve at FlowC; nil for a Newtonian liquid
	FlowC            float64   // temperature of the flow curve, degC
	DensityKgM3      float64   // kg/m3, weighed: a known volume on a scale
	SurfaceTensionNm float64   // N/m; 0 means 0.05, most foods' within a third
}

const ownFlowMargin = 3.0 // degC around FlowC, when no Curve says more

// Describe gives its name and where it holds.
func (o Own) Describe() Description {
	d := Description{Name: o.Name, Source: "measured by the user"}
	switch {
	case o.Curve.N > 0:
		d.LowC, d.HighC = o.Curve.LowC, o.Curve.HighC
		d.Band = fmt.Sprintf("x/: %.3g, from %d points", math.Exp(o.Curve.Spread), o.Curve.N)
	case o.Flow != nil:
		d.LowC, d.HighC = o.FlowC-ownFlowMargin, o.FlowC+ownFlowMargin
		d.Band = "+-15 % with the 3 degC around the measurement, an engineering estimate"
	}
	if o.Flow != nil {
		d.ShearRate = sauceRate
	}
	return d
}

// Viscosity returns the viscosity in Pa s: that of Curve, or with a Flow the apparent
// viscosity at 50 1/s.
func (o Own) Viscosity(tempC float64) (Estimate, error) {
	return o.ViscosityAtRate(tempC, sauceRate)
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s. With
// both Flow and Curve it is the flow curve times how Curve changes from FlowC to
// tempC; with Flow alone it holds 3 degC around FlowC, +-15 %.
func (o Own) ViscosityAtRate(tempC, shearRate float64) (Estimate, error) {
	if o.Flow == nil {
		if err := notNegative("shear rate", shearRate, "1/s"); err != nil {
			return Estimate{}, err
		}
		return o.Curve.Viscosity(tempC)
	}
	at, err := ApparentViscosity(o.Flow, shearRate)
	if err != nil {
		return Estimate{}, err
	}
	if err := finite("temperature of the flow curve", o.FlowC, "degC"); err != nil {
		return Estimate{}, err
	}
	if o.Curve.N == 0 {
		if err := within("temperature", tempC, o.FlowC-ownFlowMargin, o.FlowC+ownFlowMargin, "degC", "your flow curve"); err != nil {
			return Estimate{}, err
		}
		return Within(at, 0.15), nil
	}
	there, err := o.Curve.Viscosity(o.FlowC)
	if err != nil {
		return Estimate{}, err
	}
	here, err := o.Curve.Viscosity(tempC)
	if err != nil {
		return Estimate{}, err
	}
	e := here.Times(at / there.Value)
	if err := checkBand("apparent viscosity", e); err != nil {
		return Estimate{}, err
	}
	return e, nil
}

// YieldStress returns the flow curve's yield stress in Pa, moved in temperature like
// the viscosity; 0 without a flow curve.
func (o Own) YieldStress(tempC float64) (Estimate, error) {
	e, err := o.Viscosity(tempC)
	if err != nil || o.Flow == nil {
		return Estimate{}, err
	}
	at, err := ApparentViscosity(o.Flow, sauceRate)
	if err != nil {
		return Estimate{}, err
	}
	y := e.Times(o.Flow.YieldStress() / at)
	if err := finite("yield stress", y.High, "Pa"); err != nil {
		return Estimate{}, err
	}
	return y, nil
}

func (o Own) check(tempC float64) error {
	_, err := o.Viscosity(tempC)
	return err
}

// Density returns DensityKgM3 at any temperature of the range, band +-1 %. Without it,
// an InputError.
func (o Own) Density(tempC float64) (Estimate, error) {
	if err := o.check(tempC); err != nil {
		return Estimate{}, err
	}
	if err := within("density of your liquid", o.DensityKgM3, 300, 3000, "kg/m3", "liquids of the kitchen"); err != nil {
		return Estimate{}, err
	}
	return Within(o.DensityKgM3, 0.01), nil
}

// SurfaceTension returns SurfaceTensionNm in N/m, band +-10 %; if that is 0, 0.05 with
// a band of +-40 %, which holds oil and syrup alike.
func (o Own) SurfaceTension(tempC float64) (Estimate, error) {
	if err := o.check(tempC); err != nil {
		return Estimate{}, err
	}
	if o.SurfaceTensionNm == 0 {
		return Within(0.05, 0.4), nil
	}
	if err := within("surface tension of your liquid", o.SurfaceTensionNm, 0.005, 0.5, "N/m", "liquids of the kitchen"); err != nil {
		return Estimate{}, err
	}
	return Within(o.SurfaceTensionNm, 0.1), nil
}
