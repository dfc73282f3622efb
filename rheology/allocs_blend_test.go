package rheology_test

import (
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

func TestPropertyCallsOfBlendsAllocateNothing(t *testing.T) {
	measured := Part{Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Factor(0.03, 1.1)}, 100}
	milk, light, syrup := Part{Dairy{FatPercent: 3.5}, 300}, Part{Dairy{FatPercent: 12}, 50}, Part{Sucrose{Brix: 60}, 20}
	for _, c := range []struct {
		rule  Rule
		parts []Part
	}{
		{Rule{}, []Part{milk, light}},
		{Rule{}, []Part{milk, light, measured, syrup}},
		{Rule{NoDeparture: true}, []Part{milk, light, measured}},
		{Rule{D: -0.2}, []Part{milk, syrup}},
	} {
		m := mustBlend(t, c.rule, c.parts...)
		for name, call := range map[string]func(){
			"Viscosity":       func() { m.Viscosity(12) },
			"ViscosityAtRate": func() { m.ViscosityAtRate(12, 50) },
			"Density":         func() { m.Density(12) },
			"SurfaceTension":  func() { m.SurfaceTension(12) },
		} {
			if n := testing.AllocsPerRun(100, call); n != 0 {
				t.Errorf("%v of %d parts: %s allocates %v times", c.rule, len(c.parts), name, n)
			}
		}
	}
	r := kitchen(1000, 0.1)
	ready, err := r.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func(){
		"Prepare": func() { r.Prepare() }, "Prepared.For": func() { ready.For(0.012) },
		"For":   func() { r.For(0.012) },
		"Reach": func() { r.Reach() },
	} {
		if n := testing.AllocsPerRun(100, call); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}
