package record

import (
	"bytes"
	"crypto/ed25519"
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/jcs"
	"example.org/honestplate/portion/internal/seal"
)

// goodRecord is invented.
func goodRecord() Record {
	declared := portion.Amount{Grams: 62, StepGrams: 0.5, MinusGrams: 1, PlusGrams: 1}
	return Record{
		Revision: 1,
		Picture:  "flatbread, pulled slice",
		Date:     "2026-10-05",
		Takes: []Take{
			{Number: 1, Time: "2026-10-05T11:30:00+02:00", File: "0001.raw", SHA256: strings.Repeat("0a", 32)},
			{Number: 2, File: "0002.raw", Chosen: true},
		},
		Specification: &SpecificationRef{"flatbread", "3", strings.Repeat("b1", 32), "T. Invented", "2026-12-31"},
		SourceType:    "digitalCapture",
		Items: []Item{
			{Item: "smoked cheese", Advertised: true, Declared: declared, Planned: &declared, Favour: 0.3,
				Weighed: &Weighed{Grams: 62, ErrorGrams: 0.5, LeastGrams: 2, Scale: "class II, d = 0.1 g", Basis: Raw}, How: "laid over the cuts before baking"},
			{Item: "olives", Declared: portion.Amount{Count: 9}, Weighed: &Weighed{Count: 9}},
			{Item: "ice", Declared: portion.Amount{Grams: 120, StepGrams: 1}, StandIn: &StandIn{"acrylic cubes", "not the advertised item; melts in 6 minutes"}},
		},
		Edits:         []Edit{{"c2pa.cropped", "", "square"}, {"com.example.liquify", "humanEdits", "straightened"}},
		EditsComplete: true,
		Cautions:      []string{"not eaten after the shoot"},
		Signed:        []Signature{{"A. Invented", "food stylist", "2026-10-05"}},
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

// fieldOf returns the field that an error is about, or its text.
func fieldOf(err error) string {
	switch e := honestplate.Cause(err).(type) {
	case nil:
		return ""
	case *honestplate.InputError:
		return e.Field
	case *honestplate.RangeError:
		return e.Field
	case *honestplate.RefusedError:
		return e.Field
	}
	return err.Error()
}

func TestRecordReadsBackAsWritten(t *testing.T) {
	for _, r := range []Record{
		goodRecord(),
		{Revision: 1, Picture: "x", Items: []Item{{Item: "y", Declared: portion.Amount{Count: 1}}}},
		{Revision: 1, Picture: "x", Items: []Item{{Item: "y", Declared: portion.Amount{Count: 1}}}, Cautions: []string{}, Signed: []Signature{}},
		{Revision: 7, Previous: strings.Repeat("ff", 32), Picture: "<&\u2028 \x01\"", Items: []Item{{Item: "\t|\u202e", Declared: portion.Amount{Grams: 0.1, StepGrams: 0.1}}}},
	} {
		text := write(t, r)
		back, err := Read(strings.NewReader(text))
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
		file, err := jcs.Canonical([]byte(text))
		canonical, err2 := r.canonical()
		if err != nil || err2 != nil || string(file) != string(canonical) {
			t.Errorf("the file's canonical bytes are not the record's: %v, %v", err, err2)
		}
		if strings.Contains(text, "\u202e") {
			t.Error("a control that turns text stands in the file")
		}
	}
}

func TestRandomRecordsLoseNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	word := func() string {
		letters := []rune("abc <>&|*_`\"\\\u00e9\U0001f9c0\n\u2028\u202e")
		out := []rune{'x'}
		for range r.IntN(8) {
			out = append(out, letters[r.IntN(len(letters))])
		}
		return string(out)
	}
	rounds := 5_000
	if testing.Short() {
		rounds = 500
	}
	for range rounds {
		rec := Record{Revision: 1, Picture: word(), Date: "2026-02-27"}
		for range 1 + r.IntN(4) {
			i := Item{Item: word(), Advertised: r.IntN(2) == 0, How: word(), Favour: float64(r.IntN(9)) / 10}
			steps := 1 + r.IntN(1e6)
			i.Declared = portion.Amount{Grams: float64(steps), MinusGrams: r.Float64() * float64(steps), PlusGrams: r.Float64(), Count: r.IntN(3)}
			if r.IntN(2) == 0 {
				p := i.Declared
				i.Planned = &p
			}
			if r.IntN(2) == 0 {
				i.Weighed = &Weighed{Grams: float64(steps) + r.NormFloat64()/3, ErrorGrams: r.Float64(), Count: 1 + r.IntN(3), Scale: word()}
				if i.Weighed.Grams < 0 {
					i.Weighed.Grams = 0
				}
			}
			if !i.Advertised && r.IntN(2) == 0 {
				i.StandIn = &StandIn{word(), word()}
			}
			rec.Items = append(rec.Items, i)
		}
		for k := range r.IntN(3) {
			rec.Cautions = append(rec.Cautions, word())
			rec.Signed = append(rec.Signed, Signature{word(), word(), "2026-02-28"})
			rec.Takes = append(rec.Takes, Take{Number: k + 1, File: word(), Chosen: r.IntN(2) == 0})
			rec.Edits = append(rec.Edits, Edit{"c2pa.edited", "", word()})
		}
		var b bytes.Buffer
		if err := rec.Write(&b); err != nil {
			t.Fatal(err)
		}
		back, err := Read(&b)
		if err != nil || !reflect.DeepEqual(rec, back) {
			t.Fatalf("%v\n%+v\n%+v", err, rec, back)
		}
		statement := rec.Statement()
		// One heading each, whatever the names hold, and nothing that turns text.
		if n := strings.Count(statement, "\n## Signed\n"); n != 1 || strings.ContainsAny(statement, "\u202e\u2028") {
			t.Fatalf("%d headings in %q", n, statement)
		}
	}
}

func TestRecordReaderRefusesByName(t *testing.T) {
	good := write(t, goodRecord())
	for _, c := range []struct{ name, old, new, field string }{
		{"unknown field", `"picture":`, `"lens": "50 mm", "picture":`, "lens"},
		{"unknown inner field", `"reason":`, `"excuse": "", "reason":`, "items[2].stand_in.excuse"},
		{"other spelling", `"date": "2026-10-05",` + "\n  \"source", `"Date": "2026-10-05", "source`, "Date"},
		{"other schema", "record/2", "record/1", "schema"},
		{"null", `"edits_complete": true`, `"edits_complete": null`, "edits_complete"},
		{"says nothing", `"edits_complete": true`, `"edits_complete": false`, "edits_complete"},
		{"a verdict of its own", `"verdict": "agrees"`, `"verdict": "differs"`, "items[0].verdict"},
		{"a weight that no longer agrees", `"grams": 62,` + "\n        \"error", `"grams": 95, "error`, "items[0].verdict"},
		{"list for text", `"how": "laid over the cuts before baking"`, `"how": ["a"]`, "items.how"},
		{"text for number", `"count": 9`, `"count": "9"`, "items.declared.count"},
		{"advertised with stand-in", `"advertised": true,`, `"advertised": true, "stand_in": {"what": "wax", "reason": "heat"},`, "items[0].stand_in"},
		{"off the step", `"grams": 62,`, `"grams": 62.3,`, ""},
		{"negative weighed", `"grams": 62,` + "\n        \"error", `"grams": -1, "error`, "items[0].weighed.grams"},
		{"no reason", `"reason": "not the advertised item; melts in 6 minutes"`, `"reason": " "`, "items[2].stand_in.reason"},
		{"bad day", `"date": "2026-10-05",` + "\n  \"source", `"date": "5 October", "source`, "date"},
		{"list", good, "[]", "schema"},
		{"number", good, "1", "schema"},
	} {
		text := strings.Replace(good, c.old, c.new, 1)
		if text == good {
			t.Fatalf("%s: nothing replaced", c.name)
		}
		_, err := Read(strings.NewReader(text))
		if got := fieldOf(err); err == nil || c.field != "" && got != c.field {
			t.Errorf("%s: want an error at %s, have %v", c.name, c.field, err)
		}
	}
	for name, text := range map[string]string{
		"repeated field":   strings.Replace(good, `"picture":`, `"picture": "first", "picture":`, 1),
		"number too large": strings.Replace(good, `"grams": 120`, `"grams": 1e999`, 1),
		"trailing text":    good + "{}",
		"cut short":        good[:len(good)-2],
		"not UTF-8":        strings.Replace(good, "flatbread", "flat\xffbread", 1),
		"no JSON":          "hello",
		"empty":            "",
		"deep nesting":     strings.Repeat("[", 1<<20),
		"junk":             strings.Repeat("x", 10<<20),
	} {
		if _, err := Read(strings.NewReader(text)); !errors.Is(err, honestplate.ErrInput) || !strings.HasPrefix(fieldOf(err), "file") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := Read(nil); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no reader: %v", err)
	}
}

func TestRecordKeepsAnAdvertisedItemAsDeclared(t *testing.T) {
	for act, change := range map[string]func(*Item){
		portion.Replace: func(i *Item) { i.StandIn = &StandIn{"wax", "heat"} },
		portion.Exceed:  func(i *Item) { i.Planned = &portion.Amount{Grams: 62.5, StepGrams: 0.5} },
		portion.Reduce:  func(i *Item) { i.Planned = &portion.Amount{Grams: 61.5, StepGrams: 0.5} },
	} {
		r := goodRecord()
		change(&r.Items[0])
		if err := r.Validate(); !errors.Is(err, honestplate.ErrAdvertised) || !strings.Contains(err.Error(), act) {
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
	for want, change := range map[string]func(*Record){
		"Revision":                     func(r *Record) { r.Revision = 0 },
		"Previous":                     func(r *Record) { r.Revision = 2 },
		"Picture":                      func(r *Record) { r.Picture = "" },
		"SourceType":                   func(r *Record) { r.SourceType = "digitalArt" },
		"Takes[1].Number":              func(r *Record) { r.Takes[1].Number = 1 },
		"Takes[0].Number":              func(r *Record) { r.Takes[0].Number = 0 },
		"Takes[0].Time":                func(r *Record) { r.Takes[0].Time = "noon" },
		"Takes[0].SHA256":              func(r *Record) { r.Takes[0].SHA256 = "AB" },
		"Takes[0].File":                func(r *Record) { r.Takes[0].File = "\xff" },
		"Specification.SHA256":         func(r *Record) { r.Specification.SHA256 = "" },
		"Items":                        func(r *Record) { r.Items = nil },
		"Items[1].Item":                func(r *Record) { r.Items[1].Item = "\xff" },
		"Items[1].How":                 func(r *Record) { r.Items[1].How = "\xff" },
		"Items[1].Favour":              func(r *Record) { r.Items[1].Favour = 2 },
		"Items[1].Weighed.Grams":       func(r *Record) { r.Items[1].Weighed = &Weighed{} },
		"Items[1].Weighed.Count":       func(r *Record) { r.Items[1].Weighed = &Weighed{Count: -1} },
		"Items[1].Weighed.Basis":       func(r *Record) { r.Items[1].Weighed.Basis = "baked" },
		"Items[2].StandIn.What":        func(r *Record) { r.Items[2].StandIn = &StandIn{Reason: "x"} },
		"Edits[0].Action":              func(r *Record) { r.Edits[0].Action = "c2pa.sharpened" },
		"Edits[1].Action":              func(r *Record) { r.Edits[1].Action = "liquify" },
		"Edits[1].SourceType":          func(r *Record) { r.Edits[1].SourceType = "made up" },
		"Cautions[0]":                  func(r *Record) { r.Cautions[0] = "" },
		"Signed[0].Name":               func(r *Record) { r.Signed[0].Name = "" },
		"Signed[0].Role":               func(r *Record) { r.Signed[0].Role = "\xff" },
		"Signed[0].Date":               func(r *Record) { r.Signed[0].Date = "2026-10-04" },
		"Items[0].Declared.Grams":      func(r *Record) { r.Items[0].Declared = portion.Amount{} },
		"Items[0].Planned.Grams":       func(r *Record) { r.Items[0].Planned = &portion.Amount{} },
		"Items[1].Declared.PlusCount":  func(r *Record) { r.Items[1].Declared.PlusCount = -1 },
		"Items[1].Declared.MinusCount": func(r *Record) { r.Items[1].Declared.MinusCount = 10 },
		"Items[1].Declared.PlusGrams":  func(r *Record) { r.Items[1].Declared.PlusGrams = 1 },
		"Items[0].Declared.MinusGrams": func(r *Record) { r.Items[0].Declared.MinusGrams = 63 },
	} {
		r := goodRecord()
		change(&r)
		if err := r.Validate(); fieldOf(err) != want {
			t.Errorf("want an error at %s, have %v", want, err)
		}
	}
}

// What was weighed is a fact: it is written down as it was, and its verdict beside it.
func TestRecordNamesWhatIsOff(t *testing.T) {
	for _, c := range []struct {
		grams, wrongBy float64
		want           portion.Verdict
		text           string
	}{
		{62, 0.5, portion.Agrees, "**agrees** (+0 g); over 99 % likely"},
		{95, 0.5, portion.Differs, "**differs**: over (+33 g); less than 1 %"},
		{40, 0.5, portion.Differs, "**differs**: short (-22 g)"},
		{62.8, 0.5, portion.CannotTell, "**cannot tell**: nearer to a limit"},
		{62, 3, portion.CannotTell, "too narrow for a weighing good to +- 3 g"},
		{62, 0, portion.CannotTell, "may be wrong by is not stated"},
		{1, 60, portion.CannotTell, "below the least load of the scale, 2 g"},
	} {
		r := goodRecord()
		r.Items[0].Weighed.Grams, r.Items[0].Weighed.ErrorGrams = c.grams, c.wrongBy
		if f, err := r.Items[0].Verdict(); err != nil || f.Verdict != c.want {
			t.Errorf("%g: %v, %v", c.grams, f, err)
		}
		if text := write(t, r); !strings.Contains(text, `"verdict": "`+string(c.want)+`"`) {
			t.Errorf("%g: no verdict in the file\n%s", c.grams, text)
		}
		if s := r.Statement(); !strings.Contains(s, c.text) {
			t.Errorf("%g: no %q in\n%s", c.grams, c.text, s)
		}
	}
}

func TestStatementSaysWhatIsMissing(t *testing.T) {
	r := Record{Revision: 1, Picture: "x", Items: []Item{{Item: "y", Declared: portion.Amount{Count: 1}}}}
	s := r.Statement()
	for _, want := range []string{"no plan", "not weighed", "open", "## Stand-ins\n\nNone recorded.", "## Takes\n\nNone recorded.", "picture\n\nNone recorded.", "Not signed yet"} {
		if !strings.Contains(s, want) {
			t.Errorf("no %q in\n%s", want, s)
		}
	}
	r = goodRecord()
	r.Items[0].Declared.Count, r.Items[0].Planned.Count = 2, 2
	r.Items[1].Weighed.Count = 8
	r.Edits[0].SourceType = "compositeWithTrainedAlgorithmicMedia"
	r.Date, r.Signed[0].Date = "2027-01-01", "2027-01-02"
	s = r.Statement()
	for _, want := range []string{"pieces not counted", "1 pieces too few", "up to 30 % more in front", "can mislead", "generative model",
		"Nothing else, it is declared", "no longer in force", "version 3, signed by T. Invented", "2, 0002.raw: **chosen**"} {
		if !strings.Contains(s, want) {
			t.Errorf("no %q in\n%s", want, s)
		}
	}
	r.Edits = nil
	if s := r.Statement(); !strings.Contains(s, "Nothing, it is declared.") {
		t.Error("a declaration that nothing was done is lost")
	}
}

func FuzzReadRecord(f *testing.F) {
	var b bytes.Buffer
	if err := goodRecord().Write(&b); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	f.Add([]byte(`{"schema":"honestplate/record/2","revision":1,"picture":"x","items":[{"item":"y"}]}`))
	f.Add([]byte(`{"schema":"honestplate/record/2","revision":1,"picture":"x","items":[{"item":"y","declared":{"count":3},"weighed":{"count":2}}]}`))
	f.Add([]byte(`{"schema":"honestplate/record/2","items":null}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := Read(bytes.NewReader(data))
		if err != nil {
			return
		}
		again := write(t, r)
		back, err := Read(strings.NewReader(again))
		if err != nil || !reflect.DeepEqual(r, back) {
			t.Fatalf("%v\n%+v\n%+v", err, r, back)
		}
		file, err := jcs.Canonical(data)
		canonical, _ := r.canonical()
		changed, err2 := seal.Changes(file, canonical)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		for _, c := range changed {
			if c.Earlier || !strings.HasSuffix(c.Field, ".verdict") {
				t.Fatalf("other canonical bytes: %s, %s", file, canonical)
			}
		}
		r.Statement()
		next, err := r.Next()
		if err != nil {
			t.Fatal(err)
		}
		stylist, _ := testKeys()
		first, err := r.Sign(stylist)
		second, err2 := next.Sign(stylist)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		checks, err := Verify([]Revision{{r, first}, {next, second}}, stylist.Public().(ed25519.PublicKey))
		sum, _ := r.SHA256()
		if r.Revision == 1 && (err != nil || checks[0].SHA256 != sum || next.Previous != sum) {
			t.Fatalf("%+v, %v", checks, err)
		}
		if changed, err := next.Changes(r); err != nil || !slices.Contains(changed, "revision") {
			t.Fatalf("%v, %v", changed, err)
		}
		if picture, err := FileSHA256(bytes.NewReader(data)); err != nil || len(picture) != 64 {
			t.Fatal(picture, err)
		}
	})
}

// Whatever a record holds, it is refused or comes back equal.
func FuzzRecordJSON(f *testing.F) {
	f.Add(1, "picture", "cheese", 62.0, 1.0, 62.1, 0.5, 3, true, "c2pa.cropped", "2026-10-05")
	f.Add(-1, "\xff", "", math.NaN(), -1.0, math.Inf(1), 1e300, -3, false, "", "x")
	f.Fuzz(func(t *testing.T, revision int, picture, item string, grams, tolerance, weighed, wrongBy float64, count int, advertised bool, action, date string) {
		r := Record{Revision: revision, Picture: picture, Date: date, Edits: []Edit{{Action: action}}, Takes: []Take{{Number: count, File: item}},
			Items: []Item{{Item: item, Advertised: advertised, Declared: portion.Amount{Grams: grams, StepGrams: 0.5, MinusGrams: tolerance, PlusGrams: tolerance, Count: count},
				Weighed: &Weighed{Grams: weighed, ErrorGrams: wrongBy, Count: count}}}}
		data, err := r.MarshalJSON()
		if err != nil {
			if r.Validate() == nil {
				t.Fatalf("valid and not written: %v", err)
			}
			return
		}
		var back Record
		if err := back.UnmarshalJSON(data); err != nil || !reflect.DeepEqual(r, back) {
			t.Fatalf("%v\n%+v\n%+v", err, r, back)
		}
	})
}

func BenchmarkReadRecord(b *testing.B) {
	var text bytes.Buffer
	if err := goodRecord().Write(&text); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(bytes.NewReader(text.Bytes())); err != nil {
			b.Fatal(err)
		}
	}
}
