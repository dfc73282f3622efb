package law

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
)

// A Bubble of gas in a liquid, far from walls. Sources: Clift, Grace and Weber 1978,
// Bubbles, Drops, and Particles, as noted at each formula; eq. 5-15, 7-4, 7-10, 8-11 and
// fig. 7.7 as read in public code (github socolofs/tamoc), whose test values they give to
// 0.1 %, its g being 9.81.
type Bubble struct {
	Fluid
	Diameter float64 `json:"diameter_m"`    // of a ball of its volume, m, 1e-7 to 0.1
	Gas      float64 `json:"gas_kg_per_m3"` // density of the gas, kg/m3; 0 means room air
}

// Room air in a bubble; neither moves a figure here by more than 2 %.
const (
	airDensity   = 1.2     // kg/m3
	airViscosity = 1.84e-5 // Pa s
)

func (b Bubble) check() error {
	return cmp.Or(b.Fluid.Check(), honestplate.InRange("Gas", b.Gas, 0, b.Density/2, "kg/m3", "lighter than the liquid"),
		honestplate.InRange("Diameter", b.Diameter, 1e-7, 0.1, "m", "what stays one bubble"))
}

// lift is the density that lifts it.
func (b Bubble) lift() float64 {
	if b.Gas == 0 {
		return b.Density - airDensity
	}
	return b.Density - b.Gas
}

// Coated returns the steady speed in m/s at which a bubble with a coated, stiff surface
// rises. A small one, or one in a thick liquid, is a stiff sphere, from the best number ND
// = 4 rho drho g d3/(3 eta2):
//
//	ND < 73         Re = ND/24 - 1.7569e-4 ND2 + 6.9252e-7 ND3 - 2.3027e-10 ND4
//	73..580         lg Re = -1.7095 + 1.33438 W - 0.11591 W2
//	580..1.55e7     lg Re = -1.81391 + 1.34671 W - 0.12427 W2 + 0.006344 W3,  W = lg ND
//
// (eq. 5-15), of which Stokes' U = g d2 rho/(18 eta) is the limit. About 1 mm and more in
// thin liquids it is flattened and wobbles, Grace's correlation (eq. 7-4):
//
//	U = eta/(rho d) M^-0.149 (J - 0.857),  H = 4/3 Eo M^-0.149 (eta/0.0009)^-0.14
//	J = 0.94 H^0.757 up to H = 59.3, 3.42 H^0.441 above
//
// with Eo = g drho d2/sigma and M = g eta4 drho/(rho2 sigma3), for M below 1e-3, Eo below
// 40, H 2 to 1000. A large one is a cap, 0.711 sqrt(g d drho/rho) (eq. 8-11, strictly Re
// above 150 and Eo above 40; after Davies and Taylor 1950).
func (b Bubble) Coated() (float64, error) {
	if err := b.check(); err != nil {
		return 0, err
	}
	return b.coated(), nil
}

// Clean returns the speed of the same bubble with a clean surface. A wobbling one rises
// 1 + G/(1 + k) times as fast, k = etaGas/eta,
//
//	G = 2 exp(-(x + 0.6383)2/(0.2598 + 0.2 (x + 1))2),  x = lg(Eo (1 + 0.15 k)/(1 + k))
//
// with the viscosity of air for the gas, 1.84e-5 Pa s (eq. 7-10 and fig. 7.7, as fitted in
// public code). A sphere gains 1.5 times in creeping flow (Hadamard 1911 and Rybczynski
// 1911) and more as inertia grows: 1.5 + 1.1 (Re/100)^0.55 joins the stiff sphere's drag
// to the clean one's, 48/Re (1 - 2.2/sqrt Re) (Moore 1963, from memory), within 5 % at Re
// 10 and 100. A cap knows no surface.
func (b Bubble) Clean() (float64, error) {
	if err := b.check(); err != nil {
		return 0, err
	}
	if b.wobbles() {
		k := airViscosity / b.Viscosity
		x := math.Log10(b.eotvos() * (1 + 0.15*k) / (1 + k))
		p, q := x+0.6383, 0.2598+0.2*(x+1)
		return b.coated() * (1 + 2*math.Exp(-p*p/(q*q))/(1+k)), nil
	}
	u := b.sphere()
	re := b.Density * u * b.Diameter / b.Viscosity
	u *= min(1.5+1.1*math.Pow(re/100, 0.55), 3)
	return min(u, b.cap()), nil
}

func (b Bubble) coated() float64 {
	if b.wobbles() {
		return b.ellipsoid()
	}
	return min(b.sphere(), b.cap())
}

// wobbles reports that the bubble is flattened and unsteady: thin liquids, about 1 to 17 mm
// in water.
func (b Bubble) wobbles() bool {
	h := b.graceH()
	return h > 2 && h < 1000 && b.eotvos() < 40 && b.morton() < 1e-3
}

// sphere holds the law past its last limit, where the cap is slower.
func (b Bubble) sphere() float64 {
	d, eta := b.Diameter, b.Viscosity
	n := 4 * b.Density * b.lift() * physics.Gravity * d * d * d / (3 * eta * eta)
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
	return eta * re / (b.Density * d)
}

func (b Bubble) ellipsoid() float64 {
	h := b.graceH()
	j := 0.94 * math.Pow(h, 0.757)
	if h > 59.3 {
		j = 3.42 * math.Pow(h, 0.441)
	}
	return b.Viscosity / (b.Density * b.Diameter) * math.Pow(b.morton(), -0.149) * (j - 0.857)
}

func (b Bubble) cap() float64 {
	return 0.711 * math.Sqrt(physics.Gravity*b.Diameter*b.lift()/b.Density)
}

func (b Bubble) eotvos() float64 {
	return physics.Gravity * b.lift() * b.Diameter * b.Diameter / b.SurfaceTension
}

func (b Bubble) morton() float64 {
	e2 := b.Viscosity * b.Viscosity
	return physics.Gravity * e2 * e2 * b.lift() / (b.Density * b.Density * b.SurfaceTension * b.SurfaceTension * b.SurfaceTension)
}

func (b Bubble) graceH() float64 {
	return 4.0 / 3 * b.eotvos() * math.Pow(b.morton(), -0.149) * math.Pow(b.Viscosity/0.0009, -0.14)
}
