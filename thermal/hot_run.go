package thermal

import (
	"math"
	"time"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/root"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/internal/study"
)

const (
	hotLimits  = 2
	hotHorizon = 6 * 3600.0 // s
)

// A hotRun is one computation of hot food cooling under its surface: a stack, the
// air above it, and the temperatures of interest that its mean passes on the way
// down.
type hotRun struct {
	solve.Stack
	x      heat.Exchanger
	light  float64 // absorbed at the surface, W/m2
	around struct {
		x    heat.Exchanger // of the outside of the lowest cell
		area float64        // of it, over that of the surface; 0: Below is given
	}
	bottom    float64 // conductance of the lower half of the lowest cell, W/(m2 K)
	food      int     // how many of the upper cells are what is looked at
	limits    [hotLimits]float64
	ofSurface [hotLimits]bool    // the limit is one of the surface, not of the food's mean
	at        [hotLimits]float64 // s
	airC      float64
	time      float64 // s
	scale     float64 // shortens the steps for convergence tests
	dried     float64 // g/m2
	balance   HeatBalance
	series    []HotPoint
	course    float64 // see frame
}

// A HotPoint is a hot thing at one time.
type HotPoint struct {
	Time     time.Duration `json:"time_ns"`   // since the start
	MeanC    float64       `json:"mean_c"`    // of the food, deg C
	SurfaceC float64       `json:"surface_c"` // of its surface, deg C
	DryGM2   float64       `json:"dry_g_m2"`  // water lost by evaporation so far, g/m2
}

// A hotModel is what the models of hot things share.
type hotModel struct {
	setting
	done hotRun
}

// hotStart is the temperature of something hot, known to so many kelvins and never
// boiling.
func (m *hotModel) hotStart(to *float64, key, name string, by, least float64) study.Input {
	most := simmering(m.air)
	in := around(key, name, *to, by)
	in.Band.High = min(in.Band.High, most)
	return bound(to, within(in, least, most))
}

// finish carries a run to its end.
func (m *hotModel) finish(r *hotRun, at []float64, course float64) error {
	r.course, r.series = course, m.done.series[:0]
	err := r.run()
	copy(at, r.at[:])
	m.done = *r
	return err
}

func newHotRun(s heat.Surface, a Air, startC float64) (hotRun, error) {
	x, err := s.In(a.moist())
	r := hotRun{x: x, airC: a.TempC, scale: 1, course: noCourse}
	r.Surface = startC
	return r, err
}

// layer puts a layer at a temperature on top of the stack: thickness m, heat capacity
// J/(m3 K), conductivity W/(m K). Its cells are no thicker than finest at its top and
// grow downwards where they must.
func (r *hotRun) layer(thickness, tempC float64, cells int, finest, capacity, k float64) {
	growth := 1.0
	if finest*float64(cells) < thickness {
		growth = root.Rising(func(g float64) float64 { return finest*(math.Pow(g, float64(cells))-1)/(g-1) - thickness }, 1.0001, 20)
	}
	d := thickness / float64(cells)
	if growth > 1 {
		d = thickness * (growth - 1) / (math.Pow(growth, float64(cells)) - 1) * math.Pow(growth, float64(cells-1))
	}
	for range cells {
		half := 2 * k / d
		if r.Cells > 0 {
			r.Link[r.Cells-1] = 1 / (1/r.Top + 1/half) // r.Top is still the half of the cell below
		} else {
			r.bottom = half
		}
		r.TempC[r.Cells], r.Heat[r.Cells] = tempC, capacity*d
		r.Top = half
		r.Cells++
		d /= growth
	}
}

// mean is the mean temperature of the food's cells.
func (r *hotRun) mean() float64 {
	sum, all := 0.0, 0.0
	for i := r.Cells - r.food; i < r.Cells; i++ {
		sum += r.Heat[i] * r.TempC[i]
		all += r.Heat[i]
	}
	return sum / all
}

// looked is the temperature that a limit is about.
func (r *hotRun) looked(limit int) float64 {
	if r.ofSurface[limit] {
		return r.Surface
	}
	return r.mean()
}

// begin notes the limits passed before the start.
func (r *hotRun) begin() {
	for i := range r.at {
		r.at[i] = never
		if r.looked(i) <= r.limits[i] {
			r.at[i] = 0
		}
	}
}

// lose sets the conductance from the lowest cell to the room.
func (r *hotRun) lose() error {
	wallC := r.TempC[0]
	if math.Abs(wallC-r.airC) < 0.1 {
		wallC = r.airC + 0.1
	}
	f, err := r.around.x.At(wallC, 0)
	r.Below = r.around.area * (f.Convection + f.Radiation) / (r.airC - wallC)
	return err
}

// run carries the food until it has passed all its limits, or to the horizon; with
// a series, to a little beyond.
func (r *hotRun) run() error {
	start := r.Stored()
	until := hotHorizon
	for r.time < until {
		dt := r.scale * min(max(0.25, 0.05*r.time), 200)
		before, old := r.time, r.mean()
		var was [hotLimits]float64
		for i := range was {
			was[i] = r.looked(i)
		}
		f, err := r.x.At(r.Surface, r.light)
		if err != nil {
			return err
		}
		if r.around.area > 0 {
			if err := r.lose(); err != nil {
				return err
			}
		}
		surface := r.Surface
		flow := r.Advance(dt, f.Total(), f.Slope)
		r.time += dt
		r.dried -= 1000 * dt * (f.VapourRate + f.VapourSlope*(flow.Surface-surface))
		r.balance.Air += dt * (flow.Heat - r.light)
		r.balance.Light += dt * r.light
		r.balance.Ends += dt * flow.Below
		now := r.mean()
		passed := true
		for i := range was {
			crossed(&r.at[i], before, dt, -was[i], -r.looked(i), -r.limits[i])
			passed = passed && r.at[i] != never
		}
		if r.course >= 0 {
			r.series = append(r.series, HotPoint{Time: seconds(r.time), MeanC: now, SurfaceC: r.Surface, DryGM2: r.dried})
		}
		steady := math.Abs(old-now) < 1e-7*dt && r.time > 60 // nothing more will come
		switch {
		case r.course < 0 && (passed || steady):
			until = r.time
		case passed && until == hotHorizon:
			until = min(until, max(1.5*r.time+60, r.course)) // a curve goes on a little
		}
	}
	r.balance.Stored = r.Stored() - start
	return nil
}
