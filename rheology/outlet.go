package rheology

import (
	"errors"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// standardGravity is the standard acceleration of free fall, m/s2, exact by
// definition (3rd CGPM, 1901). Its variation over the Earth, +-0.3 %, is far below
// every band of this package.
const standardGravity = 9.80665

// An outlet is a spout or a lip with one liquid in it: it answers which head a
// flow needs. Everything that a pour computes comes from that one function, so a
// new kind of outlet is a new branch of head and nothing else.
type outlet struct {
	bore      float64 // diameter of a round bore, m; 0 for a lip
	width     float64 // of a lip, m; 0 for a bore
	length    float64 // of the passage, m
	discharge float64 // measured discharge coefficient; 0: from the model

	liquid Liquid
	thins  ShearDependent // nil for a liquid of one viscosity
	tempC  float64
	eta    float64 // Pa s, where thins is nil
	rho    float64
	curve  localCurve // of thins, where there is no yield stress
	// What one pour's searches hand on to the next, to save their logarithms: the slope of
	// ln head in ln flow where the last ended (0 for none), ln of the shear rate of a flow of
	// 1 m3/s in a bore, and ln of the fastest flow under a head.
	slope, lnRateOfOne, lnFastest, fastestHead float64
	loose                                      bool    // a flow on the way to another need not be exact
	yield                                      float64 // Pa; 0: none
	scale                                      float64 // on the viscosity, 1 or an end of its band; not on the yield stress
}

// boreArea returns the section of the bore, m2.
func (o *outlet) boreArea() float64 { return math.Pi / 4 * o.bore * o.bore }

// shearRate returns the rate at which a flow q m3/s reads the viscosity of a
// liquid that thins, 1/s.
//
// In a bore it is pi/4 of the Newtonian wall rate 8 V/D: there a power law
// liquid has the wall stress of a Newtonian one to 1 % for an index of 0.5 and
// to 6 % for 0.2 (the representative viscosity of Schuemmer and Worthoff 1978,
// from memory; the figures are tested against the exact Rabinowitsch result).
// Over a lip it is the wall rate 3 q'/h2 of a film of depth h.
func (o *outlet) shearRate(q float64) float64 {
	if o.width > 0 {
		h := o.brink(q, o.eta/o.rho)
		return 3 * q / (o.width * h * h)
	}
	return math.Pi / 4 * 8 * q / (o.boreArea() * o.bore)
}

// effective returns the viscosity in Pa s that governs a flow q, with its band, and the
// shear rate in 1/s at which it was read. While a flow is only tried, a rate outside the
// liquid's range takes the range's end, so that the search can pass by it; strict refuses
// it.
func (o *outlet) effective(q float64, strict bool) (honestplate.Estimate, float64, error) {
	if o.thins == nil {
		return honestplate.Exactly(o.eta), o.shearRate(q), nil
	}
	if o.yield > 0 && o.width == 0 {
		return o.plug(q, strict)
	}
	rate := o.shearRate(q)
	e, err := o.atRate(rate, strict)
	return e, rate, err
}

// atRate is the viscosity of a liquid that thins at a rate in 1/s, or unless strict at the
// nearest end of its range of rates.
func (o *outlet) atRate(rate float64, strict bool) (honestplate.Estimate, error) {
	e, err := o.thins.ViscosityAtRate(o.tempC, rate)
	if r, ok := rangeOf(err); ok && !strict && (rate < r.Low || rate > r.High) {
		e, err = o.thins.ViscosityAtRate(o.tempC, min(max(rate, r.Low), r.High))
	}
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return e, check.Band("viscosity", e, 1e-9, 1e12, "Pa s", "a liquid that pours")
}

// rangeOf returns the range that a liquid's error tells of.
func rangeOf(err error) (*honestplate.RangeError, bool) {
	if err == nil {
		return nil, false
	}
	var r *honestplate.RangeError
	if !errors.As(err, &r) || !(r.Low < r.High) {
		return nil, false
	}
	return r, true
}

// head returns the head in m of liquid that a flow of q m3/s needs.
func (o *outlet) head(q float64) (float64, error) { return o.headAt(q, math.Log(q)) }

// headAt is head for a flow whose logarithm is known.
func (o *outlet) headAt(q, lnQ float64) (float64, error) {
	eta, rate := o.eta, 0.0
	if o.curve.known {
		x := lnQ + o.lnRateOfOne
		if o.width > 0 {
			x = math.Log(o.shearRate(q))
		}
		eta = math.Exp(o.curve.ln(x))
	} else if o.thins != nil {
		e, at, err := o.effective(q, false)
		if err != nil {
			return 0, err
		}
		eta, rate = e.Likely, at
	}
	nu := eta * o.scale / o.rho
	if o.width > 0 {
		if o.yield > 0 {
			// The yield stress holds back a head of its own; the film feels the rest.
			plastic := max(eta-o.yield/rate, 0.05*eta) * o.scale / o.rho
			return lipHead(q/o.width, plastic, o.length) + o.standing(o.yield), nil
		}
		return lipHead(q/o.width, nu, o.length), nil
	}
	v := q / o.boreArea()
	if o.yield > 0 {
		// The band is on what shears, not on the stress that must be passed first: a liquid
		// that stays in has no rate. Pour.MayStay tells of that.
		still := min(o.yield*o.bore/(8*v), eta)
		nu = (still + (eta-still)*o.scale) / o.rho
	}
	return boreLoss(v*o.bore/nu, o.length/o.bore, o.discharge) * v * v / (2 * standardGravity), nil
}

// standing is the head in m that a stress tau at the wall holds: of a bore, 4 tau L/(rho g D)
// with the entry as extra length; on a lip, rho g H2 = 2 tau (L + H).
func (o *outlet) standing(tau float64) float64 {
	weight := o.rho * standardGravity
	if o.width > 0 {
		return (tau + math.Sqrt(tau*tau+2*weight*o.length*tau)) / weight
	}
	return 4 * tau * (o.length + couetteRadii*o.bore/2) / (weight * o.bore)
}

// flow returns the flow in m3/s under a head in m. The head is a rising function
// of the flow, close to a power of it, so the secant of the logarithms, kept in a
// bracket, arrives in a few steps. start is a guess; 0 for none.
func (o *outlet) flow(h, start float64) (float64, error) {
	if !(start > 0) {
		start = o.guess(h)
	}
	enough := 1e-5
	if o.scale != 1 || o.loose {
		enough = 1e-3 // for a band
	}
	if h != o.fastestHead {
		o.fastestHead, o.lnFastest = h, math.Log(o.fastest(h))
	}
	low, high := math.Inf(-1), o.lnFastest
	x := min(math.Log(start), high)
	var px, py float64
	for step := range 200 {
		got, err := o.headAt(math.Exp(x), x)
		if err != nil {
			return 0, err
		}
		y := math.Log(got / h)
		slope := o.slope
		switch {
		case step > 0:
			slope = (y - py) / (x - px)
			o.slope = min(max(slope, 1), 2)
		case slope == 0:
			slope = 1.5
		}
		next := x - y/slope
		if math.Abs(y) < enough && slope > 0.1 {
			// The last step squares what is left.
			x = next
			break
		}
		if y > 0 {
			high = x
		} else {
			low = x
		}
		px, py = x, y
		if !(slope > 0) || !(next < high) || !(next > low) {
			if math.IsInf(low, -1) {
				next = high - 2 - 2*math.Abs(y)
			} else {
				next = (low + high) / 2
			}
		}
		if math.Abs(next-x) < 1e-14*(1+math.Abs(x)) {
			break
		}
		x = next
	}
	q := math.Exp(x)
	if !(q > 0) || math.IsInf(q, 0) {
		// Only a user's own liquid gets here, such as one whose stress falls with the rate.
		return 0, check.Input("flow under the head", q, "m3/s", "a liquid with one flow: a stress that rises with the shear rate")
	}
	return q, nil
}

// guess is a flow near the one under the head h, of the liquid at its stated viscosity.
func (o *outlet) guess(h float64) float64 {
	if o.width > 0 {
		return o.fastest(h) / 4
	}
	nu := o.eta * o.scale / o.rho
	a := 32 * nu * (o.length + o.bore/2) / (standardGravity * o.bore * o.bore)
	return o.boreArea() * 2 * h / (a + math.Sqrt(a*a+4*h/standardGravity))
}

// fastest returns a flow that no liquid under the head h exceeds.
func (o *outlet) fastest(h float64) float64 {
	v := math.Sqrt(2 * standardGravity * h)
	if o.width > 0 {
		return o.width * h * v
	}
	if o.discharge > 0 {
		return 1.0001 * o.discharge * v * o.boreArea()
	}
	return 1.0001 * v * o.boreArea()
}
