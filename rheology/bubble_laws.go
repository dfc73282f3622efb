package rheology

import (
	"math"

	"example.org/honestplate"
)

// RigidBubble returns the speed in m/s of a small bubble that behaves as a stiff sphere, from
// the best number ND = 4 rho drho g d3/(3 eta2):
//
//	ND < 73         Re = ND/24 - 1.7569e-4 ND2 + 6.9252e-7 ND3 - 2.3027e-10 ND4
//	73..580         lg Re = -1.7095 + 1.33438 W - 0.11591 W2
//	580..1.55e7     lg Re = -1.81391 + 1.34671 W - 0.12427 W2 + 0.006344 W3,  W = lg ND
//
// with the gas's density gas (kg/m3). RangeError above 1.55e7. Source: Clift, Grace and
// Weber 1978, Bubbles, Drops, and Particles, eq. 5-15 (read in public code, github socolofs/tamoc, whose test value it gives
// to 0.1 %, its g being 9.81).
func RigidBubble(d, rho, gas, eta float64) (float64, error) {
	if err := bubbleSizes(d, rho, gas, eta, 1); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("best number", bestNumber(d, rho, gas, eta), 0, 1.55e7, "", "Clift, Grace and Weber 1978"); err != nil {
		return 0, err
	}
	return rigidBubble(d, rho, gas, eta), nil
}

// EllipsoidBubble returns the speed in m/s of a flattened, wobbling bubble with a coated
// surface, by Grace's correlation:
//
//	U = eta/(rho d) M^-0.149 (J - 0.857),  H = 4/3 Eo M^-0.149 (eta/0.0009)^-0.14
//	J = 0.94 H^0.757 up to H = 59.3, 3.42 H^0.441 above
//
// with Eo = g drho d2/sigma and M = g eta4 drho/(rho2 sigma3). Range: M below 1e-3, Eo
// below 40, H 2 to 1000: RangeError outside. Source: Clift, Grace and Weber 1978, eq. 7-4 (read,
// as RigidBubble).
func EllipsoidBubble(d, rho, gas, eta, sigma float64) (float64, error) {
	if err := bubbleSizes(d, rho, gas, eta, sigma); err != nil {
		return 0, err
	}
	const source = "Clift, Grace and Weber 1978"
	if err := honestplate.InRange("Morton number", morton(rho, gas, eta, sigma), 0, 1e-3, "", source); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("Eotvos number", standardGravity*(rho-gas)*d*d/sigma, 0, 40, "", source); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("Grace's H", graceH(d, rho, gas, eta, sigma), 2, 1000, "", source); err != nil {
		return 0, err
	}
	return ellipsoidBubble(d, rho, gas, eta, sigma), nil
}

// CleanBubble returns the speed in m/s of the same bubble with a clean surface: the coated
// one's times 1 + G/(1 + k), k = etaGas/eta,
//
//	G = 2 exp(-(x + 0.6383)2/(0.2598 + 0.2 (x + 1))2),  x = lg(Eo (1 + 0.15 k)/(1 + k))
//
// with the viscosity of air for the gas, 1.84e-5 Pa s. Range as for EllipsoidBubble and
// Eo above 0.02, where G's formula ends. Source: Clift, Grace and Weber 1978, eq. 7-10 and fig.
// 7.7 as fitted in public code (github socolofs/tamoc; read).
func CleanBubble(d, rho, gas, eta, sigma float64) (float64, error) {
	u, err := EllipsoidBubble(d, rho, gas, eta, sigma)
	if err != nil {
		return 0, err
	}
	eo := standardGravity * (rho - gas) * d * d / sigma
	if err := honestplate.InRange("Eotvos number", eo, 0.02, 40, "", "Clift, Grace and Weber 1978"); err != nil {
		return 0, err
	}
	return u * cleanFactor(eo, eta), nil
}

// CapBubble returns the speed in m/s of a large bubble, a spherical cap of the volume of a
// ball of diameter d (m): 0.711 sqrt(g d drho/rho). Source: Clift, Grace and Weber 1978, eq. 8-11
// (strictly Re above 150 and Eo above 40; after Davies and Taylor 1950; read).
func CapBubble(d, rho, gas float64) (float64, error) {
	if err := bubbleSizes(d, rho, gas, 1, 1); err != nil {
		return 0, err
	}
	return capBubble(d, rho, gas), nil
}

func bubbleSizes(d, rho, gas, eta, sigma float64) error {
	if err := positiveAll(eta, rho, sigma); err != nil {
		return err
	}
	if err := honestplate.InRange("gas density", gas, 0, rho/2, "kg/m3", "a bubble"); err != nil {
		return err
	}
	return honestplate.InRange("bubble diameter", d, 1e-7, 0.1, "m", "a bubble")
}

func bestNumber(d, rho, gas, eta float64) float64 {
	return 4 * rho * (rho - gas) * standardGravity * d * d * d / (3 * eta * eta)
}

// rigidBubble holds the law past its last limit, where the cap is slower.
func rigidBubble(d, rho, gas, eta float64) float64 {
	n := bestNumber(d, rho, gas, eta)
	w := math.Log10(n)
	var re float64
	switch {
	case n < 73:
		re = n * (1.0/24 + n*(-1.7569e-4+n*(6.9252e-7-n*2.3027e-10)))
	case n < 580:
		re = math.Pow(10, -1.7095+w*(1.33438-w*0.11591))
	default:
		re = math.Pow(10, -1.81391+w*(1.34671+w*(-0.12427+w*0.006344)))
	}
	return eta * re / (rho * d)
}

func morton(rho, gas, eta, sigma float64) float64 {
	e2 := eta * eta
	return standardGravity * e2 * e2 * (rho - gas) / (rho * rho * sigma * sigma * sigma)
}

func graceH(d, rho, gas, eta, sigma float64) float64 {
	eo := standardGravity * (rho - gas) * d * d / sigma
	return 4.0 / 3 * eo * math.Pow(morton(rho, gas, eta, sigma), -0.149) * math.Pow(eta/0.0009, -0.14)
}

func ellipsoidBubble(d, rho, gas, eta, sigma float64) float64 {
	h := graceH(d, rho, gas, eta, sigma)
	j := 0.94 * math.Pow(h, 0.757)
	if h > 59.3 {
		j = 3.42 * math.Pow(h, 0.441)
	}
	return eta / (rho * d) * math.Pow(morton(rho, gas, eta, sigma), -0.149) * (j - 0.857)
}

func cleanFactor(eo, eta float64) float64 {
	k := airViscosity / eta
	x := math.Log10(eo * (1 + 0.15*k) / (1 + k))
	a, b := x+0.6383, 0.2598+0.2*(x+1)
	return 1 + 2*math.Exp(-a*a/(b*b))/(1+k)
}

func capBubble(d, rho, gas float64) float64 {
	return 0.711 * math.Sqrt(standardGravity*d*(rho-gas)/rho)
}
