package thermal

import (
	"math"
	"testing"

	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/ware"
)

// The constants of a plate follow from what their comments say.
func TestContactConstants(t *testing.T) {
	testkit.CloseRel(t, "effusivity of stoneware", plateEffusivity, math.Sqrt(1.5*2.1e6), 0.001)
	testkit.CloseRel(t, "warming of a plate", plateWarms, 2.1e6*0.007/20, 0.001)
}

// At first the film alone resists; later the material behind; a chilled plate warms.
func TestContactOverTime(t *testing.T) {
	warm := contact{film: plateFilm, effuse: plateEffusivity, behind: plateBehind, startC: 24, roomC: 24}
	chilled := warm
	chilled.startC = -18
	h0, t0 := warm.at(0)
	testkit.CloseRel(t, "at first", h0, plateFilm, 0.01)
	if t0 != 24 {
		t.Errorf("a plate at room temperature is at %g degC", t0)
	}
	h1, _ := warm.at(600)
	testkit.CloseRel(t, "after ten minutes", 1/h1, 1/plateFilm+1/(plateBehind+plateEffusivity/math.Sqrt(math.Pi*600)), 1e-5)
	_, t1 := chilled.at(735)
	testkit.CloseRel(t, "a time constant later", t1, 24-42/math.E, 1e-9)
}

// On its share the contact stands in for the air; the slope is that of the flux.
func TestRestingSurfaceSharesAirAndContact(t *testing.T) {
	ex, err := heat.Surface{Shape: heat.Sphere, Length: 0.05, Activity: 1}.In(studio.moist())
	if err != nil {
		t.Fatal(err)
	}
	var table fluxTable
	table.reset(ex)
	free := restingSurface{air: &table, light: 30}
	held := restingSurface{air: &table, light: 30, share: 0.25, contact: contact{film: 8, behind: 1e12, startC: 24, roomC: 24}}
	for _, s := range []float64{-20.3, -3.7, 0.6} {
		air, slope := free.At(s, 10)
		exact, err := ex.At(s, 30)
		if err != nil {
			t.Fatal(err)
		}
		testkit.CloseRel(t, "air and light", air, exact.Total(), 0.002)
		both, bothSlope := held.At(s, 10)
		testkit.CloseRel(t, "held", both, 30+0.75*(air-30)+0.25*8*(24-s), 1e-9)
		testkit.CloseRel(t, "slope", bothSlope, 0.75*slope-0.25*8, 1e-9)
	}
}

// The contact under a small disc: at first what the top's effusivity brings, later what
// flows to it from all sides of a thick body.
func TestContactWithATabletop(t *testing.T) {
	const a = 0.012
	c := under(ware.CeramicTop, 1, 1e9, a, 24)
	m, _, err := ware.CeramicTop.Material()
	if err != nil {
		t.Fatal(err)
	}
	early, _ := c.at(1)
	testkit.CloseRel(t, "after a second", early, math.Sqrt(m.Conductivity*m.Density*m.SpecificHeat/math.Pi), 0.16)
	late, at := c.at(1e9)
	testkit.CloseRel(t, "in the end", late, 4*m.Conductivity/(math.Pi*a), 1e-3)
	if at != 24 {
		t.Errorf("the top is at %g", at)
	}
	rack := under(ware.WireRack, 1, 1000, a, 24)
	if h, _ := rack.at(10); h != 0 {
		t.Errorf("a rack brings %g", h)
	}
}
