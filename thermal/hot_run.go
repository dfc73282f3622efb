package thermal

import (
	"math"
	"time"
)

const (
	maxLimits  = 3
	hotHorizon = 6 * 3600.0 // s
)

// A hotRun is one computation of hot food cooling under its surface: a stack, the
// air above it, and the temperatures of interest that its mean passes on the way
// down.
type hotRun struct {
	stack
	x          Exchanger
	light      float64 // absorbed at the surface, W/m2
	food       int     // how many of the upper cells are what is looked at
	limits     [maxLimits]float64
	ofSurface  [maxLimits]bool // the limit is one of the surface, not of the food's mean
	limitCount int
	at         [maxLimits]time.Duration
	airC       float64
	time       float64 // s
	scale      float64 // shortens the steps for convergence tests
	dried      float64 // g/m2
	balance    HeatBalance
	series     []HotPoint // appended to if not nil
}

func newHotRun(s Surface, a Air, startC float64) (hotRun, error) {
	x, err := s.In(a)
	r := hotRun{x: x, airC: a.TempC, scale: 1}
	r.surface = startC
	return r, err
}

// layer puts a layer on top of the stack: thickness m, cells, heat capacity
// J/(m3 K), conductivity W/(m K). All begin at the surface's temperature.
func (r *hotRun) layer(thickness float64, cells int, capacity, k float64) {
	d := thickness / float64(cells)
	half := 2 * k / d
	for range cells {
		if r.n > 0 {
			r.link[r.n-1] = 1 / (1/r.top + 1/half) // r.top is still the half of the cell below
		}
		r.temp[r.n], r.heat[r.n] = r.surface, capacity*d
		r.top = half
		r.n++
	}
}

// mean is the mean temperature of the food's cells, which are of one size.
func (r *hotRun) mean() float64 {
	sum := 0.0
	for i := r.n - r.food; i < r.n; i++ {
		sum += r.temp[i]
	}
	return sum / float64(r.food)
}

// looked is the temperature that a limit is about.
func (r *hotRun) looked(limit int) float64 {
	if r.ofSurface[limit] {
		return r.surface
	}
	return r.mean()
}

// begin notes the limits passed before the start.
func (r *hotRun) begin() {
	for i := range r.limitCount {
		r.at[i] = Never
		if r.looked(i) <= r.limits[i] {
			r.at[i] = 0
		}
	}
}

// run carries the food until it has passed all its limits, or to the horizon; with
// a series, to a little beyond.
func (r *hotRun) run() error {
	start := r.stored()
	until := hotHorizon
	for r.time < until {
		dt := r.scale * min(max(0.25, 0.05*r.time), 200)
		before, old := r.time, r.mean()
		var was [maxLimits]float64
		for i := range r.limitCount {
			was[i] = r.looked(i)
		}
		f, err := r.x.At(r.surface, r.light)
		if err != nil {
			return err
		}
		surface := r.surface
		flow := r.advance(dt, f)
		r.time += dt
		r.dried -= 1000 * dt * (f.VapourRate + f.VapourSlope*(flow.surface-surface))
		r.balance.Air += dt * (flow.heat - r.light)
		r.balance.Light += dt * r.light
		r.balance.Ends += dt * flow.below
		now := r.mean()
		passed := true
		for i := range r.limitCount {
			if is := r.looked(i); r.at[i] == Never && was[i] > r.limits[i] && is <= r.limits[i] {
				share := (was[i] - r.limits[i]) / (was[i] - is)
				r.at[i] = time.Duration((before + share*dt) * float64(time.Second))
			}
			passed = passed && r.at[i] != Never
		}
		if r.series != nil {
			r.series = append(r.series, HotPoint{
				Time: time.Duration(r.time * float64(time.Second)), MeanC: now,
				SurfaceC: r.surface, HeatFlux: flow.heat, DryGrams: r.dried,
			})
		}
		steady := math.Abs(old-now) < 1e-7*dt && r.time > 60 // nothing more will come
		switch {
		case r.series == nil && (passed || steady):
			until = r.time
		case passed && until == hotHorizon:
			until = min(until, 1.5*r.time+60) // a curve goes on a little
		}
	}
	r.balance.Stored = r.stored() - start
	return nil
}
