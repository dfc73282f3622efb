package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/integrate/quad"
)

var butterBlock = HalfSpace{Material: butterLike, StartC: 4}

// stored is the heat below a square metre of surface, J/m2, by quadrature of the
// temperature; it checks each solution without using its flux.
func stored(t *testing.T, s HalfSpace, at func(depth float64) (float64, error)) float64 {
	t.Helper()
	return quad.Fixed(func(x float64) float64 {
		temp, err := at(x)
		if err != nil {
			t.Fatal(err)
		}
		return s.Density * s.SpecificHeat * (temp - s.StartC)
	}, 0, 0.25, 400, nil, 0)
}

func TestHeatThroughTheSurfaceIsStored(t *testing.T) {
	s := butterBlock
	const after = 30 * time.Minute
	seconds := after.Seconds()
	heated := stored(t, s, func(x float64) (float64, error) { return s.Heated(300, x, after) })
	if want := 300 * seconds; math.Abs(heated-want) > 1e-6*want {
		t.Errorf("steady flux: stored %g, given %g J/m2", heated, want)
	}
	held := stored(t, s, func(x float64) (float64, error) { return s.Held(30, x, after) })
	flux, err := s.HeldFlux(30, after)
	if err != nil {
		t.Fatal(err)
	}
	if want := 2 * flux * seconds; math.Abs(held-want) > 1e-6*want { // flux falls as 1/sqrt t
		t.Errorf("held surface: stored %g, given %g J/m2", held, want)
	}
	convected := stored(t, s, func(x float64) (float64, error) { return s.Convected(30, 12, x, after) })
	// In sqrt t the surface temperature is smooth enough for Gauss's rule.
	want := quad.Fixed(func(root float64) float64 {
		surface, err := s.Convected(30, 12, 0, time.Duration(root*root*1e9))
		if err != nil {
			t.Fatal(err)
		}
		return 2 * root * 12 * (30 - surface)
	}, 0, math.Sqrt(seconds), 40, nil, 0)
	if math.Abs(convected-want) > 1e-6*want {
		t.Errorf("convection: stored %g, given %g J/m2", convected, want)
	}
}

func TestStrongConvectionHoldsTheSurface(t *testing.T) {
	for _, depth := range []float64{0, 0.001, 0.02} {
		a, err := butterBlock.Convected(30, 1e7, depth, time.Minute)
		if err != nil {
			t.Fatal(err)
		}
		b, err := butterBlock.Held(30, depth, time.Minute)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(a-b) > 1e-3 {
			t.Errorf("at %g m: convected %g, held %g", depth, a, b)
		}
	}
}

func TestASlabIsAHalfSpaceAtFirst(t *testing.T) {
	slab := Solid{Material: butterLike, Size: Size{Height: 0.2}, H: 12, StartC: 4, AmbientC: 30}
	tr := mustTransient(t, slab)
	for _, after := range []time.Duration{time.Second, time.Minute, 20 * time.Minute} {
		for _, depth := range []float64{0, 0.005, 0.03} {
			a, err := tr.TempC(Place{H: 1 - depth/0.1}, after)
			if err != nil {
				t.Fatal(err)
			}
			b, err := butterBlock.Convected(30, 12, depth, after)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(a-b) > 1e-8 {
				t.Errorf("%v at %g m: slab %.10g, half-space %.10g", after, depth, a, b)
			}
		}
	}
}

func TestHalfSpaceInverses(t *testing.T) {
	s := butterBlock
	depth, err := s.HeldDepth(30, 10, time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	if temp, err := s.Held(30, depth, time.Hour); err != nil || math.Abs(temp-10) > 1e-9 {
		t.Errorf("10 degC comes back as %g (%v)", temp, err)
	}
	after, err := s.ConvectedTimeTo(10, 30, 12, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	if temp, err := s.Convected(30, 12, 0.01, after); err != nil || math.Abs(temp-10) > 1e-6 {
		t.Errorf("10 degC comes back as %g (%v)", temp, err)
	}
	if d, err := s.ConvectedTimeTo(4, 30, 12, 0.01); d != 0 || err != nil {
		t.Errorf("the start is reached after %v (%v)", d, err)
	}
}

func TestContactLiesBetweenAndNearTheGreaterEffusivity(t *testing.T) {
	steel := HalfSpace{Material: Material{15, 7900, 480}, StartC: -30}
	wood := HalfSpace{Material: Material{0.15, 600, 1700}, StartC: -30}
	skin := HalfSpace{Material: Material{0.4, 1050, 3500}, StartC: 33}
	a, err := ContactC(skin, steel)
	if err != nil {
		t.Fatal(err)
	}
	b, err := ContactC(skin, wood)
	if err != nil {
		t.Fatal(err)
	}
	if !(-30 < a && a < 0 && 0 < b && b < 33) {
		t.Errorf("skin on steel %g, on wood %g degC", a, b)
	}
	if again, _ := ContactC(steel, skin); again != a {
		t.Errorf("%g the other way round, %g", again, a)
	}
}

func TestHalfSpaceRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	s, bad := butterBlock, HalfSpace{}
	hot := HalfSpace{Material: butterLike, StartC: nan}
	var errs []error
	add := func(_ float64, err error) { errs = append(errs, err) }
	for _, x := range []HalfSpace{bad, hot} {
		add(x.Held(30, 0, time.Hour))
		add(x.HeldFlux(30, time.Hour))
		add(x.HeldDepth(30, 10, time.Hour))
		add(x.Convected(30, 10, 0, time.Hour))
		add(x.Heated(100, 0, time.Hour))
		add(ContactC(x, s))
		add(ContactC(s, x))
		_, err := x.ConvectedTimeTo(10, 30, 10, 0)
		errs = append(errs, err)
	}
	add(s.Held(nan, 0, time.Hour))
	add(s.Held(30, -1, time.Hour))
	add(s.Held(30, 0, 0))
	add(s.HeldFlux(nan, time.Hour))
	add(s.HeldDepth(nan, 10, time.Hour))
	add(s.HeldDepth(30, 40, time.Hour))
	add(s.HeldDepth(30, 4, time.Hour))
	add(s.HeldDepth(4, 4, time.Hour))
	add(s.Convected(nan, 10, 0, time.Hour))
	add(s.Convected(30, 0, 0, time.Hour))
	add(s.Heated(nan, 0, time.Hour))
	for _, temp := range []float64{40, 30, nan} {
		_, err := s.ConvectedTimeTo(temp, 30, 10, 0)
		errs = append(errs, err)
	}
	for i, err := range errs {
		if !errors.Is(err, ErrInput) && !errors.Is(err, ErrRange) {
			t.Errorf("case %d: error %v", i, err)
		}
	}
}

func FuzzHalfSpace(f *testing.F) {
	f.Add(0.2, 950.0, 2300.0, 4.0, 30.0, 12.0, 0.01, int64(1e12))
	f.Add(400.0, 1.0, 1.0, -100.0, 1e4, 1e9, 0.0, int64(1))
	f.Fuzz(func(t *testing.T, k, rho, c, start, other, h, depth float64, after int64) {
		s := HalfSpace{Material: Material{k, rho, c}, StartC: start}
		d := time.Duration(after)
		for i, call := range []func() (float64, error){
			func() (float64, error) { return s.Held(other, depth, d) },
			func() (float64, error) { return s.HeldFlux(other, d) },
			func() (float64, error) { return s.HeldDepth(other, start/2+other/2, d) },
			func() (float64, error) { return s.Convected(other, h, depth, d) },
			func() (float64, error) { return s.Heated(h, depth, d) },
			func() (float64, error) { return ContactC(s, butterBlock) },
			func() (float64, error) {
				x, err := s.ConvectedTimeTo(start/2+other/2, other, h, depth)
				return float64(x), err
			},
		} {
			if v, err := call(); err == nil && math.IsNaN(v) {
				t.Fatalf("call %d of %+v: NaN", i, s)
			}
		}
	})
}
