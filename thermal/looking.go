package thermal

import (
	"fmt"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// A look is some observations of a unit and the outputs of a study that they are about:
// first the events, their own doubt left out, then what was read.
type look struct {
	seen   []Seen
	which  []int // output of each
	events int   // the first outputs
	sd     float64
	study  study.Study
}

// looking returns the look of a frame at some observations.
func (f frame[M]) looking(seen []Seen) look {
	l := look{seen: seen, which: make([]int, len(seen)), events: len(f.events), sd: f.doubt.sd()}
	var reads []readAt
	for i, s := range seen {
		if s.Reading == "" {
			l.which[i] = slices.Index(f.events, s.Event)
			continue
		}
		l.which[i] = len(f.events) + len(reads)
		reads = append(reads, readAt{slices.Index(f.keys(), s.Reading), s.At.Seconds()})
	}
	l.study = f.study(reads, true)
	return l
}

// reads reports whether something was read.
func (l look) reads() bool { return l.study.Outputs > l.events }

// outputs are those of the runs of what a unit starts from: run again only where
// something was read.
func (l look) outputs(b *basis) ([]float64, error) {
	if !l.reads() {
		return b.out, nil
	}
	return l.study.At(b.z, b.dims)
}

// sight is the look for a study that draws anew.
func (l look) sight() study.Sight {
	s := study.Sight{Events: l.events, Count: len(l.seen), Logs: l.logs}
	for _, e := range l.which {
		if !slices.Contains(s.Which, e) {
			s.Which = append(s.Which, e)
		}
	}
	return s
}

// logs returns the logarithm of the likelihood of the observations in every run, whatever
// its events' own doubts; of outputs that are rough, whatever these are in truth.
func (l look) logs(out []float64, rough *study.Rough) []float64 {
	n := l.study.Outputs
	logs := make([]float64, len(out)/n)
	guesses := make([]guess, l.events)
	for r := range logs {
		run := out[r*n : (r+1)*n]
		logs[r] = l.guess(run, guesses, rough)
		for i, s := range l.seen {
			e, never := l.which[i], 0.0
			if rough != nil {
				never = rough.Never[r*n+e]
			}
			if s.NotYet {
				logs[r] += math.Log(never + (1-never)*math.Exp(guesses[e].notYet(s, run[e], l.sd)))
			} else {
				logs[r] += math.Log1p(-never)
			}
		}
	}
	return logs
}

// guess writes what a run leaves to be thought of the events' doubts, and returns the
// logarithm of the likelihood of what happened and was read.
func (l look) guess(out []float64, guesses []guess, rough *study.Rough) float64 {
	for e := range guesses {
		guesses[e] = guess{0, 1}
	}
	sum, scatter := 0.0, 0.0
	for i, s := range l.seen {
		e, log := l.which[i], 0.0
		if rough != nil {
			scatter = rough.Scatter[e]
		}
		switch {
		case s.Reading != "":
			log = s.readLog(out[e], scatter)
		case !s.NotYet:
			guesses[e], log = guesses[e].learn(s, out[e], l.sd, scatter)
		}
		sum += log
	}
	return sum
}

// settle draws the doubts of the events from what is now thought of them: z, event by
// event, holds their normal scores before and after. It returns the logarithms of the
// likelihoods.
func (l look) settle(out []float64, z [][]float64) []float64 {
	logs := make([]float64, len(out)/l.study.Outputs)
	guesses := make([]guess, l.events)
	for r := range logs {
		run := out[r*l.study.Outputs : (r+1)*l.study.Outputs]
		logs[r] = l.guess(run, guesses, nil)
		for e, g := range guesses {
			z[e][r] = g.mean + math.Sqrt(g.variance)*z[e][r]
		}
		for i, s := range l.seen {
			if e := l.which[i]; s.NotYet {
				logs[r] += guess{mean: z[e][r]}.notYet(s, run[e], l.sd)
			}
		}
	}
	return logs
}

// outside returns the error of the first observation that lies beyond all runs by more
// than three times its own standard deviation.
func (l look) outside(out []float64) error {
	for i, s := range l.seen {
		low, high := math.Inf(1), math.Inf(-1)
		for r := l.which[i]; r < len(out); r += l.study.Outputs {
			low, high = min(low, out[r]), max(high, out[r])
		}
		v, sd := s.Value, s.valueSD()
		e := &honestplate.RangeError{Field: fmt.Sprintf("Seen[%d].Value", i), Value: s.Value,
			Source: "all that the clock's runs come to: look at its inputs, or at the reading"}
		if s.Reading == "" {
			e.Field, e.Value, e.Unit = fmt.Sprintf("Seen[%d].At", i), s.At.Seconds(), "s"
			v, sd = e.Value, s.timeSD()
			low, high = low*(1-3*l.sd), high*(1+3*l.sd)
		}
		if v >= low-3*sd && (v <= high+3*sd || s.NotYet && math.IsInf(high, 1)) || s.NotYet && v < low {
			continue
		}
		if math.IsInf(low, 1) {
			return &honestplate.InputError{Field: fmt.Sprintf("Seen[%d].Event", i), Got: fmt.Sprintf("%q at %s", s.Event, honestplate.After(s.At)),
				Want: "an event that happens in some of the clock's runs: look at its inputs"}
		}
		e.Low, e.High = low, min(high, math.MaxInt64/1e9)
		return e
	}
	return nil
}
