package flow

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/root"
	"gonum.org/v1/gonum/integrate/quad"
)

// A Pipe is a straight round pipe, needle or nozzle, long against its diameter:
// Flow has no entrance loss and no kinetic energy, and holds for laminar flow.
type Pipe struct {
	Diameter float64 `json:"diameter_m"` // inside, m
	Length   float64 `json:"length_m"`   // m
}

// A PipeFlow is fully developed laminar flow of a flow model in a Pipe.
type PipeFlow struct {
	Diameter      float64 `json:"diameter_m"`            // of the pipe, m
	Rate          float64 `json:"rate_m3_per_s"`         // m3/s; 0 where the wall stress is below the yield stress
	Speed         float64 `json:"speed_m_per_s"`         // mean, m/s
	CentreSpeed   float64 `json:"centre_speed_m_per_s"`  // on the axis, m/s
	WallStress    float64 `json:"wall_stress_pa"`        // Pa
	WallShearRate float64 `json:"wall_shear_rate_per_s"` // 1/s, the true one, not 8V/D
	PlugDiameter  float64 `json:"plug_diameter_m"`       // of the core that moves without shear, m
}

const sourcePipe = "laminar flow in a pipe"

func (p Pipe) check() error {
	return cmp.Or(
		honestplate.Positive("Diameter", p.Diameter, "m"), honestplate.InRange("Diameter", p.Diameter, 1e-6, 10, "m", sourcePipe),
		honestplate.Positive("Length", p.Length, "m"), honestplate.InRange("Length", p.Length, 1e-6, 1e6, "m", sourcePipe))
}

// Flow returns the flow that a pressure difference in Pa drives.
//
// With the wall stress tw = P D/(4 L), the yield stress ty, f = ty/tw and R = D/2:
//
//	any model      Q = pi R^3/tw^3 Integral(0, tw) t^2 rate(t) dt
//	Herschel-Bulkley (power law f = 0, Bingham n = 1, Newtonian both)
//	               Q = pi R^3 n (tw/K)^(1/n) (1-f)^((n+1)/n)
//	                   [(1-f)^2/(3n+1) + 2f(1-f)/(2n+1) + f^2/(n+1)]
//	Casson         Q = pi R^3 tw/(4 mu) [1 - (16/7) f^(1/2) + (4/3) f - f^4/21]
//
// The closed forms are from memory and agree with the integral to 1e-9, and at n = 1
// with Buckingham and Reiner. Carreau, and a model of your own, are integrated over
// the rate by Gauss-Legendre quadrature. A model whose stress does not rise with
// the rate to tw within 1e9 1/s is an InputError.
//
// It holds while Reynolds is below about 2100.
func (p Pipe) Flow(m Model, pressure float64) (PipeFlow, error) {
	if err := cmp.Or(p.check(), honestplate.Positive("Pressure", pressure, "Pa"),
		honestplate.InRange("Pressure", pressure, 0, 1e12, "Pa", sourcePipe), Check(m)); err != nil {
		return PipeFlow{}, err
	}
	return p.flow(m, pressure*p.Diameter/(4*p.Length))
}

func (p Pipe) flow(m Model, wall float64) (PipeFlow, error) {
	out := PipeFlow{Diameter: p.Diameter, WallStress: wall}
	r := p.Diameter / 2
	yield := m.Stress(0)
	if wall <= yield {
		out.PlugDiameter = p.Diameter
		return out, nil
	}
	out.PlugDiameter = p.Diameter * yield / wall
	f := yield / wall
	var rate, centre float64 // Q/(pi R^3) and u0/R, both in 1/s
	switch m := m.(type) {
	case Newtonian:
		out.WallShearRate, rate, centre = plastic(wall, 0, m.PaS, 1)
	case PowerLaw:
		out.WallShearRate, rate, centre = plastic(wall, 0, m.K, m.N)
	case Bingham:
		out.WallShearRate, rate, centre = plastic(wall, f, m.Plastic, 1)
	case HerschelBulkley:
		out.WallShearRate, rate, centre = plastic(wall, f, m.K, m.N)
	case Casson:
		// With s = sqrt(f) the bracket is (1-s)^3 (21 + 15s + 10s^2 + 6s^3 + 3s^4 + s^5)/21,
		// which does not lose its digits as f nears 1.
		s := math.Sqrt(f)
		q := (1 - s) * (1 - s)
		out.WallShearRate = wall / m.Plastic * q
		q *= 1 - s
		rate = wall / (4 * m.Plastic) * q * (21 + s*(15+s*(10+s*(6+s*(3+s))))) / 21
		centre = wall / m.Plastic * q * (3 + s) / 6
	default:
		w, err := rateAtStress(m, wall)
		if err != nil {
			return PipeFlow{}, err
		}
		// By parts, Integral t^2 rate dt = (tw^3 rate_w - Integral t^3 d rate)/3; the
		// substitution rate = w x^4 smooths a power law's start.
		over := func(power float64) float64 {
			return quad.Fixed(func(x float64) float64 {
				x3 := x * x * x
				return math.Pow(m.Stress(w*x3*x)/wall, power) * 4 * x3
			}, 0, 1, 80, quad.Legendre{}, 0)
		}
		out.WallShearRate = w
		rate = w * (1 - over(3)) / 3
		centre = w * (1 - over(1))
	}
	out.Rate = math.Pi * r * r * r * rate
	out.Speed = r * rate
	out.CentreSpeed = r * centre
	for _, v := range [...]float64{out.Rate, out.Speed, out.CentreSpeed, out.WallShearRate} {
		if err := honestplate.NotNegative("Rate", v, ""); err != nil {
			return PipeFlow{}, err
		}
	}
	return out, nil
}

// plastic is the wall rate, Q/(pi R^3) and u0/R of a Herschel-Bulkley liquid.
func plastic(wall, f, k, n float64) (wallRate, flow, centre float64) {
	g := 1 - f
	a := math.Pow(wall/k*g, 1/n) // the wall rate
	return a,
		n * a * g * (g*g/(3*n+1) + 2*f*g/(2*n+1) + f*f/(n+1)),
		a * g * n / (n + 1)
}

// rateAtStress inverts a rising flow curve, in the logarithm.
func rateAtStress(m Model, stress float64) (float64, error) {
	const slowest, fastest = 1e-12, 1e9
	if !(m.Stress(fastest) >= stress) || !(m.Stress(slowest) < stress) {
		return 0, check.Input("Model.Stress at 1e-12..1e9 1/s", stress, "Pa at the wall", "a curve that rises through the wall stress")
	}
	x, err := root.Bisect(func(x float64) (float64, error) { return m.Stress(math.Exp(x)) - stress, nil },
		math.Log(slowest), math.Log(fastest), 0)
	return math.Exp(x), err
}

// PressureFor returns the pressure difference in Pa that drives a flow rate in
// m3/s: the inverse of Flow, by bisection to 1e-13.
func (p Pipe) PressureFor(m Model, rate float64) (float64, error) {
	if err := cmp.Or(p.check(), honestplate.InRange("Rate", rate, 1e-18, 1e6, "m3/s", sourcePipe),
		Check(m)); err != nil {
		return 0, err
	}
	yield := m.Stress(0)
	// Bracket the wall stress above the yield stress, in the logarithm.
	low, high := 1e-9, 1.0
	for {
		f, err := p.flow(m, yield+high)
		if err != nil {
			return 0, err
		}
		if f.Rate >= rate {
			break
		}
		low, high = high, high*10
		if high > 1e15 {
			return 0, check.Outside("Rate", rate, 0, f.Rate, "m3/s", "wall stress up to 1e15 Pa")
		}
	}
	x, err := root.Bisect(func(x float64) (float64, error) {
		f, err := p.flow(m, yield+math.Exp(x))
		return f.Rate - rate, err
	}, math.Log(low), math.Log(high), 1e-14)
	return (yield + math.Exp(x)) * 4 * p.Length / p.Diameter, err
}

// Reynolds returns the Metzner-Reed Reynolds number 8 rho V^2/tw, which makes 16/Re
// the Fanning factor of every laminar flow; density in kg/m3. Above about 2100 the
// flow is not laminar and Flow does not hold.
func (f PipeFlow) Reynolds(density float64) (float64, error) {
	if err := honestplate.Positive("Density", density, "kg/m3"); err != nil {
		return 0, err
	}
	if err := honestplate.Positive("WallStress", f.WallStress, "Pa"); err != nil {
		return 0, err
	}
	re := 8 * density * f.Speed * f.Speed / f.WallStress
	return re, honestplate.Finite("Density", re, "")
}
