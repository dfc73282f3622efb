package heat

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/internal/root"
	"example.org/honestplate/thermal/internal/solve"
)

// ice and water of one density, as in the analytic solutions.
const (
	iceCp, waterCp = 917 * 2050.0, 917 * 4210.0
	iceK, waterK   = 2.22, 0.57
	iceFusion      = 917 * 333600.0
	dirichlet      = 1e6 // W/(m2 K): as good as an imposed temperature
	mushK          = 0.02
	solverAccuracy = 0.005
)

func imposed(tempC float64) func(float64, time.Duration) float64 {
	return func(s float64, _ time.Duration) float64 { return dirichlet * (tempC - s) }
}

func convection(h, airC float64) func(float64, time.Duration) float64 {
	return func(s float64, _ time.Duration) float64 { return h * (airC - s) }
}

func closeRel(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.7g, want %.7g +- %.3g %%", what, got, want, 100*rel)
	}
}

// The exact series for constant properties, one term or more, from the
// eigenvalue equations of slab, cylinder and sphere.
func seriesTheta(form Form, bi, fo float64) (surface, mean float64) {
	eigen := func(z float64) float64 {
		switch form {
		case SlabForm:
			return z*math.Sin(z) - bi*math.Cos(z)
		case CylinderForm:
			return z*math.J1(z) - bi*math.J0(z)
		}
		return math.Sin(z)*(1-bi) - z*math.Cos(z)
	}
	const dz = 1e-3
	for z, found := dz, 0; found < 30; z += dz {
		a, b := z, z+dz
		if eigen(a)*eigen(b) > 0 {
			continue
		}
		for range 60 {
			m := (a + b) / 2
			if eigen(a)*eigen(m) > 0 {
				a = m
			} else {
				b = m
			}
		}
		found++
		var c, at1, avg float64
		switch form {
		case SlabForm:
			c, at1, avg = 4*math.Sin(a)/(2*a+math.Sin(2*a)), math.Cos(a), math.Sin(a)/a
		case CylinderForm:
			j0, j1 := math.J0(a), math.J1(a)
			c, at1, avg = 2*j1/(a*(j0*j0+j1*j1)), j0, 2*j1/a
		default:
			s, k := math.Sin(a), math.Cos(a)
			c, at1, avg = 4*(s-a*k)/(2*a-math.Sin(2*a)), s/a, 3*(s-a*k)/(a*a*a)
		}
		e := c * math.Exp(-a*a*fo)
		surface, mean = surface+e*at1, mean+e*avg
	}
	return surface, mean
}

func TestSolverMatchesTheSeries(t *testing.T) {
	const radius, k, c = 0.03, 0.6, 3.6e6
	curve := Curve{{-10, 0, k}, {100, 110 * c, k}}
	for _, form := range []Form{SlabForm, CylinderForm, SphereForm} {
		for _, bi := range []float64{0.05, 0.5, 5, 50} {
			b := Body{Form: form, Radius: radius, Curve: curve, Cells: 96}
			var times []time.Duration
			fos := []float64{0.05, 0.2, 0.5, 1.5}
			for _, fo := range fos {
				times = append(times, time.Duration(math.Round(fo*radius*radius*c/k*1e9)))
			}
			states, err := b.Run(90, 50, convection(bi*k/radius, 10), times...)
			if err != nil {
				t.Fatal(err)
			}
			for i, s := range states {
				surface, mean := seriesTheta(form, bi, fos[i])
				if mean < 0.01 {
					continue // within 0.8 K of the end: the error allowed per step shows
				}
				testkit.CloseRel(t, form.String()+" mean", (s.MeanC-10)/80, mean, solverAccuracy)
				if fos[i] >= 0.2 {
					testkit.CloseRel(t, form.String()+" surface", (s.SurfaceC-10)/80, surface, solverAccuracy)
				}
			}
		}
	}
}

// Whatever the material, shape and law, what is stored is what came in, and what flows in
// is the law at the surface's temperature.
func TestEnergyBalanceCloses(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		curve := Curve{{-40, 0, 0.2 + 2*rng.Float64()}}
		for curve[len(curve)-1].TempC < 60 {
			last := curve[len(curve)-1]
			dt := 0.1 + 10*rng.Float64()
			curve = append(curve, CurvePoint{last.TempC + dt, last.Enthalpy + dt*math.Pow(10, 6+2*rng.Float64()), 0.2 + 2*rng.Float64()})
		}
		h, air, lamp := 3+100*rng.Float64(), -30+80*rng.Float64(), 600*rng.Float64()
		b := Body{Form: Form(rng.IntN(3)), Radius: 0.005 + 0.05*rng.Float64(), Curve: curve, Cells: 8 + rng.IntN(100)}
		var c solve.Compiled
		solve.Load(&c, b.Curve, 1, 1)
		var e solve.Engine
		e.Build(int(b.Form), b.Radius, b.Cells, solve.UsualGrade)
		surface := law(func(s float64, at time.Duration) float64 {
			return h*(air-s) + lamp*math.Cos(at.Seconds()/300)*min(h/30, 1)
		})
		e.Begin(&c, -20+40*rng.Float64(), 3e-5, surface)
		moved, before := 0.0, 0.0
		for e.Time < 3000 {
			if err := e.Advance(3000); err != nil {
				t.Fatal(err)
			}
			moved += math.Abs(e.Heat - before)
			before = e.Heat
			q, _ := surface.At(e.SurfaceC(), e.Time)
			area := [...]float64{4 * math.Pi * b.Radius * b.Radius, 2 * math.Pi * b.Radius, 1}[b.Form]
			if d := math.Abs(area*q - e.Flow); d > 1e-9*area*(h*100+lamp) {
				t.Fatalf("at %g s %.9g W by the law, %.9g W flow", e.Time, area*q, e.Flow)
			}
		}
		s := e.State(0)
		if d := math.Abs(s.StoredJ - s.HeatJ); d > 1e-9*moved {
			t.Errorf("stored %.9g J, taken up %.9g J of %.9g J exchanged", s.StoredJ, s.HeatJ, moved)
		}
	}
}

// Halving the shells divides the error by four: second order.
func TestSolverIsSecondOrderInTheGrid(t *testing.T) {
	curve := sharp(0, 1, iceCp, waterCp, iceFusion, iceK, waterK, -40, 30)
	for _, form := range []Form{SlabForm, CylinderForm, SphereForm} {
		heat := func(n int) float64 {
			b := Body{Form: form, Radius: 0.025, Curve: curve, Cells: n, Tolerance: 1e-8}
			s, err := b.Run(-18, 0, convection(15, 25), 1800*time.Second)
			if err != nil {
				t.Fatal(err)
			}
			return s[0].HeatJ
		}
		h1, h2, h3 := heat(16), heat(32), heat(64)
		if order := math.Log2((h1 - h2) / (h2 - h3)); !(order > 1.6 && order < 2.6) {
			t.Errorf("%v: order %.2f in the grid, want 2", form, order)
		}
	}
}

func TestRunRefusesNonsense(t *testing.T) {
	good := Body{Radius: 0.02, Curve: Curve{{-40, 0, 1}, {40, 1e8, 1}}}
	warm := convection(10, 20)
	nan, inf := math.NaN(), math.Inf(1)
	run := func(change func(*Body), start, mark float64, times ...time.Duration) error {
		b := good
		if change != nil {
			change(&b)
		}
		_, err := b.Run(start, mark, warm, times...)
		return err
	}
	s := time.Second
	for name, c := range map[string]struct {
		err  error
		want error
	}{
		"no radius":         {run(func(b *Body) { b.Radius = 0 }, 0, 0, s), honestplate.ErrRange},
		"NaN radius":        {run(func(b *Body) { b.Radius = nan }, 0, 0, s), honestplate.ErrInput},
		"form":              {run(func(b *Body) { b.Form = 9 }, 0, 0, s), honestplate.ErrInput},
		"few cells":         {run(func(b *Body) { b.Cells = 1 }, 0, 0, s), honestplate.ErrRange},
		"many cells":        {run(func(b *Body) { b.Cells = 1e9 }, 0, 0, s), honestplate.ErrRange},
		"tolerance":         {run(func(b *Body) { b.Tolerance = 1 }, 0, 0, s), honestplate.ErrRange},
		"no curve":          {run(func(b *Body) { b.Curve = nil }, 0, 0, s), honestplate.ErrInput},
		"level curve":       {run(func(b *Body) { b.Curve = Curve{{0, 0, 1}, {1, 0, 1}} }, 0, 0, s), honestplate.ErrInput},
		"one temperature":   {run(func(b *Body) { b.Curve = Curve{{0, 0, 1}, {0, 1e6, 1}} }, 0, 0, s), honestplate.ErrInput},
		"NaN curve":         {run(func(b *Body) { b.Curve = Curve{{0, nan, 1}, {1, 1, 1}} }, 0, 0, s), honestplate.ErrInput},
		"no conduction":     {run(func(b *Body) { b.Curve = Curve{{0, 0, 0}, {1, 1e6, 1}} }, 0, 0, s), honestplate.ErrRange},
		"below zero kelvin": {run(func(b *Body) { b.Curve = Curve{{-300, 0, 1}, {1, 1e6, 1}} }, 0, 0, s), honestplate.ErrRange},
		"start":             {run(nil, 60, 0, s), honestplate.ErrRange},
		"infinite start":    {run(nil, inf, 0, s), honestplate.ErrInput},
		"mark":              {run(nil, 0, nan, s), honestplate.ErrInput},
		"no times":          {run(nil, 0, 0), honestplate.ErrInput},
		"times backwards":   {run(nil, 0, 0, 2*s, s), honestplate.ErrInput},
		"a year":            {run(nil, 0, 0, 9000*time.Hour), honestplate.ErrRange},
	} {
		if !errors.Is(c.err, c.want) {
			t.Errorf("%s: %v", name, c.err)
		}
	}
	if _, err := good.Run(0, 0, nil, s); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no flux: %v", err)
	}
	if _, err := good.Run(0, 0, convection(10, 500), 20*time.Hour); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("hotter than the curve: %v", err)
	}
	var stopped *honestplate.InputError
	if _, err := good.Run(0, 0, convection(nan, 0), s); !errors.As(err, &stopped) || !strings.Contains(err.Error(), "a heat flux that is finite") {
		t.Errorf("NaN flux: %v", err)
	}
	// A law that swings a thousand times a second is not one the solver can follow.
	swinging := func(s float64, at time.Duration) float64 { return 1e6 * math.Sin(1e4*at.Seconds()) }
	if _, err := good.Run(0, 0, swinging, 90*24*time.Hour); err == nil {
		t.Error("swinging flux: no error")
	}
}

// At time 0 a body is as it was; even shells and graded ones agree.
func TestRunFromTheStart(t *testing.T) {
	b := Body{Radius: 0.02, Curve: sharp(0, 0.5, iceCp, waterCp, iceFusion, iceK, waterK, -40, 40), Cells: 120}
	graded, err := b.Run(-10, 0.25, convection(20, 25), 0, 20*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	if s := graded[0]; math.Abs(s.MeanC+10) > 1e-9 || math.Abs(s.CoreC+10) > 1e-9 || s.HeatJ != 0 || s.PastShare != 0 || s.SurfaceC <= -10 {
		t.Errorf("at the start %+v", s)
	}
	b.Uniform = true
	even, err := b.Run(-10, 0.25, convection(20, 25), 20*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	testkit.CloseRel(t, "heat", even[0].HeatJ, graded[1].HeatJ, 0.001)
	testkit.CloseRel(t, "melted share", even[0].PastShare, graded[1].PastShare, 0.005)
	for f, want := range map[Form]string{SphereForm: "sphere", CylinderForm: "cylinder", SlabForm: "slab", 8: "unknown form (8)"} {
		if f.String() != want {
			t.Errorf("%d: %s", int(f), f)
		}
	}
}

func FuzzBodyRun(f *testing.F) {
	f.Add(0, 0.02, -18.0, 25.0, 15.0, 20, 600.0)
	f.Add(2, 0.001, 20.0, -30.0, 1e6, 4, 60.0)
	f.Add(1, 0.1, -1.0, -1.0, 0.0, 100, 1e5)
	curve := sharp(0, 0.1, iceCp, waterCp, iceFusion, iceK, waterK, -60, 60)
	f.Fuzz(func(t *testing.T, form int, radius, start, air, h float64, cells int, until float64) {
		if math.Abs(until) > 1e5 || cells > 100 {
			return
		}
		b := Body{Form: Form(form), Radius: radius, Curve: curve, Cells: cells}
		states, err := b.Run(start, 0, convection(math.Abs(h), air), time.Duration(until*1e9))
		if err != nil {
			return
		}
		s := states[0]
		for _, v := range []float64{s.SurfaceC, s.MeanC, s.CoreC, s.HeatJ, s.StoredJ, s.PastShare} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", s)
			}
		}
		low, high := min(start, air)-0.1, max(start, air)+0.1
		if s.MeanC < low || s.MeanC > high {
			t.Fatalf("mean %.4g outside %.4g..%.4g", s.MeanC, low, high)
		}
	})
}

func FuzzCurve(f *testing.F) {
	f.Add(0.0, 0.02, 2e6, 4e6, 3e8, 2.2, 0.57, -40.0, 30.0)
	f.Add(-5.0, 3.0, 1e3, 1e9, 1.0, 1e-4, 1e5, -273.0, 4000.0)
	f.Fuzz(func(t *testing.T, melt, width, cs, cl, latent, ks, kl, low, high float64) {
		b := Body{Radius: 0.02, Cells: 12, Curve: sharp(melt, width, cs, cl, latent, ks, kl, low, high), Tolerance: 1e-3}
		start := low + (high-low)/4
		states, err := b.Run(start, melt, convection(20, low+(high-low)*3/4), time.Minute)
		if err != nil {
			return
		}
		s := states[0]
		for _, v := range []float64{s.SurfaceC, s.MeanC, s.CoreC, s.HeatJ, s.StoredJ, s.PastShare} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", s)
			}
		}
	})
}

func TestSolverMatchesStefanFreezing(t *testing.T) {
	for _, surface := range []float64{-5, -10, -20, -30} {
		lambda := stefan(iceCp * -surface / iceFusion)
		b := Body{Form: SlabForm, Radius: 0.1, Cells: 200,
			Curve: sharp(0, mushK, iceCp, waterCp, iceFusion, iceK, waterK, -40, 20)}
		states, err := b.Run(mushK/2+1e-4, mushK/2, imposed(surface), 1800*time.Second, 3600*time.Second)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range states {
			want := 2 * lambda * math.Sqrt(iceK/iceCp*s.Time.Seconds())
			closeRel(t, "frozen depth", 0.1*(1-s.PastShare), want, solverAccuracy)
		}
	}
}

func TestSolverMatchesNeumann(t *testing.T) {
	for _, c := range []struct{ surface, far float64 }{{-20, 20}, {-10, 4}, {-30, 10}, {15, -10}, {25, -18}} {
		near, far := phase{iceK, iceCp}, phase{waterK, waterCp}
		if c.surface > 0 {
			near, far = far, near
		}
		lambda := neumann(near, far, math.Abs(c.surface), math.Abs(c.far), iceFusion)
		b := Body{Form: SlabForm, Radius: 0.15, Cells: 400,
			Curve: sharp(0, mushK, iceCp, waterCp, iceFusion, iceK, waterK, -40, 40)}
		states, err := b.Run(c.far, mushK/2, imposed(c.surface), 3600*time.Second)
		if err != nil {
			t.Fatal(err)
		}
		changed := states[0].PastShare
		if c.surface < 0 {
			changed = 1 - changed
		}
		want := 2 * lambda * math.Sqrt(near.Conductivity/near.HeatCapacity*3600)
		closeRel(t, "depth of the front", 0.15*changed, want, solverAccuracy)
	}
}

// stefan is the root of Stefan's problem: sqrt(pi) l exp(l^2) erf(l) = Ste. Stefan 1891
// as in any textbook of heat conduction (from memory).
func stefan(ste float64) float64 {
	return root.Rising(func(x float64) float64 { return math.Sqrt(math.Pi)*x*math.Exp(x*x)*math.Erf(x) - ste }, 0, 4)
}

// phase is a conductivity and a heat capacity by volume.
type phase struct{ Conductivity, HeatCapacity float64 }

// neumann is the root of Neumann's problem, in which the far phase is not at the melting
// point. Neumann's solution as in Carslaw and Jaeger 1959, Conduction of Heat in Solids
// (from memory).
func neumann(near, far phase, dNear, dFar, latent float64) float64 {
	ratio := math.Sqrt(near.Conductivity / near.HeatCapacity * far.HeatCapacity / far.Conductivity)
	side := far.Conductivity / near.Conductivity * ratio * dFar / dNear
	return root.Rising(func(l float64) float64 {
		x := l * ratio
		tail := math.Sqrt(math.Pi) * x * (1 + 0.5/(x*x)) // exp(-x^2)/erfc(x) for large x
		if x < 5 {
			tail = math.Exp(-x*x) / math.Erfc(x)
		}
		return math.Sqrt(math.Pi)*latent/(near.HeatCapacity*dNear)*l + side*tail - math.Exp(-l*l)/math.Erf(l)
	}, 1e-9, 5)
}

func sharp(meltC, width, cs, cl, l, ks, kl, lowC, highC float64) Curve {
	return Melting{TempC: meltC, Width: width, Latent: l, SolidK: ks, SolidHeat: cs, LiquidK: kl, LiquidHeat: cl}.Curve(lowC, highC)
}
