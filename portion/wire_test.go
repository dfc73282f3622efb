package portion_test

import (
	"encoding/json"
	"errors"
	"go/ast"
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/portion/plate"
	"example.org/honestplate/portion/record"
)

// wireTypes are the exported types of the tree by name, less errors and interfaces.
func wireTypes() map[string]reflect.Type {
	out := map[string]reflect.Type{}
	for _, v := range []any{
		portion.Amount{}, record.Basis(""), record.Build{}, record.BuildCheck{}, portion.CheckWeight{}, portion.Class(0), portion.Decision{}, portion.Declaration{}, record.Edit{},
		portion.Finding{}, portion.Formula{}, portion.Grid{}, portion.Group{}, portion.Heroes{}, portion.Ingredient{}, record.Layer{}, plate.Layout{}, portion.Limits{}, record.Placed{}, portion.Prior{}, record.Ratio{}, record.Revision{},
		record.RevisionCheck{}, record.Specification{}, record.SpecificationRef{}, portion.Stopping{}, record.Take{}, portion.Verdict(""),
		portion.Pick{}, portion.Picked{}, portion.PickedSets{}, portion.PieceMass{}, portion.PieceSet{}, portion.Piece{}, plate.Placing{}, plate.Point{}, portion.Portion{}, portion.QuidLine{}, record.Record{},
		record.Item{}, plate.Rectangle{}, plate.Round{}, portion.Scale{}, plate.Scatter{}, plate.Segment{}, record.Signature{}, plate.Slice{}, plate.SliceSold{}, portion.ToWeigh{}, plate.Spot{}, plate.Spread{}, record.StandIn{},
		plate.Strip{}, plate.Strips{}, portion.Table{}, record.Weighed{}, portion.Weighing{}, portion.Evidence{}, portion.Zone{}, apportion.Claim{}, apportion.Method(0),
	} {
		out[strings.TrimPrefix(reflect.TypeOf(v).String(), "portion.")] = reflect.TypeOf(v)
	}
	return out
}

// Whatever is written is read back equal, in exported fields, or refused with the
// module's error; names are snake_case.
func TestTheWireLosesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(81, 82))
	types := wireTypes()
	for _, name := range slices.Sorted(maps.Keys(types)) {
		written := 0
		for range 50 {
			v := reflect.New(types[name])
			fill(v.Elem(), r)
			text, err := json.Marshal(v.Interface())
			if err != nil {
				switch honestplate.Cause(err).(type) {
				case *honestplate.InputError, *honestplate.RefusedError, *honestplate.RangeError:
				default:
					t.Fatalf("%s: refused with %v", name, err)
				}
				continue
			}
			written++
			back := reflect.New(types[name])
			if err := json.Unmarshal(text, back.Interface()); err != nil {
				t.Fatalf("%s: %v\n%s", name, err, text)
			}
			hidden := cmp.FilterPath(func(p cmp.Path) bool {
				f, ok := p.Last().(cmp.StructField)
				return ok && !ast.IsExported(f.Name())
			}, cmp.Ignore())
			absent := cmp.Comparer(func(a, b honestplate.Optional) bool { return a == b || !a.Given && !b.Given })
			if d := cmp.Diff(v.Interface(), back.Interface(), hidden, absent, cmpopts.EquateEmpty()); d != "" {
				t.Fatalf("%s: %s\n%s", name, d, text)
			}
			if key := camelKey(text); key != "" {
				t.Fatalf("%s: the member %q is not in snake_case", name, key)
			}
		}
		if refused := name == "plate.Layout" || name == "plate.Placing"; refused != (written == 0) && !slices.Contains([]string{"record.Record", "record.Item", "record.Revision", "record.Specification"}, name) {
			t.Errorf("%s: %d of 50 were written", name, written)
		}
	}
}

// fill sets exported fields to random values; enumerations now and then to one that has
// no word.
func fill(v reflect.Value, r *rand.Rand) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(float64(r.IntN(2000)-500) / 8)
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(r.IntN(6)))
	case reflect.Uint64:
		v.SetUint(r.Uint64() >> 12)
	case reflect.Bool:
		v.SetBool(r.IntN(2) == 0)
	case reflect.String:
		v.SetString([]string{"", "olives", "a <b> \"é\" \u2028"}[r.IntN(3)])
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), r)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), r.IntN(3), 3))
		for i := range v.Len() {
			fill(v.Index(i), r)
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[honestplate.Estimate]() { // which has an order
			v.Set(reflect.ValueOf(honestplate.Within(r.Float64(), 0.1)))
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				fill(v.Field(i), r)
			}
		}
	}
}

// camelKey returns a member's name with a capital letter, if there is one.
func camelKey(text []byte) string {
	dec := json.NewDecoder(strings.NewReader(string(text)))
	var walk func() string
	walk = func() string {
		token, err := dec.Token()
		if err != nil {
			return ""
		}
		if d, ok := token.(json.Delim); ok {
			for dec.More() {
				if d == '{' {
					if key, _ := dec.Token(); strings.ToLower(key.(string)) != key {
						return key.(string)
					}
				}
				if key := walk(); key != "" {
					return key
				}
			}
			_, _ = dec.Token()
		}
		return ""
	}
	return walk()
}

func TestEveryTypeIsOnTheWireOrAnError(t *testing.T) {
	types := wireTypes()
	for dir, prefix := range map[string]string{".": "", "apportion": "apportion.", "plate": "plate.", "record": "record."} {
		for _, f := range parsed(t, dir, false) {
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := n.(*ast.TypeSpec); ok && s.Name.IsExported() {
					_, isInterface := s.Type.(*ast.InterfaceType)
					if name := prefix + s.Name.Name; !isInterface && !strings.HasSuffix(name, "Error") && types[name] == nil {
						t.Errorf("%s is not tried", name)
					}
				}
				return true
			})
		}
	}
}

func TestWordsAreRefusedThatNameNothing(t *testing.T) {
	for _, text := range []string{`"sideways"`, `3`, `""`} {
		for _, into := range []any{new(portion.Class), new(apportion.Method)} {
			if err := json.Unmarshal([]byte(text), into); err == nil {
				t.Errorf("%s was read as %T", text, into)
			}
		}
	}
	if _, err := json.Marshal(portion.Class(9)); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("a class without a name: %v", err)
	}
}

// Errors are for people and logs: one line, whatever the names in them.
func FuzzErrorsStayOnOneLine(f *testing.F) {
	f.Add("cheese", 62.3, 0.5, 3, true)
	f.Add("a\nb\u2028c", -1.0, 0.0, -7, false)
	f.Fuzz(func(t *testing.T, name string, a, b float64, n int, given bool) {
		some := honestplate.Optional{Value: a, Given: given}
		for _, err := range []error{
			&portion.InfeasibleError{Pick: portion.Pick{Count: n, Grams: a, Tolerance: b, NeverBelow: given, NeverAbove: !given}, Below: some, Above: some},
			&apportion.BoundsError{Field: name, Total: int64(n), Least: int64(n) + 1, Most: int64(n) * 2, StepGrams: 0.5},
			&apportion.MarginError{Rows: []int{n, 0}, Columns: []int{1}, RowNames: []string{name}, RowUnits: int64(n)},
			portion.Declaration{Item: name, Advertised: true}.Allows(portion.Thin),
		} {
			text := err.Error()
			if text == "" || strings.ContainsAny(text, "\n\r\u2028\u2029") {
				t.Fatalf("%q", text)
			}
			if honestplate.Cause(err) == nil {
				t.Fatalf("%T is no error of the vocabulary", err)
			}
		}
	})
}
