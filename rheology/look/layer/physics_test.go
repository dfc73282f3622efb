package layer

import (
	"math"
	"testing"
)

func alone(t *testing.T, s Solved) Fluxes {
	t.Helper()
	f, err := s.Alone()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func solve(t *testing.T, s Slab, cosine float64) Solved {
	t.Helper()
	out, err := s.Solve(cosine)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

var depths = []float64{0, 0.01, 0.5, 1, 7, 100, 1e4}

// Without absorption nothing is lost; with it something is.
func TestEnergy(t *testing.T) {
	for _, surface := range []Slab{{}, {Index: 1.345}, {Index: 1.345, Glass: 1.52}, {Index: 1.7}} {
		for _, g := range []float64{-0.4, 0, 0.5, 0.95} {
			for _, depth := range depths {
				for _, cosine := range []float64{1, 0.5, 0.1} {
					s := surface
					s.Albedo, s.Asymmetry, s.Depth = 1, g, depth
					solved := solve(t, s, cosine)
					f := alone(t, solved)
					if b, d := f.BeamReflected+f.BeamTransmitted, f.DiffuseReflected+f.DiffuseTransmitted; math.Abs(d-1) > 1e-6 || math.Abs(b-1) > 1e-6 {
						t.Errorf("%+v, cosine %g: beam %.9f, diffuse %.9f, want 1", s, cosine, b, d)
					}
					s.Albedo = 0.98
					solved = solve(t, s, cosine)
					f = alone(t, solved)
					if d := f.DiffuseReflected + f.DiffuseTransmitted; depth > 0 && d >= 1 || d < 0 {
						t.Errorf("%+v: diffuse %.9f of 1 left", s, d)
					}
				}
			}
		}
	}
}

// White ground below, no absorption: all comes back.
func TestWhiteGroundReturnsAll(t *testing.T) {
	for _, depth := range depths {
		solved := solve(t, Slab{Albedo: 1, Asymmetry: 0.9, Depth: depth, Index: 1.345}, 1)
		f, err := solved.Over(1)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(f.DiffuseReflected-1) > 1e-6 || math.Abs(f.BeamReflected-1) > 1e-6 {
			t.Errorf("depth %g: %+v, want all back", depth, f)
		}
	}
}

// Paths may be walked either way: the radiance returned along i of light from j, per
// flux, is that along j of light from i.
func TestReciprocity(t *testing.T) {
	solved := solve(t, Slab{Albedo: 0.97, Asymmetry: 0.8, Depth: 3, Index: 1.345}, 1)
	a := solved.angles
	for i := range points {
		for j := range points {
			there := solved.r[i][j] / (a.weight[j] * a.mu[j])
			back := solved.r[j][i] / (a.weight[i] * a.mu[i])
			if math.Abs(there-back) > 1e-9*(math.Abs(there)+1) {
				t.Errorf("r[%d][%d]: %g there, %g back", i, j, there, back)
			}
		}
	}
}

func TestLimits(t *testing.T) {
	// Nothing in it: the ground as seen through the surface alone.
	outside := outsideReflection(1.345, 0)
	inside := 1 - (1-outside)/(1.345*1.345) // as much must pass one way as the other
	empty := solve(t, Slab{Depth: 0, Index: 1.345}, 1)
	f, err := empty.Over(0.8)
	if err != nil {
		t.Fatal(err)
	}
	want := outside + (1-outside)*(1-inside)*0.8/(1-inside*0.8) // Saunderson's correction as of Allen 1980, equation 24
	if math.Abs(f.DiffuseReflected-want) > 1e-6 {
		t.Errorf("a clear layer over 0.8 reflects %.7f, Saunderson's formula says %.7f", f.DiffuseReflected, want)
	}
	// Without scattering: Beer's law, down and up.
	dark := solve(t, Slab{Depth: 0.7, Albedo: 0}, 1)
	if f := alone(t, dark); math.Abs(f.BeamTransmitted-math.Exp(-0.7)) > 1e-6 || math.Abs(f.BeamReflected) > 1e-12 {
		t.Errorf("a dyed layer lets %.8f through, want exp(-0.7)", f.BeamTransmitted)
	}
	// A pool without end is the limit of deep ones, and hides its ground.
	for _, albedo := range []float64{0.5, 0.99, 0.9999} {
		s := Slab{Albedo: albedo, Asymmetry: 0.9, Index: 1.345, Depth: 1e6}
		deep, endless := solve(t, s, 1), s
		endless.Depth = math.Inf(1)
		pool := solve(t, endless, 1)
		a, _ := deep.Over(0.9)
		b, _ := pool.Over(0)
		if math.Abs(a.BeamReflected-b.BeamReflected) > 1e-6 || math.Abs(a.DiffuseReflected-b.DiffuseReflected) > 1e-6 {
			t.Errorf("albedo %g: deep %+v, without end %+v", albedo, a, b)
		}
		if alone := alone(t, pool); alone.BeamTransmitted != 0 || math.Abs(alone.BeamReflected-b.BeamReflected) > 1e-9 {
			t.Errorf("albedo %g: a pool without end lets %g through", albedo, alone.BeamTransmitted)
		}
	}
}

// Thicker, whiter ground, less absorption: never darker.
func TestMonotone(t *testing.T) {
	last := -1.0
	for depth := 0.0; depth < 300; depth = 1.3*depth + 0.01 {
		solved := solve(t, Slab{Albedo: 1, Asymmetry: 0.9, Depth: depth, Index: 1.345}, 1)
		f, _ := solved.Over(0)
		if f.BeamReflected < last-1e-12 || f.BeamReflected > 1 {
			t.Fatalf("depth %g: %g after %g", depth, f.BeamReflected, last)
		}
		last = f.BeamReflected
		ground := -1.0
		for _, g := range []float64{0, 0.2, 0.8, 1} {
			f, _ := solved.Over(g)
			if f.BeamReflected < ground {
				t.Fatalf("depth %g: darker over %g", depth, g)
			}
			ground = f.BeamReflected
		}
	}
}

// Two layers of depth 2 on each other are one of 4.
func TestTwoLayersAreOne(t *testing.T) {
	a := anglesFor(1.345, 0, 1)
	r, through := double(a, 0.99, 2, 0.8)
	r2, t2 := twice(&r, &through)
	r4, t4 := double(a, 0.99, 4, 0.8)
	for i := range r2 {
		for j := range r2[i] {
			if math.Abs(r2[i][j]-r4[i][j]) > 1e-9 || math.Abs(t2[i][j]-t4[i][j]) > 1e-9 {
				t.Fatalf("[%d][%d]: two layers of 2 return %g, one of 4 %g", i, j, r2[i][j], r4[i][j])
			}
		}
	}
}

// The first layer is thin enough: eight times thinner changes nothing to speak of.
func TestFirstLayerIsThinEnough(t *testing.T) {
	a := anglesFor(1.345, 0, 1)
	r, through := thin(a, 0.95, 0.03, 0.8, 0)
	r8, t8 := thin(a, 0.95, 0.03/8, 0.8, 0)
	for range 3 {
		r8, t8 = twice(&r8, &t8)
	}
	for i := range r {
		for j := range r[i] {
			if math.Abs(r[i][j]-r8[i][j]) > 2e-7 || math.Abs(through[i][j]-t8[i][j]) > 2e-7 {
				t.Fatalf("[%d][%d]: %g and %g, thinner %g and %g", i, j, r[i][j], through[i][j], r8[i][j], t8[i][j])
			}
		}
	}
}

// Two clear plates in air are the pile of four surfaces that Stokes added up in 1862: m of
// them reflect m r/(1 + (m - 1) r).
func TestPileOfPlates(t *testing.T) {
	f := alone(t, solve(t, Slab{Index: 1, Glass: 1.5}, 1))
	const r, m = 0.04, 4.0
	want := m * r / (1 + (m-1)*r)
	if math.Abs(f.BeamReflected-want) > 1e-9 || math.Abs(f.BeamTransmitted-(1-want)) > 1e-9 {
		t.Errorf("two plates reflect %.9f and let %.9f through, want %.9f back", f.BeamReflected, f.BeamTransmitted, want)
	}
}
