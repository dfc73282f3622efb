package thermal

import (
	"fmt"
	"slices"
	"sort"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// A reading is something that can be read off the course of a run.
type reading[M any] struct {
	key string                              // with its unit last, such as "core_c"
	at  func(m *M, seconds float64) float64 // by the course that a run left in the model
}

// A readAt is one reading of a frame at one time, s.
type readAt struct {
	which int
	at    float64
}

// along returns a value of a course between its points; before the first it is that of
// the first, after the last, where nothing more was followed, that of the last.
func along[P any](course []P, seconds float64, at func(*P) time.Duration, value func(*P) float64) float64 {
	if len(course) == 0 {
		return 0
	}
	i := sort.Search(len(course), func(i int) bool { return at(&course[i]).Seconds() >= seconds })
	switch i {
	case 0:
		return value(&course[0])
	case len(course):
		return value(&course[i-1])
	}
	t0, t1 := at(&course[i-1]).Seconds(), at(&course[i]).Seconds()
	a, b := value(&course[i-1]), value(&course[i])
	return a + (b-a)*((seconds-t0)/(t1-t0))
}

// readingsOf are readings of a model's course.
func readingsOf[M, P any](course func(*M) []P, at func(*P) time.Duration, values ...named[P]) []reading[M] {
	out := make([]reading[M], len(values))
	for i, v := range values {
		out[i] = reading[M]{v.key, func(m *M, seconds float64) float64 { return along(course(m), seconds, at, v.of) }}
	}
	return out
}

// A named is a value of a point of a course and its key.
type named[P any] struct {
	key string
	of  func(*P) float64
}

// keys are those of the readings.
func (f frame[M]) keys() []string {
	out := make([]string, len(f.readings))
	for i, r := range f.readings {
		out[i] = r.key
	}
	return out
}

// Readings returns the keys of what can be read off the course, such as "core_c": the
// names of its points on the wire.
func (r Runs) Readings() []string {
	if r.kept == nil {
		return nil
	}
	return r.kept.keys()
}

// Course returns the 95 % band of a reading over the runs at some times since the start,
// with the likely course between its ends. It runs the clock's runs again, with their
// courses.
func (r Runs) Course(reading string, times ...time.Duration) ([]honestplate.Estimate, error) {
	if r.kept == nil {
		return nil, errNotKept()
	}
	if keys := r.kept.keys(); !slices.Contains(keys, reading) {
		return nil, &honestplate.InputError{Field: "Reading", Got: fmt.Sprintf("%q", reading), Want: fmt.Sprintf("one of %q", keys)}
	}
	for i, t := range times {
		if err := honestplate.InRange(fmt.Sprintf("Times[%d]", i), t.Seconds(), 0, longest, "s", longestSource); err != nil {
			return nil, err
		}
	}
	if len(times) == 0 {
		return nil, nil
	}
	return r.kept.course(reading, times)
}

func (k *kept[M]) keys() []string { return k.frame.keys() }

func (k *kept[M]) course(key string, times []time.Duration) ([]honestplate.Estimate, error) {
	f := k.frame
	reads := make([]readAt, len(times))
	for i, t := range times {
		reads[i] = readAt{slices.Index(f.keys(), key), t.Seconds()}
	}
	s := f.study(reads, true)
	out, err := s.At(k.basis.z, k.basis.dims)
	if err != nil {
		return nil, err
	}
	centre := k.sample.Centre()
	likely, err := s.At(centre[:len(k.basis.inputs)], len(k.basis.inputs))
	if err != nil {
		return nil, err
	}
	bands := make([]honestplate.Estimate, len(times))
	for i := range times {
		e := len(f.events) + i
		q := study.Quantiles(study.Column(out, e, s.Outputs), k.sample.Weights, 0.025, 0.975)
		bands[i] = band(min(q[0], likely[e]), likely[e], max(q[1], likely[e]))
	}
	return bands, nil
}

func errNotKept() error {
	return &honestplate.InputError{Field: "Runs", Got: "without their clock", Want: "those of a Clock, a Knowing or an Observe: not read back, not of a Likely"}
}
