package cold

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
)

func TestMediaAreSoundAndTheColdOnesWarn(t *testing.T) {
	for _, m := range []Medium{Freezers().Home, Freezers().ServingCabinet, Freezers().Deep, Freezers().Blast, Freezers().Plate, Freezers().DryIce} {
		if err := m.Check(); err != nil {
			t.Errorf("%s: %v", m.Name, err)
		}
		if m.TempC < -20 && m.Caution == "" {
			t.Errorf("%s at %g degC has no caution", m.Name, m.TempC)
		}
	}
	for name, m := range map[string]Medium{
		"NaN temperature": {TempC: math.NaN(), H: 8},
		"no coefficient":  {TempC: -18},
		"low above":       {TempC: -18, H: 8, HLow: 9},
		"negative low":    {TempC: -18, H: 8, HLow: -1},
		"high below":      {TempC: -18, H: 8, HHigh: 7},
		"infinite high":   {TempC: -18, H: 8, HHigh: math.Inf(1)},
	} {
		if err := m.Check(); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := (Medium{TempC: -100, H: 8}).Check(); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}
