package rheology

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/honestplate"
)

// Each model is another one at the edge: the identities that hold between them.
func TestFlowModelsMeetAtTheirEdges(t *testing.T) {
	for _, rate := range []float64{0.01, 1, 37, 1e4} {
		for _, c := range []struct{ a, b FlowModel }{
			{PowerLaw{0.7, 1}, Newtonian{0.7}},
			{Bingham{0, 0.7}, Newtonian{0.7}},
			{HerschelBulkley{5, 0.7, 1}, Bingham{5, 0.7}},
			{HerschelBulkley{0, 3, 0.4}, PowerLaw{3, 0.4}},
			{Casson{0, 0.7}, Newtonian{0.7}},
			{Carreau{0.7, 0.7, 3, 0.4}, Newtonian{0.7}},
			{Carreau{0.7, 0.1, 0, 0.4}, Newtonian{0.7}},
		} {
			if x, y := c.a.Stress(rate), c.b.Stress(rate); math.Abs(x/y-1) > 1e-14 {
				t.Errorf("at %g 1/s: %s %g, %s %g", rate, c.a.Name(), x, c.b.Name(), y)
			}
		}
	}
}

func TestFlowModelsRiseFromTheirYieldStress(t *testing.T) {
	for _, m := range pipeModels {
		if m.Stress(0) != m.YieldStress() {
			t.Errorf("%s at rest: %g, yield stress %g", m.Name(), m.Stress(0), m.YieldStress())
		}
		last := -1.0
		for rate := 0.0; rate < 1e4; rate = rate*1.3 + 0.01 {
			if s := m.Stress(rate); !(s > last) {
				t.Errorf("%s does not rise at %g 1/s", m.Name(), rate)
			} else {
				last = s
			}
		}
		if !math.IsNaN(m.Stress(-1)) || !math.IsNaN(m.Stress(math.NaN())) {
			t.Errorf("%s: a rate that is none gives a stress", m.Name())
		}
	}
}

func TestFlowModelsThatMakeNoSenseAreNamed(t *testing.T) {
	nan := math.NaN()
	for _, m := range []FlowModel{
		nil, Newtonian{}, Newtonian{nan}, PowerLaw{-1, 0.5}, PowerLaw{1, 0}, PowerLaw{1, 3}, Bingham{-1, 1}, Bingham{1, 0},
		HerschelBulkley{nan, 1, 0.5}, HerschelBulkley{1, 1, math.Inf(1)}, Casson{-1, 1}, Casson{1, 0},
		Carreau{0, 0, 1, 0.5}, Carreau{1, -1, 1, 0.5}, Carreau{1, 0, nan, 0.5}, Carreau{1, 0, 1, -1}, disguised{Bingham{-1, 1}},
	} {
		if err := CheckFlow(m); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%#v: got %v", m, err)
		}
		if _, err := ApparentViscosity(m, 10); err == nil {
			t.Errorf("%#v: has a viscosity", m)
		}
		if _, err := (Pipe{0.01, 1}).Flow(m, 100); err == nil {
			t.Errorf("%#v: flows", m)
		}
		if _, err := (Pipe{0.01, 1}).PressureFor(m, 1e-6); err == nil {
			t.Errorf("%#v: flows", m)
		}
	}
	for _, rate := range []float64{0, -1, nan, math.Inf(1)} {
		if _, err := ApparentViscosity(Newtonian{1}, rate); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("rate %g: got %v", rate, err)
		}
	}
	if v, err := ApparentViscosity(Bingham{10, 2}, 5); err != nil || v != 4 {
		t.Errorf("got %g, %v, want 4", v, err)
	}
}

func TestReadFlowPoints(t *testing.T) {
	points, err := ReadFlowPoints(strings.NewReader("# ketchup, 25 degC\nshear rate 1/s, stress Pa, weight\n 1, 50.7\n10, 66.8, 2\n100, 96.8,\n"))
	if err != nil {
		t.Fatal(err)
	}
	want := []FlowPoint{{1, 50.7, 0}, {10, 66.8, 2}, {100, 96.8, 0}}
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
		if _, err := ReadFlowPoints(strings.NewReader(text)); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if _, err := ReadFlowPoints(strings.NewReader("1,2\nx,3\n")); err == nil || !strings.Contains(err.Error(), "line 2") || !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("a wrong line is not named: %v", err)
	}
	if _, err := ReadFlowPoints(nil); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no reader: %v", err)
	}
}

func TestPipeRefusesWhatIsNoPipe(t *testing.T) {
	m := Newtonian{1}
	nan := math.NaN()
	for _, p := range []Pipe{{}, {0, 1}, {1, 0}, {-1, 1}, {nan, 1}, {1, nan}, {1e9, 1}, {1, 1e9}} {
		if _, err := p.Flow(m, 100); err == nil {
			t.Errorf("%+v flows", p)
		}
		if _, err := p.PressureFor(m, 1e-6); err == nil {
			t.Errorf("%+v flows", p)
		}
		if _, err := p.Hedstrom(Bingham{1, 1}, 1000); err == nil {
			t.Errorf("%+v has a Hedstrom number", p)
		}
	}
	p := Pipe{0.01, 1}
	for _, v := range []float64{0, -1, nan, math.Inf(1)} {
		if _, err := p.Flow(m, v); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("pressure %g: %v", v, err)
		}
		if _, err := p.PressureFor(m, v); err == nil {
			t.Errorf("rate %g: no error", v)
		}
		if _, err := p.Hedstrom(Bingham{1, 1}, v); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("density %g: %v", v, err)
		}
		if _, err := (PipeFlow{WallStress: 1}).Reynolds(v); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("density %g: %v", v, err)
		}
	}
	if _, err := p.Hedstrom(Bingham{-1, 1}, 1000); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("got %v", err)
	}
	if _, err := (PipeFlow{}).Reynolds(1000); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no flow: %v", err)
	}
	if r := (PipeFlow{}).ApparentShearRate(); r != 0 {
		t.Errorf("no pipe: %g", r)
	}
	// A curve that stops rising cannot be driven past its top.
	if _, err := p.Flow(disguised{Carreau{1, 0, 1, 0.001}}, 1e9); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("beyond the curve's top: %v", err)
	}
}

func TestRabinowitschMooneyRefusesFallingStress(t *testing.T) {
	for _, points := range [][]FlowPoint{
		nil, {{1, 1, 0}, {2, 2, 0}}, {{1, 1, 0}, {2, 3, 0}, {3, 2, 0}}, {{1, 1, 0}, {1, 2, 0}, {3, 3, 0}}, {{1, 1, 0}, {2, -1, 0}, {3, 3, 0}},
	} {
		if _, err := RabinowitschMooney(points); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%v: got %v", points, err)
		}
	}
	// A stress that leaps is outside what liquids do.
	if _, err := RabinowitschMooney([]FlowPoint{{1, 1e-8, 0}, {1.3, 1, 0}, {1.6, 1e8, 0}}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("got %v", err)
	}
	if _, err := FitPowerLawLog([]FlowPoint{{1, 1, 0}}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("got %v", err)
	}
	if _, err := FitPowerLawLog(nil); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("got %v", err)
	}
}
