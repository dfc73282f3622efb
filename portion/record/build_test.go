package record

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

// burger is invented.
func burger() Specification {
	layer := func(name string, grams, minus, plus float64) Layer {
		return Layer{Name: name, Declared: portion.Amount{Grams: grams, StepGrams: 0.5, MinusGrams: minus, PlusGrams: plus}}
	}
	s := Specification{
		Product: "cheeseburger", Version: "4",
		Layers: []Layer{layer("heel", 28, 2, 2), layer("patty", 113, 3, 5), layer("cheese", 14, 1, 1),
			{Name: "pickles", Declared: portion.Amount{Count: 3, PlusCount: 1}}, layer("crown", 27, 2, 2)},
		Ratios:     []Ratio{{"cheese", "patty", 0.11, 0.14}},
		Signed:     Signature{"T. Invented", "product technician", "2026-01-10"},
		ValidUntil: "2026-12-31",
	}
	s.Layers[1].Basis = Raw
	s.Layers[1].Yield = honestplate.Within(0.75, 0.02)
	return s
}

// fine is a scale of tenths with a check weight near the whole.
var fine = portion.Scale{StepGrams: 0.1, Repeat: 0.05, Check: portion.CheckWeight{Grams: 200, Reading: 200}}

// built returns a build with the layers as given, pickles of 6 g counted.
func built(scale portion.Scale, heel, patty, cheese, crown float64) Build {
	b, so := Build{Scale: scale, EmptyGrams: 250}, 250.0
	for i, m := range []float64{heel, patty, cheese, 6, crown} {
		so += m
		b.Layers = append(b.Layers, Placed{Reading: so})
		if i == 3 {
			b.Layers[i].Pieces = 3
		}
	}
	b.Scale.Check.Grams *= 2 // the plate is on it too
	b.Scale.Check.Reading *= 2
	return b
}

func TestBuildIsJudgedLayerByLayer(t *testing.T) {
	for _, c := range []struct {
		heel, patty, cheese, crown float64
		want                       [5]portion.Verdict
		ratio, all                 portion.Verdict
	}{
		{28, 113, 14, 27, [5]portion.Verdict{portion.Agrees, portion.Agrees, portion.Agrees, portion.Agrees, portion.Agrees}, portion.Agrees, portion.Agrees},
		{28, 113, 18, 27, [5]portion.Verdict{portion.Agrees, portion.Agrees, portion.Differs, portion.Agrees, portion.Agrees}, portion.Differs, portion.Differs},
		{28, 113, 14.95, 27, [5]portion.Verdict{portion.Agrees, portion.Agrees, portion.CannotTell, portion.Agrees, portion.Agrees}, portion.Agrees, portion.CannotTell},
		{20, 113, 14, 27, [5]portion.Verdict{portion.Differs, portion.Agrees, portion.Agrees, portion.Agrees, portion.Agrees}, portion.Agrees, portion.Differs},
	} {
		got, err := burger().Check(built(fine, c.heel, c.patty, c.cheese, c.crown))
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range got.Layers {
			if f.Verdict != c.want[i] {
				t.Errorf("%+v: %s", c, f)
			}
		}
		if got.Verdict != c.all || got.Ratios[0].Verdict != c.ratio || got.Total.Verdict != "" {
			t.Errorf("%+v: %s, ratio %s, total %s", c, got.Verdict, got.Ratios[0], got.Total)
		}
	}
}

// What a finding says to add or take off makes the layer agree.
func TestWhatToAddMakesItAgree(t *testing.T) {
	s := burger()
	b := built(fine, 20, 100, 18, 27)
	b.Layers[1].Basis = Cooked // 100 g cooked is 133.3 g raw
	first, err := s.Check(b)
	if err != nil {
		t.Fatal(err)
	}
	add := 0.0
	for i := range b.Layers {
		add += first.Layers[i].AddGrams
		b.Layers[i].Reading += add
	}
	if math.Abs(first.Layers[1].AddGrams-(113*0.75-100)) > 1e-9 {
		t.Errorf("patty: %+v", first.Layers[1])
	}
	second, err := s.Check(b)
	if err != nil || second.Layers[0].Verdict != portion.Agrees || second.Layers[2].Verdict != portion.Agrees {
		t.Errorf("%v, %v", second.Layers, err)
	}
	// The patty was brought to its mass, but the yield is known to 2 % only.
	if f := second.Layers[1]; math.Abs(f.Found-113) > 1e-9 || f.Standard < 1.1 || f.Verdict != portion.Agrees {
		t.Errorf("patty: %s, u %g", f, f.Standard)
	}
}

// A tolerance that a scale cannot judge is found before anything is weighed, and
// nothing agrees on that scale later.
func TestTooNarrowIsSaidBeforeWeighing(t *testing.T) {
	kitchen := portion.Scale{StepGrams: 1}
	before, err := burger().BeforeWeighing(kitchen)
	if err != nil {
		t.Fatal(err)
	}
	if f := before.Layers[2]; f.Verdict != portion.CannotTell || !strings.Contains(f.Reason, "least load") && !strings.Contains(f.Reason, "too narrow") {
		t.Errorf("cheese on a kitchen scale: %s", f)
	}
	if f := before.Layers[1]; f.Verdict != portion.Agrees {
		t.Errorf("patty on a kitchen scale: %s", f)
	}
	for cheese := 1.0; cheese < 40; cheese++ {
		got, err := burger().Check(built(kitchen, 28, 113, cheese, 27))
		if err != nil {
			got, err = burger().Check(Build{Scale: kitchen, Layers: built(kitchen, 28, 113, cheese, 27).Layers})
		}
		if err == nil && got.Layers[2].Verdict == portion.Agrees {
			t.Errorf("%g g agrees", cheese)
		}
	}
	if before, err = burger().BeforeWeighing(fine); err != nil || before.Verdict != portion.Agrees {
		t.Errorf("%+v, %v", before, err)
	}
}

// The covariances against drawn readings: rounding, repeatability and a scale that is
// off in proportion.
func TestCovariancesAgainstSimulation(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 2))
	masses := []float64{28, 113, 14}
	const d, s, rel = 0.5, 0.2, 0.01
	for _, tared := range []bool{false, true} {
		m := measured{grams: masses, states: []float64{1, 1, 1}, yields: []float64{0, 0, 0}, Evidence: portion.Evidence{Reading: d*d/12 + s*s, Relative: rel, Factor: 1}, tared: tared}
		const n = 40_000
		var sum, square [3][3]float64
		var mean [3]float64
		for range n {
			off := 1 + rel*r.NormFloat64()
			read := func(v float64) float64 { return math.Round((off*v+s*r.NormFloat64())/d) * d }
			// Rounding is spread evenly only where the load is not on a step.
			start := r.Float64() * 50
			so, before := start, read(start)
			var x [3]float64
			for i, mass := range masses {
				so += mass
				if tared {
					before = read(so - mass)
				}
				now := read(so)
				x[i], before = now-before, now
			}
			for i := range x {
				mean[i] += x[i]
				for j := range x {
					square[i][j] += x[i] * x[j]
				}
			}
		}
		for i := range 3 {
			for j := range 3 {
				sum[i][j] = square[i][j]/n - mean[i]/n*mean[j]/n
				if want := m.covariance(i, j); math.Abs(sum[i][j]-want) > 0.02*math.Sqrt(m.covariance(i, i)*m.covariance(j, j)) {
					t.Errorf("tared %v, %d %d: %g, drawn %g", tared, i, j, want, sum[i][j])
				}
			}
		}
	}
}

func TestPublishedCovariances(t *testing.T) {
	table, err := testdata.Load("cumulative_weighings")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		if row.Text("mode") == "separate loads" {
			continue
		}
		masses, err := row.Floats("layers_g")
		if err != nil {
			t.Fatal(err)
		}
		var v [4]float64
		for i, c := range []string{"step_g", "repeat_g", "relative", "covariance_first_two_g2"} {
			if v[i], err = row.Float(c); err != nil {
				t.Fatal(err)
			}
		}
		m := measured{grams: masses, states: []float64{1, 1}, yields: []float64{0, 0},
			Evidence: portion.Evidence{Reading: v[0]*v[0]/12 + v[1]*v[1], Relative: v[2], Factor: 1}, tared: row.Text("mode") == "tare each"}
		if got := m.covariance(0, 1); math.Abs(got-v[3]) > 0.51e-6 {
			t.Errorf("line %d: %g, want %g", row.Line, got, v[3])
		}
	}
}

// The total of a build with one zero is as sure as one weighing; a ratio loses what is
// common to its two layers.
func TestWhatLayersShare(t *testing.T) {
	s := burger()
	s.Layers = append(s.Layers[:3:3], s.Layers[4])
	s.Layers[1].Basis, s.Layers[1].Yield = "", honestplate.Estimate{}
	b := Build{Scale: portion.Scale{StepGrams: 0.1, Check: portion.CheckWeight{Grams: 182, Reading: 182, Standard: 4}}}
	so := 0.0
	for _, l := range s.Layers {
		so += l.Declared.Grams
		b.Layers = append(b.Layers, Placed{Reading: so})
	}
	got, err := s.Check(b)
	if err != nil {
		t.Fatal(err)
	}
	want := math.Sqrt(2*0.01/12 + 16)
	if math.Abs(got.Total.Standard-want) > 1e-9 || math.Abs(got.Total.Found-182) > 1e-9 {
		t.Errorf("total %s, u %g, want %g", got.Total, got.Total.Standard, want)
	}
	// 2 % on every mass, but cheese over patty only loses by rounding.
	if f := got.Ratios[0]; f.Standard > 0.001 || f.Verdict != portion.Agrees {
		t.Errorf("ratio %s, u %g", f, f.Standard)
	}
	// A scale found to read 1 % too much weighs what is there.
	high := b
	high.Scale.Check = portion.CheckWeight{Grams: 200, Reading: 202}
	high.Layers = nil
	for _, p := range b.Layers {
		high.Layers = append(high.Layers, Placed{Reading: p.Reading * 1.01})
	}
	if got, err := s.Check(high); err != nil || math.Abs(got.Total.Found-182) > 1e-9 {
		t.Errorf("corrected %s, %v", got.Total, err)
	}
	s.TotalMinusGrams, s.TotalPlusGrams = 1, 1
	if got, err := s.Check(b); err != nil || got.Total.Verdict != portion.CannotTell || !strings.Contains(got.Total.Reason, "too narrow") {
		t.Errorf("%s, %v", got.Total, err)
	}
}

func TestBuildRefusals(t *testing.T) {
	good := func() Build { return built(fine, 28, 113, 14, 27) }
	for field, change := range map[string]func(*Build){
		"Build.Layers":               func(b *Build) { b.Layers = b.Layers[:4] },
		"Build.Layers[2].Reading":    func(b *Build) { b.Layers[2].Reading = 300 },
		"Build.Layers[0].Reading":    func(b *Build) { b.Layers[0].Reading = math.NaN() },
		"Build.Layers[0].Pieces":     func(b *Build) { b.Layers[0].Pieces = -1 },
		"Build.Layers[0].Basis":      func(b *Build) { b.Layers[0].Basis = Cooked },
		"Build.Layers[1].Basis":      func(b *Build) { b.Layers[1].Basis = "grilled" },
		"Build.EmptyGrams":           func(b *Build) { b.EmptyGrams = -1 },
		"Build.Scale.Check.Reading":  func(b *Build) { b.Scale.Check.Reading = 500 },
		"Build.Scale.Check.Grams":    func(b *Build) { b.Scale.Check = portion.CheckWeight{Grams: 50, Reading: 50} },
		"Build.Scale.Check.Standard": func(b *Build) { b.Scale.Check.Standard = -1 },
	} {
		b := good()
		change(&b)
		if _, err := burger().Check(b); fieldOf(err) != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	s := burger()
	s.Layers[1].Yield = honestplate.Estimate{}
	b := good()
	b.Layers[1].Basis = Cooked
	if _, err := s.Check(b); fieldOf(err) != "Build.Layers[1].Basis" {
		t.Errorf("no yield: %v", err)
	}
	if got, err := s.Check(good()); err != nil || got.Verdict != portion.Agrees {
		t.Errorf("%+v, %v", got, err)
	}
	b = good()
	b.Layers[3].Pieces = 0
	got, err := s.Check(b)
	if err != nil || got.Layers[3].Verdict != portion.CannotTell || got.Verdict != portion.CannotTell {
		t.Errorf("not counted: %v, %v", got.Layers[3], err)
	}
	for pieces, want := range map[int]portion.Verdict{2: portion.Differs, 4: portion.Agrees, 5: portion.Differs} {
		b.Layers[3].Pieces = pieces
		if got, err := s.Check(b); err != nil || got.Layers[3].Verdict != want {
			t.Errorf("%d pieces: %v, %v", pieces, got.Layers[3], err)
		}
	}
}

func TestItemsOfABuild(t *testing.T) {
	s, b := burger(), built(fine, 28, 113, 18, 27)
	items, err := s.Items(b)
	if err != nil || len(items) != 5 {
		t.Fatal(items, err)
	}
	ref, err := s.Ref()
	if err != nil {
		t.Fatal(err)
	}
	r := Record{Revision: 1, Picture: "burger", Date: "2026-10-05", Specification: &ref, Items: items}
	text := write(t, r)
	back, err := Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	check, err := s.Check(b)
	if err != nil {
		t.Fatal(err)
	}
	for i := range items {
		f, err := back.Items[i].Verdict()
		if err != nil || f.Verdict != check.Layers[i].Verdict {
			t.Errorf("%s: %s in the record, %s in the build, %v", f.Name, f.Verdict, check.Layers[i].Verdict, err)
		}
	}
	b.Layers[1].Basis = Cooked
	if items, err = s.Items(b); err != nil || items[1].How != "weighed cooked, counted back to raw with a yield of 0.750 (0.735..0.765)" {
		t.Errorf("%q, %v", items[1].How, err)
	}
	if _, err := s.Items(Build{}); !errors.Is(err, honestplate.ErrInput) {
		t.Error(err)
	}
}

// What a mass may be wrong by is said in two digits and never understated.
func TestItemsRoundForPeople(t *testing.T) {
	for _, c := range [][4]float64{
		{28.4012, 0.08241, 28.401, 0.083}, {28.4, 0.082, 28.4, 0.082}, {113.46, 1.01, 113.5, 1.1}, {500.4, 12.01, 500, 13},
		{5000.4, 123.2, 5000, 124}, {62.25, 0, 62.25, 0}, {0.9996, 0.0999, 1, 0.1},
	} {
		if grams, wrongBy := forPeople(c[0], c[1]); grams != c[2] || wrongBy != c[3] {
			t.Errorf("%v g +- %v g is said as %v +- %v", c[0], c[1], grams, wrongBy)
		}
	}
}
