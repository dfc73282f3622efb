package thermal

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate"
)

// Steam that is seen ends long before the last mixture is over-saturated. The minutes are
// a review's, by an earlier state of this model, for 300 g of soup from 80 degC in 130 mm
// in a bowl of 400 g as hot: to the threshold, to 0.3 and to 1.2 g/m3.
func TestSteamEndsWhereItIsNoLongerSeen(t *testing.T) {
	for _, c := range []struct {
		room        Air
		threshold   float64
		faint, seen float64 // min
	}{
		{Air{TempC: 22, RH: 0.4, Still: true}, 31.4, 20.7, 11.5},
		{Air{TempC: 15, RH: 0.4, Still: true}, 44.0, 30.5, 17.9},
		{Air{TempC: 28, RH: 0.3, Still: true}, 20.4, 12.1, 5.5},
	} {
		d := HotDish{Grams: 300, Diameter: 0.13, StartC: 80, VesselC: honestplate.Some(80), VesselGrams: 400, SideH: 8}
		last := time.Duration(0)
		for _, v := range []struct{ gm3, minutes float64 }{{1.2, c.seen}, {0.3, c.faint}} {
			d.VisibleGM3 = honestplate.Exactly(v.gm3)
			k, err := d.Likely(c.room)
			if err != nil {
				t.Fatal(err)
			}
			ends := at(k.SteamEnds.Likely)
			if got := ends.Minutes(); math.Abs(got/v.minutes-1) > 0.15 || got > 0.75*c.threshold || ends <= last {
				t.Errorf("%+v: %g g/m3 until %.1f min, the review %.1f", c.room, v.gm3, got, v.minutes)
			}
			last = ends
		}
	}
}

// Plain soup has no absurd band: its wetness is sure, and what counts as steam decides.
func TestSteamOfPlainSoupHasABandToWorkWith(t *testing.T) {
	k, err := HotDish{Grams: 300, Diameter: 0.13, StartC: 80}.Clock(Air{TempC: 22, RH: 0.4})
	if err != nil {
		t.Fatal(err)
	}
	w := k.SteamEnds
	if at(w.Earliest) < 2*time.Minute || at(w.Latest) > 30*time.Minute || at(w.Likely) < 4*time.Minute || at(w.Likely) > 15*time.Minute {
		t.Errorf("steam ends %v", w)
	}
	if len(w.Decides) == 0 || w.Decides[0].Key != "crew.steam_g_m3" {
		t.Errorf("decided by %v", w.Decides)
	}
}

// A cold mug takes heat at once: 400 g from 22 degC bring 473 g of coffee at 93 down by
// some 10 K, and the mug that was measured from 93.3 to 65.6 degC in 14 min (a web page,
// read; mug and start assumed) lies in the band.
func TestAColdMugCoolsItsCoffee(t *testing.T) {
	d := HotDish{Grams: 473, Diameter: 0.085, StartC: 93.3, LimitC: honestplate.Some(65.6), VesselGrams: 450}
	k, err := d.Clock(Air{TempC: 22, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if early, late := at(k.Limit.Earliest).Minutes(), at(k.Limit.Latest).Minutes(); early > 14 || late < 14 {
		t.Errorf("65.6 degC after %v, measured 14 min", k.Limit)
	}
	warmed := d
	warmed.VesselC = honestplate.Some(93.3)
	w, err := warmed.Likely(Air{TempC: 22, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if at(w.Limit.Likely) < at(k.Limit.Likely)+3*time.Minute {
		t.Errorf("warmed mug %v, from the shelf %v", w.Limit, k.Limit)
	}
	after := func(k HotClock) float64 {
		for _, p := range k.Series {
			if p.Time >= 2*time.Minute {
				return p.MeanC
			}
		}
		return math.NaN()
	}
	if drop := after(w) - after(k); drop < 6 || drop > 12 {
		t.Errorf("the cold mug takes %.1f K", drop)
	}
}

// The courses converge with the step, over the range of dishes.
func TestDishConvergesOverItsRange(t *testing.T) {
	for _, d := range []HotDish{
		{Grams: 20, Diameter: 0.05, StartC: 95}, {Grams: 2000, Diameter: 0.3, StartC: 90}, {Grams: 300, Diameter: 0.4, StartC: 80},
		{Grams: 400, Diameter: 0.06, StartC: 95, VesselGrams: 1000}, {Grams: 300, Diameter: 0.15, StartC: 85, Solid: true},
		{Grams: 300, Diameter: 0.15, StartC: 95, VesselC: honestplate.Some(-20), VesselGrams: 3000}, {Grams: 300, Diameter: 0.1, StartC: 80, Covered: 1, SideH: 100},
	} {
		for _, a := range []Air{{TempC: 22, RH: 0.4}, {TempC: 35, RH: 0.9, Still: true}, {TempC: -5, RH: 0.3, Speed: 3}} {
			d, light, err := d.complete(a, nil)
			if err != nil {
				t.Fatal(err)
			}
			run := func(scale float64) [hotLimits]float64 {
				r, err := d.start(a, light.Likely, 1, 1)
				if err != nil {
					t.Fatal(err)
				}
				r.scale = scale
				if err := r.run(); err != nil {
					t.Fatal(err)
				}
				return r.at
			}
			coarse, fine := run(1), run(0.05)
			for i := range 2 {
				if (coarse[i] == never) != (fine[i] == never) || fine[i] != never && math.Abs(coarse[i]-fine[i]) > 0.02*fine[i]+1 {
					t.Errorf("%+v in %+v: event %d at %.1f s, converged %.1f", d, a, i, coarse[i], fine[i])
				}
			}
		}
	}
}
