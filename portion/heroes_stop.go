package portion

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// A Stopping says how far to go on, and what that is worth.
type Stopping struct {
	// StopAt holds, for 0, 1, 2 .. takes made, the number of good ones at or below which
	// one more take costs more than it brings; -1 means go on whatever came.
	StopAt []int   `json:"stop_at"`
	Value  float64 `json:"value"`  // expected worth of the heroes less the cost of the takes
	Takes  float64 `json:"takes"`  // expected number of takes
	Heroes float64 `json:"heroes"` // expected number of heroes, at most Wanted
	Chance float64 `json:"chance"` // of all that are wanted
}

// Stop returns the best rule for up to so many further takes, each of which costs
// something, where each hero up to Wanted is worth something; both in one unit, money
// or minutes. It solves, backwards from the last take,
//
//	V(n, g) = max(0, -cost + p (value + V(n+1, g+1)) + (1-p) V(n+1, g))
//
// with p = (a+g)/(a+b+n), the rate as it is known by then, or the known SuccessRate;
// ties stop. takes is 1..5000. Errors: those of [Heroes.Units]; [honestplate.InputError] where
// batches go together, for which no such rule is kept.
func (h Heroes) Stop(takes int, value, cost float64) (Stopping, error) {
	h, err := h.checked()
	err = cmp.Or(err, checkUnits("Takes", takes, 1), honestplate.Positive("Value", value, ""),
		honestplate.NotNegative("Cost", cost, ""))
	switch {
	case err != nil:
		return Stopping{}, err
	case h.Correlation > 0:
		return Stopping{}, check.Input("Correlation", h.Correlation, "", "0: the rule counts takes one by one")
	case takes > mostTakes:
		return Stopping{}, &honestplate.RangeError{Field: "Takes", Value: float64(takes), Low: 1,
			High: mostTakes, Source: "the rule is solved for every number of takes and of good ones"}
	}
	a, b := h.beta()
	rate := func(n, g int) float64 {
		if h.SuccessRate > 0 {
			return h.SuccessRate
		}
		return (a + float64(g)) / (a + b + float64(n))
	}
	most := min(h.Wanted, takes)
	out := Stopping{StopAt: make([]int, takes)}
	dust := 1e-12 * (value + cost) // of sums that should be exactly even
	next := make([]float64, most+2)
	for n := takes - 1; n >= 0; n-- {
		now := make([]float64, most+2)
		out.StopAt[n] = -1
		for g := 0; g <= min(n, h.Wanted-1); g++ {
			p := rate(n, g)
			worth := float64(p*(value+next[g+1])) + float64((1-p)*next[g]) - cost
			if worth <= dust {
				out.StopAt[n] = g
			}
			now[g] = max(0, worth)
		}
		next = now
	}
	out.Value = next[0]
	// Forwards: how likely each state is that the rule leaves open.
	states := make([]float64, most+2)
	states[0] = 1
	for n := range takes {
		later := make([]float64, most+2)
		for g := 0; g <= min(n, h.Wanted-1); g++ {
			if states[g] == 0 || g <= out.StopAt[n] {
				continue
			}
			p := rate(n, g)
			out.Takes += states[g]
			out.Heroes += float64(states[g] * p)
			later[g] += float64(states[g] * (1 - p))
			later[g+1] += float64(states[g] * p)
			if g+1 == h.Wanted {
				out.Chance += float64(states[g] * p)
			}
		}
		states = later
	}
	return out, nil
}

const mostTakes = 5000
