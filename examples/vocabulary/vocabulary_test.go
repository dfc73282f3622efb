package vocabulary_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
)

func TestNeverHasNoDate(t *testing.T) {
	now := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
	for _, m := range []honestplate.Moment{honestplate.Never(), {After: time.Hour, Never: true}} {
		if at, ok := m.At(now); ok || !at.IsZero() {
			t.Errorf("At of never is %v, %v", at, ok)
		}
		if at, ok := m.BackFrom(now); ok || !at.IsZero() {
			t.Errorf("BackFrom of never is %v, %v", at, ok)
		}
		if m.String() != "never" {
			t.Errorf("never prints as %q", m)
		}
	}
	if at, ok := honestplate.After(time.Hour).BackFrom(now); !ok || at.Hour() != 9 {
		t.Errorf("an hour back from ten is %v, %v", at, ok)
	}
}

func TestNeverComesLast(t *testing.T) {
	late, early := honestplate.After(math.MaxInt64), honestplate.After(-1)
	for _, p := range [][2]honestplate.Moment{{early, late}, {late, honestplate.Never()}, {early, honestplate.Never()}} {
		if !p[0].Before(p[1]) || p[1].Before(p[0]) {
			t.Errorf("%v and %v are in the wrong order", p[0], p[1])
		}
	}
	if honestplate.Never().Before(honestplate.Never()) {
		t.Error("never comes before never")
	}
}

func TestMomentsComeBackFromJSON(t *testing.T) {
	for _, d := range []time.Duration{0, 1, -1, 90 * time.Second, 1500 * time.Millisecond, -time.Hour, math.MaxInt64, math.MinInt64 + 1, 123456789012345678} {
		same(t, honestplate.After(d))
	}
	same(t, honestplate.Never())
	if b, _ := json.Marshal(honestplate.After(90 * time.Second)); string(b) != "90" {
		t.Errorf("90 s marshals to %s", b)
	}
	same(t, honestplate.Window{Earliest: honestplate.After(time.Second), Likely: honestplate.After(3 * time.Second), Latest: honestplate.Never()})
	same(t, honestplate.Within(9, 0.3))
	same(t, honestplate.Some(0))
	same(t, honestplate.Optional{})
}

// same marshals, reads back and compares.
func same[T comparable](t *testing.T, v T) {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	back := v
	if err := json.Unmarshal(b, &back); err != nil {
		t.Fatalf("%s: %v", b, err)
	}
	if back != v {
		t.Errorf("%+v came back from %s as %+v", v, b, back)
	}
}

func TestBrokenWireIsRefused(t *testing.T) {
	for _, c := range []struct {
		into any
		text string
	}{
		{new(honestplate.Moment), `"5"`}, {new(honestplate.Moment), `1e12`}, {new(honestplate.Moment), `true`}, {new(honestplate.Moment), `[]`},
		{new(honestplate.Window), `{}`}, {new(honestplate.Window), `null`}, {new(honestplate.Window), `{"earliest_s":1,"likely_s":2}`},
		{new(honestplate.Window), `{"earliest_s":3,"likely_s":2,"latest_s":4}`}, {new(honestplate.Window), `{"earliest_s":null,"likely_s":2,"latest_s":4}`},
		{new(honestplate.Window), `{"earliest_s":1,"likely_s":2,"latest_s":3,"x":1}`},
		{new(honestplate.Estimate), `{"low":1,"likely":null,"high":3}`}, {new(honestplate.Estimate), `{"low":2,"likely":1,"high":3}`},
		{new(honestplate.Estimate), `7`}, {new(honestplate.Optional), `"0"`},
	} {
		if err := json.Unmarshal([]byte(c.text), c.into); err == nil {
			t.Errorf("%T took %s as %v", c.into, c.text, c.into)
		}
	}
}

func TestBandsStayInOrder(t *testing.T) {
	for _, e := range []honestplate.Estimate{
		honestplate.Within(10, -0.1), honestplate.Within(-10, 0.1), honestplate.Factor(10, 0.5), honestplate.Factor(-10, 2), honestplate.Within(10, 0.2).Times(-3), honestplate.Exactly(4),
	} {
		if err := e.Check("x"); err != nil {
			t.Error(err)
		}
	}
	for _, e := range []honestplate.Estimate{{Low: 2, Likely: 1, High: 3}, {Low: math.NaN()}, {High: math.Inf(1)}} {
		if err := e.Check("x"); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%v is taken", e)
		}
	}
}

func TestErrorsNameNoNaN(t *testing.T) {
	err := honestplate.Finite("FatPercent", math.NaN(), "%")
	if err == nil || strings.Contains(err.Error(), "NaN") || !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("got %v", err)
	}
}

func TestErrorsKeepTheirPlaceAndStayOnOneLine(t *testing.T) {
	err := honestplate.In("Recipe", honestplate.In("Thin", honestplate.InRange("FatPercent", 90, 0, 60, "%", "Phipps 1969")))
	var outside *honestplate.RangeError
	if !errors.As(err, &outside) || outside.Field != "Recipe.Thin.FatPercent" || !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("got %v", err)
	}
	if got := honestplate.In("Lamps", &honestplate.InputError{Field: "[2].Source", Got: "9", Want: "one"}).(*honestplate.InputError).Field; got != "Lamps[2].Source" {
		t.Errorf("field is %s", got)
	}
	for _, err := range []error{
		&honestplate.InputError{Field: "a\nb", Got: "x\u202ey", Want: "z\u0085"},
		&honestplate.RangeError{Field: "a\u2028b", Source: "s\u001b"},
		&honestplate.RefusedError{Field: "a\rb", Kind: honestplate.ErrNoFlow, Reason: "r\t"},
		honestplate.In("a\nb", errors.New("other")),
	} {
		if s := err.Error(); strings.ContainsAny(s, "\n\r\t\u001b\u0085\u2028\u202e") {
			t.Errorf("%q is more than a line", s)
		}
	}
	if honestplate.In("x", nil) != nil || honestplate.Cause(nil) != nil {
		t.Error("nothing became an error")
	}
}

func TestChecksHoldAtTheirLimits(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		err  error
		want error
	}{
		{honestplate.Positive("x", 0, ""), honestplate.ErrInput}, {honestplate.Positive("x", inf, ""), honestplate.ErrInput}, {honestplate.Positive("x", 1e-300, ""), nil},
		{honestplate.NotNegative("x", 0, ""), nil}, {honestplate.NotNegative("x", -1e-300, ""), honestplate.ErrInput}, {honestplate.NotNegative("x", math.NaN(), ""), honestplate.ErrInput},
		{honestplate.InRange("x", 1, 1, 2, "", "s"), nil}, {honestplate.InRange("x", 2, 1, 2, "", "s"), nil},
		{honestplate.InRange("x", 2.1, 1, 2, "", "s"), honestplate.ErrRange}, {honestplate.InRange("x", inf, 1, 2, "", "s"), honestplate.ErrInput},
		{honestplate.InRange("x", math.Nextafter(1, 0), 1, 2, "", "s"), honestplate.ErrRange},
	} {
		if !errors.Is(c.err, c.want) {
			t.Errorf("got %v, want %v", c.err, c.want)
		}
	}
}

func FuzzMomentJSON(f *testing.F) {
	f.Add([]byte("null"))
	f.Add([]byte("-12.000000001"))
	f.Add([]byte("1e3"))
	f.Fuzz(func(t *testing.T, b []byte) {
		var m, again honestplate.Moment
		if json.Unmarshal(b, &m) != nil {
			return
		}
		text, err := json.Marshal(m)
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &again); err != nil || again != m {
			t.Errorf("%s: %v came back as %v, %v", b, m, again, err)
		}
	})
}

func FuzzBandJSON(f *testing.F) {
	f.Add([]byte(`{"low":1,"likely":2,"high":3}`))
	f.Add([]byte(`{"earliest_s":1,"likely_s":2,"latest_s":null}`))
	f.Fuzz(func(t *testing.T, b []byte) {
		var e honestplate.Estimate
		if json.Unmarshal(b, &e) == nil && e.Check("band") != nil {
			t.Errorf("%s became %v", b, e)
		}
		var w honestplate.Window
		if json.Unmarshal(b, &w) == nil && w.Check("window") != nil {
			t.Errorf("%s became %v", b, w)
		}
		if s := fmt.Sprint(e, w); strings.Contains(s, "\n") {
			t.Errorf("%q", s)
		}
	})
}

// Bands stay in order, times keep their never, and each message is one line without NaN.
func FuzzVocabulary(f *testing.F) {
	f.Add("Lamps[2].Source", "W", 9.0, 1.5, int64(1e9), int64(-1), true)
	f.Add("a\nb", "\u202e", math.NaN(), math.Inf(1), int64(math.MinInt64), int64(math.MaxInt64), false)
	f.Fuzz(func(t *testing.T, field, unit string, v, k float64, a, b int64, never bool) {
		for _, e := range []honestplate.Estimate{honestplate.Exactly(v), honestplate.Within(v, k), honestplate.Factor(v, k), honestplate.Within(v, 0.1).Times(k)} {
			finite := !math.IsNaN(e.Low+e.Likely+e.High) && !math.IsInf(e.Low, 0) && !math.IsInf(e.High, 0)
			if err := e.Check(field); finite && v > 0 && k > 0 && (err != nil || !e.Contains(e.Likely)) || !finite && err == nil {
				t.Errorf("%v of %g, %g: %v", e, v, k, err)
			}
			if s := e.String(); strings.Contains(s, "\n") {
				t.Errorf("%q", s)
			}
		}
		for _, err := range []error{
			honestplate.Finite(field, v, unit), honestplate.Positive(field, v, unit), honestplate.NotNegative(field, v, unit), honestplate.InRange(field, v, -k, k, unit, field),
			&honestplate.RefusedError{Field: field, Kind: honestplate.ErrNoFlow, Reason: unit, Advice: field},
		} {
			if err = honestplate.In(unit, err); err == nil {
				continue
			}
			if s := err.Error(); strings.ContainsAny(s, "\n\r\u2028\u202e") || strings.Contains(s, "NaN") && !strings.Contains(field+unit, "NaN") {
				t.Errorf("%q", s)
			}
			if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrNoFlow) {
				t.Errorf("%v is of no kind", err)
			}
			if honestplate.Cause(fmt.Errorf("around it: %w", err)) != err {
				t.Errorf("the cause of %v is lost", err)
			}
		}
		if once := honestplate.OneLine(field); honestplate.OneLine(once) != once {
			t.Errorf("%q is no line", once)
		}
		m, other := honestplate.Moment{After: time.Duration(a), Never: never}, honestplate.After(time.Duration(b))
		start := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
		_, ok := m.At(start)
		_, back := m.BackFrom(start)
		if ok == never || back == never || m.Before(other) && other.Before(m) || m.Round(time.Second).Never != never || never && m.String() != "never" {
			t.Errorf("%+v", m)
		}
		w := honestplate.Window{Earliest: other, Likely: m, Latest: honestplate.Never()}
		if (w.Check(field) == nil) == m.Before(other) || !w.MayHappen() || strings.Contains(w.String(), "\n") || w.Round(time.Minute).Latest != honestplate.Never() {
			t.Errorf("%+v", w)
		}
		if l := honestplate.Lasting(time.Duration(a), time.Duration(a), time.Duration(b)); (l.Check("") == nil) != (a <= b) {
			t.Errorf("%+v", l)
		}
		o := honestplate.Optional{Value: v, Given: !never}
		if text, err := json.Marshal(o); err == nil {
			var again honestplate.Optional
			if err := json.Unmarshal(text, &again); err != nil || again.IsZero() != never || !never && again.Or(1) != v || never && again.Or(k) != k && k == k {
				t.Errorf("%s: %+v came back as %+v, %v", text, o, again, err)
			}
		}
	})
}
