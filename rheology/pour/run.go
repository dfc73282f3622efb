package pour

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
)

// run computes the pour under a driving head h in m.
func (p *Pour) run(h, surface float64) error {
	volume := p.Grams / 1000 / p.Density.Likely
	p.first, p.last, p.surface = h, h, surface
	if surface > 0 {
		p.last = h - volume/surface
		if least := max(h*leastHead, p.stuck+(h-p.stuck)*leastHead); p.last < least {
			most := (h - least) * surface * p.Density.Likely * 1000
			return check.Outside("Grams", p.Grams, 0, most, "g", "what the vessel's head can move: pour less, or fill higher")
		}
	}
	seconds, err := p.time()
	if err != nil {
		return err
	}
	if seconds > longestPour.Seconds() {
		return check.Outside("Duration", seconds, 0, longestPour.Seconds(), "s", "a pour of at most a week")
	}
	if err := p.start(); err != nil {
		return err
	}
	if p.out.thins != nil && surface > 0 {
		if _, _, err := p.out.effective(p.EndRate.Likely, true); err != nil {
			return err
		}
	}
	// The ends of the viscosity's band, each as ratios to the likely pour.
	stiff, soft := p.stiffness()
	slow, err := p.scaled(p.Viscosity.High/p.Viscosity.Likely, stiff)
	fast, err2 := p.scaled(p.Viscosity.Low/p.Viscosity.Likely, soft)
	if err := cmp.Or(err, err2); err != nil {
		return err
	}
	// Independent parts, as fractions, in quadrature.
	density := max(p.Density.High/p.Density.Likely-1, 1-p.Density.Low/p.Density.Likely)
	up := func(ratio float64) float64 { return 1 + math.Hypot(ratio-1, p.Hydraulics) }
	p.Rate = honestplate.Estimate{Low: p.Rate.Likely / up(1/slow.first), Likely: p.Rate.Likely, High: p.Rate.Likely * up(fast.first)}
	p.EndRate = honestplate.Estimate{Low: p.EndRate.Likely / up(1/slow.last), Likely: p.EndRate.Likely, High: p.EndRate.Likely * up(fast.last)}
	longest := seconds * (1 + math.Hypot(up(slow.seconds)-1, density))
	shortest := seconds / (1 + math.Hypot(up(1/fast.seconds)-1, density))
	if err := p.lasts(shortest, seconds, longest); err != nil {
		return err
	}
	p.judge(slow.seconds, fast.seconds)
	return p.left(volume, seconds)
}

// lasts keeps the duration in s. Near a yield stress the slow end of the band can be ages
// away while the likely pour is not: that is an answer, as long as a Duration holds it.
func (p *Pour) lasts(shortest, seconds, longest float64) error {
	if seconds > longestPour.Seconds() || longest > 200*365*24*3600 {
		return check.Outside("Duration", seconds, 0, longestPour.Seconds(), "s", "a pour of at most a week")
	}
	p.Duration = honestplate.Lasting(inSeconds(shortest), inSeconds(seconds), inSeconds(longest))
	return nil
}

// ratios of a pour to the likely one.
type ratios struct {
	seconds, first, last float64 // duration, rate at the start, rate at the end
}

// stiffness returns the ends of the yield stress's band over its likely value, the stiff one
// no further than holds nine tenths of the least head.
func (p *Pour) stiffness() (stiff, soft float64) {
	if !(p.yield.Likely > 0) {
		return 1, 1
	}
	reach := max(0.9*min(p.first, p.last)/p.stuck, 1)
	return min(p.yield.High/p.yield.Likely, reach), p.yield.Low / p.yield.Likely
}

// scaled answers for the pour with its viscosity multiplied by scale and its yield stress by
// stiff. The duration is
// taken to answer as the mean of the rates' answers at both ends, which is exact where
// friction governs or does not matter, and for a band of half the viscosity within 4 % of
// the duration between (tested): this is for the band alone.
func (p *Pour) scaled(scale, stiff float64) (ratios, error) {
	if scale == 1 && stiff == 1 {
		return ratios{1, 1, 1}, nil
	}
	o := p.out
	o.scale, o.yieldScale = scale, stiff
	// Friction's share of the head says how the rate answers: a start for the search.
	answer := math.Pow(scale, -p.Friction/(2-p.Friction))
	first, err := o.flow(p.first, p.Rate.Likely*answer)
	if err != nil {
		return ratios{}, err
	}
	r := ratios{p.Rate.Likely / first, first / p.Rate.Likely, first / p.Rate.Likely}
	if p.surface == 0 {
		return r, nil
	}
	last, err := o.flow(p.last, p.EndRate.Likely*first/p.Rate.Likely)
	if err != nil {
		return ratios{}, err
	}
	r.last = last / p.EndRate.Likely
	r.seconds = (1/r.first + 1/r.last) / 2
	return r, nil
}

// leastHead is the share of the first driving head that must remain at the end: a
// laminar pour to nothing takes for ever.
const leastHead = 1e-6

// time returns the likely duration in s and keeps the rates at both ends.
func (p *Pour) time() (float64, error) {
	o := &p.out
	var err error
	if p.Rate.Likely, err = o.flow(p.first, 0); err != nil {
		return 0, err
	}
	if p.surface == 0 {
		p.EndRate.Likely = p.Rate.Likely
		return p.Grams / 1000 / p.Density.Likely / p.Rate.Likely, nil
	}
	if p.EndRate.Likely, err = o.flow(p.last, p.Rate.Likely*p.last/p.first); err != nil {
		return 0, err
	}
	return p.between(p.last, p.EndRate.Likely)
}

// between returns the time in s from the start until the head is h2 and the flow q2.
//
// With the head as the known function F of the flow, integration by parts leaves
// an integral that needs no inverse:
//
//	integral dH/Q = F1/Q1 - F2/Q2 + integral F/Q d(ln Q)
func (p *Pour) between(h2, q2 float64) (float64, error) {
	q1 := p.Rate.Likely
	sum := p.first/q1 - h2/q2
	span := math.Log(q1 / q2)
	panels := max(1, math.Ceil(span/2))
	step := span / panels
	for i := range int(panels) {
		low := math.Log(q2) + float64(i)*step
		for j, x := range physics.Nodes {
			q := math.Exp(low + step*x)
			f, err := p.out.head(q)
			if err != nil {
				return 0, err
			}
			sum += physics.Weights[j] * step * f / q
		}
	}
	return p.surface * sum, nil
}

// start fills in what the stream looks like as it leaves.
func (p *Pour) start() error {
	o := &p.out
	q := p.Rate.Likely
	e, rate, err := o.effective(q, true)
	if err != nil {
		return err
	}
	p.ShearRate = rate
	if o.thins != nil {
		p.Viscosity = e
	}
	nu := p.Viscosity.Likely / p.Density.Likely
	if o.width > 0 {
		p.Reynolds = 4 * q / o.width / nu
		depth := o.brink(q, nu)
		p.Speed = q / (o.width * depth)
		p.Diameter = math.Sqrt(4 * q / (math.Pi * p.Speed))
		p.Friction = lipFriction(q/o.width, nu, o.length)
		p.Hydraulics = o.spread
	} else {
		v := q / o.boreArea()
		lod := o.length / o.bore
		p.Speed, p.Reynolds = v, v*o.bore/nu
		p.Friction = viscousShare(p.Reynolds, lod, o.discharge)
		p.Hydraulics = 0.03 + 0.07*(1-poiseuilleShare(p.Reynolds, lod))
		if o.discharge > 0 {
			p.Hydraulics = 0.03
		}
		if p.glugs {
			p.Hydraulics = p.airBand - 1
		}
		// Behind a hole the jet goes on narrowing for half a diameter.
		c := 1.0
		if lod < 2 {
			c = 1 - (1-contraction)*(1-lod/2)*min(edgeLoss(p.Reynolds, 0)/edgeHole, 1)
		}
		p.Diameter = o.bore * math.Sqrt(c)
		p.Speed = v / c
	}
	p.Regime = p.regime()
	return nil
}
