package rheology

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

func TestMeasuredIsWhatWasMeasured(t *testing.T) {
	m := Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Estimate{Low: 0.019, Likely: 0.020, High: 0.021}}
	e, err := m.Viscosity(6)
	if err != nil {
		t.Fatal(err)
	}
	if e != m.PaS {
		t.Errorf("got %+v, want %+v", e, m.PaS)
	}
}

func TestMeasuredBandGrowsAwayFromTheMeasurement(t *testing.T) {
	m := Measured{Liquid: Dairy{FatPercent: 36}, TempC: 20, PaS: honestplate.Within(0.02, 0.03)}
	last := 0.0
	for _, away := range []float64{0, 1, 2, 5, 10, 20} {
		e, err := m.Viscosity(20 - away)
		if err != nil {
			t.Fatal(err)
		}
		width := math.Log(e.High / e.Low)
		if width < last {
			t.Errorf("%g degC away: width %g after %g", away, width, last)
		}
		last = width
	}
}

func TestMeasuredKeepsTheShapeOfItsLiquid(t *testing.T) {
	base := Dairy{FatPercent: 12}
	m := Measured{Liquid: base, TempC: 10, PaS: honestplate.Exactly(0.004)}
	for _, tempC := range []float64{2, 10, 25, 50} {
		a, _ := base.Viscosity(tempC)
		b, _ := base.Viscosity(10)
		e, err := m.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		// Of cream the measurement has fixed k as well, which carries the shape a little.
		if want := 0.004 * a.Likely / b.Likely; math.Abs(e.Likely/want-1) > 0.03 {
			t.Errorf("at %g degC: %g, want about %g", tempC, e.Likely, want)
		}
		a, _ = Honey{}.Viscosity(tempC + 10)
		b, _ = Honey{}.Viscosity(20)
		e, err = Measured{Liquid: Honey{}, TempC: 20, PaS: honestplate.Exactly(9)}.Viscosity(tempC + 10)
		if err != nil || math.Abs(e.Likely-9*a.Likely/b.Likely) > 1e-12 {
			t.Errorf("honey at %g degC: %g, %v", tempC+10, e.Likely, err)
		}
	}
}

// A milk measured at one temperature predicts the others: the remembered raw milk
// of Jenness & Patton, from its value at 20 degC.
func TestMeasuredMilkPredictsItsOtherTemperatures(t *testing.T) {
	m := Measured{Liquid: Dairy{FatPercent: 3.5}, TempC: 20, PaS: honestplate.Within(1.99e-3, 0.03)}
	for tempC, pas := range map[float64]float64{0: 3.44e-3, 5: 3.05e-3, 10: 2.64e-3, 15: 2.31e-3, 25: 1.70e-3, 30: 1.49e-3, 40: 1.23e-3} {
		e, err := m.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		if !e.Contains(pas) {
			t.Errorf("%g degC: %g outside %+v", tempC, pas, e)
		}
	}
}

func TestMeasuredSauceStandsAsMuchThicker(t *testing.T) {
	table, err := Food("tomato ketchup").Viscosity(20)
	if err != nil {
		t.Fatal(err)
	}
	m := Measured{Liquid: Food("tomato ketchup"), TempC: 20, PaS: honestplate.Factor(2*table.Likely, 1.05)}
	y, err := m.YieldStress(20)
	if err != nil {
		t.Fatal(err)
	}
	want, err := Food("tomato ketchup").YieldStress(20)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(y.Likely/want.Likely-2) > 1e-12 || math.Abs(y.High/want.High-2) > 1e-12 {
		t.Errorf("got %+v, want twice %+v", y, want)
	}
	if y, err := (Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Exactly(0.02)}).YieldStress(6); err != nil || y != (honestplate.Estimate{}) {
		t.Errorf("measured cream: %v, %v", y, err)
	}
	for _, bad := range []Measured{{}, {Liquid: Food("tomato ketchup"), TempC: 200, PaS: honestplate.Exactly(1)}} {
		if _, err := bad.YieldStress(20); err == nil {
			t.Errorf("%+v: no error", bad)
		}
		if _, err := bad.ViscosityAtRate(20, 10); err == nil {
			t.Errorf("%+v: no error", bad)
		}
	}
	if _, err := m.ViscosityAtRate(20, 1e6); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("got %v", err)
	}
}

func TestOwnFlowCurveMovesWithTemperature(t *testing.T) {
	o := Custom{Name: "dip", Flow: flow.HerschelBulkley{Yield: 8, K: 4, N: 0.5}, FlowC: 25, KgPerM3: 1050}
	y, err := o.YieldStress(25)
	if err != nil || math.Abs(y.Likely-8) > 1e-12 {
		t.Errorf("yield stress at the measurement: %v, %v", y, err)
	}
	cold, err := o.YieldStress(16)
	if err != nil || cold.Likely <= y.Likely || cold.High/cold.Low <= y.High/y.Low {
		t.Errorf("yield stress when cold: %v, %v", cold, err)
	}
	a, _ := o.ViscosityAtRate(25, 10)
	b, _ := o.ViscosityAtRate(25, 100)
	if a.Likely <= b.Likely {
		t.Errorf("no thinning: %v, %v", a, b)
	}
	o.Flow = flow.Newtonian{PaS: 1}
	if y, err := o.YieldStress(25); err != nil || y != (honestplate.Estimate{}) {
		t.Errorf("a liquid that does not stand: %v, %v", y, err)
	}
	if _, err := o.ViscosityAtRate(25, -1); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("got %v", err)
	}
	if _, err := o.ViscosityAtRate(40, 1); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("far from the only measurement: %v", err)
	}
}

// Away from its temperature the band of a measurement is joined by 15 % of the change in
// ln(viscosity).
func TestMeasuredBandAwayIsThatStated(t *testing.T) {
	m := Measured{Liquid: Honey{}, TempC: 20, PaS: honestplate.Factor(9, 1.1)}
	e, err := m.Viscosity(10)
	if err != nil {
		t.Fatal(err)
	}
	want := math.Hypot(math.Log(1.1), 0.15*math.Log(e.Likely/9))
	if got := math.Log(e.High / e.Likely); math.Abs(got-want) > 1e-9 {
		t.Errorf("half-width %g, want %g", got, want)
	}
}
