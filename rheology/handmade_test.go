package rheology

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
)

// What nobody would write, but a program might pass on.
func TestHandMadeAndExtremeValuesGiveErrorsNotInfinities(t *testing.T) {
	cases := map[string]func() (float64, error){
		"no liquid": func() (float64, error) {
			e, err := ViscosityAtRate(nil, 20, 1)
			return e.Likely, err
		},
		"a crown on next to no film": func() (float64, error) {
			e, err := Crown{Diameter: 500, Speed: 0.1, Film: 5e-324}.Radius(time.Hour)
			return e.High, err
		},
		"a last head of next to nothing": func() (float64, error) {
			return TubeTime(5, 0.02, 20, 0.2, 0.001, 5e-324)
		},
		"less than a molecule to pour": func() (float64, error) {
			p, err := Spout{Diameter: 0.2, Length: 1e-300, Head: 5, SurfaceArea: 0.001, WallArea: 1, Discharge: 0.1}.Pour(Maple{}, 3.5, 5e-324)
			return p.LeftGrams.Likely, err
		},
		"a blend thinner than nothing": func() (float64, error) {
			r, err := FitInteraction([]BlendCase{{TempC: 36, ThinPaS: 20, ThickFatPercent: 1, ThickPaS: 0.05, FatPercent: 0.001, PaS: 5e-324}})
			return r.D, err
		},
		"a ball timed to no better than its hour": func() (float64, error) {
			b := FallingBall{Diameter: 100, Density: 1e306, TubeDiameter: 1e300, Distance: 0.05, Reading: 1000 * time.Hour}
			e, err := b.Viscosity(time.Minute, 0.004)
			return e.High, err
		},
	}
	for name, f := range cases {
		v, err := f()
		if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v, error %v", name, v, err)
		}
	}
}

func TestTheFatOfAMixThatIsNotAllDairyIsNotKnown(t *testing.T) {
	m, err := Blend(Part{Honey{}, 1}, Part{Water{}, 1})
	if err != nil {
		t.Fatal(err)
	}
	if fat, known := m.FatPercent(); known || fat != 0 || math.IsNaN(fat) {
		t.Errorf("fat %v, known %v", fat, known)
	}
}
