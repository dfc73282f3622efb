package ware

import (
	"testing"

	"example.org/honestplate/testdata/testkit"
)

func FuzzShock(f *testing.F) {
	f.Add(-18.0, 80.0, 30.0, 50.0)
	f.Add(600.0, -100.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, glassC, liquidC, low, high float64) {
		w := Ware{LowK: low, HighK: high}
		testkit.Answers(t, func() (any, error) {
			s, err := w.Shock(glassC, liquidC)
			if s.String() == "" {
				t.Error("nothing said")
			}
			return s, err
		})
	})
}

func FuzzTabletop(f *testing.F) {
	f.Add(0, "stone")
	f.Add(-1, "")
	f.Fuzz(func(t *testing.T, top int, word string) {
		var read Tabletop
		testkit.Answers(t,
			func() (any, error) { m, _, err := Tabletop(top).Material(); return m, err },
			func() (any, error) { return Tabletop(top).MarshalText() },
			func() (any, error) { return read.String(), read.UnmarshalText([]byte(word)) })
	})
}
