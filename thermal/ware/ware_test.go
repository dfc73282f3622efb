package ware

import (
	"math"
	"testing"

	"example.org/honestplate/testdata/testkit"
)

func TestShockGrades(t *testing.T) {
	for _, c := range []struct {
		ware          Ware
		glass, liquid float64
		want          string
	}{
		{Glassware().Annealed, 23, 4, "below the known limits"}, {Glassware().Annealed, 60, 20, "may break"}, {Glassware().Annealed, -18, 95, "expect it to break"},
		{Glassware().Borosilicate, 20, 95, "below the known limits"}, {Glassware().Borosilicate, 120, 15, "may break"}, {Glassware().Tempered, 80, 2, "below the known limits"},
	} {
		s, err := c.ware.Shock(c.glass, c.liquid)
		if err != nil {
			t.Fatal(err)
		}
		if s.String() != c.want || s.DeltaK != c.glass-c.liquid {
			t.Errorf("%s from %g to %g: %v, %+v", c.ware.Name, c.glass, c.liquid, s, s)
		}
	}
}

func TestShockRefusesNonsense(t *testing.T) {
	for name, f := range map[string]func() error{
		"glass":  func() error { _, err := Glassware().Annealed.Shock(math.NaN(), 0); return err },
		"liquid": func() error { _, err := Glassware().Annealed.Shock(20, 301); return err },
		"limits": func() error {
			w := Glassware().Annealed
			w.LowK = 1000
			_, err := w.Shock(20, 0)
			return err
		},
	} {
		if err := f(); err == nil {
			t.Errorf("%s: no error", name)
		} else {
			testkit.Typed(t, err)
		}
	}
}
