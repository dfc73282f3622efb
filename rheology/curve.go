package rheology

import "math"

// A localCurve stands in for a liquid's flow curve near the rates of one pour: ln eta
// against ln rate as a parabola through up to three points of it, straight beyond them.
// Asking a blend at a rate costs more than all else in a pour; this asks it a few times.
type localCurve struct {
	known       bool
	x, y        float64 // ln rate and ln eta of the point it is laid through
	slope, bend float64
	low, high   float64 // the points' span of x, about x
}

// ln returns ln eta at ln rate.
func (c *localCurve) ln(x float64) float64 {
	t := x - c.x
	s := min(max(t, c.low), c.high)
	return c.y + s*(c.slope+c.bend*s) + (t-s)*(c.slope+2*c.bend*s)
}

// leastSlope and mostSlope are the slopes that a settled curve may have: a liquid that thinned as
// fast as its rate rises would have no one flow under a head.
const leastSlope, mostSlope = -0.98, 2.0

// settle returns the flow in m3/s under a head, as flow does, and lays the local curve
// through the point where it flows: the flow of a power law liquid through the last two
// points, until the liquid agrees.
func (o *outlet) settle(h, start float64) (float64, error) {
	if o.thins == nil || o.yield > 0 {
		return o.flow(h, start)
	}
	q := start
	if !(q > 0) {
		q = o.guess(h)
	}
	if o.width == 0 {
		o.lnRateOfOne = math.Log(o.shearRate(1))
	}
	defer func() { o.loose = false }()
	sloped := o.curve.known
	for range 60 {
		x, y, err := o.point(math.Log(o.shearRate(q)))
		if err != nil {
			return 0, err
		}
		c := &o.curve
		miss := math.Inf(1)
		if c.known {
			miss = y - c.ln(x)
			if d := x - c.x; math.Abs(d) > 1e-3 {
				c.slope, sloped = min(max((y-c.y)/d, leastSlope), mostSlope), true
			}
		}
		c.known, c.x, c.y, c.bend, c.low, c.high = true, x, y, 0, 0, 0
		o.loose = !(math.Abs(miss) < 2e-3 && sloped)
		if q, err = o.flow(h, q); err != nil {
			return 0, err
		}
		if !o.loose {
			// The flow just found is by the curve put right: what is left is of second order.
			break
		}
		if !sloped && math.Abs(x-math.Log(o.shearRate(q))) < 1e-3 {
			// The guess was right, and says nothing of the slope.
			x2, y2, err := o.point(x + 0.5)
			if err != nil {
				return 0, err
			}
			c.slope, sloped = min(max((y2-y)/(x2-x), leastSlope), mostSlope), true
		}
	}
	return q, nil
}

// point asks the liquid at ln rate.
func (o *outlet) point(x float64) (lnRate, lnEta float64, err error) {
	e, err := o.atRate(math.Exp(x), false)
	return x, math.Log(e.Likely), err
}

// straight is how far the middle of a flow curve may lie from the straight line between its
// ends, in ln eta, for a parabola to stand in for it: within 0.5 % of a pour's duration
// then (tested).
const straight = 0.02

// span bends the local curve, laid at the end of a pour, through its beginning at ln rate
// x1 and the middle between. A curve that bends more than that is dropped, and the liquid
// is asked at every step.
func (o *outlet) span(x1, y1 float64) error {
	c := &o.curve
	t := x1 - c.x
	if !c.known || math.Abs(t) < 1e-2 {
		return nil
	}
	_, ym, err := o.point(c.x + t/2)
	if err != nil {
		return err
	}
	if math.Abs(ym-(c.y+y1)/2) > straight {
		*c = localCurve{}
		return nil
	}
	// The parabola through (0, y), (t/2, ym), (t, y1).
	c.slope = (4*ym - 3*c.y - y1) / t
	c.bend = 2 * (y1 + c.y - 2*ym) / (t * t)
	c.low, c.high = min(t, 0), max(t, 0)
	return nil
}
