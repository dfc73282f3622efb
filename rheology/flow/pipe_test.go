package flow

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

var pipeModels = []Model{
	Newtonian{0.7}, PowerLaw{19.1, 0.39}, PowerLaw{0.3, 1.3}, Bingham{36.1, 8.7},
	HerschelBulkley{32, 18.7, 0.27}, HerschelBulkley{5, 4, 1.2}, Casson{9.3, 1.42}, Carreau{50, 0.2, 3, 0.4},
}

// disguised hides a model's type, so that Flow has to integrate it.
type disguised struct{ Model }

// The closed forms against the general integral over the flow curve, which
// shares no formula with them.
func TestPipeClosedFormsAreTheIntegral(t *testing.T) {
	p := Pipe{0.02, 1}
	for _, m := range pipeModels {
		for _, wall := range []float64{1.01, 2, 10, 100} {
			tw := m.Stress(0) + wall
			closed, err := p.flow(m, tw)
			if err != nil {
				t.Fatal(err)
			}
			general, err := p.flow(disguised{m}, tw)
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range []struct {
				name string
				a, b float64
			}{{"rate", closed.Rate, general.Rate}, {"centre speed", closed.CentreSpeed, general.CentreSpeed}, {"wall rate", closed.WallShearRate, general.WallShearRate}} {
				if math.Abs(c.a/c.b-1) > 1e-7 {
					t.Errorf("%s %+v, wall stress %g: %s %.10g, by integration %.10g", m.String(), m, tw, c.name, c.a, c.b)
				}
			}
		}
	}
}

// The flow rate is also the speed profile summed over the section.
func TestPipeRateIsTheProfileSummed(t *testing.T) {
	p := Pipe{0.02, 1}
	m := Casson{9.3, 1.42}
	const wall = 40.0
	f, err := p.flow(m, wall)
	if err != nil {
		t.Fatal(err)
	}
	rate := func(tau float64) float64 {
		if tau <= m.Yield {
			return 0
		}
		d := math.Sqrt(tau) - math.Sqrt(m.Yield)
		return d * d / m.Plastic
	}
	r := p.Diameter / 2
	// Q = pi Integral r^2 rate dr.
	q := math.Pi * quad.Fixed(func(x float64) float64 { return x * x * rate(wall*x/r) }, r*m.Yield/wall, r, 60, quad.Legendre{}, 0)
	if math.Abs(q/f.Rate-1) > 1e-10 {
		t.Errorf("rate %g, by the profile %g", f.Rate, q)
	}
}

func TestPipeBinghamIsBuckinghamReiner(t *testing.T) {
	p := Pipe{0.05, 3}
	m := Bingham{14.3, 0.15}
	f, err := p.Flow(m, 5e4)
	if err != nil {
		t.Fatal(err)
	}
	x := m.Yield / f.WallStress
	want := math.Pi * math.Pow(p.Diameter/2, 3) * f.WallStress / (4 * m.Plastic) * (1 - 4*x/3 + x*x*x*x/3)
	if math.Abs(f.Rate/want-1) > 1e-12 {
		t.Errorf("got %g, want %g", f.Rate, want)
	}
}

func TestBelowTheYieldStressNothingFlows(t *testing.T) {
	p := Pipe{0.01, 1}
	f, err := p.Flow(Bingham{36.1, 8.7}, 1e4)
	if err != nil {
		t.Fatal(err)
	}
	if f.Rate != 0 || f.PlugDiameter != p.Diameter {
		t.Errorf("got %+v, want a standing plug", f)
	}
}

func TestPipePressureIsTheInverseOfFlow(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	for _, m := range append(pipeModels, disguised{Casson{9.3, 1.42}}) {
		for range 20 {
			p := Pipe{0.001 + 0.03*rng.Float64(), 0.01 + rng.Float64()}
			q := math.Pow(10, -8+4*rng.Float64())
			dp, err := p.PressureFor(m, q)
			if err != nil {
				t.Fatalf("%s: %v", m.String(), err)
			}
			f, err := p.Flow(m, dp)
			if err != nil {
				t.Fatal(err)
			}
			// Near the yield stress a flow of drops hangs on the last digits of the pressure.
			if math.Abs(f.Rate/q-1) > 1e-6 {
				t.Errorf("%s: %g m3/s wants %g Pa, which gives %g", m.String(), q, dp, f.Rate)
			}
		}
	}
}

// K' of a pipe's readings turns into the K that makes them.
func TestPipeConstantsTurnBack(t *testing.T) {
	p, m := Pipe{0.004, 0.3}, PowerLaw{12.5, 0.4}
	f, err := p.flow(m, 30)
	if err != nil {
		t.Fatal(err)
	}
	kp := f.WallStress / math.Pow(8*f.Speed/p.Diameter, m.N)
	if got := (PowerLaw{kp, m.N}).FromPipe(); math.Abs(got.K/m.K-1) > 1e-12 {
		t.Errorf("got %v, want %v", got, m)
	}
}
