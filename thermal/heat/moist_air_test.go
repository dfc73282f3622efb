package heat

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
)

func TestDewPointInvertsSaturation(t *testing.T) {
	for tc := -60.0; tc <= 60; tc += 0.37 {
		for _, rh := range []float64{0.01, 0.2, 0.5, 0.9, 1} {
			a := MoistAir{TempC: tc, RH: rh}
			dew, err := a.DewPointC()
			if err != nil {
				if !errors.Is(err, honestplate.ErrRange) || a.vapour() > lowestVapour*1.01 {
					t.Fatalf("%+v: %v", a, err)
				}
				continue
			}
			back, err := SaturationPressure(dew)
			if err != nil {
				t.Fatal(err)
			}
			pw := a.vapour()
			if math.Abs(back-pw) > 1e-8*pw {
				t.Errorf("%+v: dew point %g has %g Pa, want %g", a, dew, back, pw)
			}
		}
	}
}

func TestSaturationTemperatureInvertsOverTheWholeRange(t *testing.T) {
	for tc := -99.99; tc < 200; tc += 0.0913 {
		p, err := SaturationPressure(tc)
		if err != nil {
			t.Fatal(err)
		}
		back, err := SaturationTemperature(p)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(back-tc) > 1e-6 {
			t.Errorf("%g degC comes back as %g", tc, back)
		}
	}
}

func TestSaturationIsSmoothAtTheTriplePoint(t *testing.T) {
	below, above := saturation(tripleC-1e-9), saturation(tripleC+1e-9)
	if math.Abs(above-below) > 1e-6*above || math.Abs(above-611.657) > 0.02 {
		t.Errorf("%g Pa below, %g Pa above", below, above)
	}
}

// Clausius and Clapeyron: the slope of ln p is L/(R_v T^2), an identity that uses
// neither table.
func TestLatentHeatFollowsFromTheSlopeOfSaturation(t *testing.T) {
	for tc := -58.0; tc <= 60; tc += 5 {
		k := tc + kelvin
		_, slope := lnSaturation(k)
		got, err := LatentHeat(tc)
		if err != nil {
			t.Fatal(err)
		}
		// vapour is not quite an ideal gas: 0.8 % at 60 degC
		if want := slope * vapourGas * k * k; math.Abs(got-want) > 0.01*want {
			t.Errorf("%g degC: %g J/kg, from the slope %g", tc, got, want)
		}
	}
}

func TestWetBulbLiesBetweenDewPointAndTemperature(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 4))
	for range 20000 {
		a := MoistAir{TempC: -30 + 75*r.Float64(), RH: 0.02 + 0.98*r.Float64(), PressurePa: 60000 + 50000*r.Float64()}
		wet, err := a.WetBulbC()
		if err != nil {
			t.Fatalf("%+v: %v", a, err)
		}
		dew, err := a.DewPointC()
		if err != nil {
			t.Fatal(err)
		}
		// Below the triple point the formulas and saturation change hands 0.01 K apart.
		if wet > a.TempC+1e-9 || wet < dew-0.02 {
			t.Errorf("%+v: dew point %g, wet bulb %g", a, dew, wet)
		}
	}
}

// Mass of vapour and dry air in a cubic metre, computed two ways.
func TestDensityVolumeAndVapourAgree(t *testing.T) {
	a := MoistAir{TempC: 31, RH: 0.63, PressurePa: 93000}
	p, err := a.Properties()
	if err != nil {
		t.Fatal(err)
	}
	w, v, rho := p.HumidityRatio, p.SpecificVolume, p.Density
	vapour := p.VapourPressure / (vapourGas * (a.TempC + kelvin))
	if got := (1 + w) / v; math.Abs(got-rho) > 1e-5*rho {
		t.Errorf("density %g, from the volume %g", rho, got)
	}
	if got := w / v; math.Abs(got-vapour) > 1e-4*vapour {
		t.Errorf("vapour density %g, from the ratio %g", vapour, got)
	}
}

func TestPressureFallsWithAltitude(t *testing.T) {
	last := math.Inf(1)
	for z := -5000.0; z <= 11000; z += 250 {
		p, err := PressureAtAltitude(z)
		if err != nil {
			t.Fatal(err)
		}
		if p >= last {
			t.Errorf("%g m: %g Pa", z, p)
		}
		last = p
	}
}

func TestHighStudioHasLessAirToCarryVapour(t *testing.T) {
	p, err := PressureAtAltitude(2240)
	if err != nil {
		t.Fatal(err)
	}
	high, low := MoistAir{TempC: 22, RH: 0.5, PressurePa: p}, MoistAir{TempC: 22, RH: 0.5}
	dHigh, _ := high.DewPointC()
	dLow, _ := low.DewPointC()
	wHigh, wLow := high.ratio(), low.ratio()
	if dHigh != dLow || wHigh < 1.2*wLow {
		t.Errorf("dew points %g, %g; ratios %g, %g", dHigh, dLow, wHigh, wLow)
	}
}

func TestPropertiesAllocateNothing(t *testing.T) {
	a := MoistAir{TempC: 23, RH: 0.5}
	for name, f := range map[string]func() (float64, error){
		"dew point": a.DewPointC, "wet bulb": a.WetBulbC, "properties": func() (float64, error) { p, err := a.Properties(); return p.Density, err },
	} {
		if n := testing.AllocsPerRun(10, func() { _, _ = f() }); n != 0 {
			t.Errorf("%s allocates %g times", name, n)
		}
	}
}

func TestAirRefusesNonsense(t *testing.T) {
	for name, a := range map[string]MoistAir{
		"NaN temperature": {TempC: math.NaN()}, "infinite humidity": {RH: math.Inf(1)}, "wet percent": {TempC: 20, RH: 50},
		"negative humidity": {RH: -0.1}, "too cold": {TempC: -101}, "too hot": {TempC: 101}, "thin air": {PressurePa: 100},
		"storm": {Speed: 31}, "backwards": {Speed: -1}, "boiling damp": {TempC: 99.9, RH: 1},
	} {
		for m, f := range map[string]func() (float64, error){
			"DewPointC": a.DewPointC, "WetBulbC": a.WetBulbC, "Properties": func() (float64, error) { _, err := a.Properties(); return 0, err },
		} {
			if _, err := f(); err == nil {
				t.Errorf("%s of air with %s: no error", m, name)
			} else {
				testkit.Typed(t, err)
			}
		}
	}
	for name, f := range map[string]func() (float64, error){
		"pressure, too cold":   func() (float64, error) { return SaturationPressure(-101) },
		"pressure NaN":         func() (float64, error) { return SaturationPressure(math.NaN()) },
		"temperature of 0 Pa":  func() (float64, error) { return SaturationTemperature(0) },
		"latent heat, hot":     func() (float64, error) { return LatentHeat(201) },
		"altitude of the moon": func() (float64, error) { return PressureAtAltitude(3.8e8) },
		"dry air's dew point":  MoistAir{TempC: 20}.DewPointC,
		"dry cold wet bulb":    MoistAir{TempC: -100, RH: 0.5}.WetBulbC,
	} {
		if v, err := f(); err == nil {
			t.Errorf("%s: got %g", name, v)
		} else {
			testkit.Typed(t, err)
		}
	}
}

func TestWetBulbBesideTheStepAtFreezing(t *testing.T) {
	for rh := 0.0; rh <= 1; rh += 0.001 {
		for _, tc := range []float64{-40, -1, 0, 0.005, 0.01, 2, 6} {
			wet, err := MoistAir{TempC: tc, RH: rh}.WetBulbC()
			if err != nil {
				t.Fatalf("%g degC, %g: %v", tc, rh, err)
			}
			if wet > tc+1e-9 {
				t.Errorf("%g degC, %g: wet bulb %g", tc, rh, wet)
			}
		}
	}
}

func FuzzAir(f *testing.F) {
	f.Add(23.0, 0.5, 0.0, 0.1, 12.0)
	f.Add(-10.0, 1.0, 50000.0, 3.0, -20.0)
	f.Fuzz(func(t *testing.T, tempC, rh, p, speed, other float64) {
		a := MoistAir{tempC, rh, p, speed}
		for _, g := range []func() (float64, error){
			a.DewPointC, a.WetBulbC,
			func() (float64, error) { return SaturationPressure(tempC) },
			func() (float64, error) { return SaturationTemperature(p) },
			func() (float64, error) { return LatentHeat(tempC) },
			func() (float64, error) { return PressureAtAltitude(other) },
		} {
			if v, err := g(); err != nil {
				testkit.Typed(t, err)
			} else {
				testkit.Finite(t, v)
			}
		}
		if p, err := a.Properties(); err != nil {
			testkit.Typed(t, err)
		} else {
			testkit.Finite(t, p)
		}
		if s, err := a.SteamGM3(other, rh); err != nil {
			testkit.Typed(t, err)
		} else {
			testkit.Finite(t, s)
		}
	})
}

func BenchmarkDewPoint(b *testing.B) {
	b.ReportAllocs()
	a := MoistAir{TempC: 23, RH: 0.5}
	for b.Loop() {
		_, _ = a.DewPointC()
	}
}

// The logarithms at the room, of its humidity and at one guess.
func BenchmarkDewPointFloor(b *testing.B) {
	sum, x := 0.0, 290.0
	for b.Loop() {
		sum += math.Log(x) + math.Log(x-280) + math.Log(x-10)
		x += 1e-9
	}
	if sum == 0 {
		b.Error("nothing summed")
	}
}
