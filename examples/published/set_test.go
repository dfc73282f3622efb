package published

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/honestplate/testdata"
	"gonum.org/v1/gonum/stat/distuv"
)

// synthetic is n points whose ln(published/likely) are the quantiles of a normal
// distribution of this lean and deviation, in a band of exp(+-half).
func synthetic(n int, lean, deviation, half float64) Result {
	r := Result{Check: Check{Table: "synthetic", Quantity: "made up", Unit: "1", Banded: true}}
	for i := range n {
		z := distuv.UnitNormal.Quantile((float64(i) + 0.5) / float64(n))
		r.Points = append(r.Points, Point{
			Published: 10 * math.Exp(lean+deviation*z), Predicted: 10, Low: 10 * math.Exp(-half), High: 10 * math.Exp(half),
			Kind: testdata.Measured, Known: "read", Origin: "us",
		})
	}
	return r
}

func TestSetsMeasureLeanAndSharpness(t *testing.T) {
	for _, c := range []struct {
		name                  string
		lean, deviation, half float64
		misses                string
	}{
		{"as claimed", 0, 0.1, 0.196, ""},
		{"a lean within 5 %", 0.04, 0.1, 0.196, ""},
		{"a lean of 8 %", 0.08, 0.1, 0.196, "count lean"},
		{"a lean that the other way hides", -0.08, 0.1, 0.27, "lean"},
		{"bands too narrow", 0, 0.1, 0.12, "count sharpness"},
		{"bands too wide", 0, 0.1, 0.4, "count sharpness"},
	} {
		sets := synthetic(200, c.lean, c.deviation, c.half).Sets()
		if len(sets) != 1 {
			t.Fatalf("%s: %d sets", c.name, len(sets))
		}
		s := sets[0]
		if math.Abs(s.Lean-c.lean) > 1e-9 || math.Abs(s.S/c.deviation-1) > 0.02 {
			t.Errorf("%s: lean %g, s %g", c.name, s.Lean, s.S)
		}
		if want := 2 * c.half / (3.92 * c.deviation); math.Abs(s.Sharpness/want-1) > 0.02 {
			t.Errorf("%s: sharpness %g, want %g", c.name, s.Sharpness, want)
		}
		if got := strings.Join(s.Misses(), " "); got != c.misses {
			t.Errorf("%s: misses on %q, want %q (%v)", c.name, got, c.misses, s)
		}
	}
}

// With few points a lean within twice its standard error is none, and nothing is said
// of sharpness.
func TestFewPointsSayLittle(t *testing.T) {
	for n, misses := range map[int]string{
		2: "",          // neither of the two
		4: "",          // 0.1 is within 2 x 0.1/2
		7: "",          // sharpness 3, but of seven points
		8: "sharpness", // and of eight
	} {
		if got := strings.Join(synthetic(n, 0.05, 0.1, 0.6).Sets()[0].Misses(), " "); got != misses {
			t.Errorf("%d points: misses on %q, want %q", n, got, misses)
		}
	}
}

func TestAdditiveSetsAreJudgedInTheirUnit(t *testing.T) {
	r := Result{Check: Check{Table: "synthetic", Unit: "K", Banded: true, Floor: 0.5}}
	for i := range 40 {
		z := distuv.UnitNormal.Quantile((float64(i) + 0.5) / 40)
		r.Points = append(r.Points, Point{Published: 1.2 + z, Predicted: 0, Low: -1.96, High: 1.96, Kind: testdata.Measured})
	}
	s := r.Sets()[0]
	if math.Abs(s.Lean-1.2) > 1e-9 || math.Abs(s.Sharpness-1) > 0.05 || s.LeanLimit() != 0.5 {
		t.Errorf("lean %g, sharpness %g, limit %g; want 1.2, 1, 0.5", s.Lean, s.Sharpness, s.LeanLimit())
	}
	if got := s.Misses(); !slices.Contains(got, "lean") {
		t.Errorf("misses on %v, want lean", got)
	}
}

func TestKindsAndClassesAreSetsOfTheirOwn(t *testing.T) {
	r := synthetic(12, 0, 0.1, 0.196)
	for _, i := range []int{0, 1, 10, 11} {
		r.Points[i].Kind = testdata.Formula
	}
	for _, i := range []int{2, 3, 8, 9} {
		r.Points[i].Class = "above"
	}
	r.Points[0].Published *= 100
	r.Points[5].Origin = "them"
	r.Points = append(r.Points, Skip("left out", "no value"))
	var names []string
	for _, s := range r.Sets() {
		names = append(names, s.Name())
		if s.Class == "" && s.Kind == testdata.Measured && s.Origins != 2 {
			t.Errorf("%d origins, want 2", s.Origins)
		}
		if want := map[string]string{testdata.Formula: "count"}[s.Kind]; strings.Join(s.Misses(), " ") != want {
			t.Errorf("%v misses on %v, want %q", s, s.Misses(), want)
		}
	}
	want := []string{"synthetic, made up, formula", "synthetic, made up, above", "synthetic, made up"}
	if !slices.Equal(names, want) {
		t.Errorf("sets %q, want %q", names, want)
	}
}

// The readings of a course hang together: only their share inside is judged.
func TestCoursesAreJudgedByTheirShare(t *testing.T) {
	for outside, misses := range map[int]string{0: "", 3: "", 4: "count"} {
		r := synthetic(20, 0, 0.01, 0.5)
		r.Mark = "B"
		for i := range outside {
			r.Points[i].Published *= 10
		}
		if got := strings.Join(r.Sets()[0].Misses(), " "); got != misses {
			t.Errorf("%d of 20 outside: misses on %q, want %q", outside, got, misses)
		}
	}
}

func TestFailuresHoldTheListExact(t *testing.T) {
	sound, narrow := synthetic(40, 0, 0.1, 0.196), synthetic(40, 0, 0.1, 0.12)
	outside := narrow.Sets()[0].Outside
	entry := KnownMiss{Table: "synthetic", Quantity: "made up", Kind: testdata.Measured, Misses: "count sharpness", Outside: outside, Why: "Made up."}
	other, stricter, elsewhere := entry, entry, entry
	other.Misses, stricter.Outside, elsewhere.Class = "lean", outside-1, "above"
	for _, c := range []struct {
		name  string
		r     Result
		known []KnownMiss
		want  string
	}{
		{"sound and not listed", sound, nil, ""},
		{"misses and is listed", narrow, []KnownMiss{entry}, ""},
		{"misses and is not listed", narrow, []KnownMiss{elsewhere}, "is not in misses.csv"},
		{"listed and sound", sound, []KnownMiss{entry}, "no longer misses"},
		{"misses on something else", narrow, []KnownMiss{other}, "misses.csv says lean"},
		{"more outside than listed", narrow, []KnownMiss{stricter}, "allows"},
	} {
		got := strings.Join(c.r.Failures(c.known), "\n")
		if (c.want == "") != (got == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// The count of a single point cannot miss, but the point can lie where no chance puts
// it.
func TestFarPointsMissByThemselves(t *testing.T) {
	for times, misses := range map[float64]string{1.5: "", 2.9: "", 3.1: "far", 20: "far"} {
		r := synthetic(1, 0, 0.1, 0.196)
		r.Points[0].Published = 10 * math.Exp(-0.196*times)
		if got := strings.Join(r.Sets()[0].Misses(), " "); got != misses {
			t.Errorf("%g half bands away: misses on %q, want %q", times, got, misses)
		}
	}
}
