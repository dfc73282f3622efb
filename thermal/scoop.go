package thermal

import (
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/light"
)

// A Rest is what a scoop rests on.
type Rest int

// What a scoop may rest on.
const (
	OnPlate        Rest = iota // a plate or bowl at room temperature
	OnChilledPlate             // a plate chilled to PlateC; it warms in the room
	OnCone                     // a wafer cone that holds the lower quarter
	OnNothing                  // a wire or a skewer: air all round
)

// String says it for people.
func (r Rest) String() string { return check.Name("rest", int(r), rests[:]) }

// MarshalText writes the words of String; an unknown rest is refused.
func (r Rest) MarshalText() ([]byte, error) { return check.Named("Rest", int(r), rests[:]) }

// UnmarshalText reads the words of String.
func (r *Rest) UnmarshalText(b []byte) error { return check.Read("Rest", b, rests[:], r) }

var rests = [...]string{"on a plate", "on a chilled plate", "on a cone", "on nothing"}

// A Scoop is a ball of frozen dessert that has just been put in front of the camera.
//
// It is computed as one run of columns, each by the enthalpy solver of Body: the side
// that faces the lamps, which catches all their light, the rest of the ball in its shade,
// the thin fringe that the dipper leaves, and the foot on its plate. Each takes heat by convection, radiation and dew or frost
// (see Surface), which is let in as latent heat; the light is taken to be absorbed at the
// surface, all lamps on the same side. What is warmer than where the mix flows is melt;
// what clings stays and the rest runs off, so the ball shrinks. The foot wets the plate
// and no more: its melt lets the ball sink, not lose its shape.
//
// Nothing published gives the times of a scoop under lamps. Five scoops on cones at 21
// degC were seen to drip after 90 to 295 s (university course, 2026), straight from the
// dipper; laboratories see the first drip of 80 to 100 g at 20 to 25 degC after 10 to 30
// min (from memory). The thresholds are engineering estimates, no source, and are inputs.
type Scoop struct {
	// Mix is the recipe; see [food.Recipes].
	Mix food.FrozenMix `json:"mix,omitzero"`
	// Diameter of the ball, m, 0.01..0.12.
	Diameter float64 `json:"diameter_m,omitzero"`
	// StartC is its temperature when it comes out, degC, -60 to 0.5 K below where
	// the mix flows.
	StartC float64 `json:"start_c,omitzero"`
	// Rest is what it rests on.
	Rest Rest `json:"rest,omitzero"`
	// PlateC is the temperature of an OnChilledPlate when it comes out, degC,
	// -60..20; it must be given for one. Others ignore it.
	PlateC honestplate.Optional `json:"plate_c,omitzero"`
	// Structure is how its fat and gums hold the melt; see there. It sets the defaults of
	// ClingGM2 and SlumpShare.
	Structure food.Structure `json:"structure,omitzero"`
	// DipperJM2 is the heat that the dipper and the hand left in its surface, J/m2,
	// 0..200000, known to x/:2. Not given, it is 4000 for a ball warmer than -16 degC, as
	// if it came straight from a wet dipper, and less down to none at -20, where it was
	// hardened again after it was made. Engineering estimate.
	DipperJM2 honestplate.Optional `json:"dipper_j_m2,omitzero"`
	// Fringe is how thick the thin edges and ridges are that the dipper leaves, m, 0..0.02,
	// known to x/:2.5: warm on both sides, they drip first, unless the melt holds in them.
	// Not given, it is 2 mm at 60 % overrun, more with more air, and never more than a
	// tenth of the Diameter. Some(0) is a moulded ball. Engineering estimate, chosen with
	// the five timed scoops in sight.
	Fringe honestplate.Optional `json:"fringe_m,omitzero"`
	// Absorptance of the surface by source; zero means WhiteFood. Give DarkFood for
	// chocolate.
	Absorptance light.Absorptance `json:"absorptance,omitzero"`
	// SoftFrozen is the share of the water that is still ice when the dessert counts
	// as soft: 0..0.95, default 0.65 (0.60..0.70). Served ice cream is aimed at 0.65
	// to 0.70 (dairy science page, read).
	SoftFrozen honestplate.Estimate `json:"soft_frozen,omitzero"`
	// SoftDepth is how deep it must be soft, m: 0 to a quarter of the diameter,
	// default 3 mm (2..5), of a ball below 20 mm 0.15 of it. Engineering estimate.
	SoftDepth honestplate.Estimate `json:"soft_depth_m,omitzero"`
	// FlowFrozen is the share of the water that is still ice when the dessert flows:
	// 0..0.5, default 0.08 (0..0.2). Engineering estimate; more stabiliser, less ice.
	FlowFrozen honestplate.Estimate `json:"flow_frozen,omitzero"`
	// ClingGM2 is the melt that clings before it drips, g/m2: 5..50000. The default is the
	// Structure's at 60 % overrun, such as 100 (30..8000) where that is not known, and more
	// with more air.
	ClingGM2 honestplate.Estimate `json:"cling_g_m2,omitzero"`
	// SlumpShare is the share of the ball that has run off when its shape is lost:
	// 0.01..0.95. The default is the Structure's, such as 0.10 (0.05..0.7).
	SlumpShare honestplate.Estimate `json:"slump_share,omitzero"`
	// Horizon is how long to look; later is Never. 0 means 2 h; at most 24 h.
	Horizon time.Duration `json:"horizon_ns,omitzero"`
}

// A ScoopClock says when what happens to a Scoop, counted from when it comes out.
type ScoopClock struct {
	// Shines: the surface of that side is wet; dull frost and bloom turn to gloss.
	Shines Event `json:"shines"`
	// Softens: the side to the lamps is soft to SoftDepth; details round off.
	Softens Event `json:"softens"`
	// FirstDrip: on that side more has melted than clings, or the fringe has melted.
	FirstDrip Event `json:"first_drip"`
	// Puddles: at the foot more has melted against the plate than clings, or melt runs down
	// from above, more than the fringe's drops. Never on a cone or on nothing.
	Puddles Event `json:"puddles"`
	// Slumps: SlumpShare has run off; the shape is lost. Never before the first drip.
	Slumps Event `json:"slumps"`
	// Series is the likely course, in even steps of time.
	Series []ScoopPoint `json:"series"`
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// A ScoopPoint is a scoop at one time of its likely course.
type ScoopPoint struct {
	Time time.Duration `json:"time_ns"` // since it was scooped onto the set
	// SurfaceC is the temperature of the side to the lamps, degC.
	SurfaceC float64 `json:"surface_c"`
	// MeanC and CoreC are those of what is left of the ball, degC.
	MeanC float64 `json:"mean_c"`
	CoreC float64 `json:"core_c"`
	// SoftMM is how deep it is soft on the average side, mm.
	SoftMM float64 `json:"soft_mm"`
	// MeltedShare is the share of the ball that has melted, 0..1.
	MeltedShare float64 `json:"melted_share"`
	// DrippedGrams is what has run off: none before the first drip.
	DrippedGrams float64 `json:"dripped_grams"`
}

// Clock computes how long the scoop holds in the air a under the lamps, which burn
// from the start (a Flash on the average of its pops, with its modelling lamp).
//
// The windows are 95 % bands over: the room and the air (see [Air]), convection (x/:1.2),
// light (see [light.Lamp.Irradiance]), absorptance (x/:1.25), the lit side's slope to the light
// (0.8 of square on, 0.5..1), conductivity (x/:1.25), density (x/:1.05), start (+-1 K), what
// the dipper left (x/:2), the fringe (x/:2.5), contact with the plate (x/:2), and the
// thresholds.
//
// Errors: [honestplate.InputError] and [honestplate.RangeError] for what makes no sense or leaves a model's
// range. Estimates, not guarantees. Hot lamps burn; food that has stood in the light
// is not eaten.
func (s Scoop) Clock(a Air, lamps ...light.Lamp) (ScoopClock, error) {
	return clockOf[ScoopClock](s.frame(a, lamps)).knowing(Lesson{})
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides. For a program that looks for a setting.
func (s Scoop) Likely(a Air, lamps ...light.Lamp) (ScoopClock, error) {
	return clockOf[ScoopClock](s.frame(a, lamps)).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (s Scoop) Knowing(l Lesson, a Air, lamps ...light.Lamp) (ScoopClock, error) {
	return clockOf[ScoopClock](s.frame(a, lamps)).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (s Scoop) Observe(l Lesson, seen []Seen, a Air, lamps ...light.Lamp) (ScoopClock, Lesson, error) {
	return clockOf[ScoopClock](s.frame(a, lamps)).observed(l, seen)
}

func (m scoopModel) words(r Runs) ScoopClock {
	return ScoopClock{Kept: r, Shines: r.at(shines), Softens: r.at(softens), FirstDrip: r.at(drips), Puddles: r.at(puddles), Slumps: r.at(slumps), Series: m.course}
}
