package rheology

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/rheology/internal/check"
)

// ReadLiquid reads a liquid that was written as JSON, by its kind:
//
//	{"kind":"dairy","fat_percent":3.5}
//	{"kind":"food","food":"olive oil"}
//	{"kind":"measured","liquid":{"kind":"dairy","fat_percent":30},"temp_c":6,"pas":{...}}
//
// The kinds are water, dairy, sucrose, syrup, honey, glycerol, food, custom, measured and
// mix; the other members are those of the type. Each of these types writes itself so; a
// liquid of your own type is refused, since it could not be read back. A member that the
// kind does not have is an InputError, as is an unknown kind; whether the numbers make sense
// is what the liquid's methods say.
func ReadLiquid(b []byte) (Liquid, error) {
	var l anyLiquid
	err := l.UnmarshalJSON(b)
	return l.Liquid, err
}

// anyLiquid is a liquid on the wire.
type anyLiquid struct{ Liquid }

// kinds has a zero value of each kind by the word that names it.
var kinds = map[string]any{
	"water": Water{}, "dairy": Dairy{}, "sucrose": Sucrose{}, "syrup": Syrup{}, "honey": Honey{},
	"glycerol": Glycerol{}, "food": foodWire{}, "custom": Custom{}, "measured": Measured{}, "mix": Mix{},
}

func (l *anyLiquid) UnmarshalJSON(b []byte) error {
	v, err := readKind(b, kinds)
	if f, ok := v.(foodWire); ok {
		v = f.Food
	}
	l.Liquid, _ = v.(Liquid)
	return err
}

func (l anyLiquid) MarshalJSON() ([]byte, error) {
	switch v := l.Liquid.(type) {
	case Food:
		return tagged("food", foodWire{v})
	case Water, Dairy, Sucrose, Syrup, Honey, Glycerol, Custom, Measured, Mix:
		return json.Marshal(v)
	}
	if check.IsNil(l.Liquid) {
		return nil, check.Missing("Liquid", "a liquid")
	}
	return nil, &honestplate.InputError{Field: "Liquid", Got: fmt.Sprintf("a %T", l.Liquid), Want: "a liquid of this library: one of your own could not be read back"}
}

type foodWire struct {
	Food Food `json:"food"`
}

// takeKind parts an object into its kind and the rest of it.
func takeKind(b []byte) (kind string, rest []byte, err error) {
	var members map[string]json.RawMessage
	if err := json.Unmarshal(b, &members); err != nil {
		return "", nil, err
	}
	if err := json.Unmarshal(members["kind"], &kind); err != nil {
		return "", nil, check.Missing("kind", "the word that says which kind it is")
	}
	delete(members, "kind")
	rest, err = json.Marshal(members)
	return kind, rest, err
}

// readKind reads the rest of a text into the kind that it names.
func readKind(b []byte, known map[string]any) (any, error) {
	kind, rest, err := takeKind(b)
	if err != nil {
		return nil, err
	}
	zero := known[kind]
	if zero == nil {
		names := strings.Join(slices.Sorted(maps.Keys(known)), ", ")
		return nil, &honestplate.InputError{Field: "kind", Got: fmt.Sprintf("%q", kind), Want: "one of " + names}
	}
	v := reflect.New(reflect.TypeOf(zero))
	err = strictly(rest, v.Interface())
	return v.Elem().Interface(), err
}

// strictly decodes an object that has no other members than v.
func strictly(b []byte, v any) error {
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		if input := honestplate.Cause(err); input != err {
			return input
		}
		return memberFault(err, v)
	}
	return nil
}

// memberFault says which member of an object cannot be read into v.
func memberFault(err error, v any) error {
	var wrong *json.UnmarshalTypeError
	if errors.As(err, &wrong) && wrong.Field != "" {
		want := map[reflect.Kind]string{reflect.Float64: "a number", reflect.String: "a text", reflect.Slice: "a list"}[wrong.Type.Kind()]
		got := map[string]string{"string": "a text", "array": "a list", "object": "an object", "bool": "true or false"}[wrong.Value]
		if got == "" && want == "a number" {
			want = "a number that fits"
		}
		got, want = cmp.Or(got, "the "+wrong.Value), cmp.Or(want, "a value of its kind")
		return &honestplate.InputError{Field: wrong.Field, Got: got, Want: want}
	}
	var known []string
	for t, i := reflect.TypeOf(v).Elem(), 0; t.Kind() == reflect.Struct && i < t.NumField(); i++ {
		if name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ","); name != "" && name != "-" {
			known = append(known, name)
		}
	}
	var name string
	if _, scan := fmt.Sscanf(err.Error(), "json: unknown field %q", &name); scan == nil {
		want := "kind alone: it has no members"
		if len(known) > 0 {
			want = "one of " + strings.Join(known, ", ")
		}
		return &honestplate.InputError{Field: honestplate.OneLine(name), Got: "not a member of this kind", Want: want}
	}
	return &honestplate.InputError{Field: "JSON", Got: honestplate.OneLine(err.Error()), Want: "the members of its kind"}
}

// tagged writes an object with its kind in front.
func tagged(kind string, v any) ([]byte, error) {
	b, err := json.Marshal(v)
	if err != nil {
		return nil, err
	}
	head := fmt.Sprintf(`{"kind":%q`, kind)
	if len(b) > 2 {
		head += ","
	}
	return append([]byte(head), b[1:]...), nil
}

// MarshalJSON writes {"kind":"water"}.
func (w Water) MarshalJSON() ([]byte, error) { return tagged("water", struct{}{}) }

// MarshalJSON writes {"kind":"dairy","fat_percent":3.5}; see [ReadLiquid].
func (d Dairy) MarshalJSON() ([]byte, error) {
	type plain Dairy
	return tagged("dairy", plain(d))
}

// MarshalJSON writes {"kind":"sucrose","brix":65}; see [ReadLiquid].
func (s Sucrose) MarshalJSON() ([]byte, error) {
	type plain Sucrose
	return tagged("sucrose", plain(s))
}

// MarshalJSON writes {"kind":"syrup","of":"maple"}; see [ReadLiquid].
func (s Syrup) MarshalJSON() ([]byte, error) {
	type plain Syrup
	return tagged("syrup", plain(s))
}

// MarshalJSON writes {"kind":"honey","moisture_percent":17}; see [ReadLiquid].
func (h Honey) MarshalJSON() ([]byte, error) {
	type plain Honey
	return tagged("honey", plain(h))
}

// MarshalJSON writes {"kind":"glycerol","percent":85}; see [ReadLiquid].
func (g Glycerol) MarshalJSON() ([]byte, error) {
	type plain Glycerol
	return tagged("glycerol", plain(g))
}

// models are the flow models on the wire.
var models = map[string]any{
	"newtonian": flow.Newtonian{}, "power_law": flow.PowerLaw{}, "bingham": flow.Bingham{},
	"casson": flow.Casson{}, "herschel_bulkley": flow.HerschelBulkley{}, "carreau": flow.Carreau{},
}

// anyModel is a flow model on the wire.
type anyModel struct{ flow.Model }

func (m anyModel) MarshalJSON() ([]byte, error) {
	for kind, zero := range models {
		if reflect.TypeOf(zero) == reflect.TypeOf(m.Model) {
			return tagged(kind, m.Model)
		}
	}
	return nil, &honestplate.InputError{Field: "Flow", Got: fmt.Sprintf("a %T", m.Model), Want: "a model of package flow: one of your own could not be read back"}
}

func (m *anyModel) UnmarshalJSON(b []byte) error {
	v, err := readKind(b, models)
	m.Model, _ = v.(flow.Model)
	return err
}

type customWire struct {
	plainCustom
	Flow anyModel `json:"flow"`
}

type plainCustom Custom

// MarshalJSON writes the liquid; a flow model of your own is refused. See [ReadLiquid].
func (c Custom) MarshalJSON() ([]byte, error) {
	return tagged("custom", customWire{plainCustom(c), anyModel{c.Flow}})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (c *Custom) UnmarshalJSON(b []byte) error {
	var w customWire
	err := strictly(untagged(b), &w)
	*c = Custom(w.plainCustom)
	c.Flow = w.Flow.Model
	return err
}

// untagged is an object without its kind, if it has one.
func untagged(b []byte) []byte {
	if _, rest, err := takeKind(b); err == nil {
		return rest
	}
	return b
}

type measuredWire struct {
	Liquid anyLiquid `json:"liquid"`
	plainMeasured
}

type plainMeasured Measured

// MarshalJSON writes the liquid with its kind and the measurement; see [ReadLiquid].
func (m Measured) MarshalJSON() ([]byte, error) {
	return tagged("measured", measuredWire{anyLiquid{m.Liquid}, plainMeasured(m)})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (m *Measured) UnmarshalJSON(b []byte) error {
	var w measuredWire
	err := strictly(untagged(b), &w)
	*m = Measured(w.plainMeasured)
	m.Liquid = w.Liquid.Liquid
	return err
}

type partWire struct {
	Liquid anyLiquid `json:"liquid"`
	Grams  float64   `json:"grams"`
}

// MarshalJSON writes the liquid with its kind and the grams.
func (p Part) MarshalJSON() ([]byte, error) {
	return json.Marshal(partWire{anyLiquid{p.Liquid}, p.Grams})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (p *Part) UnmarshalJSON(b []byte) error {
	var w partWire
	err := strictly(b, &w)
	*p = Part{w.Liquid.Liquid, w.Grams}
	return err
}

type mixWire struct {
	Rule  Rule   `json:"rule,omitzero"`
	Parts []Part `json:"parts"` // mass fractions
}

// MarshalJSON writes the rule and the parts, as mass fractions; see [ReadLiquid].
func (m Mix) MarshalJSON() ([]byte, error) {
	if len(m.parts) == 0 {
		return nil, m.empty()
	}
	w := mixWire{Rule: m.rule}
	for _, p := range m.parts {
		w.Parts = append(w.Parts, Part{p.liquid, p.w})
	}
	return tagged("mix", w)
}

// UnmarshalJSON blends what MarshalJSON wrote; the fractions come back as they were.
func (m *Mix) UnmarshalJSON(b []byte) error {
	var w mixWire
	if err := strictly(untagged(b), &w); err != nil {
		return err
	}
	mixed, err := w.Rule.Blend(w.Parts...)
	if err == nil {
		*m = mixed
	}
	return err
}

type recipeWire struct {
	Thin  anyLiquid `json:"thin"`
	Thick anyLiquid `json:"thick"`
	plainRecipe
}

type plainRecipe Recipe

// MarshalJSON writes the recipe, its liquids with their kinds.
func (r Recipe) MarshalJSON() ([]byte, error) {
	return json.Marshal(recipeWire{anyLiquid{r.Thin}, anyLiquid{r.Thick}, plainRecipe(r)})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (r *Recipe) UnmarshalJSON(b []byte) error {
	var w recipeWire
	if err := strictly(b, &w); err != nil {
		return err
	}
	*r = Recipe(w.plainRecipe)
	r.Thin, r.Thick = w.Thin.Liquid, w.Thick.Liquid
	return nil
}
