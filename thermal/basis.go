package thermal

import (
	"maps"
	"slices"

	"example.org/honestplate/thermal/internal/study"
)

// A basis is what a unit starts from before anything is seen of it: runs of the plain
// study, which knows no doubts of single events.
type basis struct {
	inputs  []study.Input // of the plain study
	dims    int           // values of a run: the inputs', then those of keys
	keys    []string      // columns of the lesson that the clock has not, carried along
	z       []float64     // run by run
	out     []float64     // the events, run by run
	weights []float64     // what is believed over where it was drawn from; nil: all 1
	doubts  [][]float64   // normal scores of the events' own doubts, event by event
	learned bool          // z is not what was thought before anything was seen
}

// basis runs the plain study with what a lesson taught.
func (f frame[M]) basis(l Lesson, runs int) (*basis, error) {
	full, err := f.study(nil, false).Inputs()
	if err != nil {
		return nil, err
	}
	n := len(full) - len(f.events)
	b := &basis{inputs: full[:n], dims: n, weights: l.weights, learned: !l.IsZero()}
	for _, key := range slices.Sorted(maps.Keys(l.columns)) {
		if !slices.ContainsFunc(b.inputs, func(u study.Input) bool { return u.Column(f.kind) == key }) {
			b.keys = append(b.keys, key)
		}
	}
	points := study.Points{Runs: runs, Kind: f.kind, Unit: l.unit, Known: l.columns}
	columns := points.Columns(slices.Concat(full, asInputs(b.keys)))
	b.doubts = slices.Clone(columns[n:len(full)])
	b.dims += len(b.keys)
	b.z = study.Rows(slices.Concat(columns[:n], columns[len(full):]))
	b.out, err = f.study(nil, true).At(b.z, b.dims)
	return b, err
}

// asInputs are inputs that are drawn under whole keys.
func asInputs(keys []string) []study.Input {
	in := make([]study.Input, len(keys))
	for i, key := range keys {
		in[i] = study.Input{Key: key, Shared: study.Room}
	}
	return in
}

// redrawn returns a basis drawn from what is known once something was seen, and the
// outputs of the look: from what was known before this unit, taken as normal in the normal
// scores of the inputs, and all that was seen of it.
func (f frame[M]) redrawn(l Lesson, b *basis, out []float64, look look, runs int) (*basis, []float64, error) {
	all := slices.Concat(b.inputs, asInputs(b.keys))
	known := make([][]float64, len(all))
	for j, u := range all {
		known[j] = l.columns[u.Column(f.kind)] // nil: nothing learned of it
	}
	points := study.Points{Runs: runs, Kind: f.kind, Unit: l.unit}
	d, err := look.study.Redraw(points, study.NewBelief(known, l.weights), b.z, out, look.sight())
	if err != nil {
		return nil, nil, err
	}
	next := &basis{inputs: b.inputs, dims: b.dims, keys: b.keys, z: d.Z, weights: d.Prior, doubts: b.doubts, learned: true}
	n, w := len(f.events), look.study.Outputs
	next.out = make([]float64, 0, n*runs)
	for r := 0; r < len(d.Out); r += w {
		next.out = append(next.out, d.Out[r:r+n]...)
	}
	return next, d.Out, nil
}
