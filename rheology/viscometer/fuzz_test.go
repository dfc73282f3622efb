package viscometer_test

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	. "example.org/honestplate/rheology/viscometer"
)

// sane fails for an answer without an error that is no number, or no band.
func sane(t *testing.T, err error, values ...any) {
	t.Helper()
	if err != nil {
		if err.Error() == "" {
			t.Error("an error without words")
		}
		return
	}
	for i, v := range values {
		switch v := v.(type) {
		case float64:
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("value %d is %v", i, v)
			}
		case honestplate.Estimate:
			if !(v.Low <= v.Likely && v.Likely <= v.High) || math.IsInf(v.High, 0) || math.IsInf(v.Low, 0) {
				t.Errorf("value %d is %+v", i, v)
			}
		}
	}
}

func FuzzCup(f *testing.F) {
	f.Add(1.37e-6, 200e-6, 0.0, 30.0, 100.0, 0.02, 0.5, 31.0, 50e-6)
	f.Add(3.5e-6, 0.0, 14.0, 20.0, 80.0, 0.0, 0.0, 20.0, 1e-4)
	f.Fuzz(func(t *testing.T, a, b, c, least, most, rel, reading, seconds, nu float64) {
		span := func(s float64) time.Duration { return time.Duration(min(max(s, -1e9), 1e9) * float64(time.Second)) }
		own := Cup{Name: "own", A: a, B: b, C: c, Least: span(least), Most: span(most), Rel: rel, Reading: span(reading)}
		for _, cup := range append(Cups(), own) {
			low, high, err := cup.Range()
			sane(t, err, low, high)
			if cup.String() != cup.Name {
				t.Errorf("%v is called %s", cup, cup.Name)
			}
			v, err := cup.KinematicViscosity(span(seconds))
			sane(t, err, v)
			at, err := cup.Time(nu)
			if err == nil && (at < cup.Least || at > cup.Most) {
				t.Errorf("%v: %v outside %v..%v", cup, at, cup.Least, cup.Most)
			}
			if _, err := cup.TimeOf(Dairy{FatPercent: 36}, seconds); err != nil && err.Error() == "" {
				t.Error("an error without words")
			}
		}
		cream := Dairy{FatPercent: seconds}
		if cup, err := ISOCupFor(cream, nu*1e5); err == nil {
			if _, err = cup.TimeOf(cream, nu*1e5); err != nil {
				t.Errorf("%v for %v: %v", cup, cream, err)
			}
		}
	})
}

func FuzzFallingBall(f *testing.F) {
	f.Add(0.003, 7800.0, 0.05, 0.1, 20.0, 1400.0)
	f.Fuzz(func(t *testing.T, d, density, tube, distance, seconds, liquid float64) {
		b := FallingBall{Diameter: d, Density: density, TubeDiameter: tube, Distance: distance, Reading: time.Second / 2}
		v, err := b.Viscosity(time.Duration(min(max(seconds, -1e9), 1e9)*float64(time.Second)), liquid)
		sane(t, err, v)
	})
}

func FuzzReading(f *testing.F) {
	f.Add(uint8(0), 0.012, 40.0, 6.0, 500.0)
	f.Add(uint8(3), 0.02, 33.0, 12.0, 900.0)
	f.Fuzz(func(t *testing.T, kind uint8, pas, seconds, tempC, grams float64) {
		b, err := kitchen(grams, 1).For(pas)
		if err != nil {
			return
		}
		r := Cups()[int(kind)%len(Cups())].Timed(time.Duration(min(max(seconds, 0), 1e6) * float64(time.Second)))
		if rate := r.Cup.ShearRate(r.Times[0]); !(rate >= 0) {
			t.Errorf("%v shears at %g", r.Cup, rate)
		}
		test, err := r.Cup.Test(b)
		sane(t, err, test.ShearRate)
		if err == nil && (test.Time.Check("time") != nil || test.OK.From > test.OK.Target || test.OK.Target > test.OK.To) {
			t.Errorf("%+v", test)
		}
		c, err := r.Correct(b)
		sane(t, err, c.Predicted)
		r.TempC = honestplate.Some(tempC)
		c, err = r.Correct(b)
		sane(t, err, c.Predicted)
		m, err := r.Measure(b.Recipe.Thick)
		sane(t, err, m.PaS, m.ShearRate)
		_, err = ISOCupFor(b.Recipe.Thick, tempC)
		sane(t, err)
	})
}

// A name is that of a cup, or the error says which are.
func FuzzCupNamed(f *testing.F) {
	f.Add("ISO 4")
	f.Add("zahn 2.5")
	f.Fuzz(func(t *testing.T, name string) {
		c, err := CupNamed(name)
		sane(t, err, c.A, c.B, c.C)
		if err == nil && c.Name == "" {
			t.Errorf("%q is a cup without a name", name)
		}
	})
}
