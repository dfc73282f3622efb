package shoot

import (
	"bytes"
	"encoding/json"
	"errors"
	"hash/crc32"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"example.org/honestplate"
)

// FuzzReadBrief reads what may be a brief, and plans its first dish where it is small: no
// panic, no number that is none, and every error one of the vocabulary with its field.
func FuzzReadBrief(f *testing.F) {
	for _, day := range []string{"autumn", "coast", "motion"} {
		text, err := os.ReadFile(filepath.Join("..", "callsheet", "days", day+".json"))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
		var b Brief
		if err := json.Unmarshal(text, &b); err != nil {
			f.Fatal(err)
		}
		for i := range b.Dishes { // each dish alone: the smaller, the more is tried
			one := b
			one.Dishes = b.Dishes[i : i+1]
			if text, err = json.Marshal(&one); err != nil {
				f.Fatal(err)
			}
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		b, err := Read(bytes.NewReader(text))
		if err != nil {
			typed(t, err)
			return
		}
		b.Dishes = b.Dishes[:1]
		d := &b.Dishes[0]
		d.Wanted, d.Things = min(d.Wanted, 2), d.Things[:min(len(d.Things), 3)]
		for i := range d.Things {
			if p := d.Things[i].Pieces; p != nil {
				p.Weighed, d.Things[i].Count = p.Weighed[:min(len(p.Weighed), 12)], min(d.Things[i].Count, 4)
			}
		}
		if rarely(text) > 0 {
			withoutClocks(d)
		}
		if len(b.faults()) > 0 {
			return // what was cut off belonged to it
		}
		planned(t, b, nil)
	})
}

// FuzzReadFacts reads what may be facts of the first invented day, and plans three of its
// dishes with them.
func FuzzReadFacts(f *testing.F) {
	f.Add([]byte(someFacts))
	f.Add([]byte(`{"now": "2026-10-14T11:00:00Z"}`))
	f.Add([]byte(`{"now": "2026-10-14T14:30:00+02:00", "seen": [{"dish": "Rosehip cooler", "thing": "rosehip cooler", "event": "haze", "not_yet": true, "after_seconds": 20}]}`))
	f.Add([]byte(`{"now": "2026-10-14T12:30:00+02:00", "cups": [{"dish": "Spiced oat bowl", "thing": "poured milk", "cup": "DIN 4", "temp_c": 7, "seconds": [12]}]}`))
	text, err := os.ReadFile(filepath.Join("..", "callsheet", "days", "autumn.json"))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, facts []byte) {
		got, err := ReadFacts(bytes.NewReader(facts))
		if err != nil {
			typed(t, err)
			return
		}
		b, err := Read(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		b.Dishes = []Dish{b.Dishes[0], b.Dishes[2], b.Dishes[5]}
		if rarely(facts) > 0 {
			got.Seen = nil
			for i := range b.Dishes {
				withoutClocks(&b.Dishes[i])
			}
		}
		got.Seen = got.Seen[:min(len(got.Seen), 2)]
		planned(t, b, got)
	})
}

// rarely is 0 for one input in a hundred: clocks take a hundred times as long as the rest,
// and reading is what is tried most.
func rarely(text []byte) uint32 { return crc32.ChecksumIEEE(text) % 100 }

// withoutClocks takes what is simulated out of a dish: clocks, and trays of pieces.
func withoutClocks(d *Dish) {
	for i := range d.Things {
		t := &d.Things[i]
		t.Bowl, t.Drink, t.Bottle, t.Scoop, t.Soft, t.Cheese, t.Pieces = nil, nil, nil, nil, nil, nil, nil
	}
}

// planned plans and looks through what comes out.
func planned(t *testing.T, b *Brief, facts *Facts) {
	p, err := b.Plan(facts)
	if err != nil {
		typed(t, err)
		return
	}
	finite(t, "plan", reflect.ValueOf(p))
	if _, err := json.Marshal(p); err != nil {
		t.Error(err)
	}
	for i, r := range p.Records() {
		var text bytes.Buffer
		if err := r.Write(&text); err != nil {
			t.Errorf("record %d: %v", i, err)
		}
	}
}

// typed wants an error of the vocabulary that names a field on lines that can be printed.
func typed(t *testing.T, err error) {
	t.Helper()
	if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrInfeasible) &&
		!errors.Is(err, honestplate.ErrNoFlow) && !errors.Is(err, honestplate.ErrAdvertised) || fieldOf(honestplate.Cause(err)) == "" {
		t.Errorf("not of the vocabulary, or without a field: %v", err)
	}
	if text := err.Error(); strings.ContainsAny(text, "\x00\x1b\r") || strings.Contains(text, "NaN") && !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("%q", text)
	}
}

// finite wants every number below a value to be one.
func finite(t *testing.T, at string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0) {
			t.Errorf("%s is %g", at, v.Float())
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			finite(t, at, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			finite(t, at, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, at+"."+v.Type().Field(i).Name, v.Field(i))
		}
	}
}
