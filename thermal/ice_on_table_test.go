package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/light"
	"example.org/honestplate/thermal/ware"
)

func TestPieceGrams(t *testing.T) {
	for _, c := range []struct {
		s    IceShape
		size float64
		want float64
	}{{IceCube, 0.03, 24.759}, {IceBall, 0.05, 60.02}, {IceChip, 0.005, 1.0316}} {
		got, err := c.s.PieceGrams(c.size)
		if err != nil {
			t.Fatal(err)
		}
		testkit.CloseRel(t, c.s.String(), got, c.want, 1e-3)
	}
	if _, err := IceShape(9).PieceGrams(0.01); !errors.Is(err, honestplate.ErrInput) || IceShape(9).String() != "unknown ice shape (9)" {
		t.Error(err)
	}
	if _, err := IceBall.PieceGrams(2); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}

// The solver, its melt dripping, against the quasi-steady ball whose coefficient
// follows its diameter: t = integral of rho L dr/(h dT).
func TestDrippingBallIsQuasiSteady(t *testing.T) {
	h := func(d float64) float64 { return (2 + 6.64*math.Sqrt(d/0.04)*6.4) * 0.026 / d }
	const n = 20000
	want, end := 0.0, 0.02*math.Cbrt(0.5)
	for i := range n {
		r := end + (0.02-end)*(float64(i)+0.5)/n
		want += heat.Ice().Density * heat.Fusion / (h(2*r) * 25) * (0.02 - end) / n
	}
	m, err := IceOnTable{Shape: IceBall, Size: 0.04, StartC: -1}.model(studio, nil)
	if err != nil {
		t.Fatal(err)
	}
	var r iceRun
	law := &shrinkingLaw{h: h, e: &r.e}
	r.e.Build(int(heat.SphereForm), 0.02, 80, 0)
	r.e.Begin(m.c, -icePure/2-0.001, 1e-4, law)
	whole, left, t0 := r.e.Content(0.02), 1.0, 0.0
	for {
		before := left
		if err := r.e.AdvanceShedding(1e5, icePure/2, 1e-9); err != nil {
			t.Fatal(err)
		}
		if left = solidOf(&r.e, m.c) / whole; left <= 0.5 {
			t0 += (r.e.Time - t0) * (before - 0.5) / (before - left)
			break
		}
		t0 = r.e.Time
	}
	testkit.CloseRel(t, "time to half the mass", t0, want, 0.015)
}

// solidOf is the volume that is still ice.
func solidOf(e *solve.Engine, c *solve.Compiled) float64 {
	full, none := c.EnthalpyAt(icePure/2), c.EnthalpyAt(-icePure/2)
	sum := 0.0
	for i, h := range e.Enthalpies[:e.Shells] {
		sum += e.Volumes[i] * min(max((full-h)/(full-none), 0), 1)
	}
	return sum
}

type shrinkingLaw struct {
	h func(float64) float64
	e *solve.Engine
}

func (l *shrinkingLaw) At(s, _ float64) (float64, float64) {
	h := l.h(2 * l.e.Faces[l.e.Shells])
	return h * (25 - s), -h
}

// iceTimes are the likely times of a piece of ice.
func iceTimes(t *testing.T, i IceOnTable, a Air, lamps ...light.Lamp) [iceEvents]float64 {
	t.Helper()
	f, err := i.frame(a, lamps)
	_, times := runOnce(t, f, err)
	return [iceEvents]float64(times)
}

func TestIceOnTableIsMonotone(t *testing.T) {
	base := IceOnTable{Shape: IceCube, Size: 0.03, StartC: -15}
	dark, lit := iceTimes(t, base, studio), iceTimes(t, base, studio, tungsten)
	cold, big, cloudy, short := base, base, base, base
	cold.StartC, big.Size, cloudy.Cloudy, short.Horizon = -30, 0.05, true, 10*time.Second
	led := light.Lamp{Source: light.LED, Lux: 5000}
	for name, c := range map[string]struct{ early, late [iceEvents]float64 }{
		"colder start":  {dark, iceTimes(t, cold, studio)},
		"bigger":        {dark, iceTimes(t, big, studio)},
		"light":         {lit, dark},
		"cloudy in it":  {iceTimes(t, cloudy, studio, tungsten), lit},
		"damper room":   {iceTimes(t, base, Air{TempC: 24, RH: 0.8}), dark},
		"warmer room":   {iceTimes(t, base, Air{TempC: 30, RH: 0.5}), dark},
		"draught":       {iceTimes(t, base, Air{TempC: 24, RH: 0.5, Speed: 1}), dark},
		"short horizon": {dark, iceTimes(t, short, studio)},
	} {
		if c.late[iceHalf] <= c.early[iceHalf] || c.late[iceShines] < c.early[iceShines] {
			t.Errorf("%s: %v, %v", name, c.early, c.late)
		}
	}
	if r := iceTimes(t, base, studio, led)[iceHalf] / dark[iceHalf]; r < 0.995 || r > 1 {
		t.Errorf("LED light melts clear ice %.4f times as fast", 1/r)
	}
}

func TestIceOnTableTellsItsCourse(t *testing.T) {
	base := IceOnTable{Shape: IceCube, Size: 0.03, StartC: -15}
	b, err := base.Clock(studio)
	if err != nil {
		t.Fatal(err)
	}
	likely := iceTimes(t, base, studio)
	if b.Shines.Likely != moment(likely[iceShines]) || b.HalfOff.Likely != moment(likely[iceHalf]) || b.Gone.Likely != moment(likely[iceGone]) {
		t.Errorf("%v %v %v, likely %v", b.Shines, b.HalfOff, b.Gone, likely)
	}
	if !(at(b.Shines.Likely) < at(b.HalfOff.Likely) && at(b.HalfOff.Likely) < at(b.Gone.Likely) && b.Gone.MayHappen()) || len(b.HalfOff.Decides) == 0 {
		t.Errorf("%v %v %v", b.Shines, b.HalfOff, b.Gone)
	}
	grams, err := base.Shape.PieceGrams(base.Size)
	if err != nil {
		t.Fatal(err)
	}
	last := grams * (1 + 1e-9)
	for _, m := range b.Series {
		if m.IceGrams > last || m.IceGrams+m.PuddleGrams > grams*1.0001 || m.SurfaceC > 0 {
			t.Errorf("%+v", m)
		}
		last = m.IceGrams
	}
	if last > 0.02*grams || len(b.Series) < 50 {
		t.Errorf("%g g at the end of %d moments", last, len(b.Series))
	}
	base.Horizon = 10 * time.Second
	if c, err := base.Clock(studio); err != nil || c.HalfOff.MayHappen() {
		t.Errorf("short: %v, %v", c.HalfOff, err)
	}
}

func TestIceClocksRefuseNonsense(t *testing.T) {
	table := func(f func(*IceOnTable)) IceOnTable {
		i := IceOnTable{Shape: IceCube, Size: 0.03, StartC: -10}
		f(&i)
		return i
	}
	nan := math.NaN()
	for name, i := range map[string]IceOnTable{
		"shape":   table(func(i *IceOnTable) { i.Shape = 7 }),
		"size":    table(func(i *IceOnTable) { i.Size = 0 }),
		"warm":    table(func(i *IceOnTable) { i.StartC = 2 }),
		"NaN":     table(func(i *IceOnTable) { i.StartC = nan }),
		"film":    table(func(i *IceOnTable) { i.ClingGM2 = honestplate.Exactly(1e9) }),
		"horizon": table(func(i *IceOnTable) { i.Horizon = -1 }),
	} {
		if _, err := i.Clock(studio); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("on a table, %s: %v", name, err)
		}
	}
	ok := table(func(*IceOnTable) {})
	for name, a := range map[string]Air{"frost": {TempC: -5, RH: 0.5}, "NaN": {TempC: nan}} {
		if _, err := ok.Clock(a); err == nil {
			t.Errorf("air, %s: no error", name)
		}
	}
	bad := light.Lamp{Watts: nan}
	blazing := light.Lamp{Watts: 1e5, Distance: 0.06, BeamDegrees: 5}
	for _, l := range []light.Lamp{bad, blazing} {
		if _, err := ok.Clock(studio, l); err == nil {
			t.Errorf("%+v: no error", l)
		}
	}
}

func FuzzIceOnTable(f *testing.F) {
	f.Add(0, 0.03, -15.0, 24.0, 0.5, 0.0, 5000.0, 0, 100.0)
	f.Add(1, 0.2, -60.0, 50.0, 1.0, 30.0, 0.0, 1, 5.0)
	f.Add(2, 0.001, -0.1, 3.0, 0.0, 0.0, 1e5, 2, 2000.0)
	f.Fuzz(func(t *testing.T, shape int, size, start, air, rh, speed, lux float64, source int, cling float64) {
		i := IceOnTable{Shape: IceShape(shape), Size: size, StartC: start, ClingGM2: honestplate.Exactly(cling), Horizon: time.Hour}
		a, l := Air{TempC: air, RH: rh, Speed: speed}, light.Lamp{Source: light.Source(source), Lux: lux}
		m, err := i.model(a, []light.Lamp{l})
		if err != nil {
			return
		}
		var c IceClock
		err = m.run(make([]float64, iceEvents), 0)
		if c.Series = m.series; err == nil && rarely(size) { // the whole band takes long
			if c, err = i.Clock(a, l); err != nil {
				return
			}
		}
		for _, p := range c.Series {
			if math.IsNaN(p.IceGrams) || math.IsNaN(p.PuddleGrams) || math.IsNaN(p.SurfaceC) || p.IceGrams < 0 {
				t.Fatalf("%+v", p)
			}
		}
		if min(at(c.Shines.Earliest), at(c.HalfOff.Earliest), at(c.Gone.Earliest)) < 0 {
			t.Fatal(c)
		}
	})
}

func BenchmarkIceOnTable(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (IceOnTable{Shape: IceCube, Size: 0.03, StartC: -15}).Clock(studio); err != nil {
			b.Fatal(err)
		}
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
		"ball":  {IceBall.box(0.04), 0.02 / v},
		"flake": {IceChip.box(0.01), 0.005 / v},
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
		f.model.work = iceRun{}
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
	r := &m.work
	at := make([]float64, iceEvents)
	if err := m.run(at, noCourse); err != nil {
		t.Fatal(err)
	}
	box := b.Shape.box(b.Size)
	if err := r.reckon(&m, box.length()); err != nil {
		t.Fatal(err)
	}
	left, err := r.warm(&m, at)
	if err != nil {
		t.Fatal(err)
	}
	whole := heat.Ice().Density * (heat.Fusion + 20*heat.Ice().SpecificHeat)
	testkit.CloseRel(t, "taken and left", left+r.e.Heat/r.e.Content(box.length()/2), whole, 1e-3)
}

func TestIceRefusesAnUnknownTabletop(t *testing.T) {
	i := IceOnTable{Shape: IceCube, Size: 0.03, StartC: -10, Below: ware.Tabletop(9)}
	var input *honestplate.InputError
	if _, err := i.Clock(studio); !errors.As(err, &input) || input.Field != "Below" {
		t.Error(err)
	}
}
