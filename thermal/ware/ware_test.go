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
		s, err := c.ware.Shock(c.glass, c.liquid, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		if s.String() != c.want || math.Signbit(s.StressPa) != math.Signbit(s.DeltaK) {
			t.Errorf("%s from %g to %g: %v, %+v", c.ware.Name, c.glass, c.liquid, s, s)
		}
	}
	// an unyielding quench tends to E alpha dT/(1 - nu), 0.81 MPa/K for soda-lime
	s, err := Glassware().Annealed.Shock(100, 0, 0.05, 1e5)
	if err != nil {
		t.Fatal(err)
	}
	if full := 0.81e6 * 100; s.StressPa > full || s.StressPa < 0.6*full {
		t.Errorf("%g Pa of %g", s.StressPa, full)
	}
	// and a gentle one to Bi/3.25 of that (Manson, in Kingery 1955, from memory)
	gentle, err := Glassware().Annealed.Shock(100, 0, 1e-4, 100)
	if err != nil {
		t.Fatal(err)
	}
	testkit.CloseRel(t, "gentle quench", gentle.StressPa, 70e9*9e-6*100/(1-0.22)*(100*1e-4/2)/3.25, 0.01)
	thin, _ := Glassware().Annealed.Shock(60, 10, 0.002, 0)
	thick, _ := Glassware().Annealed.Shock(60, 10, 0.008, 0)
	if thin.StressPa >= thick.StressPa {
		t.Errorf("thin %g, thick %g", thin.StressPa, thick.StressPa)
	}
}

func TestShockRefusesNonsense(t *testing.T) {
	for name, f := range map[string]func() error{
		"glass": func() error { _, err := Glassware().Annealed.Shock(math.NaN(), 0, 0, 0); return err },
		"wall":  func() error { _, err := Glassware().Annealed.Shock(20, 0, 9, 0); return err },
		"ware":  func() error { _, err := Ware{}.Shock(20, 0, 0, 0); return err },
		"limits": func() error {
			w := Glassware().Annealed
			w.LowK = 1000
			_, err := w.Shock(20, 0, 0, 0)
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
