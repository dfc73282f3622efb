package thermal

import (
	"math"
	"time"

	"gonum.org/v1/gonum/integrate/quad"
)

// StefanLambda returns the root lambda of Stefan's problem: a half-space of a
// pure substance at its melting point, whose surface is at once brought dT above
// it (or below, for freezing), has changed phase to the depth
//
//	s = 2 lambda sqrt(alpha t),  sqrt(pi) lambda exp(lambda^2) erf(lambda) = Ste
//
// with alpha (m2/s) the diffusivity and Ste = c dT/L of the phase between surface
// and front. Ste is 1e-6 to 100. The root is exact to 1e-12.
//
// Source: Stefan 1891 as in any textbook of heat conduction (from memory).
func StefanLambda(ste float64) (float64, error) {
	if err := within("Stefan number", ste, 1e-6, 100, "", "Stefan's problem"); err != nil {
		return 0, err
	}
	return rootOf(func(x float64) float64 {
		return math.Sqrt(math.Pi)*x*math.Exp(x*x)*math.Erf(x) - ste
	}, 0, 4), nil
}

// A Phase is a solid or a liquid in Neumann's problem.
type Phase struct {
	Conductivity float64 // W/(m K)
	HeatCapacity float64 // by volume, J/(m3 K)
}

func (p Phase) check(name string) error {
	if err := within(name+" conductivity", p.Conductivity, 1e-4, 1e5, "W/(m K)", "Neumann's problem"); err != nil {
		return err
	}
	return within(name+" heat capacity", p.HeatCapacity, 1e2, 1e8, "J/(m3 K)", "Neumann's problem")
}

// NeumannLambda returns the root of Neumann's problem, in which the far phase is
// not at the melting point: near is the phase between surface and front, far the
// one beyond, dNear and dFar (K) how far surface and distant material are from the
// melting point, latent by volume (J/m3). One density is taken for both phases.
// The front is at s = 2 lambda sqrt(alpha_near t), and
//
//	exp(-l^2)/erf(l) - (k_f/k_n) sqrt(a_n/a_f) (dFar/dNear) exp(-l^2 a_n/a_f)/erfc(l sqrt(a_n/a_f)) = l sqrt(pi) L/(c_n dNear)
//
// Source: Neumann's solution as in Carslaw and Jaeger 1959, Conduction of Heat in
// Solids (from memory; the form seen on a calculator's page).
func NeumannLambda(near, far Phase, dNear, dFar, latent float64) (float64, error) {
	if err := near.check("near phase's"); err != nil {
		return 0, err
	}
	if err := far.check("far phase's"); err != nil {
		return 0, err
	}
	if err := within("surface's distance from melting", dNear, 1e-3, 1000, "K", "Neumann's problem"); err != nil {
		return 0, err
	}
	if err := within("far distance from melting", dFar, 0, 1000, "K", "Neumann's problem"); err != nil {
		return 0, err
	}
	if err := within("latent heat", latent, 1e4, 1e11, "J/m3", "Neumann's problem"); err != nil {
		return 0, err
	}
	ratio := math.Sqrt(near.Conductivity / near.HeatCapacity * far.HeatCapacity / far.Conductivity)
	side := far.Conductivity / near.Conductivity * ratio * dFar / dNear
	rhs := math.Sqrt(math.Pi) * latent / (near.HeatCapacity * dNear)
	// exp(-x^2)/erfc(x) without overflow: exp(-x^2)/erfc(x) -> sqrt(pi) x.
	tail := func(x float64) float64 {
		if x > 5 {
			return math.Sqrt(math.Pi) * x * (1 + 0.5/(x*x))
		}
		return math.Exp(-x*x) / math.Erfc(x)
	}
	return rootOf(func(l float64) float64 {
		return rhs*l + side*tail(l*ratio) - math.Exp(-l*l)/math.Erf(l)
	}, 0, 5), nil
}

// rootOf bisects a rising function to the last digit.
func rootOf(f func(float64) float64, low, high float64) float64 {
	for range 200 {
		mid := (low + high) / 2
		if mid == low || mid == high {
			break
		}
		if f(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// SheetTime returns how long a sheet of ice on water takes to grow from one
// thickness to another (m) while its surface is kept dT (K) below freezing:
//
//	t = rho L (x2^2 - x1^2)/(2 k dT)
//
// with rho L the latent heat by volume (J/m3) and k (W/(m K)) that of ice. The
// heat stored in the ice is left out, which makes it short by the share Ste/6 of
// the thickness: 1 % at 10 K.
//
// Source: Stefan's quasi-steady law (from memory, checked on published examples).
func SheetTime(from, to, dT, k, latent float64) (time.Duration, error) {
	if err := within("thickness at the start", from, 0, 10, "m", "quasi-steady sheet"); err != nil {
		return 0, err
	}
	if err := within("thickness at the end", to, from, 10, "m", "quasi-steady sheet: not thinner than at the start"); err != nil {
		return 0, err
	}
	if err := within("temperature difference", dT, 1e-2, 100, "K", "quasi-steady sheet"); err != nil {
		return 0, err
	}
	if err := within("conductivity", k, 1e-2, 100, "W/(m K)", "quasi-steady sheet"); err != nil {
		return 0, err
	}
	if err := within("latent heat", latent, 1e5, 1e9, "J/m3", "quasi-steady sheet"); err != nil {
		return 0, err
	}
	return seconds(latent * (to*to - from*from) / (2 * k * dT)), nil
}

// seconds turns a number of seconds into a duration, Never if it is too long.
func seconds(s float64) time.Duration {
	if !(s < 9e9) {
		return Never
	}
	return time.Duration(math.Round(s * 1e9))
}

// BallMeltTime returns how long a ball at its melting point takes to lose a share
// of its mass, 0 to 1, in a stream dT (K) warmer, if its melt runs off:
//
//	t = integral from r_end to r_0 of rho L dr/(h(2 r) dT),  r_end = r_0 (1 - share)^(1/3)
//
// latent is rho L (J/m3), h the coefficient at a diameter, W/(m2 K). With a
// constant h it is rho L (r_0 - r_end)/(h dT); with h falling as the fourth root
// of the diameter, 0.8 of that with the first h for the whole ball.
func BallMeltTime(diameter, share, dT, latent float64, h func(diameter float64) float64) (time.Duration, error) {
	if err := within("diameter", diameter, 1e-4, 10, "m", "melting ball"); err != nil {
		return 0, err
	}
	if err := within("share of the mass", share, 0, 1, "", "a fraction"); err != nil {
		return 0, err
	}
	if err := within("temperature difference", dT, 1e-2, 1000, "K", "melting ball"); err != nil {
		return 0, err
	}
	if err := within("latent heat", latent, 1e5, 1e9, "J/m3", "melting ball"); err != nil {
		return 0, err
	}
	if h == nil {
		return 0, &InputError{"heat transfer coefficient", math.NaN(), "W/(m2 K)", "a function"}
	}
	r0 := diameter / 2
	end := r0 * math.Cbrt(1-share)
	bad, wrong := 0.0, false
	t := quad.Fixed(func(r float64) float64 {
		c := h(2 * r)
		if !(c > 0) || math.IsInf(c, 0) {
			bad, wrong = c, true
			return 1
		}
		return latent / (c * dT)
	}, end, r0, 40, quad.Legendre{}, 0)
	if wrong {
		return 0, &InputError{"heat transfer coefficient", bad, "W/(m2 K)", "a finite number above 0"}
	}
	return seconds(t), nil
}
