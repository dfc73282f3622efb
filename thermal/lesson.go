package thermal

import (
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// A Lesson is what observations taught of what units share: the room, the lamps, what
// this crew calls beads, the product. The zero value knows nothing. It is a value: to
// teach it further returns another one.
//
// It is kept as runs and their weights, 4,096 of them, so that clocks that know the same
// lesson are joint run by run.
type Lesson struct {
	unit    int                  // the number of the unit that comes next
	columns map[string][]float64 // of the shared inputs learned of, by their column
	weights []float64            // of each run
}

// Unit returns the lesson for the n-th unit (0 is the first): each draws what is of a
// unit alone, such as its start, afresh. Two units that stand beside each other are two
// numbers; Observe counts on by itself.
func (l Lesson) Unit(n int) Lesson {
	l.unit = n
	return l
}

// Without returns the lesson without what was learned of some scopes: "product" for
// another product, "room" after a move. The scopes are those of Sensitivity.SharedWith:
// room, lamps, crew, product.
func (l Lesson) Without(scopes ...string) (Lesson, error) {
	out := Lesson{unit: l.unit, weights: l.weights, columns: maps.Clone(l.columns)}
	for _, scope := range scopes {
		if i := slices.Index(sharedNames[:], scope); i <= int(study.Unit) {
			return l, &honestplate.InputError{Field: "scopes", Got: fmt.Sprintf("%q", scope), Want: "room, lamps, crew or product"}
		}
		maps.DeleteFunc(out.columns, func(key string, _ []float64) bool {
			_, name, isProduct := strings.Cut(key, "/")
			if !isProduct {
				name = key
			}
			return strings.HasPrefix(name, scope+".")
		})
	}
	if len(out.columns) == 0 {
		out.columns, out.weights = nil, nil
	}
	return out, nil
}

// IsZero reports that the lesson knows nothing.
func (l Lesson) IsZero() bool { return l.columns == nil }

// Inputs returns the keys of the inputs that something was learned of, in order. Those of
// a product carry the kind of thing before a stroke: "scoop/product.density".
func (l Lesson) Inputs() []string { return slices.Sorted(maps.Keys(l.columns)) }

// runs is how many a clock takes that knows the lesson.
func (l Lesson) runs() int {
	if l.IsZero() {
		return study.UsualRuns
	}
	return study.TaughtRuns
}

// wireLesson is a Lesson as it is written: numbers as the base64 of their 64 bits, the
// least significant byte first.
type wireLesson struct {
	Unit    int               `json:"unit"`
	Inputs  map[string]string `json:"inputs,omitempty"`
	Weights string            `json:"weights,omitempty"`
}

// MarshalJSON writes what was learned, for the next day or another program of the day.
func (l Lesson) MarshalJSON() ([]byte, error) {
	w := wireLesson{Unit: l.unit, Weights: packed(l.weights)}
	if l.columns != nil {
		w.Inputs = map[string]string{}
	}
	for key, c := range l.columns {
		w.Inputs[key] = packed(c)
	}
	return json.Marshal(w)
}

// UnmarshalJSON reads what MarshalJSON writes.
func (l *Lesson) UnmarshalJSON(b []byte) error {
	var w wireLesson
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	read := Lesson{unit: w.Unit}
	var err error
	if len(w.Inputs) > 0 {
		read.columns = map[string][]float64{}
		if read.weights, err = unpacked("weights", w.Weights); err != nil {
			return err
		}
	}
	for key, text := range w.Inputs {
		if read.columns[key], err = unpacked("inputs."+key, text); err != nil {
			return err
		}
	}
	for _, v := range read.weights {
		if v < 0 {
			return &honestplate.InputError{Field: "weights", Got: fmt.Sprint(v), Want: "numbers of at least 0"}
		}
	}
	*l = read
	return nil
}

func packed(v []float64) string {
	b := make([]byte, 0, 8*len(v))
	for _, x := range v {
		b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
	}
	return base64.StdEncoding.EncodeToString(b)
}

func unpacked(field, text string) ([]float64, error) {
	b, err := base64.StdEncoding.DecodeString(text)
	if err != nil || len(b) != 8*study.TaughtRuns {
		return nil, &honestplate.InputError{Field: field, Got: fmt.Sprintf("%d bytes of base64", len(b)),
			Want: fmt.Sprintf("%d numbers of 8 bytes", study.TaughtRuns)}
	}
	v := make([]float64, study.TaughtRuns)
	for i := range v {
		v[i] = math.Float64frombits(binary.LittleEndian.Uint64(b[8*i:]))
		if math.IsNaN(v[i]) || math.IsInf(v[i], 0) {
			return nil, &honestplate.InputError{Field: field, Got: "a number that is not finite", Want: "finite numbers"}
		}
	}
	return v, nil
}
