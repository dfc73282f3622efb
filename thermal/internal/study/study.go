// Package study asks how sure the times of a model's events are, given how sure its
// inputs are.
package study

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"example.org/honestplate"
)

// usualSamples is the number of samples that a study takes unless told otherwise.
const usualSamples = 256

// A Study runs a model once with every input at its likely value, twice per input with
// that one alone at its 95 % limits, and Samples times with all of them drawn from a
// fixed quasi-random sequence (gonum's samplemv.Halton, scrambled, with a fixed seed).
// The runs are spread over the cores; results do not depend on how many there are.
// With 256 samples the ends of a band are themselves good to about a tenth of its
// half-width.
type Study struct {
	Events  int // how many times a run returns
	Samples int // at most 4096; 0 means 256
	// Model returns a copy of the model: its inputs, at most 24, bound to its fields,
	// and the run that reads these and writes the times of the events in seconds,
	// +Inf for what does not happen. Each core calls Model once and then its run many
	// times, so that scratch memory can live in the copy.
	Model func() (inputs []Input, run func(at []float64) error)
}

// An Outcome is what a study finds for one event, in seconds.
type Outcome struct {
	Earliest, Likely, Latest float64 // 2.5 % quantile, the nominal run, 97.5 % quantile
	// Decides ranks the inputs by how much of the spread they explain, the decisive
	// one first; empty where the window has no width.
	Decides []Rank
}

// Run carries out the study. Its error is that of an input that makes no sense, else
// that of the earliest failing run, saying which it was.
func (s Study) Run() ([]Outcome, error) {
	n := s.Samples
	if n == 0 {
		n = usualSamples
	}
	inputs, _ := s.Model()
	if err := s.check(n, inputs); err != nil {
		return nil, err
	}
	d := len(inputs)
	runs := 1 + 2*d + n
	times := make([]float64, runs*s.Events) // run by run
	errs := make([]error, runs)
	z := halton(n, d)
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), runs) {
		wg.Go(func() {
			in, run := s.Model()
			for r := int(next.Add(1)) - 1; r < runs; r = int(next.Add(1)) - 1 {
				set(in, r, z)
				errs[r] = run(times[r*s.Events : (r+1)*s.Events : (r+1)*s.Events])
			}
		})
	}
	wg.Wait()
	for r, err := range errs {
		if err != nil {
			return nil, fmt.Errorf("run %d of the band: %w", r, err)
		}
	}
	out := make([]Outcome, s.Events)
	event := make([]float64, runs)
	for e := range out {
		for r := range event {
			event[r] = times[r*s.Events+e]
		}
		out[e] = outcome(inputs, event, z)
	}
	return out, nil
}

// set writes the values of run r to the inputs' fields: 0 is nominal, then the limits
// one at a time, then the samples.
func set(inputs []Input, r int, z []float64) {
	d := len(inputs)
	for j := range inputs {
		u := &inputs[j]
		switch {
		case r > 2*d:
			*u.To = u.at(z[(r-1-2*d)*d+j])
		case r > 0 && (r-1)/2 == j:
			*u.To = u.at(z95 * float64(2*((r-1)%2)-1))
		default:
			*u.To = u.Band.Likely
		}
	}
}

func outcome(inputs []Input, event, z []float64) Outcome {
	sorted := slices.Sorted(slices.Values(event[1+2*len(inputs):]))
	// The nearest rank, the same number of samples cut off at both ends.
	cut := int(math.Ceil(0.025*float64(len(sorted)))) - 1
	out := Outcome{Earliest: min(sorted[cut], event[0]), Likely: event[0], Latest: max(sorted[len(sorted)-1-cut], event[0])}
	if out.Earliest < out.Latest { // else one stray sample decides nothing
		out.Decides = rank(inputs, event, z)
	}
	return out
}

func (s Study) check(n int, inputs []Input) error {
	if s.Events < 1 || n < 1 || n > 4096 || len(inputs) > haltonDims {
		return &honestplate.InputError{Field: "Study", Got: fmt.Sprintf("%d events, %d samples, %d inputs", s.Events, n, len(inputs)),
			Want: fmt.Sprintf("1 event or more, 1 to 4096 samples, at most %d inputs", haltonDims)}
	}
	for i := range inputs {
		if err := inputs[i].check(); err != nil {
			return err
		}
	}
	return nil
}
