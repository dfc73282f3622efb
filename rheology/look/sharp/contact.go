package sharp

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
)

// A Contact is a drop that meets a liquid.
type Contact struct {
	Diameter float64 `json:"diameter_m"`    // of the drop, m, 0.5e-3..20e-3
	Speed    float64 `json:"speed_m_per_s"` // of the drop, m/s, 0.2..20
	Depth    float64 `json:"pool_depth_m"`  // of the liquid that it meets, m, 0..1
}

// Moments after contact, each with its band: an order, not a timetable. No measured time
// with all its inputs was found. They are the energy argument's for water-thin liquids,
// known to a factor of 2; one test with the trigger's delay stepped through the band
// settles them for a set.
type Moments struct {
	// Crater is when the hole in a pool is deepest, and CraterRadius its radius in m then,
	// an upper bound.
	Crater       honestplate.Window `json:"crater_s"`
	CraterRadius float64            `json:"crater_radius_m"`
	// Jet is when the jet that follows the crater stands; Never where the pool is too
	// shallow for one that throws drops.
	Jet honestplate.Window `json:"jet_s"`
}

// Moments returns when to press for the crater and for the jet, counted from contact. For
// the crown of a film ask the stream's Crown in package pour.
//
// The crater opens until the drop's energy stands in its rim: R/D = (V2/(3 g D))^(1/4), a
// hemisphere, no surface tension, and its opening takes 1.35 sqrt(R/g) by the same balance
// (both derived; the argument is read in an abstract, digitalcommons.usu.edu mae_facpub/76).
// In a pool shallower than CraterRadius the floor cuts it short, and the band begins where
// the floor is reached. It closes in about the time that it took to open, and the jet stands after that. A jet
// throws drops from 3 mm of depth on and is highest near 7 mm (water, drops of unstated
// size; Science 1967, 158, 1184, abstract read).
func (c Contact) Moments() (Moments, error) {
	if err := cmp.Or(
		honestplate.InRange("Diameter", c.Diameter, 0.5e-3, 20e-3, "m", "drops that fall whole"),
		honestplate.InRange("Speed", c.Speed, 0.2, 20, "m/s", "falls on a set"),
		honestplate.InRange("Depth", c.Depth, 1e-3, 1, "m", "thinner is a film: ask for its crown"),
	); err != nil {
		return Moments{}, err
	}
	const gravity = 9.80665
	radius := c.Diameter * math.Sqrt(math.Sqrt(c.Speed*c.Speed/(3*gravity*c.Diameter)))
	opening := 1.35 * math.Sqrt(radius/gravity)
	out := Moments{CraterRadius: radius, Crater: window(opening/2, opening, opening*1.5)}
	if deep := c.Depth / radius; deep < 1 {
		// The floor is reached while the crater opens by R^(5/2): 4/5 sqrt(R/g) (h/R)^(5/2).
		floor := 0.8 * math.Sqrt(radius/gravity) * deep * deep * math.Sqrt(deep)
		out.Crater = window(min(floor, opening/2), opening, opening*1.5)
	}
	if c.Depth < shallowestJet {
		never := honestplate.Never()
		out.Jet = honestplate.Window{Earliest: never, Likely: never, Latest: never}
		return out, nil
	}
	out.Jet = window(opening, 2*opening, 4*opening)
	return out, nil
}

// shallowestJet is the depth in m below which no jet throws drops.
const shallowestJet = 3e-3

func window(earliest, likely, latest float64) honestplate.Window {
	d := func(s float64) time.Duration { return time.Duration(math.Round(s * 1e9)) }
	return honestplate.Lasting(d(earliest), d(likely), d(latest))
}
