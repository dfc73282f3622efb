package vocabulary_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
)

// A service maps any error of the module to a field of its form, a limit and a
// sentence.
func ExampleCause() {
	answer := func(err error) string {
		switch e := honestplate.Cause(err).(type) {
		case *honestplate.InputError:
			return fmt.Sprintf("400 field=%s: want %s", e.Field, e.Want)
		case *honestplate.RangeError:
			return fmt.Sprintf("422 field=%s low=%g high=%g %s: %s", e.Field, e.Low, e.High, e.Unit, e.Source)
		case *honestplate.RefusedError:
			return fmt.Sprintf("409 field=%s: %s; %s", e.Field, e.Reason, e.Advice)
		default:
			return "500 " + err.Error()
		}
	}
	fmt.Println(answer(honestplate.In("Recipe.Thin", honestplate.NotNegative("FatPercent", -1, "%"))))
	fmt.Println(answer(fmt.Errorf("planning: %w", honestplate.InRange("Air.TempC", 300, -30, 60, "degC", "the psychrometric tables end here"))))
	fmt.Println(answer(&honestplate.RefusedError{Field: "Thick", Kind: honestplate.ErrAdvertised, Reason: "the syrup is advertised", Advice: "choose its temperature instead"}))
	fmt.Println(answer(errors.New("disk full")))
	// Output:
	// 400 field=Recipe.Thin.FatPercent: want a finite number, 0 or more
	// 422 field=Air.TempC low=-30 high=60 degC: the psychrometric tables end here
	// 409 field=Thick: the syrup is advertised; choose its temperature instead
	// 500 disk full
}

// Nothing turns never into a date.
func ExampleMoment() {
	call := time.Date(2026, 5, 4, 9, 0, 0, 0, time.UTC)
	for _, freeze := range []honestplate.Moment{honestplate.After(95 * time.Minute), honestplate.Never()} {
		if start, ok := freeze.BackFrom(call); ok {
			fmt.Println("into the freezer at", start.Format("15:04"))
		} else {
			fmt.Println("this freezer is not cold enough")
		}
	}
	// Output:
	// into the freezer at 07:25
	// this freezer is not cold enough
}

// A window on the wire: seconds, and null for never.
func ExampleWindow() {
	beads := honestplate.Window{Earliest: honestplate.After(72 * time.Second), Likely: honestplate.After(190 * time.Second), Latest: honestplate.Never()}
	b, _ := json.Marshal(beads)
	fmt.Println(beads)
	fmt.Println(string(b))
	// Output:
	// 3:10 (1:12..never)
	// {"earliest_s":72,"likely_s":190,"latest_s":null}
}

// An estimate prints the digits that its band warrants.
func ExampleEstimate() {
	fmt.Println(honestplate.Estimate{Low: 4.91, Likely: 9.0312, High: 16.08})
	fmt.Println(honestplate.Within(0.010234, 0.02))
	fmt.Println(honestplate.Factor(1234, 2))
	fmt.Println(honestplate.Exactly(62))
	// Output:
	// 9.0 (4.9..16.1)
	// 0.01023 (0.01003..0.01044)
	// 1234 (617..2468)
	// 62
}

// What is left out is not 0.
func ExampleOptional() {
	var wallC honestplate.Optional
	fmt.Println(wallC.Or(21), honestplate.Some(0).Or(21))
	b, _ := json.Marshal(struct {
		WallC honestplate.Optional `json:"wall_c,omitzero"`
		IceC  honestplate.Optional `json:"ice_c"`
	}{})
	fmt.Println(string(b))
	// Output:
	// 21 0
	// {"ice_c":null}
}

// A liquid of a user's own checks its inputs with the module's checks, so that its
// errors look like all others.
func ExampleInRange() {
	viscosity := func(tempC float64) (honestplate.Estimate, error) {
		if err := honestplate.InRange("TempC", tempC, 5, 40, "degC", "our own rheometer, 2026"); err != nil {
			return honestplate.Estimate{}, err
		}
		return honestplate.Factor(0.3*math.Exp(-0.02*tempC), 1.2), nil
	}
	_, err := viscosity(60)
	fmt.Println(err)
	// Output:
	// honestplate: TempC is 60 degC, outside 5..40 degC (our own rheometer, 2026)
}
