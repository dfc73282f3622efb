package light

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
)

func mustIrradiance(t *testing.T, l Lamp) float64 {
	t.Helper()
	e, err := l.Irradiance()
	if err != nil {
		t.Fatalf("%+v: %v", l, err)
	}
	return e.Likely
}

func TestLightFallsWithTheSquareOfTheDistance(t *testing.T) {
	for _, l := range []Lamp{
		{Watts: 650, Distance: 1, BeamDegrees: 40},
		{Lux: 8000, Distance: 1},
		{Source: Flash, Joules: 500, PopsPerMinute: 6, ModellingWatts: 250, Distance: 1},
		{Source: LED, Watts: 200, Distance: 1, Head: Fresnel, Transmittance: 0.5},
	} {
		far, err := l.At(1.5)
		if err != nil {
			t.Fatal(err)
		}
		if near, far := mustIrradiance(t, l), mustIrradiance(t, far); math.Abs(near/far-2.25) > 1e-12 {
			t.Errorf("%+v: %g, at 1.5 m %g", l, near, far)
		}
	}
}

func TestPowerBeamAndTransmittanceScale(t *testing.T) {
	base := Lamp{Watts: 500, Distance: 2, BeamDegrees: 60}
	e := mustIrradiance(t, base)
	double, half := base, base
	double.Watts, half.Transmittance = 1000, 0.5
	if math.Abs(mustIrradiance(t, double)-2*e) > 1e-9 || math.Abs(mustIrradiance(t, half)-e/2) > 1e-9 {
		t.Errorf("%g, %g, %g", e, mustIrradiance(t, double), mustIrradiance(t, half))
	}
	open := base
	open.BeamDegrees = 0
	if math.Abs(mustIrradiance(t, open)-e) > 1e-9 {
		t.Error("an open face of 60 degrees is the default")
	}
	// a half-space: 2 pi
	flood := base
	flood.BeamDegrees = 180
	if want := 500 * 0.82 * 0.6 / (2 * math.Pi * 4); math.Abs(mustIrradiance(t, flood)-want) > 1e-9 {
		t.Errorf("%g, want %g", mustIrradiance(t, flood), want)
	}
}

// Common practice, no source: flash alone hardly warms anything, its modelling lamp
// does.
func TestFlashAloneHardlyHeatsItsModellingLampDoes(t *testing.T) {
	pops := mustIrradiance(t, Lamp{Source: Flash, Joules: 500, PopsPerMinute: 4, Distance: 1.2})
	with := mustIrradiance(t, Lamp{Source: Flash, Joules: 500, PopsPerMinute: 4, ModellingWatts: 250, Distance: 1.2})
	if with < 10*pops {
		t.Errorf("pops %g W/m2, with the modelling lamp %g", pops, with)
	}
	lux, err := Lamp{Source: Flash, Joules: 500, PopsPerMinute: 4, ModellingWatts: 250, Distance: 1.2}.Illuminance()
	if err != nil || math.Abs(lux.Likely-(with-pops)*27) > 1e-6 {
		t.Errorf("a meter sees the modelling lamp alone: %v lx, %v", lux, err)
	}
	measured, err := Lamp{Source: Flash, ModellingWatts: 250, Distance: 1.2, Lux: 2700}.Illuminance()
	if err != nil || math.Abs(measured.Likely-2700) > 1e-9 {
		t.Errorf("%v lx, %v", measured, err)
	}
}

func TestMeasuredLuxDecides(t *testing.T) {
	l := Lamp{Watts: 650, Lux: 5400}
	if got := mustIrradiance(t, l); math.Abs(got-200) > 1e-9 {
		t.Errorf("%g W/m2", got)
	}
	if _, err := l.At(2); err == nil {
		t.Error("a measured lamp moves from nowhere")
	}
}

func TestBandOfTheLampsKnowsWhatWasMeasured(t *testing.T) {
	for want, lamps := range map[float64][]Lamp{
		1: nil, 1.35: {{Lux: 1000}, {Lux: 500}}, 1.7: {{Watts: 1, Distance: 1, Head: Profile}},
		1.3: {{Watts: 1, Distance: 1, Head: PAR}, {Watts: 5, Distance: 2, Head: PAR}},
		3:   {{Watts: 1, Distance: 1}, {Watts: 9, Distance: 1}},
	} {
		e, err := WhiteFood().Absorbed(lamps...)
		if err != nil {
			t.Fatal(err)
		}
		testkit.CloseRel(t, "high", e.High, e.Likely*want, 1e-12)
		testkit.CloseRel(t, "low", e.Low, e.Likely/want, 1e-12)
	}
}

// A weak lamp that is badly known hardly widens what a strong measured one gives, and
// two strangers err less than one: against drawn sums.
func TestLightIsBandedLampByLamp(t *testing.T) {
	strong, weak := Lamp{Source: Tungsten, Lux: 5000}, Lamp{Source: LED, Watts: 20, Distance: 2}
	if e, err := WhiteFood().Absorbed(strong, weak); err != nil || e.High > 1.36*e.Likely {
		t.Errorf("measured and a weak one: %v, %v", e, err)
	}
	pair := []Lamp{{Source: Tungsten, Watts: 500, Distance: 1, Head: Profile}, {Source: Discharge, Watts: 700, Distance: 1, Head: PAR}}
	both, err := WhiteFood().Absorbed(pair...)
	if err != nil {
		t.Fatal(err)
	}
	var w [2]float64
	for i, l := range pair {
		e, err := WhiteFood().Absorbed(l)
		if err != nil {
			t.Fatal(err)
		}
		w[i] = e.Likely
	}
	rng := rand.New(rand.NewPCG(1, 2))
	sums := make([]float64, 40000)
	for i := range sums {
		for k, l := range pair {
			sums[i] += w[k] * math.Exp(rng.NormFloat64()*math.Log(l.known())/1.96)
		}
	}
	slices.Sort(sums)
	testkit.CloseRel(t, "x/: of two", both.High/both.Likely, math.Sqrt(sums[39000]/sums[1000]), 0.03)
}

// Today's LED heads give 130 to 150 lm per electrical watt (from memory): at 310 lm per
// watt of radiation 0.42 to 0.48 of the power, inside the band.
func TestLEDRadiatesWhatTodaysHeadsDo(t *testing.T) {
	d, err := LED.Data()
	if err != nil {
		t.Fatal(err)
	}
	for _, lm := range []float64{130, 150} {
		if share := lm / d.Efficacy.Likely; share < d.Radiated.Low || share > d.Radiated.High {
			t.Errorf("%g lm/W are %g of the power, band %v", lm, share, d.Radiated)
		}
	}
}

func TestLampRefusesNonsense(t *testing.T) {
	for name, l := range map[string]Lamp{
		"nothing": {}, "off": {Distance: 1}, "no pops": {Source: Flash, Distance: 1}, "NaN": {Watts: math.NaN(), Distance: 1}, "negative": {Watts: -5, Distance: 1}, "a power station": {Watts: 1e9, Distance: 1},
		"no distance": {Watts: 100}, "too near": {Watts: 100, Distance: 0.001}, "beam": {Watts: 100, Distance: 1, BeamDegrees: 270},
		"source": {Watts: 100, Distance: 1, Source: 4}, "head": {Watts: 100, Distance: 1, Head: 4},
		"transmittance": {Watts: 100, Distance: 1, Transmittance: 2}, "lux": {Lux: -1}, "flash in watts": {Source: Flash, Watts: 500, Distance: 1},
		"pops of a lamp": {Watts: 100, Distance: 1, PopsPerMinute: 3}, "joules": {Source: Flash, Joules: math.Inf(1), Distance: 1},
		"pops": {Source: Flash, Joules: 1, PopsPerMinute: -1, Distance: 1}, "modelling": {Source: Flash, ModellingWatts: 1e9, Distance: 1},
	} {
		for m, f := range map[string]func() (honestplate.Estimate, error){
			"Irradiance": l.Irradiance, "Illuminance": l.Illuminance,
			"At": func() (honestplate.Estimate, error) { _, err := l.At(1); return honestplate.Estimate{}, err },
		} {
			if v, err := f(); err == nil {
				t.Errorf("%s of %s: got %v", m, name, v)
			} else {
				testkit.Typed(t, err)
			}
		}
	}
	if _, err := (Lamp{Watts: 1, Distance: 1}).At(0); err == nil {
		t.Error("moved onto the food")
	}
}

func FuzzLamp(f *testing.F) {
	f.Add(650.0, 0, 1.4, 40.0, 0, 1.0, 0.0, 0.0, 0.0, 0.0, 2.0)
	f.Add(0.0, 3, 1.4, 40.0, 1, 0.5, 0.0, 500.0, 4.0, 250.0, 2.0)
	f.Fuzz(func(t *testing.T, watts float64, source int, distance, beam float64, head int, through, lux, joules, pops, modelling, to float64) {
		l := Lamp{watts, Source(source), distance, beam, Head(head), through, lux, joules, pops, modelling}
		if e, err := WhiteFood().Absorbed(l); err == nil && e.Check("band") != nil {
			t.Errorf("band %v", e)
		}
		for _, g := range []func() (any, error){
			func() (any, error) { return l.Irradiance() },
			func() (any, error) { return l.Illuminance() },
			func() (any, error) { return l.At(to) },
			func() (any, error) { return WhiteFood().Absorbed(l) },
		} {
			if v, err := g(); err != nil {
				testkit.Typed(t, err)
			} else {
				testkit.Finite(t, v)
			}
		}
	})
}
