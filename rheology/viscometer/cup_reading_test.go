package viscometer_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	. "example.org/honestplate/rheology/viscometer"
)

func TestACupTimeCorrectsLikeTheViscosityItTells(t *testing.T) {
	b, err := kitchen(500, 0.5).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	m, _ := b.Mix()
	rho, _ := m.Density(6)
	cup := cup("ISO 3")
	nu, err := cup.KinematicViscosity(40 * time.Second)
	if err != nil {
		t.Fatal(err)
	}
	x, err := cup.Timed(40 * time.Second).Correct(b)
	if err != nil {
		t.Fatal(err)
	}
	// The mix thins: at the cup's 500 1/s it is thinner than at the 100 of the recipe.
	at, _ := m.ViscosityAtRate(6, cup.ShearRate(40*time.Second))
	own, _ := m.Viscosity(6)
	y, err := b.Correct(honestplate.Exactly(nu.Likely*rho.Likely*own.Likely/at.Likely), 0)
	if err != nil {
		t.Fatal(err)
	}
	if x.AddThinGrams != y.AddThinGrams || x.AddThickGrams != y.AddThickGrams || math.Abs(x.MeasuredPaS/y.MeasuredPaS-1) > 1e-9 {
		t.Errorf("%+v, %+v", x, y)
	}
	if x.Predicted.High-x.Predicted.Low <= y.Predicted.High-y.Predicted.Low {
		t.Errorf("the cup's own band is missing: %v, %v", x.Predicted, y.Predicted)
	}
	if _, err := cup.Timed(time.Second).Correct(b); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("1 s: %v", err)
	}
}

// A cup reading becomes a measured liquid at the cup's own rate and temperature.
func TestACupMeasuresAtItsOwnRate(t *testing.T) {
	cream := Dairy{FatPercent: 45}
	c := cup("ISO 4")
	w, err := c.TimeOf(cream, 7)
	if err != nil {
		t.Fatal(err)
	}
	r := c.Timed(w.Likely.After, w.Likely.After+200*time.Millisecond, w.Likely.After-200*time.Millisecond)
	if _, err := r.Measure(cream); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("without its temperature: %v", err)
	}
	r.TempC = honestplate.Some(7)
	m, err := r.Measure(cream)
	if err != nil || math.Abs(m.ShearRate-c.ShearRate(w.Likely.After)) > 1 {
		t.Fatalf("%+v, %v", m, err)
	}
	// What the cup showed is the table's cream, and is so at every rate.
	for _, rate := range []float64{10, 100, m.ShearRate, 800} {
		got, err1 := m.ViscosityAtRate(7, rate)
		want, err2 := cream.ViscosityAtRate(7, rate)
		if err := errors.Join(err1, err2); err != nil || math.Abs(got.Likely/want.Likely-1) > 1e-3 {
			t.Errorf("at %g 1/s: %v, want %v, %v", rate, got, want, err)
		}
	}
	got, err1 := m.Viscosity(7)
	want, err2 := cream.Viscosity(7)
	if err := errors.Join(err1, err2); err != nil || math.Abs(got.Likely/want.Likely-1) > 1e-3 {
		t.Errorf("at the rate of a pour: %v, want %v, %v", got, want, err)
	}
}

// What the batch or its recipe refuses, a reading and a test of it refuse, too.
func TestABatchThatMakesNoSenseIsRefused(t *testing.T) {
	good, err := kitchen(500, 1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		change func(*Batch)
		want   error
	}{
		"99 degC":    {func(b *Batch) { b.Recipe.TempC = 99 }, honestplate.ErrRange},
		"NaN":        {func(b *Batch) { b.ThinGrams = math.NaN() }, honestplate.ErrInput},
		"no target":  {func(b *Batch) { b.TargetPaS = 0 }, honestplate.ErrInput},
		"no liquid":  {func(b *Batch) { b.Recipe.Thick = nil }, honestplate.ErrInput},
		"advertised": {func(b *Batch) { b.Recipe.Advertised = true }, honestplate.ErrAdvertised},
	} {
		b := good
		c.change(&b)
		_, correct := cup("ISO 3").Timed(40 * time.Second).Correct(b)
		_, test := cup("ISO 3").Test(b)
		if !errors.Is(correct, c.want) || !errors.Is(test, c.want) {
			t.Errorf("%s: %v, %v", name, correct, test)
		}
	}
}

// The band of a mean of three timings: Student's factor for their number and that of the ten
// earlier ones that the cup's Reading stands for, 2.2281 of ten and 2.1788 of twelve.
func TestTimingsCarryStudentsFactor(t *testing.T) {
	own := Cup{Name: "own", A: 1e-6, Least: 10 * time.Second, Most: 100 * time.Second, Reading: time.Second}
	r := own.Timed(40*time.Second, 44*time.Second, 42*time.Second)
	r.TempC = honestplate.Some(20)
	m, err := r.Measure(Sucrose{Brix: 60})
	if err != nil {
		t.Fatal(err)
	}
	one := 1 / 2.2281388
	want := 2.1788128 * math.Sqrt((10*one*one+8)/12/3) / 42
	if got := m.PaS.High/m.PaS.Likely - 1; math.Abs(got/want-1) > 1e-6 {
		t.Errorf("half-width %.6f, want %.6f", got, want)
	}
}

// The bands of the standard cups are those of the calibration points.
func TestStandardCupsHaveTheBandOfTheirPoints(t *testing.T) {
	for _, c := range Cups() {
		if c.Rel != 0.022 || c.Reading != 500*time.Millisecond {
			t.Errorf("%v: %g and %v", c, c.Rel, c.Reading)
		}
	}
}
