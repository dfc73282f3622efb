package viscometer_test

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	. "example.org/honestplate/rheology/viscometer"
)

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

// A liquid that is a nil pointer or answers NaN, Inf or less than nothing is an error wherever
// it enters.
func TestALiquidThatAnswersNoNumberIsAnError(t *testing.T) {
	cup := cup("ISO 4")
	try := map[string]func(l Liquid) error{
		"cup":     func(l Liquid) error { _, err := cup.TimeOf(l, 6); return err },
		"ISO cup": func(l Liquid) error { _, err := ISOCupFor(l, 6); return err },
		"cup reading": func(l Liquid) error {
			r := cup.Timed(40 * time.Second)
			r.TempC = honestplate.Some(6)
			_, err := r.Measure(l)
			return err
		},
	}
	var nilDairy *Dairy
	var nilMute *mute
	bad := map[string]Liquid{"nil": nil, "nil pointer": nilDairy, "nil pointer of the user's": nilMute}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1} {
		bad[fmt.Sprintf("viscosity %g", v)] = mute{v, 1000, 0.05}
		bad[fmt.Sprintf("density %g", v)] = mute{0.1, v, 0.05}
	}
	for name, l := range bad {
		for where, f := range try {
			if m, ok := l.(mute); ok && m.kgm3 == 1000 && where == "cup reading" {
				continue // measures the viscosity
			}
			if err := f(l); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
				t.Errorf("%s, %s: %v", where, name, err)
			}
		}
	}
}
