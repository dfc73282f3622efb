package thermal

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
)

// One glass, as the two models see it.
func bothGlasses(wallC float64) (Glass, IcedDrink) {
	return Glass{Diameter: 0.07, Height: 0.12, DrinkGrams: 180, DrinkC: honestplate.Some(6), IceGrams: 120, IceC: -12, WallC: honestplate.Some(wallC)},
		IcedDrink{Diameter: 0.07, Height: 0.12, DrinkGrams: 180, DrinkC: honestplate.Some(6), IceGrams: 120, IceC: -12, WallC: honestplate.Some(wallC), Shape: IceCube, Size: 0.028}
}

var bothRoom = Air{TempC: 23, RH: 0.5, Speed: 0.15}

// likelyRun is the likely run of an iced drink and its times, s.
func likelyRun(t *testing.T, d IcedDrink, a Air, lamps ...Lamp) (*icedRun, []float64, icedModel) {
	t.Helper()
	f, err := d.frame(a, lamps)
	m, times := runOnce(t, f, err)
	return m.work, times, m
}

// Ice so fine and stirred so well that the drink is as cold as it leaves the two models
// no difference but the last 1 % of the ice, which only the Glass waits for.
func TestIcedDrinkAsColdAsItsIceIsTheGlass(t *testing.T) {
	for _, lamps := range [][]Lamp{nil, {{Source: Tungsten, Lux: 8000}}} {
		for _, wallC := range []float64{6, 23, 45} {
			for _, a := range []Air{bothRoom, {TempC: 30, RH: 0.8, Speed: 1}, {TempC: 18, RH: 0.2}} {
				g, d := bothGlasses(wallC)
				d.Size, d.Shape, d.IceH, d.Horizon = 0.001, IceChip, honestplate.Exactly(10000), 24*time.Hour
				g.Horizon = d.Horizon
				want := mustLikely(t, g, a, lamps...).IceGone.Likely.After.Seconds()
				r, at, m := likelyRun(t, d, a, lamps...)
				want -= 0.01 * 0.12 * heat.Fusion / (r.at(0) + m.light)
				if got := at[drinkGone]; math.Abs(got-want) > 0.015*want {
					t.Errorf("wall %g degC, air %+v, %d lamps: gone in %.0f s, in the Glass %.0f", wallC, a, len(lamps), got, want)
				}
			}
		}
	}
}

// With real cubes the drink is warmer than its ice. It takes up less from the room for
// that, and some of what it takes up stays in it; nothing else makes the difference.
func TestIcedDrinkOutlastsTheGlassByItsOwnWarmth(t *testing.T) {
	for _, shape := range []struct {
		shape IceShape
		size  float64
	}{{IceChip, 0.005}, {IceCube, 0.028}, {IceBall, 0.063}} {
		g, d := bothGlasses(23)
		d.Shape, d.Size = shape.shape, shape.size
		r, at, _ := likelyRun(t, d, bothRoom)
		mean, last := 0.0, drinkPoint{}
		for _, p := range r.path {
			mean += (p.t - last.t) * (p.tempC + last.tempC) / 2
			last = p
		}
		mean /= last.t
		kept := last.tempC * ((0.300-0.0012)*heat.WaterHeat + r.wall)
		glass := mustLikely(t, g, bothRoom).IceGone.Likely.After.Seconds()
		want := (glass*r.at(0) - 0.0012*heat.Fusion + kept) / r.at(mean)
		got := at[drinkGone]
		if math.Abs(got-want) > 0.03*want {
			t.Errorf("%v: gone in %.0f s; the Glass's %.0f s and a drink of %.2f degC on average, %.2f at the end, make %.0f",
				shape.shape, got, glass, mean, last.tempC, want)
		}
		if got <= glass {
			t.Errorf("%v: gone in %.0f s, before the %.0f s of a drink as cold as its ice", shape.shape, got, glass)
		}
	}
}

func TestBandsOfTheTwoModelsOverlap(t *testing.T) {
	for _, wallC := range []float64{6, 23} {
		for _, a := range []Air{bothRoom, {TempC: 20, RH: 0.4}, {TempC: 30, RH: 0.7, Speed: 0.5}} {
			g, d := bothGlasses(wallC)
			k, err := g.Clock(a)
			if err != nil {
				t.Fatal(err)
			}
			c, err := d.Clock(a)
			if err != nil {
				t.Fatal(err)
			}
			if !(at(c.IceGone.Earliest) < at(k.IceGone.Latest) && at(k.IceGone.Earliest) < at(c.IceGone.Latest)) {
				t.Errorf("wall %g degC, air %+v: the Glass says %v, the IcedDrink %v", wallC, a, k.IceGone.Window, c.IceGone)
			}
			if more := c.IceGone.Likely.After.Seconds() / k.IceGone.Likely.After.Seconds(); more < 1 || more > 1.4 {
				t.Errorf("wall %g degC, air %+v: %.2f times as long as the Glass says", wallC, a, more)
			}
		}
	}
}

// A warm glass costs ice: what it holds above its own steady state.
func TestWarmGlassMeltsIceAtOnce(t *testing.T) {
	_, cold := bothGlasses(6)
	_, warm := bothGlasses(23)
	a, _, m := likelyRun(t, cold, bothRoom)
	b, _, _ := likelyRun(t, warm, bothRoom)
	g := m.glass
	want := g.Wall.Density * g.Wall.SpecificHeat * g.WallThickness * g.side() * (23 - 6)
	// Most of it finds the drink, the rest the room.
	if got := b.excess - a.excess; got > want || got < 0.8*want {
		t.Errorf("%g J of %g", got, want)
	}
	if b.excess <= 0 || b.tau < 10 || b.tau > 120 {
		t.Errorf("%g J in %g s", b.excess, b.tau)
	}
}

// The fin: in the limits of a tight hold of the drink on the wall it is the plain fin
// from the drink's temperature; a loose hold and no rim bring nothing.
func TestRimOfAGlassIsAFin(t *testing.T) {
	g, err := tumbler(100).complete(calmRoom)
	if err != nil {
		t.Fatal(err)
	}
	rim := func(g Glass) float64 {
		return g.endsConductance() - 2*g.EndsH*math.Pi*g.bore()*g.bore()/4
	}
	plain := math.Pi * g.Diameter * g.fade() * (finOutside + finInside) * math.Tanh(g.rim()/g.fade())
	usual := rim(g)
	tight, loose, full := g, g, g
	tight.InsideH, loose.InsideH = 1e5, 0.01
	full.Height = g.WallThickness + g.depth()
	if got := rim(tight); got > plain || got < 0.95*plain {
		t.Errorf("tight: %g W/K, plain fin %g", got, plain)
	}
	if usual < 0.5*plain || usual > 0.85*plain {
		t.Errorf("%g W/K, plain fin %g", usual, plain)
	}
	if got := rim(loose); got > 1e-5*plain || got < 0 {
		t.Errorf("loose: %g W/K", got)
	}
	if got := rim(full); math.Abs(got) > 1e-9 {
		t.Errorf("full to the brim: %g W/K", got)
	}
}
