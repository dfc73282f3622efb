package thermal

import (
	"testing"
	"time"
)

// A tumbler of 300 g, as its tests use it.
func tumbler(iceGrams float64) Glass {
	return Glass{Diameter: 0.075, Height: 0.12, DrinkGrams: 300 - iceGrams, IceGrams: iceGrams, DrinkC: 2, WallC: 2}
}

func TestHeatOfTheGlassIsAccountedFor(t *testing.T) {
	warm := tumbler(0)
	warm.WallC = 23
	for name, g := range map[string]Glass{
		"iced": tumbler(100), "not iced": tumbler(0), "warm": warm,
		"frosted mug": {Diameter: 0.085, Height: 0.12, WallThickness: 0.006, WallC: -18},
	} {
		k, err := g.Likely(Air{TempC: 23, RH: 0.5, Speed: 0.2}, Lamp{Watts: 650, Distance: 1.5, BeamDegrees: 40})
		if err != nil {
			t.Fatal(name, err)
		}
		if e := k.Balance.Error(); e > 1e-6 {
			t.Errorf("%s: %g of the heat is missing: %+v", name, e, k.Balance)
		}
	}
}

func BenchmarkGlassLikely(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tumbler(100).Likely(Air{TempC: 23, RH: 0.5}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkGlassClock(b *testing.B) {
	for b.Loop() {
		if _, err := tumbler(100).Clock(Air{TempC: 23, RH: 0.5}); err != nil {
			b.Fatal(err)
		}
	}
}

func TestGlassWithoutIceHasNoIceToLose(t *testing.T) {
	k, err := tumbler(0).Likely(Air{TempC: 23, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if k.IceGone.MayHappen() || k.Haze.Likely > time.Minute {
		t.Errorf("got ice gone %v, haze %v", k.IceGone, k.Haze)
	}
}
