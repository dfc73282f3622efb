package rheology

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// More of each kind than the catalogue lists, at the ends of their contents.
func everyLiquid() []Liquid {
	return append(Catalogue(),
		Dairy{}, Dairy{FatPercent: 50}, Sucrose{}, Sucrose{19.9}, Sucrose{75}, Syrup{"maple", 60}, Syrup{"maple", 70}, Syrup{"invert", 70}, Syrup{"invert", 85},
		Syrup{"glucose", 74}, Syrup{"glucose", 84}, Honey{14}, Honey{20}, Glycerol{},
		Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Factor(0.02, 1.05)}, Measured{Liquid: Food("tomato ketchup"), TempC: 20, PaS: honestplate.Factor(0.9, 1.1)},
		Custom{Name: "syrup of the house", Flow: flow.Newtonian{PaS: 0.15}, FlowC: 20, KgPerM3: 1300},
		Custom{Name: "gravy", Flow: flow.HerschelBulkley{Yield: 3, K: 2, N: 0.5}, FlowC: 60, KgPerM3: 1050, NPerM: 0.05},
		Custom{Name: "dip", Flow: flow.PowerLaw{K: 2, N: 0.5}, FlowC: 20, KgPerM3: 1050},
	)
}

// Every property over the whole stated range: finite, positive, inside its own
// band, and the viscosity falling as it warms.
func TestEveryLiquidHoldsOverItsWholeRange(t *testing.T) {
	for _, l := range everyLiquid() {
		d := l.Describe()
		if d.Name == "" || d.Source == "" || d.Band == "" || !(d.LowC < d.HighC) {
			t.Errorf("%T %+v: description %+v lacks something", l, l, d)
		}
		last := math.Inf(1)
		const steps = 400
		for i := range steps + 1 {
			tempC := d.LowC + (d.HighC-d.LowC)*float64(i)/steps
			v, err := l.Viscosity(tempC)
			if err != nil {
				t.Fatalf("%s at %g degC: %v", d.Name, tempC, err)
			}
			if !(v.Likely < last) {
				t.Errorf("%s: viscosity does not fall at %g degC: %g after %g", d.Name, tempC, v.Likely, last)
			}
			last = v.Likely
			rho, err := l.Density(tempC)
			if err != nil {
				t.Fatal(err)
			}
			sigma, err := l.SurfaceTension(tempC)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range []honestplate.Estimate{v, rho, sigma} {
				if !(e.Low > 0 && e.Low <= e.Likely && e.Likely <= e.High && !math.IsInf(e.High, 1)) {
					t.Errorf("%s at %g degC: %+v is no estimate", d.Name, tempC, e)
				}
			}
			if rho.Likely < 800 || rho.Likely > 1500 || sigma.Likely < 0.015 || sigma.Likely > 0.09 {
				t.Errorf("%s at %g degC: density %g, surface tension %g are no food's", d.Name, tempC, rho.Likely, sigma.Likely)
			}
		}
	}
}

func TestOutsideItsRangeALiquidSaysWhoseRangeItIs(t *testing.T) {
	for _, l := range everyLiquid() {
		d := l.Describe()
		for _, tempC := range []float64{d.LowC - 1, d.HighC + 1, 1e300} {
			for name, f := range map[string]func(float64) (honestplate.Estimate, error){"viscosity": l.Viscosity, "density": l.Density, "surface tension": l.SurfaceTension} {
				e, err := f(tempC)
				var r *honestplate.RangeError
				if !errors.As(err, &r) || r.Source == "" || e != (honestplate.Estimate{}) {
					t.Errorf("%s: %s at %g degC: got %v, %v, want a RangeError with a source", d.Name, name, tempC, e, err)
				}
			}
		}
		for _, tempC := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			for _, f := range []func(float64) (honestplate.Estimate, error){l.Viscosity, l.Density, l.SurfaceTension} {
				if _, err := f(tempC); !errors.Is(err, honestplate.ErrInput) {
					t.Errorf("%s at %g degC: got %v, want ErrInput", d.Name, tempC, err)
				}
			}
		}
	}
}

func TestContentsThatMakeNoSenseAreRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		l    Liquid
		kind error
	}{
		{Dairy{FatPercent: -1}, honestplate.ErrRange}, {Dairy{FatPercent: 51}, honestplate.ErrRange}, {Dairy{FatPercent: nan}, honestplate.ErrInput}, {Dairy{FatPercent: inf}, honestplate.ErrInput},
		{Sucrose{-1}, honestplate.ErrRange}, {Sucrose{76}, honestplate.ErrRange}, {Sucrose{nan}, honestplate.ErrInput},
		{Syrup{"maple", 50}, honestplate.ErrRange}, {Syrup{"invert", 90}, honestplate.ErrRange}, {Syrup{"glucose", 60}, honestplate.ErrRange}, {Honey{30}, honestplate.ErrRange}, {Honey{nan}, honestplate.ErrInput},
		{Glycerol{101}, honestplate.ErrRange}, {Glycerol{nan}, honestplate.ErrInput},
		{Food(""), honestplate.ErrInput}, {Food("motor oil"), honestplate.ErrInput}, {Syrup{}, honestplate.ErrInput},
		{Measured{}, honestplate.ErrInput}, {Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Estimate{}}, honestplate.ErrInput}, {Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Estimate{Low: 0.03, Likely: 0.02, High: 0.04}}, honestplate.ErrInput},
		{Measured{Liquid: Dairy{FatPercent: 36}, TempC: 200, PaS: honestplate.Exactly(0.02)}, honestplate.ErrRange}, {Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Estimate{Low: 0.01, Likely: nan, High: 0.02}}, honestplate.ErrInput},
		{Custom{}, honestplate.ErrInput}, {Custom{Flow: flow.PowerLaw{K: -1, N: 0.5}, FlowC: 20}, honestplate.ErrInput}, {Custom{Flow: flow.PowerLaw{K: 1, N: 0.5}, FlowC: nan}, honestplate.ErrInput},
	} {
		l := c.l
		// Describe must not fail either, whatever it is asked of.
		_ = l.Describe()
		if _, err := l.Viscosity(20); !errors.Is(err, c.kind) {
			t.Errorf("%T %+v: viscosity: got %v, want %v", l, l, err, c.kind)
		}
		if m, ok := l.(Measured); ok && m.Liquid != nil {
			continue // its density is the liquid's, which may well be known
		}
		if _, err := l.Density(20); !errors.Is(err, c.kind) {
			t.Errorf("%T %+v: density: got %v, want %v", l, l, err, c.kind)
		}
		if _, err := l.SurfaceTension(20); !errors.Is(err, c.kind) {
			t.Errorf("%T %+v: surface tension: got %v, want %v", l, l, err, c.kind)
		}
	}
	if _, err := (Custom{Flow: flow.PowerLaw{K: 1, N: 0.5}, FlowC: 20}).Density(20); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("a liquid of one's own without a density: got %v", err)
	}
	if _, err := (Custom{Flow: flow.PowerLaw{K: 1, N: 0.5}, FlowC: 20, NPerM: 5}).SurfaceTension(20); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("a surface tension of 5 N/m: got %v", err)
	}
}

func TestPropertyCallsAllocateNothing(t *testing.T) {
	for _, l := range everyLiquid() {
		d := l.Describe()
		tempC := (d.LowC + d.HighC) / 2
		n := testing.AllocsPerRun(20, func() {
			_, _ = l.Viscosity(tempC)
			_, _ = ViscosityAtRate(l, tempC, 30)
			_, _ = l.Density(tempC)
			_, _ = l.SurfaceTension(tempC)
		})
		if n != 0 {
			t.Errorf("%s: %g allocations", d.Name, n)
		}
	}
}

// At the shear rate of its description a liquid answers the same either way.
func TestViscosityIsThatAtTheStatedShearRate(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	for _, l := range everyLiquid() {
		d := l.Describe()
		tempC := d.LowC + rng.Float64()*(d.HighC-d.LowC)
		rate := d.ShearRate
		if rate == 0 {
			rate = 17 // any: it is Newtonian
		}
		a, err := l.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		b, err := ViscosityAtRate(l, tempC, rate)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(a.Likely/b.Likely-1) > 1e-12 || math.Abs(a.High/b.High-1) > 1e-12 {
			t.Errorf("%s at %g degC: %+v, at %g 1/s %+v", d.Name, tempC, a, rate, b)
		}
	}
}

func TestCatalogueIsNewEveryTime(t *testing.T) {
	Catalogue()[0] = nil
	seen := map[string]bool{}
	for _, l := range Catalogue() {
		name := l.Describe().Name
		if seen[name] {
			t.Errorf("%s is listed twice", name)
		}
		seen[name] = true
	}
}
