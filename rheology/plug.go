package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// plug returns the effective viscosity of a liquid with a yield stress in a bore, where it
// moves as a plug inside a sheared layer: the wall stress over the Newtonian wall rate 8
// V/D, and the true wall rate. The flow of a wall rate g is (Rabinowitsch and Mooney,
// integrated by parts)
//
//	8 V/D = 4/3 integral_0^g (1 - (tau(x)/tau(g))3) dx
//
// solved for g by secant on the logarithms.
func (o *outlet) plug(q float64, strict bool) (honestplate.Estimate, float64, error) {
	newtonian := 8 * q / (o.boreArea() * o.bore)
	low, high := math.Log(newtonian)-1, math.Inf(1)
	x := math.Log(newtonian) + 0.5
	px, py := x, 0.0
	for step := range 100 {
		got, err := o.sheared(math.Exp(x))
		if err != nil {
			return honestplate.Estimate{}, 0, err
		}
		if got <= 0 {
			// All of it at the yield stress, to the digits there are.
			low, x = x, x+1
			continue
		}
		y := math.Log(got / newtonian)
		if math.Abs(y) < 1e-9 {
			break
		}
		if y > 0 {
			high = x
		} else {
			low = x
		}
		slope := 1.0
		if step > 0 && px != x && py != 0 {
			slope = (y - py) / (x - px)
		}
		px, py = x, y
		next := x - y/slope
		if !(slope > 0) || !(next > low) || !(next < high) {
			next = (low + min(high, low+4)) / 2
		}
		if math.Abs(next-x) < 1e-13*(1+math.Abs(x)) {
			break
		}
		x = next
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
		for i, t := range gauss5 {
			s := (float64(half) + t) / 2
			tau, err := o.stress(g * s * s)
			if err != nil {
				return 0, err
			}
			r := min(tau/wall, 1)
			sum += gauss5Weight[i] / 2 * 2 * s * (1 - r*r*r)
		}
	}
	return 4.0 / 3 * g * sum, nil
}

// stress at a shear rate, Pa, never below the yield stress. Below the liquid's range of
// rates it goes down to the yield stress along a Casson curve, tau^(1/2) straight over
// rate^(1/2); above it the viscosity is that of the range's end.
func (o *outlet) stress(rate float64) (float64, error) {
	e, err := o.thins.ViscosityAtRate(o.tempC, rate)
	if r, ok := rangeOf(err); ok && rate < r.Low && r.Low > 0 {
		if e, err = o.thins.ViscosityAtRate(o.tempC, r.Low); err != nil {
			return 0, err
		}
		still := math.Sqrt(o.yield)
		root := still + (math.Sqrt(max(e.Likely*r.Low, o.yield))-still)*math.Sqrt(rate/r.Low)
		return root * root, check.Band("viscosity", e, 1e-9, 1e12, "Pa s", "a liquid that pours")
	} else if ok && rate > r.High {
		e, err = o.thins.ViscosityAtRate(o.tempC, r.High)
	}
	if err != nil {
		return 0, err
	}
	return max(e.Likely*rate, o.yield), check.Band("viscosity", e, 1e-9, 1e12, "Pa s", "a liquid that pours")
}
