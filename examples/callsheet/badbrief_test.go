package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// A broken brief is the demonstration with one thing wrong, in a named way, and
// what the error must say.
type broken struct {
	name  string
	brief string
	want  string // the field's path, or words
}

// breakages walks the demonstration beside its type and breaks it everywhere.
func breakages(t *testing.T) []broken {
	var whole any
	if err := json.Unmarshal(demoBrief, &whole); err != nil {
		t.Fatal(err)
	}
	var out []broken
	emit := func(way, path, want string) {
		raw, err := json.Marshal(whole)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, broken{way + " " + path, string(raw), want})
	}
	var walk func(path string, typ reflect.Type, v any, set func(any))
	walk = func(path string, typ reflect.Type, v any, set func(any)) {
		for typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
		}
		try := func(way string, wrong any) {
			set(wrong)
			emit(way, path, path)
			set(v)
		}
		switch node := v.(type) {
		case map[string]any:
			if path != "" {
				try("number for", 7.0)
				try("list for", []any{})
			}
			node["zzz"] = 1.0
			emit("unknown field in", path, join(path, "zzz"))
			delete(node, "zzz")
			for i := range typ.NumField() {
				sf := typ.Field(i)
				name, options, _ := strings.Cut(sf.Tag.Get("json"), ",")
				value, ok := node[name]
				if !ok {
					continue
				}
				field := join(path, name)
				node[name] = nil
				emit("null for", field, field)
				if !strings.Contains(options, "omitzero") {
					delete(node, name)
					emit("missing", field, field)
				}
				node[name] = value
				node[strings.ToUpper(name)] = value
				emit("upper case", field, join(path, strings.ToUpper(name)))
				delete(node, strings.ToUpper(name))
				walk(field, sf.Type, value, func(x any) { node[name] = x })
			}
		case []any:
			try("empty list for", []any{})
			try("text for", "x")
			try("too many in", make([]any, 500))
			for i, item := range node {
				if i > 1 {
					break // the others are alike
				}
				walk(fmt.Sprintf("%s[%d]", path, i), typ.Elem(), item, func(x any) { node[i] = x })
			}
		case float64:
			try("text for", "12")
			try("far too large", 1e300)
			try("far too small", -1e300)
			if typ.Kind() == reflect.Int {
				try("half a piece for", node+0.5)
			}
		case string:
			try("number for", 3.0)
			try("empty text for", "")
			try("very long text for", strings.Repeat("x", 501))
			try("control character in", "a\x1b[2Jb")
		case bool:
			try("text for", "yes")
		}
	}
	walk("", reflect.TypeFor[Brief](), whole, nil)
	return append(out, contradictions()...)
}

// contradictions are briefs in which no single field is wrong.
func contradictions() []broken {
	demo := string(demoBrief)
	swap := func(name, old, new, want string) broken {
		if !strings.Contains(demo, old) {
			panic("the demonstration no longer holds " + old)
		}
		return broken{name, strings.Replace(demo, old, new, 1), want}
	}
	return []broken{
		{"nothing", "", "not JSON"},
		{"only space", " \n", "not JSON"},
		{"an array", "[]", "want an object"},
		{"cut short", demo[:len(demo)/2], "not JSON"},
		{"trailing words", demo + " and so on", "not JSON"},
		{"two briefs", demo + demo, "not JSON"},
		{"not UTF-8", strings.Replace(demo, "Autumn", "\xff\xfe", 1), "not JSON"},
		{"ten megabytes of junk", strings.Repeat("junk", 10<<18), "longer than"},
		{"ten megabytes of space", strings.Repeat(" ", 10<<20) + demo, "longer than"},
		{"deep nesting", strings.Repeat(`{"dishes":[`, 20000), ""},
		swap("a number beyond float64", `"grams": 240`, `"grams": 1e999`, "dishes[0].frame[0].grams"),
		swap("a bare NaN", `"grams": 240`, `"grams": NaN`, "not JSON"),
		swap("a field given twice", `"title":`, `"title": "x", "title":`, "title"),
		swap("call time in words", `"08:00"`, `"eight"`, "call_time"),
		swap("a day that is not", `"2026-10-14"`, `"2026-02-30"`, "date"),
		swap("shot before the call", `"first_shot": "10:00"`, `"first_shot": "07:00"`, "first_shot"),
		swap("pressure and altitude", `"altitude_m": 210`, `"altitude_m": 210, "pressure_hpa": 990`, "room.pressure_hpa"),
		swap("unknown lamp", `"tungsten"`, `"candle"`, "lamps[0].source"),
		swap("tungsten lamp with pops", `"watts": 650`, `"watts": 650, "joules_per_pop": 5`, "lamps[0].joules_per_pop"),
		swap("tungsten lamp without power", `"watts": 650, `, ``, "lamps[0].watts"),
		swap("flash without joules", `"source": "tungsten", "watts": 650`, `"source": "flash"`, "lamps[0].joules_per_pop"),
		swap("flash with watts", `"source": "tungsten", "watts": 650`, `"source": "flash", "joules_per_pop": 5, "pops_per_minute": 3, "watts": 9`, "lamps[0].watts"),
		swap("deep freezer the warmer", `"home_c": -18, "deep_c": -38`, `"home_c": -25, "deep_c": -22`, "freezers.deep_c"),
		swap("two dishes of one name", `"Buckwheat pancakes"`, `"Spiced oat bowl"`, "dishes[1].name"),
		swap("an item twice", `"item": "poached pear half"`, `"item": "oat porridge"`, "dishes[0].frame[2].item"),
		swap("two things to do", `"scoop": {`, `"glass": {"item": "wafer", "diameter_mm": 72, "height_mm": 112, "wall_mm": 2.5, "drink_grams": 260, "drink_c": 4, "glass_c": 4, "look": "haze"}, "scoop": {`, "dishes[3]"),
		swap("an item not in the frame", `"item": "poured milk",
        "liquids"`, `"item": "gravy",
        "liquids"`, "dishes[0].pour.item"),
		swap("nothing advertised", `{"item": "brown-butter ice cream", "advertised": true, "grams": 62, "step_grams": 1},
        {"item": "wafer", "advertised": true, "count": 1}`, `{"item": "brown-butter ice cream", "advertised": false}`, "dishes[3].frame"),
		swap("a stand-in for the product", `"advertised": true, "grams": 240, "step_grams": 1`, `"advertised": true, "grams": 240, "step_grams": 1, "stand_in": "glue", "why": "whiter"`, "dishes[0].frame[0].stand_in"),
		swap("a stand-in without a reason", `, "why": "a blurred background prop that makes no claim"`, ``, "dishes[2].frame[3].why"),
		swap("an advertised item of no amount", `"advertised": true, "grams": 240, "step_grams": 1`, `"advertised": true`, "dishes[0].frame[0].grams"),
		swap("a mass without a step", `"grams": 240, "step_grams": 1`, `"grams": 240`, "dishes[0].frame[0].step_grams"),
		swap("a mass between steps", `"grams": 62, "step_grams": 0.5`, `"grams": 62.3, "step_grams": 0.5`, "dishes[4].frame[1]"),
		swap("two ways to say how thick", `"wanted_mpas": 9`, `"wanted_mpas": 9, "pours_like": {"name": "x", "kind": "dairy", "fat_percent": 10}`, "dishes[0].pour.wanted_mpas"),
		swap("no way to say how thick", `"wanted_mpas": 9, `, ``, "dishes[0].pour.wanted_mpas"),
		swap("blending the advertised syrup", `"kind": "maple", "brix": 66.5}`, `"kind": "maple", "brix": 66.5}, {"name": "water", "kind": "water"}`, "dishes[1].pour.liquids"),
		swap("temperatures crossed", `"lowest_c": 10`, `"lowest_c": 60`, "dishes[1].pour.lowest_c"),
		swap("one liquid to blend", `{"name": "whole milk", "kind": "dairy", "fat_percent": 3.5},`, ``, "dishes[0].pour.liquids"),
		swap("an unknown liquid", `"kind": "maple"`, `"kind": "engine oil"`, "dishes[1].pour.liquids[0].kind"),
		swap("milk without its fat", `"kind": "dairy", "fat_percent": 3.5`, `"kind": "dairy"`, "dishes[0].pour.liquids[0].fat_percent"),
		swap("syrup with fat", `"kind": "maple", "brix": 66.5`, `"kind": "maple", "brix": 66.5, "fat_percent": 1`, "dishes[1].pour.liquids[0].fat_percent"),
		swap("thicker than the cream", `"wanted_mpas": 9`, `"wanted_mpas": 9000`, "dishes[0].pour.wanted_mpas"),
		swap("thinner than the milk", `"wanted_mpas": 9`, `"wanted_mpas": 0.6`, "dishes[0].pour.wanted_mpas"),
		swap("syrup that would have to boil", `"wanted_mpas": 110`, `"wanted_mpas": 2`, "dishes[1].pour.wanted_mpas"),
		swap("a batch between steps", `"batch_grams": 900`, `"batch_grams": 900.4`, "dishes[0].pour.batch_grams"),
		swap("more poured than mixed", `"poured_grams": 90`, `"poured_grams": 901`, "dishes[0].pour.poured_grams"),
		swap("onto a cloud", `"onto": "film", "film_mm": 3`, `"onto": "cloud"`, "dishes[0].pour.onto"),
		swap("a film of no depth", `"onto": "film", "film_mm": 3`, `"onto": "film"`, "dishes[0].pour.film_mm"),
		swap("a dry film", `"onto": "dry plate"`, `"onto": "dry plate", "film_mm": 2`, "dishes[1].pour.film_mm"),
		swap("more syrup than is declared", `"poured_grams": 45`, `"poured_grams": 50`, "dishes[1].pour.poured_grams"),
		swap("less drink than is declared", `"drink_grams": 260`, `"drink_grams": 250`, "dishes[2].glass.drink_grams"),
		swap("more ice than is declared", `"ice_grams": 70`, `"ice_grams": 71`, "dishes[2].glass.ice_grams"),
		swap("ice that is not in the frame", `{"item": "ice",`, `{"item": "snow",`, "dishes[2].glass.ice_grams"),
		swap("real ice with a stand-in", `{"item": "ice", "advertised": true, "grams": 70, "step_grams": 1}`, `{"item": "ice", "advertised": false, "stand_in": "acrylic", "why": "stays"}`, "dishes[2].glass.ice_grams"),
		swap("an unknown look", `"look": "haze"`, `"look": "moody"`, "dishes[2].glass.look"),
		swap("ice in a warm drink below its ice", `"drink_c": 4, "ice_grams": 70`, `"drink_c": -4, "ice_grams": 70`, "dishes[2].glass"),
		swap("an unknown mix", `"mix": "vanilla ice cream"`, `"mix": "granite"`, "dishes[3].scoop.mix"),
		swap("cabinet colder than the freezer", `"cabinet_c": -12`, `"cabinet_c": -24`, "dishes[3].scoop.cabinet_c"),
		swap("cheese of no mass", `{"item": "smoked cheese", "advertised": true, "grams": 62, "step_grams": 0.5}`, `{"item": "smoked cheese", "advertised": true, "count": 3}`, "dishes[4].flatbread.item"),
		swap("a rim as wide as the bread", `"diameter_mm": 280, "slices": 8, "rim_mm": 15`, `"diameter_mm": 180, "slices": 8, "rim_mm": 90`, "dishes[4].flatbread"),
		swap("pieces of no count", `"count": 9, "grams": 162, "step_grams": 0.1`, `"grams": 162, "step_grams": 0.1`, "dishes[5].pieces.item"),
		swap("more pieces than weighed", `"count": 9, "grams": 162`, `"count": 90, "grams": 1620`, "dishes[5].pieces"),
		swap("a sum no pieces reach", `"count": 9, "grams": 162`, `"count": 9, "grams": 362`, "dishes[5].pieces"),
		swap("a piece between steps", `"grams": 17.2, "looks": 71`, `"grams": 17.23, "looks": 71`, "dishes[5].pieces"),
		swap("two pieces of one name", `"name": "A2"`, `"name": "A1"`, "dishes[5].pieces.weighed[1].name"),
		swap("pieces wider than the plate", `"piece_mm": 36`, `"piece_mm": 190`, "dishes[5].pieces"),
	}
}

// Every broken brief gets exit status 2 and one line that names the field, and
// leaves no folder behind.
func TestBrokenBriefsAreRefusedByName(t *testing.T) {
	all := breakages(t)
	if len(all) < 200 {
		t.Fatalf("%d broken briefs, want 200 or more", len(all))
	}
	dir := t.TempDir()
	file, out := filepath.Join(dir, "brief.json"), filepath.Join(dir, "sheet")
	for i, b := range all {
		if testing.Short() && i%4 != 0 {
			continue
		}
		if err := os.WriteFile(file, []byte(b.brief), 0o600); err != nil {
			t.Fatal(err)
		}
		var stdout, stderr bytes.Buffer
		if status := run([]string{"-brief", file, "-out", out}, &stdout, &stderr); status != 2 {
			t.Errorf("%s: exit status %d, want 2 (%s)", b.name, status, stderr.String())
		}
		message := stderr.String()
		if !strings.Contains(message, b.want) || strings.Count(message, "\n") != 1 || len(message) > 1500 {
			t.Errorf("%s: message %q, want one line with %q", b.name, message, b.want)
		}
		if stdout.Len() > 0 {
			t.Errorf("%s: half a sheet was printed", b.name)
		}
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		if len(entries) != 1 {
			t.Errorf("%s: left %v behind", b.name, entries)
		}
	}
	t.Logf("%d broken briefs refused", len(all))
}

// The whole message, as it reaches whoever wrote the brief.
func TestMessagesOfBrokenBriefs(t *testing.T) {
	demo := string(demoBrief)
	swap := func(old, new string) string {
		if !strings.Contains(demo, old) {
			t.Fatalf("the demonstration no longer holds %s", old)
		}
		return strings.Replace(demo, old, new, 1)
	}
	long := strings.Repeat("k", 500_000)
	for _, c := range []struct{ brief, want string }{
		{swap(`"client":`, `"cliant":`), "cliant: unknown field"},
		{swap(`"wanted_mpas":`, `"wanted_mpa":`), "dishes[0].pour.wanted_mpa: unknown field"},
		{swap(`"client":`, `"\u001b[2Jevil\n":`), `"\x1b[2Jevil\n": unknown field`},
		{swap(`"client":`, `"na.me": 1, "client":`), `"na.me": unknown field`},
		{swap(`"client":`, `"": 1, "client":`), `"": unknown field`},
		{swap(`"client":`, `"`+long+`": 1, "client":`), `"` + long[:40] + `...": unknown field`},
		{swap(`"client":`, `"title": "x", "client":`), "title: given twice"},
		{swap(`"wanted_mpas": 9`, `"wanted_mpas": "9"`), "dishes[0].pour.wanted_mpas: is a text, want a number"},
		{swap(`"wanted_mpas": 9`, `"wanted_mpas": [9]`), "dishes[0].pour.wanted_mpas: is a list, want a number"},
		{swap(`"wanted_mpas": 9`, `"wanted_mpas": {}`), "dishes[0].pour.wanted_mpas: is an object, want a number"},
		{swap(`"wanted_mpas": 9`, `"wanted_mpas": true`), "dishes[0].pour.wanted_mpas: is true or false, want a number"},
		{swap(`"wanted_mpas": 9`, `"wanted_mpas": null`), "dishes[0].pour.wanted_mpas: is null: leave it out instead"},
		{swap(`"wanted_takes": 2`, `"wanted_takes": 2.5`), "dishes[0].wanted_takes: is a number, want a whole number"},
		{swap(`"title": `, `"title": 7, "x": `), "title: is a number, want a text"},
		{swap(`"2026-10-14"`, `"2026-02-30"`), `date: "2026-02-30": want a day of the calendar, as 2026-10-14`},
		{swap(`"rh_percent": `, `"rh_percent": 0.`), "room.rh_percent: is 0."},
		{swap(`"Spiced oat bowl"`, `"Spiced\u202eoat bowl"`), "dishes[0].name: has a control character at byte 6"},
		{swap(`"Spiced oat bowl"`, `"Spiced\u009boat bowl"`), "dishes[0].name: has a control character at byte 6"},
		{swap(`{"item": "linen and spoon", "advertised": false}`, `{"item": "linen and spoon", "advertised": false, "grams": 0.35, "step_grams": 0.1}`), "dishes[0].frame[3]: "},
		{"[]", "the brief is a list, want an object: a { and its fields"},
		{`"text"`, "the brief is a text, want an object: a { and its fields"},
		{"7", "the brief is a number, want an object: a { and its fields"},
		{"null", "title: missing"},
		{"{}", "title: missing"},
		{"", "the brief is not JSON at byte 0: unexpected EOF"},
	} {
		b, err := ReadBrief(strings.NewReader(c.brief))
		if err == nil {
			_, err = b.Plan()
		}
		// A want that ends open is the field and the beginning of a message of the library.
		open := strings.HasSuffix(c.want, ": ") || strings.HasSuffix(c.want, ".")
		if err == nil || err.Error() != c.want && !(open && strings.HasPrefix(err.Error(), c.want)) {
			t.Errorf("%.80s...: %v, want %s", c.brief, err, c.want)
		}
	}
}

// Notepad and its like begin a file with a byte order mark.
func TestAByteOrderMarkIsSkipped(t *testing.T) {
	with, err := ReadBrief(strings.NewReader("\uFEFF" + string(demoBrief)))
	if err != nil {
		t.Fatal(err)
	}
	without, err := ReadBrief(bytes.NewReader(demoBrief))
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(with, without) {
		t.Error("the brief is another one")
	}
	if _, err := ReadBrief(strings.NewReader("\uFEFF\uFEFF{}")); err == nil {
		t.Error("a second mark is no white space")
	}
}

// Each number of the brief states its limits.
func TestEveryNumberHasLimits(t *testing.T) {
	var walk func(typ reflect.Type)
	n := 0
	walk = func(typ reflect.Type) {
		for i := range typ.NumField() {
			sf := typ.Field(i)
			ft := sf.Type
			for ft.Kind() == reflect.Pointer || ft.Kind() == reflect.Slice {
				ft = ft.Elem()
			}
			switch ft.Kind() {
			case reflect.Struct:
				walk(ft)
			case reflect.Float64, reflect.Int:
				n++
				if low, high := limits(sf); !(low < high) {
					t.Errorf("%s.%s: limits %g..%g", typ.Name(), sf.Name, low, high)
				}
			}
		}
	}
	walk(reflect.TypeFor[Brief]())
	if n < 40 {
		t.Errorf("walked only %d numbers", n)
	}
}
