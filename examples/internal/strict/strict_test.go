package strict

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.org/honestplate"
)

type word string

func (w *word) UnmarshalText(b []byte) error {
	if string(b) != "led" && string(b) != "flash" {
		return &honestplate.InputError{Got: string(b), Want: "led or flash"}
	}
	*w = word(b)
	return nil
}

type lamp struct {
	Name   string               `json:"name"`
	Source word                 `json:"source"`
	Watts  float64              `json:"watts,omitzero" range:"1,20000"`
	WallC  honestplate.Optional `json:"wall_c,omitzero" range:"-40,40"`
}

type day struct {
	Title string   `json:"title"`
	Order string   `json:"order,omitzero" words:"fixed,free"`
	Hands int      `json:"hands,omitzero" range:"1,9"`
	Dry   bool     `json:"dry,omitzero"`
	Lamps []lamp   `json:"lamps,omitzero" range:"0,3"`
	Best  *lamp    `json:"best,omitzero"`
	Notes []string `json:"notes,omitzero"`
}

func TestWhatIsRightIsRead(t *testing.T) {
	text := "\ufeff{\r\n \"title\": \"Tag \\u00e9\",\r\n \"order\":\"free\", \"hands\": 2, \"dry\": true,\r\n" +
		`"lamps":[{"name":"a","source":"led","watts":5.5,"wall_c":0}], "best":{"name":"b","source":"flash","wall_c":null}, "notes":["x","y"]}`
	var d day
	if err := Read([]byte(text), &d); err != nil {
		t.Fatal(err)
	}
	want := day{Title: "Tag é", Order: "free", Hands: 2, Dry: true, Lamps: []lamp{{"a", "led", 5.5, honestplate.Some(0)}},
		Best: &lamp{Name: "b", Source: "flash"}, Notes: []string{"x", "y"}}
	if !reflect.DeepEqual(d, want) {
		t.Errorf("got %+v", d)
	}
}

func TestAllFaultsAtOnceByLineAndField(t *testing.T) {
	text := `{
 "titel": "x",
 "hands": 2.5,
 "order": "random",
 "dry": "yes",
 "lamps": [
  {"name": "a", "source": "sun", "watts": 1e9},
  {"source": "led", "wall_c": 99, "wall_c": 1},
  7
 ],
 "notes": "n"
}`
	err := Read([]byte(text), new(day))
	want := `line 1: title is missing, want it given
line 2: titel is not a field here, want title (perhaps that), or one of title, order, hands, dry, lamps, best, notes
line 3: hands is 2.5, want a whole number below two thousand million
line 4: order is "random", want one of fixed, free
line 5: dry is the text "yes", want true or false
line 7: lamps[0].source is sun, want led or flash
line 7: lamps[0].watts is 1e9, want 1 to 20000
line 8: lamps[1].wall_c is 99, want -40 to 40
line 8: lamps[1].wall_c is given twice, want it once
line 8: lamps[1].name is missing, want it given
line 9: lamps[2] is the number 7, want an object { }
line 11: notes is the text "n", want a list [ ]`
	if err == nil || err.Error() != want {
		t.Errorf("got:\n%v\nwant:\n%s", err, want)
	}
	if !errors.Is(err, honestplate.ErrInput) {
		t.Error("the faults are not of the vocabulary")
	}
}

func TestWhatIsNoJSONIsToldByLine(t *testing.T) {
	for text, want := range map[string]string{
		"":                       "line 1: file is empty, want a JSON object",
		" \n ":                   "line 1: file is empty, want a JSON object",
		"[]":                     "line 1: file is a list, want an object { }",
		"{\n\"title\": \"x\"":    "line 2: file is not JSON here: it ends too early, want JSON: look for a comma, a quote or a bracket here or on the line before",
		"\xff\xfe{\x00}\x00":     "line 1: file is UTF-16, want UTF-8: save it again with that encoding",
		"{\x00}\x00":             "line 1: file is UTF-16, want UTF-8: save it again with that encoding",
		"{\"title\":\" \"}":      "line 1: title is an empty text, want some words",
		"{\"title\":\"a\"}{":     "",
		"{\"title\":\"a\\nb\"}":  `line 1: title is "a b", want a text without line ends and other control characters`,
		"{\"\\u001b[2J\\n\": 1}": "",
	} {
		err := Read([]byte(text), new(day))
		if err == nil || want != "" && err.Error() != want {
			t.Errorf("%q: got %v, want %s", text, err, want)
			continue
		}
		if strings.ContainsAny(err.Error(), "\x1b\x00") {
			t.Errorf("%q: control characters in %q", text, err)
		}
	}
	if err := Read(make([]byte, MostBytes+1), new(day)); err == nil {
		t.Error("a huge file is read")
	}
	many := strings.Repeat(`{"name":1,"source":"led"},`, 3)
	if err := Read([]byte(`{"title":"x","notes":[`+strings.Repeat("1,", 99)+`1],"lamps":[`+many[:len(many)-1]+`]}`), new(day)); err == nil || !strings.HasSuffix(err.Error(), "and 53 more") {
		t.Errorf("got %v", err)
	}
}

func TestLaterFaultsFindTheirLine(t *testing.T) {
	text := []byte("{\n\"title\": \"x\",\n\"lamps\": [\n{\"name\":\"a\",\"source\":\"led\"},\n{\"name\":\"b\",\n\"source\":\"led\"}]}")
	err := In(text, nil, honestplate.In("lamps[1]", honestplate.Positive("source.watts", 0, "W")), errors.New("other"))
	want := "line 1: other\nline 6: lamps[1].source.watts is 0 W, want a finite number above 0"
	if err == nil || err.Error() != want {
		t.Errorf("got %v", err)
	}
	if In(text, nil) != nil {
		t.Error("no fault became an error")
	}
}

func TestSchemaSaysWhatIsRead(t *testing.T) {
	b, err := Schema(reflect.TypeFor[day](), "day")
	if err != nil {
		t.Fatal(err)
	}
	var s struct {
		Required   []string
		Properties map[string]struct {
			Type             string
			Minimum, Maximum float64
			Enum             []string
			Items            struct{ Properties map[string]any }
		}
	}
	if err := json.Unmarshal(b, &s); err != nil {
		t.Fatal(err)
	}
	if fmt.Sprint(s.Required) != "[title]" || s.Properties["hands"].Maximum != 9 || s.Properties["hands"].Type != "integer" ||
		len(s.Properties["order"].Enum) != 2 || len(s.Properties["lamps"].Items.Properties) != 4 {
		t.Errorf("got %s", b)
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(`{"title":"x","lamps":[{"name":"a","source":"led"}]}`))
	f.Add([]byte("\ufeff{\"hands\": 1e400}"))
	f.Fuzz(func(t *testing.T, b []byte) {
		var d day
		if err := Read(b, &d); err != nil && strings.ContainsAny(err.Error(), "\x1b\x00\r") {
			t.Errorf("control characters in %q", err)
		}
	})
}
