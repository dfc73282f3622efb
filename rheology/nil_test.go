package rheology

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// A nil pointer behind an interface is nothing, as nil is: an error, no panic.
func TestANilPointerIsNoLiquid(t *testing.T) {
	var none *Dairy
	_, e1 := Blend(Part{none, 1})
	_, e2 := Recipe{Thin: none, Thick: Dairy{FatPercent: 36}, BatchGrams: 10, StepGrams: 1, TempC: 6}.For(0.01)
	_, e3 := ServeAt(none, 0.01, 2, 8)
	_, e4 := Batch{Recipe: Recipe{Thin: Water{}, Thick: none}}.Mix()
	for i, err := range []error{e1, e2, e3, e4} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%d: %v", i+1, err)
		}
	}
}

// mute is a liquid of the user's own that answers with what is no number.
type mute struct{ pas, kgm3, npm float64 }

func (mute) Describe() Description { return Description{Name: "mute"} }
func (m mute) Viscosity(float64) (honestplate.Estimate, error) {
	return honestplate.Exactly(m.pas), nil
}
func (m mute) Density(float64) (honestplate.Estimate, error) {
	return honestplate.Exactly(m.kgm3), nil
}
func (m mute) SurfaceTension(float64) (honestplate.Estimate, error) {
	return honestplate.Exactly(m.npm), nil
}

// A liquid or flow model that is a nil pointer or answers NaN, Inf or less than nothing is an
// error wherever it enters.
func TestALiquidThatAnswersNoNumberIsAnError(t *testing.T) {
	try := map[string]func(l Liquid) error{
		"blend": func(l Liquid) error {
			m, err := Blend(Part{l, 1}, Part{Dairy{FatPercent: 3.5}, 1})
			if err != nil {
				return err
			}
			_, e1 := m.Viscosity(6)
			_, e2 := m.Density(6)
			_, e3 := m.SurfaceTension(6)
			return errors.Join(e1, e2, e3)
		},
		"blend of one": func(l Liquid) error {
			m, err := Blend(Part{l, 1})
			if err != nil {
				return err
			}
			_, e1 := m.Viscosity(6)
			_, e2 := m.Density(6)
			_, e3 := m.SurfaceTension(6)
			return errors.Join(e1, e2, e3)
		},
		"measured": func(l Liquid) error {
			m := Measured{Liquid: l, TempC: 5, PaS: honestplate.Exactly(0.01)}
			_, e1 := m.Viscosity(6)
			_, e2 := m.Density(6)
			_, e3 := m.SurfaceTension(6)
			return errors.Join(e1, e2, e3)
		},
		"at a rate": func(l Liquid) error {
			_, err := ViscosityAtRate(l, 6, 1)
			return err
		},
	}
	var nilDairy *Dairy
	var nilMute *mute
	nan := math.NaN()
	bad := map[string]Liquid{"nil": nil, "nil pointer": nilDairy, "nil pointer of the user's": nilMute}
	for _, v := range []float64{nan, math.Inf(1), math.Inf(-1), 0, -1} {
		bad[fmt.Sprintf("viscosity %g", v)] = mute{v, 1000, 0.05}
		bad[fmt.Sprintf("density %g", v)] = mute{0.1, v, 0.05}
	}
	for name, l := range bad {
		for where, f := range try {
			if m, ok := l.(mute); ok && m.pas == 0.1 && where == "at a rate" {
				continue // the density is not asked
			}
			if err := f(l); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
				t.Errorf("%s, %s: %v", where, name, err)
			}
		}
	}
	var none *flow.PowerLaw
	_, e1 := Custom{Flow: none, FlowC: 6, KgPerM3: 1000}.Viscosity(6)
	_, e2 := Custom{Flow: none, FlowC: 6, KgPerM3: 1000}.YieldStress(6)
	_, e3 := flow.Viscosity(none, 1)
	for i, err := range []error{e1, e2, e3} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("flow model %d: %v", i+1, err)
		}
	}
}
