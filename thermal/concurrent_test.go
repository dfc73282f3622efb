package thermal

import (
	"reflect"
	"sync"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

// Every kind of computation of the tree from many goroutines at once gives what it
// gives alone. The clocks share nothing but constants; the study spreads over the cores.
func TestConcurrentUseGivesTheSerialAnswers(t *testing.T) {
	exchanger, err := heat.Surface{Shape: heat.Sphere, Length: 0.05, Activity: 1}.In(heat.MoistAir{TempC: 23, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	body := heat.Body{Radius: 0.02, Curve: heat.Melting{Width: 0.5, Latent: 3e8, SolidK: 2, SolidHeat: 2e6,
		LiquidK: 0.6, LiquidHeat: 4e6}.Curve(-40, 40)}
	cool := func(surfaceC float64, _ time.Duration) float64 { return 15 * (25 - surfaceC) }
	g := icedTumbler()
	for name, solve := range map[string]func() (any, error){
		"air":       func() (any, error) { return calmRoom.DewPointC() },
		"steam":     func() (any, error) { return calmRoom.SteamGM3(80, 1) },
		"exchanger": func() (any, error) { return exchanger.At(-5, 100) },
		"curve":     func() (any, error) { return food.Recipes().Sorbet.Enthalpy(-8) },
		"body":      func() (any, error) { return body.Run(-18, 0, cool, 10*time.Minute) },
		"lamp":      func() (any, error) { return tungsten.Irradiance() },
		"mix":       func() (any, error) { return food.Recipes().Gelato.Curve() },
		"stages": func() (any, error) {
			return DeepFreeze{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: honestplate.Some(-13)}.After(FreezeStage{cold.Freezers().Deep, time.Hour})
		},
		"glass": func() (any, error) { return g.Likely(studio, tungsten) },
		"scoop": func() (any, error) { return ball(-18).Likely(studio, tungsten) },
		"band": func() (any, error) {
			c, err := pull().Clock(studio, tungsten)
			c.Kept.kept, c.Kept.explain = nil, nil // functions do not compare
			return c, err
		},
	} {
		want, err := solve()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var wg sync.WaitGroup
		for range 8 {
			wg.Go(func() {
				if got, err := solve(); err != nil || !reflect.DeepEqual(got, want) {
					t.Errorf("%s: %+v, %v", name, got, err)
				}
			})
		}
		wg.Wait()
	}
}
