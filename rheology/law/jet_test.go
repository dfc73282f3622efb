package law

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	"gonum.org/v1/gonum/mathext"
)

const g0 = 9.80665

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: %g, want %g to %g", what, got, want, rel)
	}
}

func fall(t *testing.T, j Jet, z float64) Jet {
	t.Helper()
	end, err := j.Fall(z)
	if err != nil {
		t.Fatal(err)
	}
	return end
}

func TestAThinStreamFallsFreely(t *testing.T) {
	j := Jet{Diameter: 0.008, Speed: 0.5, Fluid: Fluid{Viscosity: 0.001, Density: 1000, SurfaceTension: 0.07}}
	for _, z := range []float64{0.01, 0.1, 0.3, 1, 3} {
		end := fall(t, j, z)
		near(t, "speed", end.Speed, math.Sqrt(0.25+2*g0*z), 5e-4)
	}
}

func TestAThickThreadHangsOnItself(t *testing.T) {
	j := Jet{Diameter: 0.01, Speed: 1e-6, Fluid: Fluid{Viscosity: 1000, Density: 1400, SurfaceTension: 0.08}}
	nu := j.Viscosity / j.Density
	for _, z := range []float64{0.05, 0.1, 0.2} {
		near(t, "speed", fall(t, j, z).Speed, 2*g0*z*z/(3*math.Pi*math.Pi*nu), 0.03)
	}
	j.Speed = 0.2
	near(t, "gain", fall(t, j, 0.1).Speed-j.Speed, g0*0.01/(6*nu), 0.15)
}

func TestTheThreadFollowsItsEquation(t *testing.T) {
	const nu = 1.0 / 3 // so that 3 nu is 1
	j := Jet{Diameter: 0.01, Fluid: Fluid{Viscosity: 1000 * nu, Density: 1000, SurfaceTension: 0.05}}
	length, unit := math.Cbrt(1/g0), math.Cbrt(g0)
	worst, n := 0.0, 0
	for end := 0.003; end < 4; end *= 1.5 {
		w, q, x := end, 0.0, 0.0
		h := 0.002 * min(1, math.Sqrt(end))
		rate := func(w, q float64) (float64, float64) { return -q * w, 1/w - w*q }
		for x*length < 2.9 && w > 2e-3*end {
			a1, b1 := rate(w, q)
			a2, b2 := rate(w+h/2*a1, q+h/2*b1)
			a3, b3 := rate(w+h/2*a2, q+h/2*b2)
			a4, b4 := rate(w+h*a3, q+h*b3)
			w += h / 6 * (a1 + 2*a2 + 2*a3 + a4)
			q += h / 6 * (b1 + 2*b2 + 2*b3 + b4)
			x += h
			if w <= 1e-5 {
				break
			}
			j.Speed = w * unit
			got := fall(t, j, x*length).Speed / unit
			worst = max(worst, math.Abs(math.Log(got/end)))
			n++
		}
	}
	if worst > 0.026 {
		t.Errorf("worst of %d speeds %.4f, the documentation says 0.026", n, worst)
	}
	t.Logf("worst of %d speeds %.4f", n, worst)
}

func TestTheLagOfALongThread(t *testing.T) {
	const lag = 2.945830743353453
	if a := real(mathext.AiryAi(complex(-lag/math.Cbrt(2), 0))); math.Abs(a) > 1e-12 {
		t.Errorf("Ai there is %g", a)
	}
	j := Jet{Diameter: 0.01, Speed: 1e-6, Fluid: Fluid{Viscosity: 1, Density: 1000, SurfaceTension: 0.05}}
	length := math.Cbrt(9e-6 / g0)
	v := fall(t, j, 3).Speed
	near(t, "lag", 3-v*v/(2*g0), lag*length, 0.05)
}

func TestFallsKeepTheirFlow(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 6))
	for range 500 {
		j := Jet{
			Diameter: 0.001 + 0.02*r.Float64(), Speed: 0.01 + r.Float64(),
			Fluid: Fluid{Viscosity: math.Pow(10, -3+5*r.Float64()), Density: 900 + 500*r.Float64(), SurfaceTension: 0.03 + 0.05*r.Float64()},
		}
		a, b := r.Float64(), r.Float64()
		short, long := fall(t, j, a), fall(t, j, a+b)
		flow := func(j Jet) float64 { return j.Diameter * j.Diameter * j.Speed }
		near(t, "flow", flow(long), flow(j), 1e-9)
		if short.Speed < j.Speed*(1-1e-9) || long.Speed < short.Speed*(1-1e-9) {
			t.Fatalf("%v slows down: %g, %g", j, short.Speed, long.Speed)
		}
		thick := j
		thick.Viscosity *= 10
		if fall(t, thick, a).Speed > short.Speed*1.001 {
			t.Fatalf("%v: the thicker one falls faster", j)
		}
	}
}

func TestBreakUpSpansTheTwoPublishedForms(t *testing.T) {
	j := Jet{Diameter: 0.005, Speed: 1, Fluid: Fluid{Viscosity: 0.001, Density: 998, SurfaceTension: 0.0727}}
	e := honestplate.Factor(j.levelBreakUp(), breakUpFactor)
	we := j.Density * j.Diameter / j.SurfaceTension
	oh := j.Viscosity / math.Sqrt(j.Density*j.SurfaceTension*j.Diameter)
	near(t, "length", e.Likely, 0.005*19.5*math.Sqrt(we)*math.Pow(1+3*oh, 0.85), 1e-9)
	folds := 0.005 * 12 * (math.Sqrt(we) + 3*we*j.Viscosity/(j.Density*j.Diameter))
	if folds < e.Low*0.97 || folds > e.High {
		t.Errorf("12 e-folds give %g, band %v", folds, e)
	}
	j.Turbulent = true
	near(t, "turbulent", j.levelBreakUp(), 0.005*8.51*math.Pow(we, 0.32), 1e-9)
}

func TestAFastJetBreaksAsIfLevel(t *testing.T) {
	for _, eta := range []float64{0.001, 0.02, 0.2} {
		j := Jet{Diameter: 0.0005, Speed: 20, Fluid: Fluid{Viscosity: eta, Density: 1000, SurfaceTension: 0.07}}
		level := j.levelBreakUp()
		falling, err := j.BreakUp()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "length", falling.Likely, level, 0.03)
	}
}

func TestAFallingJetBreaksWhenItsWavesHaveGrown(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 50 {
		j := Jet{
			Diameter: 0.001 + 0.01*r.Float64(), Speed: 0.05 + r.Float64(),
			Fluid: Fluid{Viscosity: math.Pow(10, -3+4*r.Float64()), Density: 1000, SurfaceTension: 0.05},
		}
		e, err := j.BreakUp()
		if err != nil {
			t.Fatal(err)
		}
		end := math.Sqrt(j.Speed*j.Speed + 2*g0*e.Likely)
		const n = 4000
		step := math.Log(end/j.Speed) / n
		sum := 0.0
		for i := range n {
			v := j.Speed * math.Exp((float64(i)+0.5)*step)
			d := j.Diameter * math.Sqrt(j.Speed/v)
			sum += v * step / g0 / (math.Sqrt(j.Density*d*d*d/j.SurfaceTension) + 3*j.Viscosity*d/j.SurfaceTension)
		}
		oh := j.Viscosity / math.Sqrt(j.Density*j.SurfaceTension*j.Diameter)
		near(t, "e-folds", sum, 19.5*math.Pow(1+3*oh, -0.15), 1e-4)
	}
}

func TestDrippingWeberNumber(t *testing.T) {
	fine, err := Fluid{0.001, 1000, 0.07}.DrippingWeber(1e-5, 1e-5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "finest", fine, 4, 0.01)
	last := 4.0
	for d := 1e-4; d < 0.03; d *= 1.2 {
		we, err := Fluid{0.001, 1000, 0.07}.DrippingWeber(d, d)
		if err != nil {
			t.Fatal(err)
		}
		if we >= last {
			t.Fatalf("at %g m: %g after %g", d, we, last)
		}
		last = we
	}
}

func TestADropHangsByItsTip(t *testing.T) {
	for _, d := range []float64{0.5e-3, 1e-3, 2e-3, 4e-3, 8e-3} {
		drop, err := Fluid{0.001, 998, 0.0727}.PendantDrop(d)
		if err != nil {
			t.Fatal(err)
		}
		v := math.Pi / 6 * drop * drop * drop
		x := d / 2 / math.Cbrt(v)
		f := fallingShare(x)
		near(t, "volume", v, math.Pi*d*0.0727*f/(998*g0), 1e-6)
	}
}

// levelBreakUp is Grant and Middleman's length of a jet that gravity does not stretch.
func (j Jet) levelBreakUp() float64 { return j.efolds() * j.growth() * j.Speed }
