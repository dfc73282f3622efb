package rheology

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

var pipeModels = []FlowModel{
	Newtonian{0.7}, PowerLaw{19.1, 0.39}, PowerLaw{0.3, 1.3}, Bingham{36.1, 8.7},
	HerschelBulkley{32, 18.7, 0.27}, HerschelBulkley{5, 4, 1.2}, Casson{9.3, 1.42}, Carreau{50, 0.2, 3, 0.4},
}

// disguised hides a model's type, so that Flow has to integrate it.
type disguised struct{ FlowModel }

// The closed forms against the general integral over the flow curve, which
// shares no formula with them.
func TestPipeClosedFormsAreTheIntegral(t *testing.T) {
	p := Pipe{0.02, 1}
	for _, m := range pipeModels {
		for _, wall := range []float64{1.01, 2, 10, 100} {
			tw := m.YieldStress() + wall
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
					t.Errorf("%s %+v, wall stress %g: %s %.10g, by integration %.10g", m.Name(), m, tw, c.name, c.a, c.b)
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
				t.Fatalf("%s: %v", m.Name(), err)
			}
			f, err := p.Flow(m, dp)
			if err != nil {
				t.Fatal(err)
			}
			// Near the yield stress a flow of drops hangs on the last digits of the pressure.
			if math.Abs(f.Rate/q-1) > 1e-6 {
				t.Errorf("%s: %g m3/s wants %g Pa, which gives %g", m.Name(), q, dp, f.Rate)
			}
		}
	}
}

// Readings of a pipe turned by Rabinowitsch and Mooney are the flow curve again.
func TestRabinowitschMooneyGivesTheFlowCurveBack(t *testing.T) {
	p := Pipe{0.004, 0.3}
	for _, m := range []FlowModel{PowerLaw{0.5, 0.6}, HerschelBulkley{5, 4, 0.6}, Carreau{50, 0.2, 3, 0.4}} {
		var readings []FlowPoint
		for i := range 41 {
			f, err := p.flow(m, m.YieldStress()*1.5+math.Pow(10, float64(i)/10)*2)
			if err != nil {
				t.Fatal(err)
			}
			readings = append(readings, FlowPoint{ShearRate: f.ApparentShearRate(), Stress: f.WallStress})
		}
		curve, err := RabinowitschMooney(readings)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range curve[1 : len(curve)-1] {
			if want := m.Stress(c.ShearRate); math.Abs(c.Stress/want-1) > 0.01 {
				t.Errorf("%s at %.4g 1/s: %g Pa, want %g", m.Name(), c.ShearRate, c.Stress, want)
			}
		}
	}
}

func TestPipeConstantsTurnBack(t *testing.T) {
	m := PowerLaw{12.5, 0.4}
	if got := m.ForPipe().FromPipe(); math.Abs(got.K/m.K-1) > 1e-14 {
		t.Errorf("got %v, want %v", got, m)
	}
	if got := (PowerLaw{2, 1}).ForPipe(); got.K != 2 {
		t.Errorf("a Newtonian liquid needs no correction: got %v", got)
	}
}
