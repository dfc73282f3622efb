package thermal

import (
	"errors"
	"math"
	"testing"
)

func TestDewPointInvertsSaturation(t *testing.T) {
	for tc := -60.0; tc <= 60; tc += 0.37 {
		for _, rh := range []float64{0.01, 0.2, 0.5, 0.9, 1} {
			a := Air{TempC: tc, RH: rh}
			dew, err := a.DewPointC()
			if err != nil {
				if !errors.Is(err, ErrRange) || a.vapour() > lowestVapour*1.01 {
					t.Fatalf("%+v: %v", a, err)
				}
				continue
			}
			back, err := SaturationPressure(dew)
			if err != nil {
				t.Fatal(err)
			}
			pw, _ := a.VapourPressure()
			if math.Abs(back-pw) > 1e-8*pw {
				t.Errorf("%+v: dew point %g has %g Pa, want %g", a, dew, back, pw)
			}
		}
	}
}

func BenchmarkDewPoint(b *testing.B) {
	b.ReportAllocs()
	a := Air{TempC: 23, RH: 0.5}
	for b.Loop() {
		_, _ = a.DewPointC()
	}
}

func BenchmarkExchangerAt(b *testing.B) {
	b.ReportAllocs()
	x, err := Surface{Shape: VerticalCylinder, Length: 0.08, Diameter: 0.075, Activity: 1}.In(Air{TempC: 23, RH: 0.5})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		_, _ = x.At(3, 0)
	}
}
