package thermal

import (
	"fmt"
	"reflect"
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

// along returns a field of a course's points between them; before the first it is that of
// the first, after the last, where nothing more was followed, that of the last. A point's
// field 0 is its time.
func along[P any](course []P, seconds float64, field int) float64 {
	if len(course) == 0 {
		return 0
	}
	point := func(i int) reflect.Value { return reflect.ValueOf(&course[i]).Elem() }
	at := func(i int) float64 { return time.Duration(point(i).Field(0).Int()).Seconds() }
	value := func(i int) float64 { return point(i).Field(field).Float() }
	i := sort.Search(len(course), func(i int) bool { return at(i) >= seconds })
	switch i {
	case 0:
		return value(0)
	case len(course):
		return value(i - 1)
	}
	t0, t1, a, b := at(i-1), at(i), value(i-1), value(i)
	return a + (b-a)*((seconds-t0)/(t1-t0))
}

// readingsOf are the numbers of the points of a model's course, under their names on the
// wire.
func readingsOf[M, P any](course func(*M) []P) []reading[M] {
	var out []reading[M]
	for i := 1; i < reflect.TypeFor[P]().NumField(); i++ {
		out = append(out, reading[M]{reflect.TypeFor[P]().Field(i).Tag.Get("json"),
			func(m *M, seconds float64) float64 { return along(course(m), seconds, i) }})
	}
	return out
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
	if err := oneOf("Reading", reading, r.kept.keys()); err != nil {
		return nil, err
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
	return &honestplate.InputError{Field: "Runs", Got: "without their clock", Want: "those of a Clock, a Knowing or an Observe, in the program that ran them"}
}
