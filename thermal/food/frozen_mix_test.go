package food

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
)

func TestTypicalMixesAreTypical(t *testing.T) {
	for _, m := range mixes {
		temp, err := m.FrozenAtC(0)
		if err != nil {
			t.Fatal(m.Name, err)
		}
		// Ice cream mixes are published at -1.4..-3 degC; water ices reach higher.
		if temp > -1 || temp < -3.5 {
			t.Errorf("%s starts to freeze at %g degC", m.Name, temp)
		}
		m.OverrunPercent = 0
		if rho, err := m.Density(); err != nil || rho < 1040 || rho > 1130 {
			t.Errorf("%s: mix of %g kg/m3 (%v)", m.Name, rho, err)
		}
	}
}

func TestFreezingCurveFallsAndMoreSugarLowersIt(t *testing.T) {
	for _, m := range mixes {
		last := 0.0
		sweeter := m
		sweeter.SucrosePercent += 2
		for frozen := 0.0; frozen <= 0.95; frozen += 0.005 {
			temp, err := m.FrozenAtC(frozen)
			if err != nil {
				t.Fatal(err)
			}
			if temp >= last {
				t.Fatalf("%s: the curve does not fall at %g frozen", m.Name, frozen)
			}
			last = temp
			if lower, err := sweeter.FrozenAtC(frozen); err != nil || lower >= temp {
				t.Fatalf("%s at %g frozen: with more sugar %g, without %g (%v)", m.Name, frozen, lower, temp, err)
			}
		}
	}
}

// What melting takes from a serving temperature is far less than the handbooks'
// latent heat, which counts all water as ice: at -13.2 degC the worked mix of Goff &
// Hartel has 0.45 kg/kg of ice, 150 kJ/kg.
func TestHeatOfMeltingIsThatOfTheIce(t *testing.T) {
	m := FrozenMix{MSNFPercent: 10, WheySolidsPercent: 2, SucrosePercent: 12, GlucoseSyrupPercent: 4, FatPercent: 12}
	share, err := m.IceShare(-13.16)
	if err != nil {
		t.Fatal(err)
	}
	ice := share * m.water()
	if math.Abs(ice-0.45) > 0.002 {
		t.Errorf("ice %g kg/kg, want 0.45", ice)
	}
	cold, _ := m.Enthalpy(-13.16)
	warm, _ := m.Enthalpy(m.thawC(0))
	if d := warm - cold; d < ice*heat.Fusion*0.95 || d > ice*heat.Fusion+2.7e3*10.5 {
		t.Errorf("melting takes %g J/kg, the ice alone %g", d, ice*heat.Fusion)
	}
}

func TestOverrunThinsDensityAndConductivity(t *testing.T) {
	light, dense := Recipes().VanillaIceCream, Recipes().VanillaIceCream
	dense.OverrunPercent = 0
	a, _ := light.Density()
	b, _ := dense.Density()
	if math.Abs(a*1.9-b) > 1e-9 {
		t.Errorf("densities %g and %g", a, b)
	}
	airy, errA := light.Curve()
	full, errF := dense.Curve()
	if errA != nil || errF != nil || len(airy) != len(full) {
		t.Fatal(errA, errF)
	}
	for i, p := range airy {
		q := full[i]
		if !(p.Conductivity > 0.2*q.Conductivity && p.Conductivity < 0.6*q.Conductivity) {
			t.Errorf("at %g degC: %g with air, %g without", p.TempC, p.Conductivity, q.Conductivity)
		}
		if p.TempC != q.TempC || math.Abs(p.Enthalpy*1.9-q.Enthalpy) > 1e-6*math.Abs(q.Enthalpy)+1e-6 {
			t.Errorf("air changes the enthalpy of the mix: %+v and %+v", p, q)
		}
	}
	if over, err := Overrun(b, a); err != nil || math.Abs(over-90) > 1e-9 {
		t.Errorf("overrun %g (%v)", over, err)
	}
}

func TestSyrupFactorIsAnInput(t *testing.T) {
	m := Recipes().VanillaIceCream
	usual, _ := m.FrozenAtC(0)
	m.SyrupFactor = 0.8
	if same, _ := m.FrozenAtC(0); same != usual {
		t.Errorf("0.8 gives %g, the default %g", same, usual)
	}
	m.SyrupFactor = 1.29
	if lower, _ := m.FrozenAtC(0); lower >= usual {
		t.Errorf("1.29 gives %g, the default %g", lower, usual)
	}
}

func TestMixRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	for name, spoil := range map[string]func(*FrozenMix){
		"negative":      func(m *FrozenMix) { m.FatPercent = -1 },
		"NaN":           func(m *FrozenMix) { m.SucrosePercent = nan },
		"infinite":      func(m *FrozenMix) { m.MSNFPercent = math.Inf(1) },
		"no water":      func(m *FrozenMix) { m.FatPercent = 90 },
		"NaN factor":    func(m *FrozenMix) { m.SyrupFactor = nan },
		"overrun":       func(m *FrozenMix) { m.OverrunPercent = 400 },
		"NaN overrun":   func(m *FrozenMix) { m.OverrunPercent = nan },
		"no solute":     func(m *FrozenMix) { *m = FrozenMix{FatPercent: 10} },
		"all but syrup": func(m *FrozenMix) { *m = FrozenMix{SucrosePercent: 70} },
	} {
		m := Recipes().VanillaIceCream
		spoil(&m)
		for i, call := range []func() (float64, error){
			m.Density,
			func() (float64, error) { return m.FrozenAtC(0.5) },
			func() (float64, error) { _, err := m.Curve(); return 0, err },
			func() (float64, error) { return m.Enthalpy(-10) },
			func() (float64, error) { return m.IceShare(-10) },
		} {
			if _, err := call(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
				t.Errorf("%s, call %d: %v", name, i, err)
			}
		}
	}
	for _, frozen := range []float64{-0.1, 0.96, nan} {
		if _, err := Recipes().VanillaIceCream.FrozenAtC(frozen); err == nil {
			t.Errorf("%g frozen: no error", frozen)
		}
	}
	m := Recipes().VanillaIceCream
	for _, temp := range []float64{-91, 91, nan} {
		for i, call := range []func(float64) (float64, error){m.Enthalpy, m.IceShare} {
			if _, err := call(temp); err == nil {
				t.Errorf("call %d at %g degC: no error", i, temp)
			}
		}
	}
	for _, bad := range [][2]float64{{0, 1}, {1, 0}, {1, 2}, {nan, 1}} {
		if _, err := Overrun(bad[0], bad[1]); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("overrun of %v: %v", bad, err)
		}
	}
}

func FuzzFrozenMix(f *testing.F) {
	f.Add(12.0, 11.0, 0.0, 12.0, 0.0, 4.0, 0.4, 90.0, 0.0, -13.0)
	f.Add(0.0, 0.0, 0.0, 40.0, 10.0, 0.0, 0.0, 0.0, 1.2, 20.0)
	f.Fuzz(func(t *testing.T, fat, msnf, whey, sucrose, mono, syrup, other, overrun, factor, temp float64) {
		m := FrozenMix{"", fat, msnf, whey, sucrose, mono, syrup, other, overrun, factor}
		c, err := m.Curve()
		if err != nil {
			if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
				t.Fatal(err)
			}
			return
		}
		if len(c) < 10 {
			t.Errorf("%+v: %d points", m, len(c))
		}
		if _, err := (heat.Body{Radius: 0.01, Curve: c}).Run(-20, 0, func(s float64, _ time.Duration) float64 { return -s }, time.Second); err != nil {
			t.Errorf("%+v: no curve for a body: %v", m, err)
		}
		for i, call := range []func(float64) (float64, error){m.IceShare, m.Enthalpy, m.FrozenAtC, func(float64) (float64, error) { return m.Density() }} {
			if v, err := call(temp); err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
				t.Fatalf("%+v at %g, call %d: %g", m, temp, i, v)
			}
		}
	})
}

func BenchmarkFreezingPoint(b *testing.B) {
	m := Recipes().VanillaIceCream
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.FrozenAtC(0); err != nil {
			b.Fatal(err)
		}
	}
}
