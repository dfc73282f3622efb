package pour

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
)

// An outlet is a spout or a lip with one liquid in it: it answers which head a
// flow needs. Everything that a pour computes comes from that one function, so a
// new kind of outlet is a new branch of head and nothing else.
type outlet struct {
	bore      float64 // diameter of a round bore, m; 0 for a lip
	width     float64 // of a lip, m; 0 for a bore
	spread    float64 // of a lip's rate, a fraction
	length    float64 // of the passage, m
	discharge float64 // measured discharge coefficient; 0: from the model

	thins             rheology.ShearDependent // nil for a liquid of one viscosity
	lowRate, highRate float64                 // of thins, 1/s
	tempC             float64
	eta               float64 // Pa s, as stated by the liquid
	rho               float64
	yield             float64 // Pa; 0: none
	scale             float64 // on the viscosity, 1 or an end of its band; not on the yield stress
	yieldScale        float64 // on the yield stress, 1 or an end of its band
}

// fastestShear is the rate in 1/s, beyond any pour's, at which a search that tries a flow still
// asks a liquid that states no limit.
const fastestShear = 1e8

// reads keeps the liquid, and its range of shear rates if it depends on them.
func (o *outlet) reads(l rheology.Liquid) {
	o.thins, _ = l.(rheology.ShearDependent)
	if o.thins != nil {
		d := l.Describe()
		o.lowRate, o.highRate = d.LowRate, d.HighRate
		if d.HighRate == 0 {
			o.highRate = fastestShear
		}
	}
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
		h := o.brink(q, o.eta*o.scale/o.rho)
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
	if !strict {
		rate = min(max(rate, o.lowRate), o.highRate)
	}
	e, err := o.thins.ViscosityAtRate(o.tempC, rate)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return e, check.Band("Liquid.ViscosityAtRate", e, 1e-9, 1e12, "Pa s", "from thin gases to glass")
}

// head returns the head in m of liquid that a flow of q m3/s needs.
func (o *outlet) head(q float64) (float64, error) {
	e, rate, err := o.effective(q, false)
	if err != nil {
		return 0, err
	}
	eta := e.Likely
	nu := eta * o.scale / o.rho
	if o.width > 0 {
		if o.yield > 0 {
			// The yield stress holds back a head of its own; the film feels the rest.
			plastic := max(eta-o.yield/rate, 0.05*eta) * o.scale / o.rho
			return lipHead(q/o.width, plastic, o.length) + o.standing(o.yield*o.yieldScale), nil
		}
		return lipHead(q/o.width, nu, o.length), nil
	}
	v := q / o.boreArea()
	if o.yield > 0 {
		// What shears and the stress that must be passed first have bands of their own.
		still := min(o.yield*o.bore/(8*v), eta)
		nu = (still*o.yieldScale + (eta-still)*o.scale) / o.rho
	}
	return boreLoss(v*o.bore/nu, o.length/o.bore, o.discharge) * v * v / (2 * physics.Gravity), nil
}

// standing is the head in m that a stress tau at the wall holds: of a bore, 4 tau L/(rho g D)
// with the entry as extra length; on a lip, rho g H2 = 2 tau (L + H).
func (o *outlet) standing(tau float64) float64 {
	weight := o.rho * physics.Gravity
	if o.width > 0 {
		return (tau + math.Sqrt(tau*tau+2*weight*o.length*tau)) / weight
	}
	return 4 * tau * (o.length + couetteRadii*o.bore/2) / (weight * o.bore)
}

// leastFlow in m3/s is a cubic millimetre in thirty million years: next to a yield stress
// a search has to end somewhere, and every pour has long become one of more than a week.
const leastFlow = 1e-24

// flow returns the flow in m3/s under a head in m. The head is a rising function
// of the flow, close to a power of it, so that secants of the logarithms arrive in a few
// steps. start is a guess; 0 for none.
func (o *outlet) flow(h, start float64) (float64, error) {
	if !(start > 0) {
		start = o.fastest(h) / 4
	}
	most := math.Log(o.fastest(h))
	x, err := root.Search{
		Low: math.Log(leastFlow), High: most, Start: max(min(math.Log(start), most), math.Log(leastFlow)), Slope: 1.5, Tol: 1e-6,
	}.Rise(func(x float64) (float64, error) {
		got, err := o.head(math.Exp(x))
		return math.Log(got / h), err
	})
	if err != nil {
		return 0, err
	}
	q := math.Exp(x)
	if !(q > 0) || math.IsInf(q, 0) {
		// Only a user's own liquid gets here, such as one whose stress falls with the rate.
		return 0, check.Input("Liquid.ViscosityAtRate", q, "m3/s under the head", "a liquid with one flow: a stress that rises with the shear rate")
	}
	return q, nil
}

// fastest returns a flow that no liquid under the head h exceeds.
func (o *outlet) fastest(h float64) float64 {
	v := math.Sqrt(2 * physics.Gravity * h)
	if o.width > 0 {
		return o.width * h * v
	}
	if o.discharge > 0 {
		return 1.0001 * o.discharge * v * o.boreArea()
	}
	return 1.0001 * v * o.boreArea()
}
