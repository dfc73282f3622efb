package flow

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/honestplate"
)

// sound fails for a number that is none without an error, and for an error of another kind.
func sound(t *testing.T, what string, v float64, err error) {
	t.Helper()
	if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
		t.Fatalf("%s: %v", what, v)
	}
	if err != nil && !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
		t.Fatalf("%s: %v", what, err)
	}
}

func FuzzModels(f *testing.F) {
	f.Add(5.0, 0.5, 0.3, 0.01, 10.0)
	f.Add(0.0, 1e12, 2.0, 1e6, 1e12)
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, math.Inf(-1))
	f.Fuzz(func(t *testing.T, a, b, n, time, rate float64) {
		for _, m := range []Model{
			nil, (*Newtonian)(nil), Newtonian{a}, PowerLaw{a, n}, Bingham{a, b}, HerschelBulkley{a, b, n}, Casson{a, b}, Carreau{a, b, time, n}, disguised{Bingham{a, b}},
		} {
			v, err := Viscosity(m, rate)
			sound(t, "viscosity", v, err)
			if _, own := m.(disguised); err == nil && !own && v*rate < m.Stress(0)*(1-1e-9) {
				t.Errorf("%v%+v at %v 1/s: %v Pa s", m, m, rate, v)
			}
		}
	})
}

func FuzzFit(f *testing.F) {
	f.Add(1.0, 2.0, 3.0, 5.0, 30.0, 20.0, 100.0, 40.0, 0.0)
	f.Add(0.1, 32.0, 3.0, 55.0, 30.0, 90.0, 100.0, 140.0, 1.0)
	f.Add(1.0, 2.0, 1.0, 2.0, 1.0, 2.0, 1.6, 2.0, math.NaN())
	f.Fuzz(func(t *testing.T, r1, s1, r2, s2, r3, s3, r4, s4, w float64) {
		fits, err := FitAll([]Point{{r1, s1, w}, {r2, s2, w}, {r3, s3, w}, {r4, s4, w}, {2 * r4, s4 * 1.1, w}})
		sound(t, "fit", 0, err)
		for _, fit := range fits {
			sound(t, "model", 0, makesSense(fit.Model))
			if _, err := json.Marshal(fit); !errors.Is(err, honestplate.ErrInput) || fit.Model.String() == "" {
				t.Errorf("%v on the wire: %v", fit.Model, err)
			}
			for i, v := range append(fit.Values, fit.Errors...) {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%v: constant or error %d is %v", fit.Model, i, v)
				}
			}
		}
	})
}

func FuzzReadPoints(f *testing.F) {
	f.Add("rate,stress\n1,2\n10,12\n")
	f.Add("1;2\n")
	f.Add("Meas. pts.;Shear rate;Shear stress;Viscosity;Temperature\n;[1/s];[Pa];[mPa.s];[degC]\n1;0,1;31,9;319000;20,0\n")
	f.Add("shear rate in 1/min,viscosity (cP),weight,temp [K],time\n60,1000,,293,1\n120,800,2,299,2\n")
	f.Add("rate,stress\n1,x\n")
	f.Fuzz(func(t *testing.T, text string) {
		points, err := ReadPoints(strings.NewReader(text))
		sound(t, "points", 0, err)
		if err == nil && len(points) == 0 {
			t.Error("no points and no error")
		}
		for _, p := range points {
			if err := p.check(); err != nil {
				t.Errorf("%+v: %v", p, err)
			}
		}
	})
}
