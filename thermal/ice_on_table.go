package thermal

import (
	"cmp"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/root"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
	"example.org/honestplate/thermal/ware"
)

// IceOnTable is real ice lying in the air of the set: a cube, a ball or a chip on a
// table. Its melt runs off but for a film.
//
// Artificial ice neither melts nor, being as warm as the room, fogs: where real ice
// is not what is advertised it may stand in.
type IceOnTable struct {
	Shape IceShape `json:"shape,omitzero"` // what Size measures
	// Size is the edge, diameter or thickness, m, 0.001..0.2.
	Size float64 `json:"size_m,omitzero"`
	// StartC is its temperature as it comes out, degC, -60..-0.1. Ice put out below
	// about -16 degC may crack when wetted: clear ice is tempered first (King and
	// Fletcher 1976, J. Atmos. Sci. 33:97: median cracking temperature, read in the
	// abstract).
	StartC float64 `json:"start_c,omitzero"`
	// Cloudy ice sends light on longer ways and absorbs twice as much.
	Cloudy bool `json:"cloudy,omitzero"`
	// Below is what it lies on, at room temperature; the zero value is ceramic. Timed
	// pieces of 3 to 15 g went on iron seven times, on a floor three times and on a tile
	// twice as fast as on wood or plastic (university course, 2024).
	Below ware.Tabletop `json:"below,omitzero"`
	// ClingGM2 is the film of melt that stays on it, g/m2: 5..2000, default 100
	// (50..200); the rest is the puddle. Engineering estimate: water drains.
	ClingGM2 honestplate.Estimate `json:"cling_g_m2,omitzero"`
	// Horizon is how long to look; later is Never. 0 means 6 h; at most 24 h.
	Horizon time.Duration `json:"horizon_ns,omitzero"`
}

// An IceClock says how ice on a table goes.
type IceClock struct {
	Shines  Event      `json:"shines"`   // the surface is at 0 degC: frost is gone, it is wet and glistens
	HalfOff Event      `json:"half_off"` // half the mass has melted
	Gone    Event      `json:"gone"`     // 99 % has melted
	Series  []IcePoint `json:"series"`   // the likely course
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// An IcePoint is a piece of ice at one time.
type IcePoint struct {
	Time     time.Duration `json:"time_ns"`   // since it was set down
	IceGrams float64       `json:"ice_grams"` // solid left, g
	// PuddleGrams is what has melted and run off, g.
	PuddleGrams float64 `json:"puddle_grams"`
	SurfaceC    float64 `json:"surface_c"` // degC
}

const (
	iceShines = iota
	iceHalf
	iceGone
	iceEvents
)

// icePure is how far from 0 degC the latent heat is spread, K: see Sharp.
const icePure = 0.02

// meltConductivity is that of water at 0..5 degC, W/(m K).
const meltConductivity = 0.57

// An iceModel is a checked piece of ice in its room; its light is that of the whole
// piece.
type iceModel struct {
	setting
	i         IceOnTable
	lamps     []light.Lamp
	c         *solve.Compiled
	lights    [iceLights + 1]float64 // absorbed over the surface, W/m2, by radius
	lightStep float64                // of the radius, m
	absorbs   float64                // this and the next are factors
	size      float64
	contact   float64
	table     float64
	cells     int     // of the ball
	tol       float64 // of the ball's solver
	step      float64 // of the box, as a share of what is left
	work      iceRun
	series    []IcePoint
}

// iceLights is in how many steps of radius the absorbed light is kept.
const iceLights = 24

// Clock computes the ice in the air a under the lamps. Until its surface is at 0 degC a
// piece is the ball of the same ratio of volume to surface; from then on its sides and
// its top recede by what the air and the light bring, its base by what the table does.
// Light goes through clear ice and what the mean path absorbs is taken as heat at its
// surface.
//
// The windows are 95 % bands over the room (as for a Scoop), light (see [light.Lamp.Irradiance]),
// absorptance (x0.7..1.4), size (+-5 %), start (+-2 K), what the table brings (x/:1.5,
// metal x/:2.5) and the contact with it (x/:2). One test piece narrows the window of the
// next to six tenths: size, contact and luck are its own. Errors: [honestplate.InputError] and [honestplate.RangeError].
func (i IceOnTable) Clock(a Air, lamps ...light.Lamp) (IceClock, error) {
	return clockOf[IceClock](i.frame(a, lamps)).knowing(Lesson{})
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides.
func (i IceOnTable) Likely(a Air, lamps ...light.Lamp) (IceClock, error) {
	return clockOf[IceClock](i.frame(a, lamps)).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (i IceOnTable) Knowing(l Lesson, a Air, lamps ...light.Lamp) (IceClock, error) {
	return clockOf[IceClock](i.frame(a, lamps)).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (i IceOnTable) Observe(l Lesson, seen []Seen, a Air, lamps ...light.Lamp) (IceClock, Lesson, error) {
	return clockOf[IceClock](i.frame(a, lamps)).observed(l, seen)
}

func (m iceModel) words(r Runs) IceClock {
	return IceClock{Kept: r, Shines: r.at(iceShines), HalfOff: r.at(iceHalf), Gone: r.at(iceGone), Series: m.series}
}

func (i IceOnTable) frame(a Air, lamps []light.Lamp) (frame[iceModel], error) {
	m, err := i.model(a, lamps)
	return frame[iceModel]{kind: "ice", model: m, inputs: (*iceModel).inputs, run: (*iceModel).run,
		events: []string{"shines", "half off", "ice gone"}, doubt: doubtIce,
		readings: readingsOf(func(m *iceModel) []IcePoint { return m.series })}, err
}

func (i IceOnTable) model(a Air, lamps []light.Lamp) (iceModel, error) {
	i.ClingGM2 = cmp.Or(i.ClingGM2, band(50, 100, 200))
	i.Horizon = cmp.Or(i.Horizon, 6*time.Hour)
	m := iceModel{i: i, lamps: lamps, absorbs: 1, size: 1, contact: 1, table: 1, cells: iceCells, tol: iceTolerance, step: iceStep}
	if err := cmp.Or(inRoom(a, 3, 50, "the air must melt ice"), i.Shape.check(i.Size), check.Word("Below", i.Below),
		check.Fields("ice in a room",
			check.Number("StartC", i.StartC, -60, -0.1, "degC"), check.Number("Horizon", i.Horizon.Seconds(), 1, 86400, "s")),
		check.Band("ClingGM2", i.ClingGM2, 5, 2000, "g/m2", "films of water"),
	); err != nil {
		return m, err
	}
	radius := i.Shape.box(i.Size).length() / 2
	light, err := m.taken(radius)
	m.setting, m.lightStep = settingOf(a, light), 1.15*radius/iceLights // beyond the band of the size
	for k := range m.lights {
		light, lightErr := m.taken(float64(k) * m.lightStep)
		m.lights[k], err = light.Likely, cmp.Or(err, lightErr)
	}
	if err := cmp.Or(err, honestplate.InRange("Lamps", m.lights[iceLights], 0, 5000, "W/m2", "five times the sun")); err != nil {
		return m, err
	}
	ice := heat.Ice()
	m.c = new(solve.Compiled)
	solve.Load(m.c, heat.Melting{Width: icePure, Latent: ice.Density * heat.Fusion, SolidK: ice.Conductivity, SolidHeat: ice.Density * ice.SpecificHeat,
		LiquidK: meltConductivity, LiquidHeat: ice.Density * heat.WaterHeat}.Curve(-80, 95), 1, 1)
	return m, nil
}

// lightAt is absorbed at a radius between the steps.
func (m *iceModel) lightAt(radius float64) float64 {
	k, f := root.Cell(radius/m.lightStep, len(m.lights))
	return (m.lights[k] + f*(m.lights[k+1]-m.lights[k])) * m.brightness * m.absorbs
}

// taken is what a ball of the radius absorbs over its surface, W/m2: it catches
// light on a quarter of that, on paths of two thirds of the diameter.
func (m *iceModel) taken(radius float64) (honestplate.Estimate, error) {
	a, err := light.ClearIce(4.0 / 3 * radius)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	light, err := a.Absorbed(m.lamps...)
	if m.i.Cloudy {
		light = light.Times(2)
	}
	return light.Times(0.25), err
}

func (m *iceModel) inputs() []study.Input {
	start := around("unit.start_c", "start temperature", m.i.StartC, 2)
	start.Band.High = min(start.Band.High, -0.05)
	_, known, _ := m.i.Below.Material() // checked
	return append(m.setting.inputs(),
		bound(&m.absorbs, ofProduct(where(m.light.Likely > 0, factor("product.absorptance", "absorptance", 0.7, 1.4)))),
		bound(&m.size, factor("unit.size", "size", 1/1.05, 1.05)),
		bound(&m.i.StartC, within(start, -75, -0.05)),
		bound(&m.contact, factor("unit.contact", "contact with the table", 0.5, 2)),
		bound(&m.table, ofRoom(factor("room.table", "what the table brings", 1/known, known))))
}
