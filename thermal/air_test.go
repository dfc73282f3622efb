package thermal

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
)

func TestDewPointOfARoomComesBack(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 4))
	for range 2000 {
		a := Air{TempC: -20 + 60*r.Float64(), RH: 0.05 + 0.95*r.Float64(), PressurePa: 70000 + 40000*r.Float64()}
		dew, err := a.DewPointC()
		if err != nil {
			t.Fatal(err)
		}
		back, err := AirFromDewPoint(a.TempC, min(dew, a.TempC), a.PressurePa)
		if err != nil || math.Abs(back.RH-a.RH) > 1e-6 {
			t.Errorf("%+v gives back %+v, %v", a, back, err)
		}
	}
}

// Humidity that was left out is refused by every question, not taken as dry air.
func TestHumidityMustBeGiven(t *testing.T) {
	a := Air{TempC: 23}
	for name, f := range map[string]func() (float64, error){
		"Validate": func() (float64, error) { return 0, a.Validate() }, "DewPointC": a.DewPointC,
		"Steam":  func() (float64, error) { _, err := a.SteamGM3(80, 1); return 0, err },
		"Cheese": func() (float64, error) { _, err := Cheese{Grams: 100, Diameter: 0.2}.Likely(a); return 0, err },
	} {
		var in *honestplate.InputError
		if _, err := f(); !errors.As(err, &in) || in.Field != "RH" && in.Field != "Air.RH" {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, f := range map[string]func() (Air, error){
		"above the air": func() (Air, error) { return AirFromDewPoint(20, 21, 0) },
		"NaN":           func() (Air, error) { return AirFromDewPoint(20, math.NaN(), 0) },
	} {
		if a, err := f(); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %+v, %v", name, a, err)
		}
	}
}
