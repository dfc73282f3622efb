package thermal

import (
	"errors"
	"math/rand/v2"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/light"
)

// A glass, cheese and a dish over their whole domain: each answers or says why not, nothing
// is NaN, no heat is lost, and films never go below nothing. The scoop has a test of its own,
// and every clock a fuzz target.
func TestClocksOverTheirWholeDomain(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 4))
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	refused := 0
	const n = 1500
	for range n {
		a := Air{TempC: between(-10, 45), RH: r.Float64(), PressurePa: between(60000, 105000), Speed: max(0, between(-1, 3))}
		var lamps []light.Lamp
		if r.IntN(2) == 0 {
			lamps = append(lamps, light.Lamp{Watts: between(1, 1500), Source: light.Source(r.IntN(3)), Distance: between(0.7, 4), BeamDegrees: between(15, 90)})
		}
		g := Glass{
			Diameter: between(0.04, 0.15), WallThickness: between(0.0005, 0.01), DrinkGrams: between(50, 900), IceGrams: max(0, between(-200, 400)),
			DrinkC: honestplate.Some(between(0, 60)), WallC: honestplate.Some(between(-30, 60)), InsideH: between(30, 600), Horizon: 6 * time.Hour,
		}
		if r.IntN(2) == 0 {
			g.IceShape, g.IceC = IceShape(r.IntN(3)), honestplate.Some(between(-40, 0))
			g.Drink = food.Drink{Brix: max(0, between(-20, 40)), AlcoholPercent: max(0, between(-40, 45))}
		}
		if g.DrinkGrams < 100 {
			g.DrinkGrams, g.IceGrams, g.Height, g.InsideH = 0, 0, between(0.05, 0.3), 0
		}
		k, err := g.Likely(a, lamps...)
		if err != nil {
			testkit.Typed(t, err)
			refused++
			continue
		}
		testkit.Finite(t, k)
		if e := missing(k.Balance); e > 1e-6 {
			t.Errorf("%+v in %+v: %g of the heat is missing", g, a, e)
		}
		for _, p := range k.Series {
			if p.DewGM2 < 0 || p.FrostGM2 < 0 || p.IceGrams < 0 || p.FrostGM2 > 0 && p.SurfaceC > 8 {
				t.Fatalf("%+v in %+v: %+v", g, a, p)
			}
			if len(lamps) == 0 && p.SurfaceC > max(a.TempC, g.DrinkC.Value, g.WallC.Value)+0.5 {
				t.Fatalf("%+v in %+v warms above everything: %+v", g, a, p)
			}
		}
		if at(k.Haze.Likely) > at(k.Opaque.Likely) || at(k.Opaque.Likely) > at(k.Runs.Likely) {
			t.Errorf("%+v in %+v: haze %v, opaque %v, runs %v", g, a, k.Haze.Window, k.Opaque.Window, k.Runs)
		}
		c := Cheese{Grams: between(60, 400), Diameter: between(0.15, 0.4), StartC: between(40, 98), Activity: between(0.01, 1)}
		if k, err := c.Likely(a, lamps...); err == nil {
			testkit.Finite(t, k)
			if e := missing(k.Balance); e > 1e-6 {
				t.Errorf("%+v in %+v: %g of the heat is missing", c, a, e)
			}
		} else if !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%+v in %+v: %v", c, a, err)
		}
		d := HotDish{Grams: between(50, 2000), Diameter: between(0.05, 0.4), StartC: between(10, 92), Solid: r.IntN(2) == 0}
		if k, err := d.Likely(a, lamps...); err == nil {
			testkit.Finite(t, k)
			if e := missing(k.Balance); e > 1e-6 {
				t.Errorf("%+v in %+v: %g of the heat is missing", d, a, e)
			}
		} else if !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%+v in %+v: %v", d, a, err)
		}
	}
	if refused > n/10 {
		t.Errorf("%d of %d glasses refused", refused, n)
	}
}
