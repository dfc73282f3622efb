package thermal

import (
	"math"
	"testing"

	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/food"
)

// Air that nobody measured moves as in a room with people; still is a choice.
func TestSpeedNotGivenIsAnOccupiedRoom(t *testing.T) {
	s := Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.05, StartC: -14}
	drips := func(a Air) float64 {
		c, err := s.Likely(a)
		if err != nil {
			t.Fatal(err)
		}
		return at(c.FirstDrip.Likely).Seconds()
	}
	open, still, same := drips(Air{TempC: 23, RH: 0.5}), drips(Air{TempC: 23, RH: 0.5, Still: true}), drips(Air{TempC: 23, RH: 0.5, Speed: 0.12})
	if open != same || open > 0.95*still {
		t.Errorf("not given %.0f s, still %.0f, 0.12 m/s %.0f", open, still, same)
	}
	_, err := s.Likely(Air{TempC: 23, RH: 0.5, Still: true, Speed: 0.2})
	testkit.Typed(t, err)
}

// Saying that the air hardly moves tells less than it seems: it moves by fits.
func TestASmallSpeedDoesNotHalveABand(t *testing.T) {
	width := func(speed float64) float64 {
		c, err := Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.05, StartC: -14}.Clock(Air{TempC: 23, RH: 0.5, Speed: speed})
		if err != nil {
			t.Fatal(err)
		}
		return (at(c.FirstDrip.Latest) - at(c.FirstDrip.Earliest)).Seconds()
	}
	open := width(0)
	for _, v := range []float64{0.02, 0.1, 0.3} {
		if w := width(v); w < 0.6*open {
			t.Errorf("%g m/s given: %.0f s wide, not given %.0f", v, w, open)
		}
	}
}

// Air that is warmed keeps its vapour: the room's temperature and its dew point are
// drawn apart, and the likely draw is the room as given, to the last bit.
func TestTemperatureAndDewPointAreDrawnApart(t *testing.T) {
	for _, given := range []Air{{TempC: 23, RH: 0.5}, {TempC: 5, RH: 0.9}, {TempC: -12, RH: 0.6}, {TempC: 23, RH: 1}} {
		a, convection := given, 1.0
		in := roomInputs(&a, &convection)
		for i := range in {
			in[i].Set(in[i].Band.Likely)
		}
		if a.RH != given.RH || a.TempC != given.TempC {
			t.Fatalf("%+v becomes %+v", given, a)
		}
		dew, err := given.DewPointC()
		if err != nil {
			t.Fatal(err)
		}
		in[0].Set(given.TempC + 1.5)
		in[1].Set(in[1].Band.Likely)
		if now, err := a.DewPointC(); err != nil || math.Abs(now-dew) > 1e-6 || a.RH >= given.RH {
			t.Errorf("%+v warmed: dew point %g, before %g, %v", given, now, dew, err)
		}
		in[0].Set(given.TempC)
		in[1].Set(dew - 2)
		if now, err := a.DewPointC(); err != nil || math.Abs(now-dew+2) > 1e-6 || a.TempC != given.TempC {
			t.Errorf("%+v drier: dew point %g, before %g, %v", given, now, dew, err)
		}
	}
	dry, convection := Air{TempC: 23, RH: 1e-9}, 1.0
	in := roomInputs(&dry, &convection)
	in[1].Set(in[1].Band.High)
	if math.Abs(dry.RH-2e-9) > 1e-20 {
		t.Errorf("%g", dry.RH)
	}
	if in := roomInputs(&Air{TempC: 23, RH: 0.5, Still: true}, &convection); len(in) != 3 {
		t.Errorf("still air has %d inputs", len(in))
	}
}
