package pour

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
)

// plug returns the effective viscosity of a liquid with a yield stress in a bore, where it
// moves as a plug inside a sheared layer: the wall stress over the Newtonian wall rate 8
// V/D, and the true wall rate. The flow of a wall rate g is (Rabinowitsch and Mooney,
// integrated by parts)
//
//	8 V/D = 4/3 integral_0^g (1 - (tau(x)/tau(g))3) dx
//
// solved for g in the logarithms.
func (o *outlet) plug(q float64, strict bool) (honestplate.Estimate, float64, error) {
	newtonian := 8 * q / (o.boreArea() * o.bore)
	start := math.Log(newtonian) + 0.5
	x, err := root.Search{
		Low: start - 1.5, High: math.Inf(1), Start: start, Slope: 1, Tol: 1e-9,
	}.Rise(func(x float64) (float64, error) {
		got, err := o.sheared(math.Exp(x))
		if got <= 0 {
			return -1, err // all of it at the yield stress, to the digits there are
		}
		return math.Log(got / newtonian), err
	})
	if err != nil {
		return honestplate.Estimate{}, 0, err
	}
	wall := math.Exp(x)
	e, err := o.atRate(wall, strict)
	if err != nil {
		return honestplate.Estimate{}, 0, err
	}
	tau, err := o.stress(wall)
	if err != nil {
		return honestplate.Estimate{}, 0, err
	}
	return e.Times(tau / newtonian / e.Likely), wall, nil
}

// sheared is the right side of plug's equation at the wall rate g. With x = g s2 the
// five-point rule, twice, meets the steep start of the flow curve.
func (o *outlet) sheared(g float64) (float64, error) {
	wall, err := o.stress(g)
	if err != nil {
		return 0, err
	}
	sum := 0.0
	for half := range 2 {
		for i, t := range physics.Nodes {
			s := (float64(half) + t) / 2
			tau, err := o.stress(g * s * s)
			if err != nil {
				return 0, err
			}
			r := min(tau/wall, 1)
			sum += physics.Weights[i] / 2 * 2 * s * (1 - r*r*r)
		}
	}
	return 4.0 / 3 * g * sum, nil
}

// stress at a shear rate, Pa, never below the yield stress. Below the liquid's range of
// rates it goes down to the yield stress along a Casson curve, tau^(1/2) straight over
// rate^(1/2); above it the viscosity is that of the range's end.
func (o *outlet) stress(rate float64) (float64, error) {
	e, err := o.atRate(rate, false)
	if err != nil {
		return 0, err
	}
	if rate < o.lowRate {
		still := math.Sqrt(o.yield)
		root := still + (math.Sqrt(max(e.Likely*o.lowRate, o.yield))-still)*math.Sqrt(rate/o.lowRate)
		return root * root, nil
	}
	return max(e.Likely*rate, o.yield), nil
}
