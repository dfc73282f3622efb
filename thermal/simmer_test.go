package thermal

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
)

// What is hot and wet cannot be hotter than the air pressure lets it: the band of a
// start near boiling stays below, and a start above is refused by its name.
func TestHotStartsStayBelowBoilingAtEveryAltitude(t *testing.T) {
	for _, altitude := range []float64{0, 1000, 2000, 3000, 4500} {
		pa, err := heat.PressureAtAltitude(altitude)
		if err != nil {
			t.Fatal(err)
		}
		room := Air{TempC: 23, RH: 0.5, PressurePa: pa}
		top := simmering(room)
		for _, startC := range []float64{0, 80, top} {
			if _, err := (Cheese{Grams: 150, Diameter: 0.28, StartC: startC}).Clock(room); err != nil {
				t.Errorf("cheese from %g degC at %g m: %v", startC, altitude, err)
			}
			if _, err := (HotDish{Grams: 350, Diameter: 0.16, StartC: max(1, startC)}).Clock(room); err != nil {
				t.Errorf("dish from %g degC at %g m: %v", startC, altitude, err)
			}
		}
		for name, err := range map[string]error{
			"cheese": second(Cheese{Grams: 150, Diameter: 0.28, StartC: top + 0.1}.Clock(room)),
			"dish":   second(HotDish{Grams: 350, Diameter: 0.16, StartC: top + 0.1}.Clock(room)),
		} {
			var out *honestplate.RangeError
			if !errors.As(err, &out) || out.Field != "StartC" {
				t.Errorf("%s above boiling at %g m: %v", name, altitude, err)
			}
		}
	}
	if top := simmering(Air{TempC: 23, RH: 0.5}); math.Abs(top-98.5) > 0.1 {
		t.Errorf("%g degC at sea level, want 98.5", top)
	}
}

func second[T any](_ T, err error) error { return err }
