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
		c, err := r.Correct(b)
		sane(t, err, c.Predicted)
		r.TempC = honestplate.Some(tempC)
		c, err = r.Correct(b)
		sane(t, err, c.Predicted)
		_, err = ISOCupFor(b.Recipe.Thick, tempC)
		sane(t, err)
	})
}
