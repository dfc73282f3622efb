package record

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

func TestSpecificationReadsBackAsWritten(t *testing.T) {
	small := Specification{Product: "x", Version: "1", Layers: []Layer{{Name: "y", Declared: portion.Amount{Count: 1}}}}
	guarded := burger()
	guarded.Guard = honestplate.Some(0)
	for _, s := range []Specification{burger(), small, guarded} {
		b, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		back, err := readSpecification(b)
		if err != nil || !reflect.DeepEqual(back, s) {
			t.Errorf("%v\n%+v\n%+v", err, s, back)
		}
		ref, err := s.Ref()
		again, err2 := back.Ref()
		if err != nil || err2 != nil || ref != again || len(ref.SHA256) != 64 {
			t.Errorf("%+v, %+v, %v, %v", ref, again, err, err2)
		}
	}
	// Any change is another specification.
	before, _ := burger().Ref()
	changed := burger()
	changed.Layers[2].Declared.PlusGrams = 1.5
	after, err := changed.Ref()
	if err != nil || before.SHA256 == after.SHA256 {
		t.Error("a wider tolerance has the same sum")
	}
}

func TestSpecificationRefusals(t *testing.T) {
	for field, change := range map[string]func(*Specification){
		"Product":                      func(s *Specification) { s.Product = " " },
		"Version":                      func(s *Specification) { s.Version = "" },
		"Layers":                       func(s *Specification) { s.Layers = nil },
		"Layers[0].Name":               func(s *Specification) { s.Layers[0].Name = "" },
		"Layers[2].Name":               func(s *Specification) { s.Layers[2].Name = "heel" },
		"Layers[0].Basis":              func(s *Specification) { s.Layers[0].Basis = "boiled" },
		"Layers[0].Yield":              func(s *Specification) { s.Layers[0].Yield = honestplate.Exactly(1) },
		"Layers[1].Yield.Low":          func(s *Specification) { s.Layers[1].Yield = honestplate.Estimate{High: 1} },
		"Layers[1].Yield.High":         func(s *Specification) { s.Layers[1].Yield = honestplate.Exactly(20) },
		"Layers[0].Declared.PlusGrams": func(s *Specification) { s.Layers[0].Declared.PlusGrams = math.NaN() },
		"Ratios[0].Layer":              func(s *Specification) { s.Ratios[0].Layer = "pickles" },
		"Ratios[0].To":                 func(s *Specification) { s.Ratios[0].To = "cheese" },
		"Ratios[0].Least":              func(s *Specification) { s.Ratios[0].Least = 0 },
		"Ratios[0].Most":               func(s *Specification) { s.Ratios[0].Most = 0.01 },
		"TotalPlusGrams":               func(s *Specification) { s.TotalPlusGrams = -1 },
		"Guard":                        func(s *Specification) { s.Guard = honestplate.Some(9) },
		"Signed.Name":                  func(s *Specification) { s.Signed.Name = "" },
		"ValidUntil":                   func(s *Specification) { s.ValidUntil = "soon" },
	} {
		s := burger()
		change(&s)
		if err := s.Validate(); fieldOf(err) != field {
			t.Errorf("%s: %v", field, err)
		}
		if _, err := s.Ref(); err == nil {
			t.Errorf("%s: hashed all the same", field)
		}
	}
	if _, err := readSpecification([]byte(`{"schema":"honestplate/record/2"}`)); fieldOf(err) != "schema" {
		t.Error(err)
	}
	if _, err := readSpecification(nil); err == nil {
		t.Error(err)
	}
}

func TestInForce(t *testing.T) {
	s := burger()
	for day, field := range map[string]string{
		"2026-01-10": "", "2026-06-01": "", "2026-12-31": "", "2026-01-09": "Signed.Date", "2027-01-01": "ValidUntil", "June": "Day",
	} {
		if got := fieldOf(s.InForce(day)); got != field {
			t.Errorf("%s: %s, want %s", day, got, field)
		}
	}
	s.Signed = Signature{}
	if got := fieldOf(s.InForce("2026-06-01")); got != "Signed" {
		t.Errorf("unsigned: %s", got)
	}
}

func FuzzReadSpecification(f *testing.F) {
	b, err := json.Marshal(burger())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(b)
	f.Add([]byte(`{"schema":"honestplate/specification/1","product":"x","version":"1","layers":[{"name":"y","declared":{"count":1}}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := readSpecification(data)
		if err != nil {
			return
		}
		b, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		back, err := readSpecification(b)
		if err != nil || !reflect.DeepEqual(s, back) {
			t.Fatalf("%v\n%+v\n%+v", err, s, back)
		}
		if check, err := s.BeforeWeighing(portion.Scale{StepGrams: 0.1}); err == nil && check.Verdict == "" {
			t.Fatal("no verdict")
		}
		if ref, err := s.Ref(); err != nil || len(ref.SHA256) != 64 {
			t.Fatal(ref, err)
		}
		if err := s.InForce("2026-06-06"); err == nil && s.Signed.Name == "" {
			t.Fatal("in force without a signature")
		}
		var direct Specification
		if data, err := s.MarshalJSON(); err != nil || direct.UnmarshalJSON(data) != nil {
			t.Fatal(err)
		}
	})
}

// Whatever is weighed, nothing panics, no number is none, and what agrees lies inside.
func FuzzBuilds(f *testing.F) {
	f.Add(28.0, 113.0, 14.0, 0.1, 0.05, 200.0, 201.0, false, 1.0, 3, 0.5)
	f.Add(-1.0, math.NaN(), math.Inf(1), 0.0, -1.0, 0.0, 0.0, true, -1.0, -3, 9.0)
	f.Fuzz(func(t *testing.T, heel, patty, cheese, step, repeat, weight, shown float64, tared bool, guard float64, pieces int, weightOf float64) {
		s := burger()
		s.Guard = honestplate.Some(guard)
		b := Build{Scale: portion.Scale{StepGrams: step, Repeat: repeat, Check: portion.CheckWeight{Grams: weight, Reading: shown}}, Tared: tared}
		for i, m := range []float64{heel, patty, cheese, 6, 27} {
			if !tared && i > 0 {
				m += b.Layers[i-1].Reading
			}
			b.Layers = append(b.Layers, Placed{Reading: m, Pieces: pieces})
		}
		b.Layers[1].Basis = []Basis{"", Raw, Cooked, "x"}[uint(pieces)%4]
		got, err := s.Check(b)
		if err != nil {
			if honestplate.Cause(err) == err && !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
				t.Fatalf("%T: %v", err, err)
			}
			return
		}
		for _, l := range append(got.Layers, got.Ratios...) {
			allFinite(t, l.String(), l.Found, l.Standard, l.Probability, l.AddGrams)
			if inside := l.Found >= l.Limits.Low.Or(l.Found)-1e-6 && l.Found <= l.Limits.High.Or(l.Found)+1e-6; l.Verdict == portion.Agrees && !inside {
				t.Fatalf("%s", l)
			}
			if c, err := l.Limits.Capability(l.Standard); err == nil && c < 0.999 && l.Verdict == portion.Agrees && guard >= 1 && l.Limits != (portion.Limits{}) {
				t.Fatalf("agrees at a capability of %g: %s", c, l)
			}
			if accept, err := l.Limits.Accept(l.Standard); err == nil && l.Limits.Low.Given {
				allFinite(t, "accepted", accept.Low.Value, accept.High.Value)
			}
			if d, err := l.Limits.Decide(l.Found, l.Standard); err == nil && !(d.Probability >= 0 && d.Probability <= 1) {
				t.Fatalf("%+v", d)
			}
		}
		if items, err := s.Items(b); err == nil {
			for _, i := range items {
				if _, err := i.Verdict(); err != nil {
					t.Fatalf("%+v: %v", i, err)
				}
			}
		}
		if p, err := (portion.Prior{A: weight, B: shown}).After(pieces, pieces/2, weightOf); err == nil {
			allFinite(t, "prior", p.A, p.B)
			if chances, err := (portion.Heroes{Prior: p}).Finish(3, tared); err == nil {
				allFinite(t, "chances", chances...)
			}
		}
	})
}

// allFinite fails the test for a number that is not finite.
func allFinite(t *testing.T, what string, values ...float64) {
	t.Helper()
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("%s is %v", what, v)
		}
	}
}

func readSpecification(data []byte) (Specification, error) {
	var s Specification
	err := json.Unmarshal(data, &s)
	return s, err
}
