// Package study asks how sure the times of a model's events are, given how sure its
// inputs are.
package study

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"example.org/honestplate"
)

// How many runs a study takes. With 256 the ends of a band are themselves good to about
// a tenth of its half-width; what was observed leaves a part of the runs, so that it takes
// more to begin with.
const (
	UsualRuns  = 256
	TaughtRuns = 4096
)

// mostInputs is the most inputs that a study may have.
const mostInputs = 40

// A Study runs a model for given standard normal values of its inputs. The runs are
// spread over the cores; results do not depend on how many there are.
type Study struct {
	Outputs int // how many numbers a run returns: times of events in seconds, readings
	// Model returns a copy of the model: its inputs bound to its fields, and the run that
	// reads these and writes the outputs, +Inf for the time of what does not happen. Each
	// core calls Model once and then its run many times, so that scratch memory can live
	// in the copy.
	Model func() (inputs []Input, run func(out []float64) error)
}

// Inputs returns the inputs, checked.
func (s Study) Inputs() ([]Input, error) {
	inputs, _ := s.Model()
	if s.Outputs < 1 || len(inputs) > mostInputs {
		return nil, &honestplate.InputError{Field: "Study", Got: fmt.Sprintf("%d outputs, %d inputs", s.Outputs, len(inputs)),
			Want: fmt.Sprintf("1 output or more, at most %d inputs", mostInputs)}
	}
	for i := range inputs {
		if err := inputs[i].check(); err != nil {
			return nil, err
		}
	}
	return inputs, nil
}

// At returns the outputs, run by run, for the values of z, run by run. Its error is that
// of the earliest failing run.
func (s Study) At(z []float64, d int) ([]float64, error) {
	runs := len(z) / d
	out := make([]float64, runs*s.Outputs)
	errs := make([]error, runs)
	spread(runs, func() func(int) {
		in, run := s.Model()
		return func(r int) {
			Set(in, z[r*d:(r+1)*d])
			errs[r] = run(out[r*s.Outputs : (r+1)*s.Outputs : (r+1)*s.Outputs])
		}
	})
	for r, err := range errs {
		if err != nil {
			return nil, fmt.Errorf("run %d of the band: %w", r, err)
		}
	}
	return out, nil
}

// spread does n pieces of work on all cores, each of which begins once.
func spread(n int, begin func() func(int)) {
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		wg.Go(func() {
			work := begin()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	wg.Wait()
}

// Set writes values, in standard deviations, to the fields of the inputs.
func Set(inputs []Input, z []float64) {
	for j := range inputs {
		inputs[j].Set(inputs[j].At(z[j]))
	}
}
