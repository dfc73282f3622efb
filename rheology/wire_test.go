package rheology

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// filled sets every exported field that is a number, a text, a truth or a slice of such, so
// that a round trip that loses one is seen.
func filled(v reflect.Value, n *float64) {
	*n++
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(*n / 8)
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(*n))
	case reflect.Bool:
		v.SetBool(true)
	case reflect.String:
		v.SetString("name")
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range 2 {
			filled(v.Index(i), n)
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[Mix]() {
			m, _ := Blend(Part{Dairy{FatPercent: 3.5}, 300}, Part{Honey{}, 100}, Part{Water{}, 33})
			v.Set(reflect.ValueOf(m))
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				filled(v.Field(i), n)
			}
		}
	case reflect.Interface:
		var fill any = Food("custard")
		if v.Type() == reflect.TypeFor[flow.Model]() {
			fill = flow.Casson{Yield: 2, Plastic: 3}
		}
		v.Set(reflect.ValueOf(fill))
	}
}

// equal is reflect.DeepEqual, and for a Mix, which keeps a NaN for fat that is not known,
// what it answers.
func equal(a, b any) bool {
	x, ok := a.(Mix)
	if !ok {
		return reflect.DeepEqual(a, b)
	}
	y := b.(Mix)
	v, e1 := x.Viscosity(20)
	w, e2 := y.Viscosity(20)
	return v == w && e1 == nil && e2 == nil && reflect.DeepEqual(x.Describe(), y.Describe())
}

// What is sent comes back equal, whatever its fields hold.
func TestTypesComeBackFromTheWire(t *testing.T) {
	n := 0.0
	for _, zero := range []any{
		Water{}, Dairy{}, Sucrose{}, Syrup{}, Honey{}, Glycerol{}, Custom{}, Measured{}, Mix{}, Part{}, Rule{}, Recipe{}, Batch{},
		Correction{}, Sensitivity{}, Departure{}, Composition{}, Description{},
		flow.Newtonian{}, flow.PowerLaw{}, flow.Bingham{}, flow.Casson{}, flow.HerschelBulkley{}, flow.Carreau{}, flow.Point{},
	} {
		v := reflect.New(reflect.TypeOf(zero))
		filled(v.Elem(), &n)
		b, err := json.Marshal(v.Elem().Interface())
		if err != nil {
			t.Errorf("%T: %v", zero, err)
			continue
		}
		back := reflect.New(v.Elem().Type())
		if err := json.Unmarshal(b, back.Interface()); err != nil {
			t.Errorf("%T: %s: %v", zero, b, err)
		} else if !equal(v.Elem().Interface(), back.Elem().Interface()) {
			t.Errorf("%T: %s came back as %+v", zero, b, back.Elem())
		}
		for name := range strings.SplitSeq(string(b), `"`) {
			if strings.ToLower(name) != name {
				t.Errorf("%T: %q is not in snake_case: %s", zero, name, b)
			}
		}
		if l, ok := v.Elem().Interface().(Liquid); ok {
			if read, err := ReadLiquid(b); err != nil || !equal(read, l) {
				t.Errorf("%s is read as %+v, %v", b, read, err)
			}
		}
	}
	for _, l := range Catalogue() {
		b, err := json.Marshal(Part{l, 1})
		var back Part
		if err = errors.Join(err, json.Unmarshal(b, &back)); err != nil || back != (Part{l, 1}) {
			t.Errorf("%s, %s: %+v, %v", l.Describe().Name, b, back, err)
		}
	}
}

type ownLiquid struct{ Dairy }
type ownModel struct{ flow.Newtonian }

// What could not be read back is refused, with a field.
func TestWhatCannotBeReadBackIsNotWritten(t *testing.T) {
	for name, v := range map[string]any{
		"no liquid": Part{}, "a liquid of one's own": Part{ownLiquid{}, 1}, "a nil pointer": Measured{Liquid: (*Dairy)(nil)},
		"an empty mix": Mix{}, "an empty recipe": Recipe{}, "a model of one's own": Custom{Flow: ownModel{}}, "a fit": flow.Fitted{},
		"not a number": Dairy{FatPercent: math.NaN()},
	} {
		if b, err := json.Marshal(v); err == nil {
			t.Errorf("%s: %s", name, b)
		}
	}
	for _, text := range []string{
		``, `{}`, `[]`, `{"kind":"tea"}`, `{"kind":"dairy","brix":65}`, `{"kind":"dairy","fat_percent":"3"}`, `{"kind":3}`,
		`{"kind":"measured"}x`, `{"kind":"mix","parts":[]}`, `{"kind":"custom","flow":{"kind":"tea"}}`,
	} {
		if l, err := ReadLiquid([]byte(text)); err == nil {
			t.Errorf("%s: %+v", text, l)
		}
	}
	_, err := ReadLiquid([]byte(`{"kind":"tea"}`))
	if !errors.Is(err, honestplate.ErrInput) || !strings.Contains(err.Error(), "custom, dairy") {
		t.Errorf("%v", err)
	}
	l, err := ReadLiquid([]byte(`{"kind":"dairy","fat_percent":3.5}`))
	if l != (Dairy{FatPercent: 3.5}) || err != nil {
		t.Errorf("%v, %v", l, err)
	}
}

// Whatever is read as a liquid is written and read again as the same.
func FuzzReadLiquid(f *testing.F) {
	for _, l := range Catalogue() {
		b, err := json.Marshal(Part{l, 1})
		if err != nil {
			f.Fatal(err)
		}
		f.Add(strings.TrimSuffix(strings.TrimPrefix(string(b), `{"liquid":`), `,"grams":1}`))
	}
	f.Add(`{"kind":"measured","liquid":{"kind":"measured"},"pas":null}`)
	f.Add(`{"kind":"measured","liquid":{"kind":"dairy","fat_percent":36},"temp_c":6,"pas":{"low":0.02,"likely":0.03,"high":0.04}}`)
	f.Add(`{"kind":"custom","name":"own","flow":{"kind":"casson","yield_pa":9.3,"plastic_pas":1.42},"flow_c":40,"density_kg_per_m3":1250}`)
	f.Add(`{"kind":"mix","rule":{"no_departure":true},"parts":[{"liquid":{"kind":"water"},"grams":1},{"liquid":{"kind":"honey"},"grams":3}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		l, err := ReadLiquid([]byte(text))
		if err != nil {
			return
		}
		b, err := json.Marshal(Part{l, 1})
		if err != nil {
			return // a custom liquid without its own, a measurement of nothing
		}
		var back Part
		if err := json.Unmarshal(b, &back); err != nil {
			t.Fatalf("%s: %v", b, err)
		}
	})
}

// Whatever is read as a recipe or a part is written and read again as the same.
func FuzzReadRecipe(f *testing.F) {
	f.Add(`{"thin":{"kind":"dairy","fat_percent":3.5},"thick":{"kind":"honey"},"batch_grams":1,"step_grams":1,"temp_c":6,"rule":{"no_departure":true}}`)
	f.Add(`{"liquid":{"kind":"mix","parts":[{"liquid":{"kind":"water"},"grams":1}]},"grams":2}`)
	f.Add(`{"thin":null,"thick":{"kind":"custom","flow":{"kind":"casson"}}}`)
	f.Fuzz(func(t *testing.T, text string) {
		for _, v := range []any{new(Recipe), new(Part)} {
			if json.Unmarshal([]byte(text), v) != nil {
				continue
			}
			b, err := json.Marshal(v)
			if err != nil {
				continue // a liquid or a model that is not there
			}
			if err := json.Unmarshal(b, v); err != nil {
				t.Errorf("%s: %v", b, err)
			}
		}
	})
}
