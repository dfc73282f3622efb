package heat

import (
	"testing"

	"example.org/honestplate/testdata/testkit"
)

func FuzzSteamAndWater(f *testing.F) {
	f.Add(23.0, 0.5, 0.0, 80.0, 1.0, 1.0, 0.03)
	f.Add(-40.0, 1.0, 20000.0, 100.0, 0.1, 20.0, 1e-5)
	f.Fuzz(func(t *testing.T, tempC, rh, p, otherC, activity, liquid, length float64) {
		a := MoistAir{TempC: tempC, RH: rh, PressurePa: p}
		testkit.Answers(t,
			func() (any, error) { return a.SteamGM3(otherC, activity) },
			func() (any, error) { return a.SteamFromC(liquid, activity) },
			func() (any, error) { return Surface{Shape: Sphere, Length: length}.InWater(tempC, otherC) },
			func() (any, error) {
				return Surface{Shape: VerticalCylinder, Length: length, Diameter: rh}.InWater(tempC, otherC)
			},
			func() (any, error) { return BlackbodyFraction(length) })
	})
}

func FuzzWords(f *testing.F) {
	f.Add(0, "slab")
	f.Add(7, "")
	f.Fuzz(func(t *testing.T, n int, form string) {
		var fm Form
		testkit.Answers(t,
			func() (any, error) { return Form(n).MarshalText() },
			func() (any, error) { return fm.String(), fm.UnmarshalText([]byte(form)) },
			func() (any, error) { return Surface{Shape: Shape(n)}.FreeNusselt(1e5, 0.7) },
			func() (any, error) { return Surface{Shape: Shape(n)}.ForcedNusselt(1e4, 0.7) })
	})
}
