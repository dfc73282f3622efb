package viscometer_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	. "example.org/honestplate/rheology/viscometer"
)

// What is sent comes back equal.
func TestTypesComeBackFromTheWire(t *testing.T) {
	b, err := kitchen(900, 1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	reading := cup("ISO 3").Timed(33*time.Second, 34*time.Second)
	reading.TempC = honestplate.Some(6)
	fix, err := reading.Correct(b)
	if err != nil || fix.AddThickGrams == 0 {
		t.Fatalf("%+v, %v", fix, err)
	}
	certified := Cup{"own", 1e-6, 2e-4, 3, 4 * time.Second, 5 * time.Minute, 0.01, time.Second, 0.003, 1e-4, "certificate"}
	ball := FallingBall{0.003, 7800, 0.06, 0.1, time.Second}
	for _, v := range []any{certified, reading, fix, ball, Cup{}, CupReading{}, OKTime{time.Second, 2 * time.Second, 3 * time.Second, true, "ISO 3"}, FallingBall{}} {
		wire, err := json.Marshal(v)
		back := reflect.New(reflect.TypeOf(v))
		if err = errors.Join(err, json.Unmarshal(wire, back.Interface())); err != nil || !reflect.DeepEqual(back.Elem().Interface(), v) {
			t.Errorf("%T: %s came back as %+v, %v", v, wire, back.Elem(), err)
		}
	}
}

func TestACupTestComesBackFromTheWire(t *testing.T) {
	b, err := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 36}, BatchGrams: 900, StepGrams: 1, TempC: 7}.For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	test, err := cup("ISO 3").Test(b)
	if err != nil {
		t.Fatal(err)
	}
	wire, err := json.Marshal(test)
	var back CupTest
	if err = errors.Join(err, json.Unmarshal(wire, &back)); err != nil || back.OK != test.OK || back.ShearRate != test.ShearRate {
		t.Errorf("%s came back as %+v, %v", wire, back, err)
	}
}
