package thermal

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
)

// common practice, no source: the same ball is ready sooner in moving air than in a
// home freezer, sooner still in dry ice.
func TestMediaRank(t *testing.T) {
	last := neverAt
	for _, m := range []Medium{Freezers().Home, Freezers().Deep, Freezers().Blast, Freezers().DryIce} {
		d := portion(m)
		d.TargetC = -15
		c, err := d.Likely()
		if err != nil {
			t.Fatal(err)
		}
		if core := at(c.Core.Likely); core < last {
			last = core
		} else {
			t.Errorf("%s takes %v, not below %v", m.Name, core, last)
		}
	}
}

func TestMediaAreSoundAndTheColdOnesWarn(t *testing.T) {
	for _, m := range []Medium{Freezers().Home, Freezers().ServingCabinet, Freezers().Deep, Freezers().Blast, Freezers().Plate, Freezers().DryIce} {
		if err := m.check(); err != nil {
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
		if err := m.check(); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := (Medium{TempC: -100, H: 8}).check(); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}
