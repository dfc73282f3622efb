package thermal

import (
	"encoding/json"
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
	"example.org/honestplate/thermal/ware"
)

// fill gives every exported field of v a random value that makes sense on the wire.
func fill(r *rand.Rand, v reflect.Value) {
	switch x := v.Addr().Interface().(type) {
	case *honestplate.Estimate:
		a, b, c := r.Float64(), r.Float64(), r.Float64()
		*x = honestplate.Estimate{Low: a, Likely: a + b, High: a + b + c}
		return
	case *honestplate.Window:
		d := func() time.Duration { return time.Duration(r.Int64N(1e13)) }
		first := d()
		*x = honestplate.Window{Earliest: honestplate.After(first), Likely: honestplate.After(first + d()), Latest: honestplate.Never()}
		return
	case *Runs:
		return // go over no wire
	case *Lesson:
		*x = Lesson{unit: r.IntN(9)}
		if r.IntN(2) == 0 {
			x.weights = study.Points{Runs: study.TaughtRuns}.Columns([]study.Input{{Key: "w"}})[0]
			x.columns = map[string][]float64{"crew.beads": slices.Clone(x.weights)}
			for i, w := range x.weights {
				x.weights[i] = math.Exp(w)
			}
		}
		return
	case *honestplate.Moment:
		*x = []honestplate.Moment{honestplate.Never(), honestplate.After(time.Duration(r.Int64N(1e14)))}[r.IntN(2)]
		return
	case *honestplate.Optional:
		*x = []honestplate.Optional{{}, honestplate.Some(0), honestplate.Some(r.NormFloat64())}[r.IntN(3)]
		return
	}
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(r.NormFloat64())
	case reflect.Int64: // a time.Duration
		v.SetInt(r.Int64N(1e15))
	case reflect.Int: // an enumeration: all have three values at least
		v.SetInt(r.Int64N(3))
	case reflect.Bool:
		v.SetBool(r.IntN(2) == 0)
	case reflect.String:
		v.SetString([]string{"", "crème \"brûlée\""}[r.IntN(2)])
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1+r.IntN(2), 3))
		for i := range v.Len() {
			fill(r, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fill(r, v.Field(i))
		}
	default:
		panic(v.Kind())
	}
}

// onTheWire is what comes back equal from JSON.
var onTheWire = []any{
	BottlePoint{}, GlassPoint{}, HotPoint{}, IcePoint{}, ScoopPoint{}, BodyPoint{},
	Air{}, light.Lamp{}, light.Absorptance{}, light.SourceData{}, Event{}, Sensitivity{}, Lesson{}, Seen{}, HeatBalance{},
	Glass{}, GlassClock{}, FogStages{}, IceOnTable{}, IceClock{},
	Scoop{}, ScoopClock{}, DeepFreeze{}, FreezeClock{}, FreezeStage{}, cold.Medium{}, Softening{}, SoftClock{}, food.SoftFood{},
	Bottle{}, BottleClock{}, Cheese{}, CheeseClock{}, HotDish{}, HotClock{}, ware.Ware{}, ware.Shock{}, food.FrozenMix{}, food.Drink{}, heat.Material{},
}

// No exported struct of the package and of its folders is left out of the round trip,
// but those that only hold a list of usual things. The physics of heat goes over no wire.
func TestRoundTripIsComplete(t *testing.T) {
	tried := map[string]bool{}
	for _, v := range onTheWire {
		tried[reflect.TypeOf(v).String()] = true
	}
	for _, folder := range []string{".", "cold", "food", "light", "ware"} {
		files, err := filepath.Glob(folder + "/*.go")
		if err != nil || len(files) == 0 {
			t.Fatal(folder, err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			for _, typ := range exportedStructs(file) {
				if typ = file.Name.Name + "." + typ; !tried[typ] && !usual.MatchString(typ) {
					t.Errorf("%s: %s is in no round trip", name, typ)
				}
			}
		}
	}
}

// usual are lists of usual things, which a program reads and does not send.
var usual = regexp.MustCompile(`\.(Usual|Typical)`)

// exportedStructs are the names of the struct types of a file that have exported fields.
func exportedStructs(file *ast.File) []string {
	var names []string
	ast.Inspect(file, func(n ast.Node) bool {
		if s, ok := n.(*ast.TypeSpec); ok && s.Name.IsExported() {
			if st, ok := s.Type.(*ast.StructType); ok && slices.ContainsFunc(st.Fields.List, func(f *ast.Field) bool {
				return len(f.Names) == 0 || f.Names[0].IsExported()
			}) {
				names = append(names, s.Name.Name)
			}
		}
		return true
	})
	return names
}

// What a plan, a service or a record sends or keeps comes back equal.
func TestWireRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for _, v := range onTheWire {
		typ := reflect.TypeOf(v)
		for range 20 {
			in, out := reflect.New(typ), reflect.New(typ)
			fill(r, in.Elem())
			text, err := json.Marshal(in.Interface())
			if err != nil {
				t.Fatalf("%v: %v", typ, err)
			}
			if err := json.Unmarshal(text, out.Interface()); err != nil {
				t.Fatalf("%v: %v in %s", typ, err, text)
			}
			if !reflect.DeepEqual(in.Interface(), out.Interface()) {
				t.Fatalf("%v: %+v comes back as %+v from %s", typ, in.Elem(), out.Elem(), text)
			}
			unique(t, typ, text)
		}
	}
}

// unique demands names in snake_case.
func unique(t *testing.T, typ reflect.Type, text []byte) {
	t.Helper()
	var members map[string]json.RawMessage
	if err := json.Unmarshal(text, &members); err != nil {
		t.Fatal(err)
	}
	for name := range members {
		for _, c := range name {
			if !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '_') {
				t.Fatalf("%v: member %q", typ, name)
			}
		}
	}
}

// An enumeration outside its values refuses to be written, and an unknown word to be
// read.
func TestWireRefusesUnknownWords(t *testing.T) {
	for _, v := range []any{light.Source(9), light.Head(-1), IceShape(3), Rest(4), heat.Form(3), food.Structure(4), ware.Tabletop(7)} {
		if text, err := json.Marshal(v); err == nil || !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%T: %s, %v", v, text, err)
		}
		p := reflect.New(reflect.TypeOf(v)).Interface()
		if err := json.Unmarshal([]byte(`"candle"`), p); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%T: %v", v, err)
		}
	}
}

// Runs go over no wire: a clock is written without them, alone they are refused.
func TestRunsGoOverNoWire(t *testing.T) {
	k := GlassClock{Kept: Runs{events: []happening{{key: "haze"}}}}
	if text, err := json.Marshal(k); err != nil || strings.Contains(string(text), "vents") {
		t.Errorf("%s, %v", text, err)
	}
	if text, err := json.Marshal(k.Kept); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("%s, %v", text, err)
	}
}
