package pour_test

import (
	"testing"

	"example.org/honestplate/rheology/pour"
)

func TestThickLiquidsLeaveMoreBehind(t *testing.T) {
	s := pour.Spout{Diameter: 0.02, Length: 0.05, Head: 0.2}
	last := 0.0
	for _, l := range []given{thin, milk, cream, syrup} {
		p := pourOf(t, s, l, 200)
		if p.LeftGrams.Likely <= last || p.LeftGrams.Likely > 200 {
			t.Errorf("eta %g: %v g after %g", l.eta, p.LeftGrams, last)
		}
		last = p.LeftGrams.Likely
	}
	with := pourOf(t, s, ketchup, 200).LeftGrams.Likely
	without := pourOf(t, s, stiff{ketchup.given, 0.01}, 200).LeftGrams.Likely
	if with <= without {
		t.Errorf("with a yield stress %g g, with hardly any %g g", with, without)
	}
}
