package cold

import "testing"

func TestMediaAreSoundAndTheColdOnesWarn(t *testing.T) {
	f, c := Freezers(), Chillers()
	for _, m := range []Medium{f.Home, f.ServingCabinet, f.Deep, f.Blast, f.Plate, f.DryIce, c.Refrigerator, c.IcedWater, c.SaltedIcedWater} {
		if err := m.H.Check("H"); err != nil || m.H.Low <= 0 {
			t.Errorf("%s: %v, %v", m.Name, m.H, err)
		}
		if (m.TempC < -20 || m.Water) && m.Caution == "" {
			t.Errorf("%s at %g degC has no caution", m.Name, m.TempC)
		}
	}
}
