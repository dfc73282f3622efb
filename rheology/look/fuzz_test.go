package look

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/look/colour"
)

func FuzzLook(f *testing.F) {
	f.Add(3.5, 3.4, 20.0, 6.0, 0.001, 0.8, "D65", false, 30.0, 0.95)
	f.Add(48.0, 0.0, 0.0, 0.0, 10.0, 0.0, "LED-B1", true, 0.0, 0.5)
	f.Fuzz(func(t *testing.T, fat, protein, pressure, carotene, depth, ground float64, light string, diffuse bool, angle, contrast float64) {
		m := Milk{FatPercent: fat, ProteinPercent: honestplate.Some(protein), HomogenisedMPa: honestplate.Some(pressure), Carotene: honestplate.Some(carotene)}
		o, err := m.Optics()
		if err != nil {
			return
		}
		s := Scene{Depth: honestplate.Some(depth), Ground: Ground{ground, ground / 2}, Light: colour.Light(light), Diffuse: diffuse, IncidenceDegrees: angle}
		if a, err := o.Appear(s); err == nil {
			for _, e := range []honestplate.Estimate{a.Lightness, a.Green, a.Yellow} {
				if err := e.Check("band"); err != nil {
					t.Errorf("%+v in %+v: %v", m, s, err)
				}
			}
		}
		if h, err := o.Hides(s, Black, Ground{ground, ground}, contrast); err == nil && (h.Check("depth") != nil || h.Low < 0) {
			t.Errorf("%+v hides at %v", m, h)
		}
		if c, err := o.Contrast(s, depth, Black, White); err == nil && !(c >= 0 && c <= 1+1e-9) {
			t.Errorf("%+v, %g m: contrast %g", m, depth, c)
		}
	})
}

func FuzzCreamFor(f *testing.F) {
	f.Add(3.5, 36.0, 500.0, 1.0, 6.0, 0.002, 0.95)
	f.Add(3.5, 36.0, 500.0, 1.0, 6.0, 1e-5, 0.98) // too thin for cream alone
	f.Fuzz(func(t *testing.T, thin, thick, batch, step, tempC, coat, contrast float64) {
		if batch/step > 1e6 {
			return
		}
		r := rheology.Recipe{Thin: rheology.Dairy{FatPercent: thin}, Thick: rheology.Dairy{FatPercent: thick}, BatchGrams: batch, StepGrams: step, TempC: tempC}
		c, err := CreamFor(r, coat, contrast)
		if err != nil {
			return
		}
		if c.Contrast.Check("contrast") != nil || c.Contrast.Likely < contrast-1e-6 || math.Abs(c.Batch.ThinGrams+c.Batch.ThickGrams-batch) > 1e-9*batch {
			t.Errorf("%+v, coat %g, contrast %g: %+v", r, coat, contrast, c)
		}
	})
}

// What is stirred together, seen and compared is within what light can be.
func FuzzStirred(f *testing.F) {
	f.Add(3.5, 36.0, 300.0, 100.0, 0.0, 550.0, 0.001, 0.5, 30.0, true)
	f.Add(50.0, 0.0, 1e-300, 1e300, 12.0, 380.0, 10.0, 0.0, 85.0, false)
	f.Fuzz(func(t *testing.T, thin, thick, a, b, water, nm, depth, ground, angle float64, glass bool) {
		m, err := rheology.Blend(rheology.Part{Liquid: rheology.Dairy{FatPercent: thin}, Grams: a},
			rheology.Part{Liquid: rheology.Dairy{FatPercent: thick}, Grams: b}, rheology.Part{Liquid: rheology.Water{}, Grams: water})
		if err != nil {
			return
		}
		of, err := Of(m)
		if err != nil {
			return
		}
		first, err := of.Optics()
		second, err2 := Milk{FatPercent: thin}.Optics()
		if err != nil || err2 != nil {
			return
		}
		both, err := Mix(Part{first, a}, Part{second, b})
		if err != nil {
			return
		}
		if _, err := json.Marshal(both); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("a worked out spectrum is written: %v", err)
		}
		c, err := both.At(nm)
		if err == nil && (!(c.Scattering >= 0) || !(c.Absorption >= 0) || !(math.Abs(c.Asymmetry) <= 1) || c.ReducedScattering.Check("") != nil) {
			t.Errorf("%g nm: %+v", nm, c)
		}
		s := Scene{Depth: honestplate.Some(depth), Ground: Ground{ground, ground}, IncidenceDegrees: angle, Glass: glass}
		if d, err := both.Beside(&second, s); err == nil && (d.Difference.Check("") != nil || d.Difference.Low < 0) {
			t.Errorf("%+v: %+v", s, d.Difference)
		}
	})
}
