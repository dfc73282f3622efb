package viscometer_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	. "example.org/honestplate/rheology/viscometer"
)

func everyCup() []Cup { return Cups() }

func TestACupTellsBackTheTimeItWasTold(t *testing.T) {
	for _, c := range everyCup() {
		last := 0.0
		for at := c.Least; at <= c.Most; at += 500 * time.Millisecond {
			nu, err := c.KinematicViscosity(at)
			if err != nil {
				t.Fatalf("%v at %v: %v", c, at, err)
			}
			if nu.Likely <= last || nu.Low >= nu.Likely || nu.High <= nu.Likely {
				t.Errorf("%v at %v: %v", c, at, nu)
			}
			last = nu.Likely
			back, err := c.Time(nu.Likely)
			if err != nil || (back-at).Abs() > time.Microsecond {
				t.Errorf("%v: %v became %v, %v", c, at, back, err)
			}
		}
	}
}

func TestTheISOCupsReachTheirRememberedRanges(t *testing.T) {
	// ISO 2431:2011, from memory, mm2/s.
	for mm, want := range map[int][2]float64{3: {7, 42}, 4: {34, 135}, 5: {91, 326}, 6: {188, 684}} {
		low, high, err := cup(fmt.Sprintf("ISO %d", mm)).Range()
		if err != nil || math.Round(low*1e6) != want[0] && math.Abs(low*1e6-want[0]) > 0.8 || math.Abs(high*1e6-want[1]) > 0.8 {
			t.Errorf("%d mm: %.1f..%.1f mm2/s, %v, want %v", mm, low*1e6, high*1e6, err, want)
		}
	}
}

func TestACupOutsideItsTimesIsARangeError(t *testing.T) {
	for _, c := range everyCup() {
		var r *honestplate.RangeError
		for _, at := range []time.Duration{c.Least - time.Millisecond, c.Most + time.Millisecond, 0, -time.Hour, math.MaxInt64} {
			if _, err := c.KinematicViscosity(at); !errors.As(err, &r) || r.Low != c.Least.Seconds() || r.High != c.Most.Seconds() {
				t.Errorf("%v at %v: %v", c, at, err)
			}
		}
		low, high, _ := c.Range()
		for _, nu := range []float64{low * 0.99, high * 1.01, 0, -1} {
			if _, err := c.Time(nu); !errors.As(err, &r) {
				t.Errorf("%v, %v m2/s: %v", c, nu, err)
			}
		}
		if _, err := c.Time(math.NaN()); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%v, NaN: %v", c, err)
		}
	}
}

func TestACupThatDoesNotExistSaysWhichDo(t *testing.T) {
	for _, name := range []string{"", "ISO 2", "ISO 7", "Ford 0", "Ford 6", "Shell 4.5", "tea"} {
		if _, err := CupNamed(name); !errors.Is(err, honestplate.ErrInput) || !strings.Contains(err.Error(), "ISO 4, ISO 5") {
			t.Errorf("%q: %v", name, err)
		}
	}
	for _, c := range Cups() {
		if d, err := CupNamed(c.Name); err != nil || d != c {
			t.Errorf("%v: %v, %v", c, d, err)
		}
	}
	good := cup("ISO 4")
	for name, change := range map[string]func(*Cup){
		"no A":          func(c *Cup) { c.A = 0 },
		"negative B":    func(c *Cup) { c.B = -1 },
		"C not finite":  func(c *Cup) { c.C = math.Inf(1) },
		"wide band":     func(c *Cup) { c.Rel = 1 },
		"reading":       func(c *Cup) { c.Reading = -1 },
		"no least":      func(c *Cup) { c.Least = 0 },
		"most under":    func(c *Cup) { c.Most = c.Least - 1 },
		"below nothing": func(c *Cup) { c.C = 1000 },
	} {
		c := good
		change(&c)
		if _, err := c.KinematicViscosity(50 * time.Second); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := c.Time(1e-4); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestISOCupForChoosesACupThatCanTell(t *testing.T) {
	for brix := 47.0; brix < 70; brix += 0.1 {
		c, err := ISOCupFor(Sucrose{Brix: brix}, 20)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := c.TimeOf(Sucrose{Brix: brix}, 20); err != nil {
			t.Errorf("%v for %g Brix: %v", c, brix, err)
		}
	}
	for brix, want := range map[float64]string{45: "ISO 2431, 3 mm", 62: "ISO 2431, 4 mm", 66: "ISO 2431, 5 mm", 70: "ISO 2431, 6 mm"} {
		if c, err := ISOCupFor(Sucrose{Brix: brix}, 20); err != nil || c.String() != want {
			t.Errorf("%g Brix: %v, %v, want %v", brix, c, err, want)
		}
	}
	// Cream near a cup's floor: the cup is chosen at its own rate.
	for fat := 29.0; fat <= 50; fat += 0.05 {
		cream := Dairy{FatPercent: min(fat, 50)}
		c, err := ISOCupFor(cream, 4)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := c.TimeOf(cream, 4); err != nil {
			t.Errorf("%g %%: %v", fat, err)
		}
	}
	for _, l := range []Liquid{Water{}, Honey{}} {
		if _, err := ISOCupFor(l, 20); !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%v: %v", l, err)
		}
	}
	if _, err := ISOCupFor(nil, 10); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("nil: %v", err)
	}
	if _, err := ISOCupFor(Food("stirred yoghurt"), 10); !errors.Is(err, honestplate.ErrNoFlow) {
		t.Errorf("yoghurt: %v", err)
	}
}

func TestCupsOfOneNumberButDifferentStandardsDiffer(t *testing.T) {
	at := 40 * time.Second
	var seen []float64
	for _, c := range []Cup{cup("ISO 4"), cup("Ford 4"), cup("Zahn 4"), cup("Shell 4")} {
		nu, err := c.KinematicViscosity(at)
		if err != nil {
			t.Fatal(err)
		}
		for _, other := range seen {
			if math.Abs(nu.Likely/other-1) < 0.01 {
				t.Errorf("%v agrees with another at %v", c, nu.Likely)
			}
		}
		seen = append(seen, nu.Likely)
	}
}

func TestTimeOfALiquidIsTheTimeOfItsKinematicViscosityAtTheCupsRate(t *testing.T) {
	cream := Dairy{FatPercent: 36}
	c, err := ISOCupFor(cream, 6)
	if err != nil {
		t.Fatal(err)
	}
	w, err := c.TimeOf(cream, 6)
	if err != nil {
		t.Fatal(err)
	}
	at, _ := cream.ViscosityAtRate(6, c.ShearRate(w.Likely.After))
	rho, _ := cream.Density(6)
	want, _ := c.Time(at.Likely / rho.Likely)
	if (w.Likely.After-want).Abs() > 10*time.Microsecond || w.Check("window") != nil {
		t.Errorf("%v, %v, want %v", w, err, want)
	}
	if _, err := c.TimeOf(Water{}, 20); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("water: %v", err)
	}
	if _, err := c.TimeOf(cream, 99); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("99 degC: %v", err)
	}
}
