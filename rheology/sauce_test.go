package rheology

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

func TestSauceFlowIsItsViscosity(t *testing.T) {
	for s, data := range foods {
		if data.PaS > 0 {
			continue
		}
		d := s.Describe()
		for i := range 11 {
			tempC := d.LowC + (d.HighC-d.LowC)*float64(i)/10
			m, err := s.Curve(tempC)
			if err != nil {
				t.Fatal(err)
			}
			for _, rate := range []float64{0.1, 5, 50, 1000} {
				e, err := s.ViscosityAtRate(tempC, rate)
				if err != nil {
					t.Fatal(err)
				}
				if math.Abs(e.Likely*rate/m.Stress(rate)-1) > 1e-12 {
					t.Errorf("%s at %g degC, %g 1/s: %g, its curve %g", d.Name, tempC, rate, e.Likely, m.Stress(rate)/rate)
				}
			}
			y, err := s.YieldStress(tempC)
			if err != nil || math.Abs(y.Likely-m.Stress(0)) > 1e-12*y.Likely {
				t.Errorf("%s: yield stress %v, %v, its curve %g", d.Name, y, err, m.Stress(0))
			}
		}
	}
}

// The flow curves at the temperatures they were measured are the table's.
func TestKetchupMeetsItsCurves(t *testing.T) {
	for _, c := range foods["tomato ketchup"].Curves {
		m, err := Food("tomato ketchup").Curve(c.tempC)
		if err != nil {
			t.Fatal(err)
		}
		if got := m.(flow.HerschelBulkley); math.Abs(got.Yield-c.yield) > 1e-12 || math.Abs(got.K-c.k) > 1e-12 || got.N != c.n {
			t.Errorf("at %g degC: %+v, want %+v", c.tempC, got, c)
		}
	}
}

func TestSauceRefusesRatesThatNobodyMeasured(t *testing.T) {
	for _, rate := range []float64{0, 0.05, 2000} {
		if _, err := Food("tomato ketchup").ViscosityAtRate(20, rate); !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%g 1/s: %v", rate, err)
		}
	}
	for _, s := range []Food{"", "tar"} {
		if _, err := s.Curve(20); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("got %v", err)
		}
		if _, err := s.YieldStress(20); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("got %v", err)
		}
	}
}
