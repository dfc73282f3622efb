package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/testkit"
	"example.org/honestplate/thermal/light"
	"example.org/honestplate/thermal/ware"
)

// The contact under a small disc: at first what the top's effusivity brings, later what
// flows to it from all sides of a thick body.
func TestContactWithATabletop(t *testing.T) {
	const a = 0.012
	c := under(ware.CeramicTop, 1e9, a, 24)
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
	rack := under(ware.WireRack, 1000, a, 24)
	if h, _ := rack.at(10); h != 0 {
		t.Errorf("a rack brings %g", h)
	}
}

// Ratios of the median time over mass^(2/3) of timed pieces (github SmileyFaceZ/IcyMelt,
// data/iceexp.csv, university course 2024, read): on wood 464 s/g^(2/3), on plastic 469,
// on a tile 202, on the ground 133, on iron 66.
func TestIceGoesSoonerOnWhatConducts(t *testing.T) {
	edge := math.Cbrt(9.0 / 1000 / 917)
	on := func(top ware.Tabletop) float64 {
		return iceTimes(t, IceOnTable{Shape: IceCube, Size: edge, StartC: -15, Below: top}, Air{TempC: 30, RH: 0.6})[iceGone]
	}
	wood := on(ware.WoodTop)
	for top, ratio := range map[ware.Tabletop]float64{ware.PlasticTop: 469.0 / 464, ware.CeramicTop: 202.0 / 464, ware.StoneTop: 133.0 / 464, ware.MetalTop: 66.0 / 464} {
		if got := on(top) / wood; got < ratio/1.4 || got > ratio*1.4 {
			t.Errorf("on %v %.2f times as long as on wood, measured %.2f", top, got, ratio)
		}
	}
}

// A ball all of whose surface takes the same melts as t = rho L R/q, a flake from both
// its faces in half its thickness.
func TestIceRecedesFromItsFaces(t *testing.T) {
	const q, left = 400.0, 3e8 // W/m2, J/m3
	v := q / left
	for name, c := range map[string]struct {
		box  iceBox
		want float64
	}{
		"ball":  {iceBox{0.04, 0.04, math.Pi / 6}, 0.02 / v},
		"flake": {iceBox{0.03, 0.01, 1}, 0.005 / v},
	} {
		b, time := c.box, 0.0
		for b.volume() > 1e-6*c.box.volume() && b.height > 0 {
			b, time = b.after(1, v, v), time+1
		}
		testkit.CloseRel(t, name, time, c.want, 0.01)
	}
}

// Over the whole range of sizes, starts, rooms, tops and lights, twice the cells, a tenth
// of the tolerance and a quarter of the step change no time by 1.5 %.
func TestIceOnTableConverges(t *testing.T) {
	lit := []light.Lamp{{Source: light.Tungsten, Lux: 60000}}
	for _, c := range []struct {
		i     IceOnTable
		a     Air
		lamps []light.Lamp
	}{
		{IceOnTable{Shape: IceCube, Size: 0.03, StartC: -15}, studio, nil},
		{IceOnTable{Shape: IceCube, Size: 0.001, StartC: -0.1, Below: ware.MetalTop}, Air{TempC: 50, RH: 1, Speed: 30}, nil},
		{IceOnTable{Shape: IceBall, Size: 0.2, StartC: -60, Below: ware.WoodTop}, Air{TempC: 3, RH: 0.05, Speed: 4}, nil},
		{IceOnTable{Shape: IceChip, Size: 0.001, StartC: -60, Below: ware.WireRack}, Air{TempC: 3, RH: 0.5}, nil},
		{IceOnTable{Shape: IceChip, Size: 0.2, StartC: -60, Below: ware.MetalTop}, Air{TempC: 50, RH: 1, Speed: 3}, lit},
		{IceOnTable{Shape: IceBall, Size: 0.06, StartC: -30, Below: ware.StoneTop, Cloudy: true}, studio, lit},
		{IceOnTable{Shape: IceCube, Size: 0.2, StartC: -2, Below: ware.GlassTop}, Air{TempC: 20, RH: 0.9}, lit},
	} {
		c.i.Horizon = 24 * time.Hour
		f, err := c.i.frame(c.a, c.lamps)
		_, usual := runOnce(t, f, err)
		f.model.cells, f.model.tol, f.model.step = 2*iceCells, iceTolerance/10, iceStep/4
		f.model.work = nil
		_, fine := runOnce(t, f, nil)
		for e := range usual {
			if usual[e] != fine[e] && !(math.Abs(usual[e]-fine[e]) <= 0.015*fine[e]+0.5) {
				t.Errorf("%+v in %+v, event %d: %g s, finer %g s", c.i, c.a, e, usual[e], fine[e])
			}
		}
	}
}

// The heat taken up is that of what has melted: in the course nothing is lost.
func TestIceTakesTheHeatOfItsMass(t *testing.T) {
	b := IceOnTable{Shape: IceCube, Size: 0.03, StartC: -20}
	m, err := b.model(studio, nil)
	if err != nil {
		t.Fatal(err)
	}
	r := &iceRun{}
	at := make([]float64, iceEvents)
	if err := r.times(&m, at, nil, 0); err != nil {
		t.Fatal(err)
	}
	box := m.box()
	c := iceCourse{m: &m, box: box, whole: box.volume()}
	if err := r.reckon(&m, box.length()); err != nil {
		t.Fatal(err)
	}
	left, err := r.warm(&m, &c, at)
	if err != nil {
		t.Fatal(err)
	}
	whole := heat.Ice().Density * (heat.Fusion + 20*heat.Ice().SpecificHeat)
	testkit.CloseRel(t, "taken and left", left+r.e.Heat/r.e.Content(box.length()/2), whole, 1e-3)
}

func TestTabletopRefusesNonsense(t *testing.T) {
	i := IceOnTable{Shape: IceCube, Size: 0.03, StartC: -10, Below: ware.Tabletop(9)}
	var input *honestplate.InputError
	if _, err := i.Clock(studio); !errors.As(err, &input) || input.Field != "Below" {
		t.Error(err)
	}
	var top ware.Tabletop
	if err := top.UnmarshalText([]byte("stone")); err != nil || top != ware.StoneTop {
		t.Error(top, err)
	}
	if err := top.UnmarshalText([]byte("cheese")); err == nil {
		t.Error("a top of cheese")
	}
}
