package shoot

import (
	"math"
	"slices"
	"time"

	"example.org/honestplate"
)

// A shown is one thing's part in a picture: in every run from when until when it looks as
// wanted, and in the likely run.
type shown struct {
	causes []Cause // that the intervals name
	runs   []interval
	likely interval
}

// joint intersects the looks of everything in the frame, run by run: run r of every clock
// stands for the same room, lamps and judgement. Without looks nothing changes.
func joint(looks []shown, weights []float64) Picture {
	if len(looks) == 0 {
		return Picture{Always: true}
	}
	var causes []Cause
	runs := make([]interval, len(looks[0].runs))
	likely := interval{to: honestplate.Never(), opens: -1, closes: -1}
	for r := range runs {
		runs[r] = likely
	}
	for _, l := range looks {
		at := len(causes)
		causes = append(causes, l.causes...)
		for r := range runs {
			runs[r] = runs[r].intersect(shifted(l.runs[r], at))
		}
		likely = likely.intersect(shifted(l.likely, at))
	}
	if weights == nil {
		weights = make([]float64, len(runs))
		for r := range weights {
			weights[r] = 1
		}
	}
	p := stand(runs, weights)
	p.Opens = windowOf(runs, weights, likely.from, func(i interval) honestplate.Moment { return i.from })
	p.Closes = windowOf(runs, weights, likely.to, func(i interval) honestplate.Moment { return i.to })
	p.OpensBy = most(causes, runs, weights, func(i interval) int { return i.opens })
	p.ClosesBy = most(causes, runs, weights, func(i interval) int { return i.closes })
	return p
}

func shifted(i interval, by int) interval {
	if i.opens >= 0 {
		i.opens += by
	}
	if i.closes >= 0 {
		i.closes += by
	}
	return i
}

// lasting is the share of the weighted runs in which the frame shows the picture without
// a break for so long.
func lasting(looks []shown, weights []float64, want time.Duration) float64 {
	long, total := 0.0, 0.0
	for r, w := range weights {
		total += w
		i := interval{to: honestplate.Never(), opens: -1, closes: -1}
		for _, l := range looks {
			i = i.intersect(l.runs[r])
		}
		if !i.from.Never && (i.to.Never || i.to.After-i.from.After >= want) {
			long += w
		}
	}
	return long / total
}

// windowOf is the 95 % band of an end of the intervals around its likely moment: the
// same share of the runs is cut off on both sides, as the clocks do.
func windowOf(runs []interval, weights []float64, likely honestplate.Moment, end func(interval) honestplate.Moment) honestplate.Window {
	order := make([]int, len(runs))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := end(runs[a]), end(runs[b])
		switch {
		case x.Before(y):
			return -1
		case y.Before(x):
			return 1
		}
		return 0
	})
	total := 0.0
	for _, w := range weights {
		total += w
	}
	// The first run at which 2.5 % of the weight is reached, from either side.
	at := func(step, from int) honestplate.Moment {
		sum := 0.0
		for i := from; ; i += step {
			sum += weights[order[i]]
			if sum >= 0.025*total*(1-1e-12) || i+step < 0 || i+step >= len(order) {
				return end(runs[order[i]])
			}
		}
	}
	w := honestplate.Window{Earliest: at(1, 0), Likely: likely, Latest: at(-1, len(order)-1)}
	if w.Likely.Before(w.Earliest) {
		w.Earliest = w.Likely
	}
	if w.Latest.Before(w.Likely) {
		w.Latest = w.Likely
	}
	return w
}

// most is the cause that is the one in most of the runs; nil where no run has any.
func most(causes []Cause, runs []interval, weights []float64, by func(interval) int) *Cause {
	share, total := make([]float64, len(causes)), 0.0
	for r, i := range runs {
		total += weights[r]
		if k := by(i); k >= 0 {
			share[k] += weights[r]
		}
	}
	best := -1
	for k, v := range share {
		if v > 0 && (best < 0 || v > share[best]*(1+1e-12)) {
			best = k
		}
	}
	if best < 0 {
		return nil
	}
	c := causes[best]
	c.Share = math.Round(share[best]/total*1e6) / 1e6
	return &c
}

// unitsOf works out how many units a dish needs, how many it can have, and what that makes
// the chance.
func unitsOf(need int, limits []limit) (prepare int, by string) {
	prepare = need
	for _, l := range limits {
		if l.units < prepare {
			prepare, by = l.units, l.by
		}
	}
	return max(prepare, 0), by
}
