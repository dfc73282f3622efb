package flow

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/honestplate"
)

// Each model is another one at the edge: the identities that hold between them.
// disguised hides a model's type, as one of a user's own does.
type disguised struct{ Model }

func TestFlowModelsMeetAtTheirEdges(t *testing.T) {
	for _, rate := range []float64{0.01, 1, 37, 1e4} {
		for _, c := range []struct{ a, b Model }{
			{PowerLaw{0.7, 1}, Newtonian{0.7}},
			{Bingham{0, 0.7}, Newtonian{0.7}},
			{HerschelBulkley{5, 0.7, 1}, Bingham{5, 0.7}},
			{HerschelBulkley{0, 3, 0.4}, PowerLaw{3, 0.4}},
			{Casson{0, 0.7}, Newtonian{0.7}},
			{Carreau{0.7, 0.7, 3, 0.4}, Newtonian{0.7}},
			{Carreau{0.7, 0.1, 0, 0.4}, Newtonian{0.7}},
		} {
			if x, y := c.a.Stress(rate), c.b.Stress(rate); math.Abs(x/y-1) > 1e-14 {
				t.Errorf("at %g 1/s: %s %g, %s %g", rate, c.a.String(), x, c.b.String(), y)
			}
		}
	}
}

func TestFlowModelsRiseFromTheirYieldStress(t *testing.T) {
	for _, m := range []Model{
		Newtonian{0.7}, PowerLaw{19.1, 0.39}, PowerLaw{0.3, 1.3}, Bingham{36.1, 8.7},
		HerschelBulkley{32, 18.7, 0.27}, HerschelBulkley{5, 4, 1.2}, Casson{9.3, 1.42}, Carreau{50, 0.2, 3, 0.4},
	} {
		last := -1.0
		for rate := 0.0; rate < 1e4; rate = rate*1.3 + 0.01 {
			if s := m.Stress(rate); !(s > last) {
				t.Errorf("%s does not rise at %g 1/s", m.String(), rate)
			} else {
				last = s
			}
		}
		if !math.IsNaN(m.Stress(-1)) || !math.IsNaN(m.Stress(math.NaN())) {
			t.Errorf("%s: a rate that is none gives a stress", m.String())
		}
	}
}

func TestFlowModelsThatMakeNoSenseAreNamed(t *testing.T) {
	nan := math.NaN()
	for _, m := range []Model{
		nil, Newtonian{}, Newtonian{nan}, PowerLaw{-1, 0.5}, PowerLaw{1, 0}, PowerLaw{1, 3}, Bingham{-1, 1}, Bingham{1, 0},
		HerschelBulkley{nan, 1, 0.5}, HerschelBulkley{1, 1, math.Inf(1)}, Casson{-1, 1}, Casson{1, 0},
		Carreau{0, 0, 1, 0.5}, Carreau{1, -1, 1, 0.5}, Carreau{1, 0, nan, 0.5}, Carreau{1, 0, 1, -1}, disguised{Bingham{-1, 1}},
	} {
		if err := makesSense(m); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%#v: got %v", m, err)
		}
		if _, err := Viscosity(m, 10); err == nil {
			t.Errorf("%#v: has a viscosity", m)
		}
	}
	for _, rate := range []float64{0, -1, nan, math.Inf(1)} {
		if _, err := Viscosity(Newtonian{1}, rate); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("rate %g: got %v", rate, err)
		}
	}
	if v, err := Viscosity(Bingham{10, 2}, 5); err != nil || v != 4 {
		t.Errorf("got %g, %v, want 4", v, err)
	}
}

func TestReadPoints(t *testing.T) {
	points, err := ReadPoints(strings.NewReader("# ketchup, 25 degC\nshear rate 1/s, stress Pa, weight\n 1, 50.7, 1\n10, 66.8, 2\n100, 96.8, \n"))
	if err != nil {
		t.Fatal(err)
	}
	want := []Point{{1, 50.7, 1}, {10, 66.8, 2}, {100, 96.8, 0}}
	if len(points) != len(want) {
		t.Fatalf("got %v", points)
	}
	for i, p := range points {
		if p != want[i] {
			t.Errorf("line %d: got %v, want %v", i, p, want[i])
		}
	}
	for name, text := range map[string]string{
		"empty": "", "only a heading": "rate,stress\n", "one column": "1\n2\n", "four columns": "1,2,3,4\n",
		"words": "1,2\nx,3\n", "negative": "1,2\n-1,3\n", "NaN": "1,2\nNaN,3\n", "bad quotes": "1,\"2\n", "weight": "1,2,-3\n",
	} {
		if _, err := ReadPoints(strings.NewReader(text)); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if _, err := ReadPoints(strings.NewReader("1,2\nx,3\n")); err == nil || !strings.Contains(err.Error(), "Line[2]") || !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("a wrong line is not named: %v", err)
	}
	if _, err := ReadPoints(nil); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no reader: %v", err)
	}
}
