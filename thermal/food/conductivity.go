package food

import (
	"math"

	"example.org/honestplate/thermal/heat"
)

// Mixing rules for the conductivity of a composite, W/(m K), in the order in which
// Carson et al. (2016, abstract read) recommend them for a frozen porous food:
// parallel for the unfrozen part, Levy for the ice in it, effective medium for the
// air. The foam of a frozen dessert has closed cells, for which see foam.

// foam returns the conductivity of a matrix k with a volume fraction of air, ka, in
// closed cells. The conductivity of such a body lies between the effective medium
// and Maxwell's separate spheres in an unbroken matrix (Carson et al. 2005, Thermal
// conductivity bounds for isotropic, porous materials, from memory); the geometric
// mean of the two is within 20 % of both up to 100 % overrun.
func foam(k, ka, air float64) float64 {
	maxwell := k * (2*k + ka - 2*(k-ka)*air) / (2*k + ka + (k-ka)*air)
	return math.Sqrt(maxwell * effectiveMedium(k, ka, air))
}

// levy returns the conductivity of ice (or any phase 1) of volume fraction v1
// dispersed in a matrix (phase 2), by Levy (1981), A modified Maxwell-Eucken
// equation for calculating the thermal conductivity of two-component solutions or
// mixtures (from memory):
//
//	k = k2 [2 k2 + k1 - 2 (k2 - k1) F] / [2 k2 + k1 + (k2 - k1) F]
//	F = {2/G - 1 + 2 v1 - sqrt[(2/G - 1 + 2 v1)^2 - 8 v1/G]}/2
//	G = (k1 - k2)^2 / [(k1 + k2)^2 + k1 k2/2]
//
// It has the property it was made for, that it does not matter which phase is
// called the dispersed one; a test holds it to that.
func levy(k1, k2, v1 float64) float64 {
	diff := k1 - k2
	if math.Abs(diff) < 1e-6*(k1+k2) { // G tends to 0; alike phases
		return k2 + v1*diff
	}
	g := diff * diff / ((k1+k2)*(k1+k2) + k1*k2/2)
	b := 2/g - 1 + 2*v1
	f := (b - math.Sqrt(max(0, b*b-8*v1/g))) / 2
	return k2 * (2*k2 + k1 + 2*diff*f) / (2*k2 + k1 - diff*f)
}

// effectiveMedium returns the conductivity of two phases mixed at random, v2 being
// the volume fraction of phase 2 (Landauer 1952, from memory): the positive root of
//
//	(1-v2) (k1 - k)/(k1 + 2 k) + v2 (k2 - k)/(k2 + 2 k) = 0
func effectiveMedium(k1, k2, v2 float64) float64 {
	b := (3*v2-1)*k2 + (2-3*v2)*k1
	return (b + math.Sqrt(b*b+8*k1*k2)) / 4
}

// airConductivity is that of the air in pores, W/(m K).
func airConductivity(tempC float64) float64 {
	p, _ := heat.MoistAir{TempC: tempC}.Properties() // in range wherever a food is
	return p.Conductivity
}
