package thermal

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// A look is some observations of a unit and the outputs of a study that they are about.
type look struct {
	seen  []Seen
	which []int // output of each
	width int   // outputs of a run
	run   func(z []float64, d int) ([]float64, error)
	reads bool
}

// looking returns the look of a frame at some observations.
func (f frame[M]) looking(seen []Seen) look {
	l := look{seen: seen, which: make([]int, len(seen))}
	var reads []readAt
	for i, s := range seen {
		if s.Reading == "" {
			l.which[i] = slices.Index(f.events, s.Event)
			continue
		}
		l.which[i] = len(f.events) + len(reads)
		reads = append(reads, readAt{slices.Index(f.keys(), s.Reading), s.At.Seconds()})
	}
	s := f.study(reads)
	l.width, l.run, l.reads = s.Outputs, s.At, len(reads) > 0
	return l
}

// outputs are those of the runs of a sample: run again only where something was read.
func (l look) outputs(s *study.Sample) ([]float64, error) {
	if !l.reads {
		return s.Out, nil
	}
	return l.run(s.Z, len(s.Inputs))
}

// logLikelihood is that of the observations together in a run.
func (l look) logLikelihood(out []float64) float64 {
	sum := 0.0
	for i, s := range l.seen {
		sum += s.logLikelihood(out[l.which[i]])
	}
	return sum
}

func (l look) logLikelihoods(out []float64) []float64 {
	logs := make([]float64, len(out)/l.width)
	for r := range logs {
		logs[r] = l.logLikelihood(out[r*l.width : (r+1)*l.width])
	}
	return logs
}

// outside returns the error of the first observation that lies beyond all runs by more
// than three times its own standard deviation.
func (l look) outside(out []float64) error {
	for i, s := range l.seen {
		low, high := math.Inf(1), math.Inf(-1)
		for r := l.which[i]; r < len(out); r += l.width {
			low, high = min(low, out[r]), max(high, out[r])
		}
		early, late := s.deviation(high) < -3, s.deviation(low) > 3 && !s.NotYet
		if !early && !late {
			continue
		}
		e := &honestplate.RangeError{Field: fmt.Sprintf("Seen[%d].Value", i), Value: s.Value, Low: low, High: high,
			Source: "all that the clock's runs come to: look at its inputs, or at the reading"}
		if s.Reading == "" {
			if math.IsInf(low, 1) {
				return &honestplate.InputError{Field: fmt.Sprintf("Seen[%d].Event", i), Got: fmt.Sprintf("%q at %s", s.Event, honestplate.After(s.At)),
					Want: "an event that happens in some of the clock's runs: look at its inputs"}
			}
			e.Field, e.Value, e.Unit = fmt.Sprintf("Seen[%d].At", i), s.At.Seconds(), "s"
			e.High = min(high, time.Duration(math.MaxInt64).Seconds())
		}
		return e
	}
	return nil
}
