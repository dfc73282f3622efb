package main

import (
	"fmt"
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

// learned is the job of learning: a second glass of a day is seen to bead, and the
// windows of all its events follow. Both sides start from the same runs, those of a glass
// of which the first has been seen to haze.
const learned = "a glass seen to bead: 4,096 runs weighed, all windows"

// A lesson is what both sides know before the second glass was seen, and what was seen.
type lesson struct {
	Times   map[string][]float64 `json:"times"` // of each event by run, s; -1: never
	Weights []float64            `json:"weights"`
	Seen    string               `json:"seen"`
	At      float64              `json:"at"` // s
	SD      float64              `json:"sd"` // s, of reading the watch
	Answer  string               `json:"answer"`
}

const (
	taughtBy = "beads"
	asked    = "haze" // the event whose median is the answer, s
)

// secondGlass returns what is known of the second glass, and what is seen of it.
func secondGlass() (thermal.Runs, thermal.Seen, error) {
	glass := thermal.Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 120,
		DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
	air := thermal.Air{TempC: 23, RH: 0.5}
	seen := []thermal.Seen{{Event: "haze", At: 45 * time.Second, Within: 20 * time.Second}}
	_, l, err := glass.Observe(thermal.Lesson{}, seen, air)
	if err != nil {
		return thermal.Runs{}, thermal.Seen{}, err
	}
	second, err := glass.Knowing(l, air)
	if err != nil {
		return thermal.Runs{}, thermal.Seen{}, err
	}
	return second.Kept, thermal.Seen{Event: taughtBy, At: second.Beads.Likely.After, Within: second.Beads.Likely.After / 4}, nil
}

// learns is the job: what is known of the second glass once it was seen to bead.
func learns() func(int) (float64, error) {
	known, seen, err := secondGlass()
	return func(int) (float64, error) {
		if err != nil {
			return 0, err
		}
		after, _, err := known.Observe(seen)
		if err != nil {
			return 0, err
		}
		return median(after.At(asked), after.Weights())
	}
}

// median is the weighted one of times, s.
func median(times []honestplate.Moment, weights []float64) (float64, error) {
	order, sum := make([]int, len(times)), 0.0
	for i, w := range weights {
		order[i] = i
		sum += w
	}
	slices.SortFunc(order, func(a, b int) int {
		switch {
		case times[a].Before(times[b]):
			return -1
		case times[b].Before(times[a]):
			return 1
		}
		return a - b
	})
	upTo := 0.0
	i := 0
	for ; i < len(order)-1; i++ {
		if upTo += weights[order[i]]; upTo >= sum/2 {
			break
		}
	}
	if m := times[order[i]]; !m.Never {
		return m.After.Seconds(), nil
	}
	return 0, fmt.Errorf("%s: never in half of the runs", asked)
}

// given is what the other side starts from.
func given() (lesson, error) {
	known, seen, err := secondGlass()
	if err != nil {
		return lesson{}, err
	}
	l := lesson{Times: map[string][]float64{}, Weights: known.Weights(), Seen: seen.Event, Answer: asked,
		At: seen.At.Seconds(), SD: seen.Within.Seconds() / 1.959963984540054}
	for _, e := range known.Events() {
		for _, m := range known.At(e) {
			if m.Never {
				l.Times[e] = append(l.Times[e], -1)
			} else {
				l.Times[e] = append(l.Times[e], m.After.Seconds())
			}
		}
	}
	return l, nil
}
