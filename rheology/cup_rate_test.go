package rheology_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
)

// A cup of 3 or 4 mm shears at hundreds of 1/s, from its bore, its 100 mL and the time.
func TestACupShearsAtHundreds(t *testing.T) {
	for name, want := range map[string][2]float64{"ISO 3": {296, 988}, "ISO 4": {125, 417}} {
		c := cup(name)
		low, high := c.ShearRate(c.Most), c.ShearRate(c.Least)
		if math.Abs(low-want[0]) > 1 || math.Abs(high-want[1]) > 1 {
			t.Errorf("%s: %g..%g 1/s, want %v", name, low, high, want)
		}
	}
	for _, c := range Cups() {
		if c.ShearRate(c.Least) == 0 {
			t.Errorf("%v has no bore", c)
		}
	}
}

// A batch that is as predicted is left alone by its own predicted cup time: milk of 3.5 %
// and creams of 30 to 48 % for 9, 20, 40 and 60 mPa s at 7 degC, 900 g.
func TestAPerfectBatchIsLeftAlone(t *testing.T) {
	for _, c := range []struct{ fat, pas float64 }{{30, 0.009}, {36, 0.015}, {38, 0.020}, {45, 0.040}, {48, 0.060}} {
		b, err := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: c.fat}, BatchGrams: 900, StepGrams: 1, TempC: 7}.For(c.pas)
		if err != nil {
			t.Fatal(err)
		}
		m, err := b.Mix()
		if err != nil {
			t.Fatal(err)
		}
		tried := 0
		for _, cup := range Cups() {
			w, err := cup.TimeOf(m, 7)
			if err != nil {
				continue
			}
			tried++
			fix, err := b.CorrectFromCup(cup.Timed(w.Likely.After))
			if err != nil || !fix.LeaveIt || fix.AddThickGrams != 0 || fix.AddThinGrams != 0 {
				t.Errorf("%g mPa s, %v at %v: %+v, %v", 1e3*c.pas, cup, w, fix, err)
			}
			test, err := b.CupTest(cup)
			if err != nil || (test.Time.Likely.After-w.Likely.After).Abs() > time.Millisecond ||
				!(test.OK.From < test.OK.Target && test.OK.Target < test.OK.To) && !test.OK.FloorHides {
				t.Errorf("%g mPa s, %v: %+v, %v, want %v", 1e3*c.pas, cup, test, err, w)
			}
			// A time on the range's edge is left, one beyond it is not.
			for _, at := range []struct {
				t     time.Duration
				leave bool
			}{
				{test.OK.From + 10*time.Millisecond, true}, {test.OK.To - 10*time.Millisecond, true},
				{test.OK.From - 500*time.Millisecond, false}, {test.OK.To + 500*time.Millisecond, false},
			} {
				fix, err := b.CorrectFromCup(cup.Timed(at.t))
				if errors.Is(err, honestplate.ErrRange) {
					continue // outside the cup's times
				}
				if err != nil || fix.LeaveIt != at.leave {
					t.Errorf("%g mPa s, %v at %v of %+v: leave it is %v, %v", 1e3*c.pas, cup, at.t, test.OK, fix.LeaveIt, err)
				}
			}
		}
		if tried == 0 {
			t.Errorf("no cup tells %g mPa s", 1e3*c.pas)
		}
	}
}

// A correction repeated with its own prediction adds nothing.
func TestACorrectionConverges(t *testing.T) {
	for _, r := range []Recipe{
		kitchen(900, 1), kitchen(710, 5),
		{Thin: Water{}, Thick: Honey{}, BatchGrams: 710, StepGrams: 1, TempC: 20},
		{Thin: Water{}, Thick: Sucrose{Brix: 65}, BatchGrams: 300, StepGrams: 5, TempC: 20},
		{Thin: Dairy{FatPercent: 3.5}, Thick: Syrup{Of: "maple"}, BatchGrams: 400, StepGrams: 1, TempC: 6},
	} {
		low, high, err := r.Reach()
		if err != nil {
			t.Fatal(err)
		}
		for w := 0.1; w < 0.95; w += 0.05 {
			b, err := r.For(low.Likely * math.Pow(high.Likely/low.Likely, w))
			if err != nil {
				t.Fatal(err)
			}
			for _, off := range []float64{0.5, 0.8, 0.97, 1.02, 1.3, 2} {
				c, err := b.Correct(b.Predicted.Likely * off)
				if errors.Is(err, honestplate.ErrRange) {
					continue
				}
				if err != nil {
					t.Fatal(err)
				}
				again, err := c.Batch.Correct(c.Predicted.Likely)
				if err != nil || !again.LeaveIt {
					t.Errorf("%v, %.3g off: added %g and %g g, then %g and %g, %v", r.Thick.Describe().Name, off,
						c.AddThinGrams, c.AddThickGrams, again.AddThinGrams, again.AddThickGrams, err)
				}
			}
		}
	}
}

// Three timings are read together, and at the temperature that the cup had.
func TestThreeTimingsWithTheirTemperature(t *testing.T) {
	b, err := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 36}, BatchGrams: 900, StepGrams: 1, TempC: 7}.For(0.015)
	if err != nil {
		t.Fatal(err)
	}
	m, _ := b.Mix()
	c := cup("ISO 3")
	warm, err := c.TimeOf(m, 12)
	if err != nil {
		t.Fatal(err)
	}
	at := warm.Likely.After
	r := c.Timed(at-300*time.Millisecond, at, at+300*time.Millisecond)
	r.TempC = honestplate.Some(12)
	fix, err := b.CorrectFromCup(r)
	if err != nil || !fix.LeaveIt {
		t.Errorf("%+v, %v: at 12 degC the perfect batch takes just that", fix, err)
	}
	cold, err := b.CorrectFromCup(c.Timed(at))
	if err != nil || cold.AddThickGrams == 0 {
		t.Errorf("%+v, %v: taken for 7 degC it is too thin", cold, err)
	}
	// Timings that scatter are worth less.
	wide := c.Timed(at-4*time.Second, at, at+4*time.Second)
	wide.TempC = r.TempC
	if w, err := b.CorrectFromCup(wide); err != nil || w.OK.High <= fix.OK.High {
		t.Errorf("%v scattered, %v together, %v", w.OK, fix.OK, err)
	}
	if _, err := b.CorrectFromCup(CupReading{Cup: c}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no timing: %v", err)
	}
}

// Where the cup's shortest time hides the answer it is said, with the cup that would not.
func TestTheFloorOfACupIsSaid(t *testing.T) {
	b, err := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 45}, BatchGrams: 900, StepGrams: 1, TempC: 7}.For(0.036)
	if err != nil {
		t.Fatal(err)
	}
	var r *honestplate.RangeError
	_, err = b.CupTest(cup("ISO 4"))
	if !errors.As(err, &r) || !strings.Contains(err.Error(), "ISO 2431, 3 mm") {
		t.Errorf("36 mPa s in 4 mm: %v", err)
	}
	if _, err := b.CorrectFromCup(cup("ISO 4").Timed(26 * time.Second)); !errors.As(err, &r) || !strings.Contains(err.Error(), "ISO 2431, 3 mm") {
		t.Errorf("26 s in 4 mm: %v", err)
	}
	b.TargetPaS = 0.042
	test, err := b.CupTest(cup("ISO 4"))
	if err != nil || !test.OK.FloorHides || test.OK.Instead == "" {
		t.Errorf("near the floor: %+v, %v", test, err)
	}
}

// What stands, or thins in a cup of unknown bore, is refused.
func TestACupRefusesWhatItCannotRead(t *testing.T) {
	if _, err := cup("ISO 6").TimeOf(Food("stirred yoghurt"), 5); !errors.Is(err, honestplate.ErrNoFlow) || !strings.Contains(err.Error(), "yield") {
		t.Errorf("yoghurt: %v", err)
	}
	own := cup("ISO 4")
	own.Bore = 0
	if _, err := own.TimeOf(Dairy{FatPercent: 45}, 7); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("a cup without its bore: %v", err)
	}
	if _, err := own.TimeOf(Sucrose{Brix: 60}, 20); err != nil {
		t.Errorf("a syrup does not thin: %v", err)
	}
}

// A flow curve takes the place of the liquid's own thinning.
func TestMeasuredCarriesAFlowCurve(t *testing.T) {
	m := Measured{Liquid: Dairy{FatPercent: 40}, TempC: 7, Flow: flow.PowerLaw{K: 0.3, N: 0.7}}
	for _, rate := range []float64{1, 50, 300} {
		e, err := m.ViscosityAtRate(7, rate)
		if want := 0.3 * math.Pow(rate, -0.3); err != nil || math.Abs(e.Likely/want-1) > 1e-12 {
			t.Errorf("at %g 1/s: %v, %v, want %g", rate, e, err, want)
		}
	}
	m.PaS, m.ShearRate = honestplate.Exactly(0.1), 50
	if e, err := m.ViscosityAtRate(7, 50); err != nil || math.Abs(e.Likely/0.1-1) > 1e-12 {
		t.Errorf("moved to the measurement: %v, %v", e, err)
	}
}

// All parts of a blend are mixed at one rate, which it states: a sauce at 50 1/s and cream at
// 100 meet at 100.
func TestABlendIsMixedAtOneRate(t *testing.T) {
	sauce, cream := Food("chocolate sauce"), Dairy{FatPercent: 36}
	m := mustBlend(t, Rule{}, Part{sauce, 1}, Part{cream, 1})
	rate := m.Describe().ShearRate
	at, err := m.ViscosityAtRate(20, rate)
	if got := likely(t, m, 20); err != nil || rate != 100 || got != at.Likely {
		t.Errorf("%g, at its %g 1/s %v, %v", got, rate, at, err)
	}
	a, _ := sauce.ViscosityAtRate(20, 100)
	b, _ := cream.ViscosityAtRate(20, 100)
	if want := math.Sqrt(a.Likely * b.Likely); math.Abs(at.Likely/want-1) > 1e-12 {
		t.Errorf("%g, want %g", at.Likely, want)
	}
}
