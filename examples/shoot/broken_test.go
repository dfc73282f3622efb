package shoot

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"
)

var update = flag.Bool("update", false, "write testdata/broken.txt anew, to be read before it is committed")

// A broken file is one of the invented days, or facts of one, with one thing wrong.
type broken struct {
	name string // where and what
	text []byte
	day  string // the day that facts are of; empty for a brief
}

// Every broken brief and every broken fact is refused, by the vocabulary, with a field
// and a message that was read: all of them stand in testdata/broken.txt, whole.
func TestBrokenFilesAreRefusedInWordsThatWereRead(t *testing.T) {
	const golden = "testdata/broken.txt"
	var out bytes.Buffer
	fmt.Fprintf(&out, "What Read, ReadFacts and Plan say to broken files, made by broken_test.go.\n")
	count := 0
	known, err := os.ReadFile(golden)
	if err != nil && !*update {
		t.Fatal(err)
	}
	for _, c := range slices.Concat(brokenBriefs(t), contradictions(t), brokenFacts(t)) {
		// What is not broken after all is planned to the end when the list is renewed only.
		err := c.tried(t, *update || bytes.Contains(known, []byte("\n== "+c.name+"\n")))
		if err == nil {
			continue // not broken after all: many a value is another brief and no fault
		}
		count++
		text := err.Error()
		if fieldOf(honestplate.Cause(err)) == "" {
			t.Errorf("%s: no field of the vocabulary in %q", c.name, text)
		}
		if strings.ContainsAny(text, "\x00\x1b\r") {
			t.Errorf("%s: %q", c.name, text)
		}
		lines := strings.Split(text, "\n")
		for i, l := range lines {
			if slices.Contains(lines[:i], l) {
				t.Errorf("%s: told twice: %s", c.name, l)
			}
		}
		fmt.Fprintf(&out, "\n== %s\n%s\n", c.name, text)
	}
	if count < 500 {
		t.Errorf("only %d broken files", count)
	}
	if *update {
		if err := os.WriteFile(golden, out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n\n"), strings.Split(out.String(), "\n\n")); diff != "" {
		t.Errorf("messages differ; read them, then go test ./examples/shoot -run Broken -update:\n%s", diff)
	}
}

func fieldOf(err error) string {
	switch e := err.(type) {
	case *honestplate.InputError:
		return e.Field
	case *honestplate.RangeError:
		return e.Field
	case *honestplate.RefusedError:
		return e.Field
	}
	return ""
}

// tried reads a broken file and, where it can be read, plans the dish that was changed.
func (c broken) tried(t *testing.T, plan bool) error {
	if c.day != "" {
		f, err := ReadFacts(bytes.NewReader(c.text))
		if err != nil || !plan {
			return err
		}
		_, err = demo(t, c.day).Plan(f)
		return err
	}
	b, err := Read(bytes.NewReader(c.text))
	if err != nil || !plan {
		return err
	}
	_, err = b.Plan(nil)
	return err
}

// brokenBriefs breaks the invented days, one value at a time: every field that the three
// days have, at its first place.
func brokenBriefs(t *testing.T) []broken {
	var out []broken
	seen := map[string]bool{}
	for _, day := range []string{"autumn", "coast", "motion"} {
		text, err := os.ReadFile(filepath.Join("..", "callsheet", "days", day+".json"))
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, mutations(t, day, text, schemaOf(t, Schema), seen, onlyDish)...)
	}
	return out
}

const someFacts = `{"now": "2026-10-14T11:00:00+02:00",
	"room": {"temp_c": 24, "rh_percent": 46, "air_speed_m_s": 0.1, "measured": true},
	"seen": [{"dish": "Rosehip cooler", "thing": "rosehip cooler", "event": "haze", "after_seconds": 55, "within_seconds": 4, "unit": 1},
		{"dish": "Rosehip cooler", "thing": "rosehip cooler", "temp_c": 5, "within_k": 0.5, "after_seconds": 90, "unit": 1}],
	"cups": [{"dish": "Spiced oat bowl", "thing": "poured milk", "cup": "ISO 3", "temp_c": 7, "seconds": [38, 38.5]}],
	"takes": [{"dish": "Filled plums", "unit": 1, "good": true, "at": "2026-10-14T10:09:00+02:00", "file": "0001", "note": "soft"}],
	"weights": [{"dish": "Filled plums", "thing": "filled plum", "unit": 1, "grams": 162.1, "at": "2026-10-14T10:02:00+02:00"}],
	"ran_out": [{"dish": "Flatbread with smoked cheese", "thing": "smoked cheese", "left": 5}],
	"done": ["Buckwheat pancakes"]}`

func brokenFacts(t *testing.T) []broken {
	out := mutations(t, "facts", []byte(someFacts), schemaOf(t, FactsSchema), map[string]bool{}, func(root any, path string) any {
		if !strings.HasPrefix(path, "seen") {
			delete(root.(map[string]any), "seen") // a lesson takes its time
		}
		return root
	})
	for i := range out {
		out[i].day = "autumn"
	}
	return out
}

// schemaOf is a schema as a tree.
func schemaOf(t *testing.T, make func() ([]byte, error)) map[string]any {
	b, err := make()
	if err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := json.Unmarshal(b, &tree); err != nil {
		t.Fatal(err)
	}
	return tree
}

// onlyDish leaves out the dishes that a path does not go through: they are not changed,
// and planning them takes its time.
func onlyDish(root any, path string) any {
	r := root.(map[string]any)
	dishes, ok := r["dishes"].([]any)
	if !ok || len(dishes) < 2 {
		return root
	}
	keep := len(dishes) - 1
	if _, err := fmt.Sscanf(path, "dishes[%d]", &keep); err != nil && strings.HasPrefix(path, "dishes") {
		return root
	}
	r["dishes"] = dishes[keep : keep+1]
	return r
}

// A place is a value in a tree, with what the schema says of it.
type place struct {
	path   string // dishes[0].things[1].name
	value  any
	schema map[string]any
	set    func(any)
	drop   func() // nil in a list
	parent map[string]any
}

// walk calls visit for every value of a tree in the order of its names.
func walk(p place, visit func(place)) {
	visit(p)
	switch v := p.value.(type) {
	case map[string]any:
		properties, _ := p.schema["properties"].(map[string]any)
		for _, name := range slices.Sorted(maps.Keys(v)) {
			schema, _ := properties[name].(map[string]any)
			path := strings.TrimPrefix(p.path+"."+name, ".")
			walk(place{path, v[name], schema, func(x any) { v[name] = x }, func() { delete(v, name) }, v}, visit)
		}
	case []any:
		schema, _ := p.schema["items"].(map[string]any)
		for i := range v {
			walk(place{fmt.Sprintf("%s[%d]", p.path, i), v[i], schema, func(x any) { v[i] = x }, nil, nil}, visit)
		}
	}
}

// raw is put into a file as it stands, JSON or not.
type raw string

// rawMark encloses raw text on its way through the encoder.
var rawMark = regexp.MustCompile(`"@raw@(.*?)@raw@"`)

func (r raw) MarshalJSON() ([]byte, error) { return json.Marshal("@raw@" + string(r) + "@raw@") }

// encoded writes a tree with one field a line.
func encoded(t *testing.T, tree any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(tree); err != nil {
		t.Fatal(err)
	}
	return rawMark.ReplaceAllFunc(b.Bytes(), func(m []byte) []byte {
		var text string
		if err := json.Unmarshal(m, &text); err != nil {
			t.Fatal(err)
		}
		return []byte(strings.ReplaceAll(text, "@raw@", ""))
	})
}

func decoded(t *testing.T, text []byte) (tree any) {
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	return tree
}

var index = regexp.MustCompile(`\[\d+\]`)

// mutations breaks a file in every way that its fields can be broken. Paths that were
// seen before, whatever their indices, are left alone.
func mutations(t *testing.T, name string, text []byte, schema map[string]any, seen map[string]bool, cut func(any, string) any) []broken {
	type change struct {
		path, what string
		do         func(place)
	}
	var changes []change
	turn := 0
	walk(place{value: decoded(t, text), schema: schema}, func(p place) {
		general := index.ReplaceAllString(p.path, "[]")
		if seen[general] {
			return
		}
		seen[general] = true
		all := wrongs(p)
		for i, w := range all {
			// Every way is tried on some fields, and every field in some ways: what has to
			// be read stays short enough to be read.
			if w.usual {
				if turn++; turn%every != 0 {
					continue
				}
			}
			changes = append(changes, change{p.path, w.what, func(q place) { wrongs(q)[i].do(q) }})
		}
	})
	var out []broken
	for _, c := range changes {
		tree := decoded(t, text)
		done := false
		walk(place{value: tree, schema: schema, set: func(x any) { tree = x }}, func(p place) {
			if p.path == c.path && !done {
				done = true
				c.do(p)
			}
		})
		if cut != nil && reflect.ValueOf(tree).Kind() == reflect.Map {
			tree = cut(tree, c.path)
		}
		out = append(out, broken{name: fmt.Sprintf("%s, %s: %s", name, orRoot(c.path), c.what), text: encoded(t, tree)})
	}
	return out
}

func orRoot(path string) string {
	if path == "" {
		return "the file"
	}
	return path
}

// A wrong is one way to break a value.
type wrong struct {
	what  string
	do    func(place)
	usual bool // what goes wrong with every field of the kind alike
}

// every how many of the usual ways are tried.
const every = 4

// wrongs are the ways to break a value of a kind.
func wrongs(p place) []wrong {
	to := func(what string, v any) wrong { return wrong{what, func(p place) { p.set(v) }, true} }
	edge := func(what string, v any) wrong { return wrong{what, func(p place) { p.set(v) }, false} }
	var out []wrong
	if p.drop != nil {
		out = append(out, wrong{"left out", func(p place) { p.drop() }, true})
	}
	switch v := p.value.(type) {
	case float64:
		out = append(out, to("a text", fmt.Sprint(v)), to("null", nil), to("NaN", raw("NaN")), to("1e999", raw("1e999")), to("-1e300", raw("-1e300")))
		if low, ok := p.schema["minimum"].(float64); ok {
			high := p.schema["maximum"].(float64)
			out = append(out, to("just below its least", low-0.001), to("just above its most", high+1), edge("at its least", low), edge("at its most", high))
		}
		if p.schema["type"] == "integer" {
			out = append(out, to("a fraction", v+0.5))
		}
	case string:
		out = append(out, to("a number", 12), to("an empty text", ""), to("a list", []any{v}))
		switch {
		case p.schema["enum"] != nil:
			out = append(out, to("a word that is none of them", "any"), to("in capitals", strings.ToUpper(v)))
		case p.schema["pattern"] != nil || p.schema["format"] != nil:
			out = append(out, to("as people write it", map[bool]string{true: "14.10.2026", false: "8 am"}[strings.Contains(v, "-")]))
		default:
			out = append(out, to("with a line end and an escape", "two\nlines\x1b[2J"), to("3,000 letters", strings.Repeat("x", 3000)), to("another name", "nobody's"))
		}
	case bool:
		out = append(out, to("a text", "yes"), to("turned round", !v))
	case []any:
		out = append(out, to("an object", map[string]any{}), to("empty", []any{}), to("ten thousand of the first", slices.Repeat(v[:1], 10000)),
			to("the first twice", append(v[:1:1], v...)), to("nested a hundred thousand deep", raw(strings.Repeat("[", 100_000))))
	case map[string]any:
		out = append(out, to("a list", []any{}), wrong{"with an unknown field", func(p place) { p.value.(map[string]any)["colour"] = "red" }, true})
		first := slices.Sorted(maps.Keys(v))[0]
		out = append(out,
			wrong{"with a slip in " + first, func(p place) {
				m := p.value.(map[string]any)
				m[first+"s"] = m[first]
				delete(m, first)
			}, true},
			wrong{"with " + first + " twice", func(p place) {
				m := p.value.(map[string]any)
				m[first] = raw(fmt.Sprintf("%s, %q: %s", must(json.Marshal(m[first])), first, must(json.Marshal(m[first]))))
			}, true})
	}
	return out
}

func must(b []byte, err error) string {
	if err != nil {
		panic(err)
	}
	return string(b)
}
