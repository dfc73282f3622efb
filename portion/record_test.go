package portion

import (
	"bytes"
	"encoding/json"
	"errors"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"

	"example.org/honestplate/portion/internal/decimal"
)

// goodRecord is invented.
func goodRecord() Record {
	return Record{
		Picture: "flatbread, pulled slice",
		Date:    "2026-10-05",
		Items: []RecordItem{
			{Item: "smoked cheese", Advertised: true, Declared: Amount{Grams: 62, StepGrams: 0.5}, Planned: &Amount{Grams: 62, StepGrams: 0.5},
				Weighed: &Weighed{Grams: 62, ErrorGrams: 0.5, Scale: "class II, d = 0.1 g"}, How: "laid over the cuts before baking"},
			{Item: "olives", Declared: Amount{Count: 9}, Weighed: &Weighed{Count: 9}},
			{Item: "ice", Declared: Amount{Grams: 120, StepGrams: 1}, StandIn: &StandIn{"acrylic cubes", "not the advertised item; melts in 6 minutes"}},
		},
		Cautions: []string{"not eaten after the shoot"},
		Signed:   []Signature{{"A. Invented", "food stylist", "2026-10-05"}},
	}
}

func write(t *testing.T, r Record) string {
	t.Helper()
	var b bytes.Buffer
	if err := r.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestRecordReadsBackAsWritten(t *testing.T) {
	for _, r := range []Record{
		goodRecord(),
		{Picture: "x", Items: []RecordItem{{Item: "y", Declared: Amount{Count: 1}}}},
		{Picture: "x", Items: []RecordItem{{Item: "y", Declared: Amount{Count: 1}}}, Cautions: []string{}, Signed: []Signature{}},
		{Picture: "<&\u2028 \x01\"", Items: []RecordItem{{Item: "\t|", Declared: Amount{Grams: 0.1, StepGrams: 0.1}}}},
	} {
		text := write(t, r)
		back, err := ReadRecord(strings.NewReader(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if d := cmp.Diff(r, back); d != "" {
			t.Error(d)
		}
		var direct Record
		if err := json.Unmarshal([]byte(text), &direct); err != nil || !reflect.DeepEqual(direct, r) {
			t.Errorf("json.Unmarshal: %v, %+v", err, direct)
		}
		if again := write(t, back); again != text {
			t.Errorf("bytes changed:\n%s\n%s", text, again)
		}
	}
}

func TestRandomRecordsLoseNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	word := func() string {
		letters := []rune("abc <>&|*_`\"\\\u00e9\U0001f9c0\n\u2028")
		out := []rune{'x'}
		for range r.IntN(8) {
			out = append(out, letters[r.IntN(len(letters))])
		}
		return string(out)
	}
	for range 1000 {
		rec := Record{Picture: word()}
		for range 1 + r.IntN(4) {
			i := RecordItem{Item: word(), Advertised: r.IntN(2) == 0, How: word()}
			step := []float64{0.1, 0.5, 1, 0.01}[r.IntN(4)]
			i.Declared = Amount{Grams: decimal.Of(step).Times(1 + r.Int64N(1e6)), StepGrams: step, Count: r.IntN(3)}
			if r.IntN(2) == 0 {
				p := i.Declared
				i.Planned = &p
			}
			if r.IntN(2) == 0 {
				i.Weighed = &Weighed{r.Float64() * 1000, r.Float64(), r.IntN(5), word()}
			}
			if !i.Advertised && r.IntN(2) == 0 {
				i.StandIn = &StandIn{word(), word()}
			}
			rec.Items = append(rec.Items, i)
		}
		for range r.IntN(3) {
			rec.Cautions = append(rec.Cautions, word())
			rec.Signed = append(rec.Signed, Signature{word(), word(), "2026-02-28"})
		}
		var b bytes.Buffer
		if err := rec.Write(&b); err != nil {
			t.Fatal(err)
		}
		back, err := ReadRecord(&b)
		if err != nil || !reflect.DeepEqual(rec, back) {
			t.Fatalf("%v\n%+v\n%+v", err, rec, back)
		}
		// One heading each, whatever the names hold.
		if n := strings.Count(rec.Statement(), "\n## Signed\n"); n != 1 {
			t.Fatalf("%d headings", n)
		}
	}
}

func TestRecordReaderRefusesByName(t *testing.T) {
	good := write(t, goodRecord())
	for _, c := range []struct{ name, old, new, field string }{
		{"unknown field", `"picture":`, `"lens": "50 mm", "picture":`, "lens"},
		{"unknown inner field", `"reason":`, `"excuse": "", "reason":`, "items[2].stand_in.excuse"},
		{"other spelling", `"date": "2026-10-05",` + "\n  \"items\"", `"Date": "2026-10-05", "items"`, "Date"},
		{"repeated field", `"picture":`, `"picture": "first", "picture":`, "picture"},
		{"other schema", "record/1", "record/2", "schema"},
		{"null", `"cautions": [`, `"cautions": null, "signed": [`, "cautions"},
		{"list for text", `"how": "laid over the cuts before baking"`, `"how": ["a"]`, "items[0].how"},
		{"object for text", `"how": "laid over the cuts before baking"`, `"how": {"a": 1}`, "items[0].how"},
		{"text for number", `"count": 9`, `"count": "9"`, "items[1].declared.count"},
		{"object for list", `"cautions": [`, `"cautions": {"a": [`, "cautions"},
		{"advertised with stand-in", `"advertised": true,`, `"advertised": true, "stand_in": {"what": "wax", "reason": "heat"},`, "Items[0].StandIn"},
		{"off the step", `"grams": 62,`, `"grams": 62.3,`, "Items[0].Declared.Grams"},
		{"negative weighed", `"grams": 62,` + "\n        \"error", `"grams": -1, "error`, "Items[0].Weighed.Grams"},
		{"number too large", `"grams": 120`, `"grams": 1e999`, "items[2].declared.grams"},
		{"no reason", `"reason": "not the advertised item; melts in 6 minutes"`, `"reason": " "`, "Items[2].StandIn.Reason"},
		{"bad day", `"date": "2026-10-05",` + "\n  \"items\"", `"date": "5 October", "items"`, "Date"},
		{"trailing text", "\n}\n", "\n}\n{}", "file"},
		{"cut short", "\n}\n", "\n", "file"},
		{"not UTF-8", "flatbread", "flat\xffbread", "file"},
		{"no JSON", good, "hello", "file"},
		{"list", good, "[]", "file"},
		{"number", good, "1", "file"},
		{"empty", good, "", "file"},
		{"deep nesting", good, strings.Repeat("[", 1<<20), "file"},
		{"deep nesting inside", `"cautions": [`, `"cautions": ` + strings.Repeat("[", 1<<20), "cautions[0]"},
		{"junk", good, strings.Repeat("x", 10<<20), "file"},
	} {
		text := strings.Replace(good, c.old, c.new, 1)
		if text == good {
			t.Fatalf("%s: nothing replaced", c.name)
		}
		_, err := ReadRecord(strings.NewReader(text))
		if !fieldIs(err, c.field) {
			t.Errorf("%s: want an error at %s, have %v", c.name, c.field, err)
		}
	}
}

func TestRecordReaderTellsUnknownFromRepeated(t *testing.T) {
	for text, want := range map[string]string{
		`{"lens": "50 mm"}`:                `honestplate: lens is unknown, want a field that the schema has`,
		`{"picture": "a", "picture": "b"}`: `honestplate: picture is there twice, want the field once`,
	} {
		if _, err := ReadRecord(strings.NewReader(text)); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", text, err, want)
		}
	}
}

func TestRecordKeepsAnAdvertisedItemAsDeclared(t *testing.T) {
	for act, change := range map[string]func(*RecordItem){
		Replace: func(i *RecordItem) { i.StandIn = &StandIn{"wax", "heat"} },
		Exceed:  func(i *RecordItem) { i.Planned = &Amount{Grams: 62.5, StepGrams: 0.5} },
		Reduce:  func(i *RecordItem) { i.Planned = &Amount{Grams: 61.5, StepGrams: 0.5} },
	} {
		r := goodRecord()
		change(&r.Items[0])
		var e *honestplate.RefusedError
		err := r.Validate()
		if !errors.As(err, &e) || !errors.Is(err, honestplate.ErrAdvertised) || !strings.Contains(e.Reason, string(act)) {
			t.Errorf("%s: have %v", act, err)
		}
		if _, err := json.Marshal(r); !errors.Is(err, honestplate.ErrAdvertised) {
			t.Errorf("%s: written all the same: %v", act, err)
		}
		r.Items[0].Advertised = false
		if err := r.Validate(); err != nil {
			t.Errorf("%s of another item: %v", act, err)
		}
	}
}

func TestRecordRefusesWhatCannotBeWritten(t *testing.T) {
	for field, change := range map[string]func(*Record){
		"Picture":                     func(r *Record) { r.Picture = "" },
		"Items":                       func(r *Record) { r.Items = nil },
		"Items[1].Item":               func(r *Record) { r.Items[1].Item = "\xff" },
		"Items[0].Declared.Grams":     func(r *Record) { r.Items[0].Declared = Amount{} },
		"Items[1].Planned.Grams":      func(r *Record) { r.Items[1].Planned = &Amount{} },
		"Items[1].How":                func(r *Record) { r.Items[1].How = "\xff" },
		"Items[1].Weighed.ErrorGrams": func(r *Record) { r.Items[1].Weighed = &Weighed{ErrorGrams: -1} },
		"Items[1].Weighed.Count":      func(r *Record) { r.Items[1].Weighed = &Weighed{Count: -1} },
		"Items[2].StandIn.What":       func(r *Record) { r.Items[2].StandIn = &StandIn{Reason: "x"} },
		"Cautions[0]":                 func(r *Record) { r.Cautions[0] = "" },
		"Signed[0].Name":              func(r *Record) { r.Signed[0].Name = "" },
		"Signed[0].Role":              func(r *Record) { r.Signed[0].Role = "\xff" },
		"Signed[0].Date":              func(r *Record) { r.Signed[0].Date = "2026-13-01" },
	} {
		r := goodRecord()
		change(&r)
		if err := r.Validate(); !fieldIs(err, field) {
			t.Errorf("want an error at %s, have %v", field, err)
		}
	}
}

// fieldIs reports whether the cause of an error is about the field.
func fieldIs(err error, field string) bool {
	switch e := honestplate.Cause(err).(type) {
	case *honestplate.InputError:
		return e.Field == field
	case *honestplate.RefusedError:
		return e.Field == field
	}
	return false
}

func TestStatementSaysWhatIsMissing(t *testing.T) {
	r := Record{Picture: "x", Items: []RecordItem{{Item: "y", Declared: Amount{Count: 1}}}}
	s := r.Statement()
	for _, want := range []string{"no plan", "not weighed", "open", "None: every item", "Not signed yet"} {
		if !strings.Contains(s, want) {
			t.Errorf("no %q in\n%s", want, s)
		}
	}
	r = goodRecord()
	r.Items[0].Weighed.Grams = 61.9
	r.Items[0].Declared.Count, r.Items[0].Planned.Count = 2, 2
	r.Items[1].Weighed.Count = 8
	s = r.Statement()
	for _, want := range []string{"-0.1 g, pieces not counted", "-1 pieces"} {
		if !strings.Contains(s, want) {
			t.Errorf("no %q in\n%s", want, s)
		}
	}
}

func FuzzReadRecord(f *testing.F) {
	var b bytes.Buffer
	if err := goodRecord().Write(&b); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	f.Add([]byte(`{"schema":"honestplate/record/1","picture":"x","items":[{"item":"y","declared":{"count":1}}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := ReadRecord(bytes.NewReader(data))
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := r.Write(&out); err != nil {
			t.Fatalf("read but not written: %v", err)
		}
		back, err := ReadRecord(&out)
		if err != nil || !reflect.DeepEqual(r, back) {
			t.Fatalf("%v\n%+v\n%+v", err, r, back)
		}
		_ = r.Statement()
	})
}

// What goes through encoding/json is read as strictly and written as exactly.
func FuzzRecordJSON(f *testing.F) {
	f.Add([]byte(`{"schema":"honestplate/record/1","picture":"x","items":[{"item":"y","declared":{"count":1}}]}`), "x", 62.0, 0.5, 9, true)
	f.Add([]byte(`{"schema":"honestplate/record/2"}`), "\xff", -1.0, 0.3, -1, false)
	f.Fuzz(func(t *testing.T, data []byte, name string, grams, step float64, count int, advertised bool) {
		var read Record
		if err := read.UnmarshalJSON(data); err != nil {
			if !errors.Is(err, honestplate.ErrInput) || !reflect.DeepEqual(read, Record{}) {
				t.Fatalf("%v leaves %+v", err, read)
			}
		}
		made := Record{Picture: name, Items: []RecordItem{{
			Item: name, Advertised: advertised, Declared: Amount{grams, step, count},
			Planned: &Amount{grams, step, count}, Weighed: &Weighed{Grams: grams, Count: count},
		}}}
		for _, r := range []Record{read, made} {
			text, err := r.MarshalJSON()
			if (err == nil) != (r.Validate() == nil) {
				t.Fatalf("written with %v, valid with %v", err, r.Validate())
			}
			if err != nil {
				continue
			}
			var back Record
			if err := back.UnmarshalJSON(text); err != nil || !reflect.DeepEqual(r, back) {
				t.Fatalf("%v\n%+v\n%+v", err, r, back)
			}
			for _, i := range r.Items {
				if d := i.Declaration(); i.Advertised && d.Validate() != nil {
					t.Fatalf("%+v of a valid record", d)
				}
			}
		}
	})
}
