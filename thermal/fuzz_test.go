package thermal

import (
	"encoding/json"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
)

// Every plain question of a room and of a piece of ice.
func FuzzRoom(f *testing.F) {
	f.Add(23.0, 0.5, 0.0, 0.1, 80.0, 1.0, false, 0, 0.03)
	f.Add(-30.0, 1.0, 20000.0, 0.0, -50.0, 0.0, true, 2, 0.2)
	f.Fuzz(func(t *testing.T, tempC, rh, p, speed, otherC, activity float64, still bool, shape int, size float64) {
		a := Air{TempC: tempC, RH: rh, PressurePa: p, Speed: speed, Still: still}
		testkit.Answers(t,
			func() (any, error) { return nil, a.Validate() },
			func() (any, error) { return a.DewPointC() },
			func() (any, error) { return a.SteamGM3(otherC, activity) },
			func() (any, error) { return AirFromDewPoint(tempC, otherC, p) },
			func() (any, error) { return IceShape(shape).PieceGrams(size) },
			func() (any, error) { return IceShape(shape).MarshalText() }, func() (any, error) { return Rest(shape).MarshalText() },
			func() (any, error) { return IceShape(shape).String() + Rest(shape).String(), nil })
	})
}

// Whatever is read is written again and comes back equal.
func FuzzRead(f *testing.F) {
	for _, text := range []string{`{}`, `null`, `"cube"`, `"on a cone"`,
		`{"window":{"earliest_s":1,"likely_s":2,"latest_s":3},"decides":[{"key":"room.temp_c","low_s":1,"high_s":2,"share":0.5}],"rest":0.1}`,
		`{"unit":3,"inputs":{"crew.beads":""},"weights":""}`, `{"diameter_m":0.07,"drink":{"brix":11},"ice_shape":"ball","drink_c":4,"horizon_ns":3600000000000}`} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		for _, v := range append([]any{IceShape(0), Rest(0)}, onTheWire...) {
			in, out := reflect.New(reflect.TypeOf(v)), reflect.New(reflect.TypeOf(v))
			if json.Unmarshal(text, in.Interface()) != nil {
				continue
			}
			written, err := json.Marshal(in.Interface())
			if err != nil {
				t.Fatalf("%T: %v", v, err)
			}
			if err := json.Unmarshal(written, out.Interface()); err != nil {
				t.Fatalf("%T: %v in %s", v, err, written)
			}
			if again, err := json.Marshal(out.Interface()); err != nil || string(again) != string(written) {
				t.Fatalf("%T: %s, then %s, %v", v, written, again, err)
			}
		}
	})
}

var fuzzBottle = sync.OnceValues(func() (BottleClock, error) { return beer().Clock() })

// Anything seen of a bottle, or asked of its runs, is taken or refused.
func FuzzSeen(f *testing.F) {
	f.Add("cold", "", int64(time.Hour), int64(time.Minute), false, 0.0, 0.0)
	f.Add("", "drink_c", int64(30*time.Minute), int64(0), false, 9.0, 1.0)
	f.Add("freezes", "", int64(3e12), int64(0), true, 0.0, 0.0)
	f.Add("boils", "haze", int64(-1), int64(-1), true, -300.0, -1.0)
	f.Fuzz(func(t *testing.T, event, reading string, at, within int64, notYet bool, value, withinValue float64) {
		c, err := fuzzBottle()
		if err != nil {
			t.Fatal(err)
		}
		seen := Seen{Event: event, Reading: reading, At: time.Duration(at), Within: time.Duration(within), NotYet: notYet, Value: value, WithinValue: withinValue}
		testkit.Answers(t,
			func() (any, error) {
				_, l, err := c.Kept.Observe(seen)
				if err == nil && !slices.IsSorted(l.Inputs()) {
					t.Errorf("inputs %q", l.Inputs())
				}
				return l, err
			},
			func() (any, error) { return c.Kept.Course(reading, time.Duration(at)) },
			func() (any, error) { _, err := Lesson{}.Unit(int(at)).Without(event); return nil, err })
		if e := c.Kept.Event(event); e.MayHappen() != (event == "cold") && event != "freezes" && event != "bursts" || len(c.Kept.At(event)) > c.Kept.Len() {
			t.Errorf("%q: %v", event, e.Window)
		}
		if known := slices.Contains(c.Kept.Events(), event); known != (c.Kept.At(event) != nil) || len(c.Kept.Weights()) != c.Kept.Len() {
			t.Errorf("%q of %v", event, c.Kept)
		}
		if _, err := c.Kept.Course(reading, time.Minute); (err == nil) != slices.Contains(c.Kept.Readings(), reading) {
			t.Errorf("%q: %v", reading, err)
		}
		if s := c.Kept.Chance(func(run int) bool { return run%2 == 0 }); s != 0.5 {
			t.Errorf("every second run: %g", s)
		}
	})
}

// Every kind of thing in any room, for any unit of a lesson that knows nothing; now and
// then one that something was seen of.
func FuzzUnit(f *testing.F) {
	for _, name := range []string{"bottle", "cheese", "dish", "freeze", "glass", "ice", "scoop", "soft"} {
		f.Add(name, 1, 23.0, 0.5, 0.1, "", int64(time.Minute), byte(0))
	}
	f.Add("bottle", -1, 23.0, 0.5, 0.0, "cold", int64(time.Hour), byte(1))
	f.Add("dish", 2, -90.0, 2.0, -1.0, "cool", int64(0), byte(0))
	f.Fuzz(func(t *testing.T, name string, unit int, tempC, rh, speed float64, event string, at int64, taught byte) {
		p, ok := pupils()[name]
		if !ok {
			return
		}
		a, l := Air{TempC: tempC, RH: rh, Speed: speed}, Lesson{}.Unit(unit)
		testkit.Answers(t, func() (any, error) { return p.known(l, a) })
		if taught == 1 { // 4,096 runs
			testkit.Answers(t, func() (any, error) {
				r, _, err := p.observed(l, []Seen{{Event: event, At: time.Duration(at)}}, a)
				return r, err
			})
		}
	})
}

// How much ice a glass needs, for any glass.
func FuzzIceFor(f *testing.F) {
	f.Add(250.0, 0.0, 20.0, -10.0, 5.0, 0.075, 23.0)
	f.Add(30.0, 11.0, 60.0, 0.0, -3.0, 0.04, -5.0)
	f.Fuzz(func(t *testing.T, grams, brix, drinkC, iceC, targetC, diameter, roomC float64) {
		g := Glass{DrinkGrams: grams, DrinkC: honestplate.Some(drinkC), IceC: honestplate.Some(iceC), Diameter: diameter, Horizon: 30 * time.Minute}
		g.Drink.Brix = brix
		testkit.Answers(t, func() (any, error) { return g.IceFor(targetC, Air{TempC: roomC, RH: 0.5}) })
	})
}
