package viscometer_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	. "example.org/honestplate/rheology/viscometer"
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
			fix, err := cup.Timed(w.Likely.After).Correct(b)
			if err != nil || !fix.LeaveIt || fix.AddThickGrams != 0 || fix.AddThinGrams != 0 {
				t.Errorf("%g mPa s, %v at %v: %+v, %v", 1e3*c.pas, cup, w, fix, err)
			}
			test, err := cup.Test(b)
			if err != nil || (test.Time.Likely.After-w.Likely.After).Abs() > time.Millisecond ||
				!(test.OK.From < test.OK.Target && test.OK.Target < test.OK.To) && !test.OK.FloorHides || test.OK.FloorHides != (test.OK.Instead != "") {
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
				fix, err := cup.Timed(at.t).Correct(b)
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
	fix, err := r.Correct(b)
	if err != nil || !fix.LeaveIt {
		t.Errorf("%+v, %v: at 12 degC the perfect batch takes just that", fix, err)
	}
	cold, err := c.Timed(at).Correct(b)
	if err != nil || cold.AddThickGrams == 0 {
		t.Errorf("%+v, %v: taken for 7 degC it is too thin", cold, err)
	}
	// Timings that scatter are worth less.
	wide := c.Timed(at-4*time.Second, at, at+4*time.Second)
	wide.TempC = r.TempC
	if w, err := wide.Correct(b); err != nil || w.OK.High <= fix.OK.High {
		t.Errorf("%v scattered, %v together, %v", w.OK, fix.OK, err)
	}
	if _, err := (CupReading{Cup: c}).Correct(b); !errors.Is(err, honestplate.ErrInput) {
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
	_, err = cup("ISO 4").Test(b)
	if !errors.As(err, &r) || !strings.Contains(err.Error(), "ISO 2431, 3 mm") {
		t.Errorf("36 mPa s in 4 mm: %v", err)
	}
	if _, err := cup("ISO 4").Timed(26 * time.Second).Correct(b); !errors.As(err, &r) || !strings.Contains(err.Error(), "ISO 2431, 3 mm") {
		t.Errorf("26 s in 4 mm: %v", err)
	}
	b.TargetPaS = 0.042
	test, err := cup("ISO 4").Test(b)
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
