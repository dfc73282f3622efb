package heat

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
)

var everyShape = []Shape{VerticalPlate, VerticalCylinder, HorizontalCylinder, Sphere, PlateUp, PlateDown}

func TestFluxesPointTheRightWay(t *testing.T) {
	room := MoistAir{TempC: 23, RH: 0.5} // dew point 12 degC
	for _, shape := range everyShape {
		for _, speed := range []float64{0, 0.3, 2} {
			room.Speed = speed
			at := func(activity, surfaceC float64) Flux {
				t.Helper()
				f, err := Surface{Shape: shape, Length: 0.08, Diameter: 0.07, Activity: activity}.exchange(room, surfaceC, 0)
				if err != nil {
					t.Fatal(err)
				}
				return f
			}
			if f := at(0, 2); !(f.Convection > 0 && f.Radiation > 0 && f.VapourRate > 0 && f.Latent > 0) {
				t.Errorf("shape %d: cold and dry takes heat and dew: %+v", shape, f)
			}
			if f := at(0, 15); f.VapourRate != 0 || f.Latent != 0 {
				t.Errorf("shape %d: dry above the dew point exchanges no vapour: %+v", shape, f)
			}
			if f := at(1, 15); !(f.VapourRate < 0 && f.Latent < 0 && f.Convection > 0) {
				t.Errorf("shape %d: wet above the dew point dries: %+v", shape, f)
			}
			if f := at(1, 80); !(f.VapourRate < 0 && f.Convection < 0 && f.Radiation < 0) {
				t.Errorf("shape %d: hot and wet loses in every way: %+v", shape, f)
			}
			if f := at(0.9, 12.5); f.VapourRate != 0 {
				t.Errorf("shape %d: between its own moisture and saturation nothing passes: %+v", shape, f)
			}
			if f := at(1, -18); math.Abs(f.Latent/f.VapourRate-2.838e6) > 2e3 {
				t.Errorf("shape %d: frost brings the heat of sublimation: %+v", shape, f)
			}
		}
	}
}

// Just below the dew point a dry surface takes a little dew, just above it a wet one
// gives a little: the sign turns exactly there.
func TestVapourTurnsAtTheDewPoint(t *testing.T) {
	room := MoistAir{TempC: 23, RH: 0.5}
	dew, err := room.DewPointC()
	if err != nil {
		t.Fatal(err)
	}
	for _, activity := range []float64{0, 1} {
		x, err := Surface{Length: 0.1, Activity: activity}.In(room)
		if err != nil {
			t.Fatal(err)
		}
		below, err := x.At(dew-0.01, 0)
		if err != nil {
			t.Fatal(err)
		}
		above, err := x.At(dew+0.01, 0)
		if err != nil {
			t.Fatal(err)
		}
		if !(below.VapourRate > 0) || above.VapourRate > 0 || activity == 1 && above.VapourRate == 0 {
			t.Errorf("activity %g: %g below, %g above", activity, below.VapourRate, above.VapourRate)
		}
	}
}

func TestNothingFlowsAtEquilibrium(t *testing.T) {
	f, err := Surface{Shape: Sphere, Length: 0.05, Activity: 1}.exchange(MoistAir{TempC: 20, RH: 1}, 20, 0)
	if err != nil {
		t.Fatal(err)
	}
	if f.Convection != 0 || f.Radiation != 0 || f.VapourRate != 0 || f.Total() != 0 {
		t.Errorf("%+v", f)
	}
}

func TestLightAddsToTheTotalAlone(t *testing.T) {
	s := Surface{Length: 0.1}
	dark, err := s.exchange(MoistAir{TempC: 20, RH: 0.4}, 10, 0)
	if err != nil {
		t.Fatal(err)
	}
	lit, err := s.exchange(MoistAir{TempC: 20, RH: 0.4}, 10, 250)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(lit.Total()-dark.Total()-250) > 1e-9 || lit.Convection != dark.Convection {
		t.Errorf("dark %+v, lit %+v", dark, lit)
	}
}

// The slopes are for linearised steps: within 15 % of the difference quotient.
func TestSlopesAreThoseOfTheFluxes(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 3000 {
		s := Surface{Shape: everyShape[r.IntN(len(everyShape))], Length: 0.02 + 0.2*r.Float64(), Diameter: 0.07, Activity: 1}
		a := MoistAir{TempC: 15 + 20*r.Float64(), RH: r.Float64(), Speed: 2 * r.Float64()}
		x, err := s.In(a)
		if err != nil {
			t.Fatal(err)
		}
		at := -20 + 100*r.Float64()
		if math.Abs(at-a.TempC) < 6 || math.Abs(at) < 0.1 {
			continue // natural convection has a kink where it turns, latent heat a step at 0
		}
		const d = 0.01
		low, err := x.At(at-d, 0)
		if err != nil {
			t.Fatal(err)
		}
		high, err := x.At(at+d, 0)
		if err != nil {
			t.Fatal(err)
		}
		f, err := x.At(at, 0)
		if err != nil {
			t.Fatal(err)
		}
		want := (high.Total() - low.Total()) / (2 * d)
		if f.Slope > 0 || f.VapourSlope > 0 {
			t.Fatalf("%+v", f)
		}
		if at < 60 && math.Abs(f.Slope-want) > 0.15*math.Abs(want) {
			t.Errorf("%+v at %g in %+v: slope %g, by differences %g", s, at, a, f.Slope, want)
		}
	}
}

func TestStefanFlowIsTheLogMean(t *testing.T) {
	const p = 101325.0
	if got := stefanFlow(1400, 1400, p); math.Abs(got-p/(p-1400)) > 1e-12 {
		t.Errorf("equal pressures: %g", got)
	}
	for _, b := range []float64{100, 5000, 19000, 21500, 60000} {
		want := p * math.Log((p-b)/(p-1400)) / (1400 - b)
		if got := stefanFlow(1400, b, p); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%g Pa: %.12g, want %.12g", b, got, want)
		}
	}
	if got := stefanFlow(1058, 47414, p); math.Abs(got-1.357) > 0.01 {
		t.Errorf("80 degC: %g", got)
	}
}

// A wet surface that only convects comes to the wet bulb, but for the Lewis number:
// within 1.1 K, lower in dry air.
func TestWetSurfaceInWindComesToTheWetBulb(t *testing.T) {
	for _, a := range []MoistAir{{TempC: 23, RH: 0.5, Speed: 5}, {TempC: 35, RH: 0.2, Speed: 5}, {TempC: 10, RH: 0.9, Speed: 5}} {
		x, err := Surface{Shape: HorizontalCylinder, Length: 0.01, Emissivity: 1e-9, Activity: 1}.In(a)
		if err != nil {
			t.Fatal(err)
		}
		got, err := x.EquilibriumC(0)
		if err != nil {
			t.Fatal(err)
		}
		wet, err := a.WetBulbC()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got-wet) > 1.1 {
			t.Errorf("%+v: surface %g, wet bulb %g", a, got, wet)
		}
	}
}

func TestEquilibriumBalancesAndRisesWithLight(t *testing.T) {
	for _, activity := range []float64{0, 1} {
		x, err := Surface{Shape: PlateUp, Length: 0.05, Activity: activity}.In(MoistAir{TempC: 23, RH: 0.5})
		if err != nil {
			t.Fatal(err)
		}
		last := -200.0
		for _, light := range []float64{0, 100, 500, 1200} {
			got, err := x.EquilibriumC(light)
			if err != nil {
				t.Fatal(err)
			}
			f, err := x.At(got, light)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(f.Total()) > 1e-4 || got <= last {
				t.Errorf("activity %g, %g W/m2: %g degC, %g W/m2 left, after %g", activity, light, got, f.Total(), last)
			}
			last = got
		}
	}
	x, err := Surface{Length: 0.05}.In(MoistAir{TempC: 23, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if got, err := x.EquilibriumC(0); err != nil || math.Abs(got-23) > 1e-6 {
		t.Errorf("in the dark a dry thing is as warm as the room: %g, %v", got, err)
	}
	wet, err := Surface{Length: 0.05, Activity: 1}.In(MoistAir{TempC: 23, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	for name, f := range map[string]func() (float64, error){
		"an oven of light": func() (float64, error) { return x.EquilibriumC(1e5) },
		"boiling":          func() (float64, error) { return wet.EquilibriumC(1e5) },
		"negative light":   func() (float64, error) { return x.EquilibriumC(-1) },
		"NaN":              func() (float64, error) { return x.EquilibriumC(math.NaN()) },
		"no surface":       func() (float64, error) { return Exchanger{}.EquilibriumC(0) },
	} {
		if v, err := f(); err == nil {
			t.Errorf("%s: %g", name, v)
		} else {
			testkit.Typed(t, err)
		}
	}
}

func TestWindAndFactorRaiseTheCoefficient(t *testing.T) {
	for _, shape := range everyShape {
		last := 0.0
		for _, speed := range []float64{0, 0.1, 0.5, 2, 8} {
			f, err := Surface{Shape: shape, Length: 0.08, Diameter: 0.07}.exchange(MoistAir{TempC: 23, RH: 0.5, Speed: speed}, 5, 0)
			if err != nil {
				t.Fatal(err)
			}
			if f.H <= last {
				t.Errorf("shape %d at %g m/s: h %g, before %g", shape, speed, f.H, last)
			}
			last = f.H
		}
		a := MoistAir{TempC: 23, RH: 0.5}
		one, err := Surface{Shape: shape, Length: 0.08}.exchange(a, 5, 0)
		if err != nil {
			t.Fatal(err)
		}
		half, err := Surface{Shape: shape, Length: 0.08, ConvectionFactor: 0.5}.exchange(a, 5, 0)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(half.H-one.H/2) > 1e-12 || math.Abs(half.VapourRate-one.VapourRate/2) > 1e-15 {
			t.Errorf("shape %d: %+v, halved %+v", shape, one, half)
		}
	}
}

func TestColdFacingUpIsStillerThanFacingDown(t *testing.T) {
	a := MoistAir{TempC: 23, RH: 0.3}
	up, err := Surface{Shape: PlateUp, Length: 0.05}.exchange(a, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	down, err := Surface{Shape: PlateDown, Length: 0.05}.exchange(a, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	if up.H >= down.H {
		t.Errorf("cold: facing up %g, down %g", up.H, down.H)
	}
	up, err = Surface{Shape: PlateUp, Length: 0.05}.exchange(a, 60, 0)
	if err != nil {
		t.Fatal(err)
	}
	down, err = Surface{Shape: PlateDown, Length: 0.05}.exchange(a, 60, 0)
	if err != nil {
		t.Fatal(err)
	}
	if up.H <= down.H {
		t.Errorf("hot: facing up %g, down %g", up.H, down.H)
	}
}

func TestSurfaceRefusesNonsense(t *testing.T) {
	good, room := Surface{Length: 0.1}, MoistAir{TempC: 20, RH: 0.5}
	for name, f := range map[string]func() (Flux, error){
		"no length":      func() (Flux, error) { return Surface{}.exchange(room, 0, 0) },
		"unknown shape":  func() (Flux, error) { return Surface{Shape: 9, Length: 1}.exchange(room, 0, 0) },
		"negative shape": func() (Flux, error) { return Surface{Shape: -1, Length: 1}.exchange(room, 0, 0) },
		"thin cylinder": func() (Flux, error) {
			return Surface{Shape: VerticalCylinder, Length: 1, Diameter: 1e-9}.exchange(room, 0, 0)
		},
		"shiny beyond":    func() (Flux, error) { return Surface{Length: 1, Emissivity: 1.1}.exchange(room, 0, 0) },
		"wetter than wet": func() (Flux, error) { return Surface{Length: 1, Activity: 1.1}.exchange(room, 0, 0) },
		"negative factor": func() (Flux, error) { return Surface{Length: 1, ConvectionFactor: -1}.exchange(room, 0, 0) },
		"bad air":         func() (Flux, error) { return good.exchange(MoistAir{RH: 2}, 0, 0) },
		"surface NaN":     func() (Flux, error) { return good.exchange(room, math.NaN(), 0) },
		"surface too hot": func() (Flux, error) { return good.exchange(room, 151, 0) },
		"negative light":  func() (Flux, error) { return good.exchange(room, 0, -1) },
		"boiling":         func() (Flux, error) { return Surface{Length: 1, Activity: 1}.exchange(room, 99.9, 0) },
		"large ball in gale": func() (Flux, error) {
			return Surface{Shape: Sphere, Length: 1}.exchange(MoistAir{TempC: 20, Speed: 30}, 0, 0)
		},
		"huge thing in gale": func() (Flux, error) {
			return Surface{Shape: HorizontalCylinder, Length: 10}.exchange(MoistAir{TempC: 20, Speed: 30, PressurePa: 2e5}, 0, 0)
		},
	} {
		got, err := f()
		if err == nil {
			t.Errorf("%s: got %+v", name, got)
			continue
		}
		testkit.Typed(t, err)
		var in *honestplate.InputError
		var out *honestplate.RangeError
		if !errors.As(err, &in) && !errors.As(err, &out) {
			t.Errorf("%s: %v names no quantity", name, err)
		}
	}
}

func TestExchangerAllocatesNothing(t *testing.T) {
	x, err := Surface{Shape: Sphere, Length: 0.05, Activity: 1}.In(MoistAir{TempC: 23, RH: 0.5, Speed: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	if n := testing.AllocsPerRun(10, func() { _, _ = x.At(-5, 100) }); n != 0 {
		t.Errorf("allocates %g times", n)
	}
}

func TestConductivitySeriesIsItsPower(t *testing.T) {
	for k := 170.0; k < 450; k += 7 {
		want := 2.64638e-3 * math.Pow(k, 1.5) / (k + 245.4*math.Pow(10, -12/k))
		if got := conductivity(k); math.Abs(got-want) > 1e-8*want {
			t.Errorf("%g K: %.12g, want %.12g", k, got, want)
		}
	}
}

func FuzzSurface(f *testing.F) {
	f.Add(0, 0.1, 0.07, 0.9, 1.0, 1.0, 23.0, 0.5, 0.2, 5.0, 100.0)
	f.Fuzz(func(t *testing.T, shape int, length, diameter, emissivity, activity, factor, airC, rh, speed, surfaceC, light float64) {
		s := Surface{Shape: Shape(shape), Length: length, Diameter: diameter, Emissivity: emissivity, Activity: activity, ConvectionFactor: factor}
		got, err := s.exchange(MoistAir{TempC: airC, RH: rh, Speed: speed}, surfaceC, light)
		if err != nil {
			testkit.Typed(t, err)
			return
		}
		testkit.Finite(t, got)
		testkit.Finite(t, got.Total())
		if x, err := s.In(MoistAir{TempC: airC, RH: rh, Speed: speed}); err != nil {
			t.Error(err)
		} else if e, err := x.EquilibriumC(light); err != nil {
			testkit.Typed(t, err)
		} else {
			testkit.Finite(t, e)
		}
		if got.H < 0 || got.Slope > 0 {
			t.Errorf("%+v", got)
		}
	})
}

func BenchmarkExchangerAt(b *testing.B) {
	for _, speed := range []float64{0, 0.3} {
		b.Run(map[float64]string{0: "still", 0.3: "moving"}[speed], func(b *testing.B) {
			b.ReportAllocs()
			x, err := Surface{Shape: VerticalCylinder, Length: 0.08, Diameter: 0.075, Activity: 1}.In(MoistAir{TempC: 23, RH: 0.5, Speed: speed})
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				_, _ = x.At(3, 0)
			}
		})
	}
}

// The floor of a still vertical cylinder: saturation's logarithm and exponential, the
// roots of the film, of the correlation and of the analogy, and its curvature's power.
func BenchmarkExchangerAtFloor(b *testing.B) {
	sum, film := 0.0, 287.0
	for b.Loop() {
		ln := math.Log(film)
		sum += math.Exp(ln-5) + math.Sqrt(film) + math.Sqrt(math.Cbrt(film*1e4)) + math.Exp(-0.2*math.Log(film*3e3)) + math.Cbrt(film*3e-3)
	}
	exchangerFloor = sum
}

var exchangerFloor float64

// exchange is a surface asked once.
func (s Surface) exchange(a MoistAir, surfaceC, light float64) (Flux, error) {
	x, err := s.In(a)
	if err != nil {
		return Flux{}, err
	}
	return x.At(surfaceC, light)
}
