package pour

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Dribble says whether a pour runs back under its spout, as a teapot's does.
type Dribble struct {
	// Speed of the liquid at the edge, m/s.
	Speed float64 `json:"speed_m_per_s"`
	// Threshold below which it dribbles, m/s, good to a factor of 2.
	Threshold honestplate.Estimate `json:"threshold_m_per_s"`
	// Dribbles reports that Speed is below the likely Threshold; MayDribble that it is
	// below the highest.
	Dribbles   bool `json:"dribbles"`
	MayDribble bool `json:"may_dribble"`
}

// dribbleFactor: the estimate leaves out the radius of the edge, which decides as much
// as the wetting does (estimated, no source).
const dribbleFactor = 2

// Dribble judges the pour at its start against the estimate that surface tension bends
// the sheet round the edge while
//
//	V < sqrt(sigma (1 + cos theta)/(rho e))
//
// with the thickness e of the running sheet (the depth over a lip, the diameter of a
// round stream) and the contact angle theta in degrees, 0 to 180: about 20 to 60 on
// glass and glazed ware, above 90 on waxed or silicone edges. A sharp edge and a wall
// that the liquid does not wet let go sooner. Source: Duez and others 2010, "Wetting
// controls separation of inertial flows from solid surfaces", Phys. Rev. Lett. 104,
// 084503, as quoted second-hand, where the full form has the edge's radius as well; no
// measured point was found. Range: inertia holds the
// sheet together, Reynolds number of the pour above 10; RangeError below, where viscosity
// decides and no criterion was found.
func (p Pour) Dribble(contactDegrees float64) (Dribble, error) {
	if err := cmp.Or(p.check(), contact(contactDegrees, 0)); err != nil {
		return Dribble{}, err
	}
	if p.Reynolds < 10 {
		return Dribble{}, check.Outside("Reynolds", p.Reynolds, 10, math.MaxFloat64, "", "Duez and others 2010, inertial sheets")
	}
	e := p.Diameter
	if p.out.width > 0 {
		e = p.out.brink(p.Rate.Likely, p.Viscosity.Likely/p.Density.Likely)
	}
	wet := 1 + math.Cos(contactDegrees*math.Pi/180)
	v := math.Sqrt(p.SurfaceTension.Likely * wet / (p.Density.Likely * e))
	c := Dribble{Speed: p.Speed, Threshold: honestplate.Factor(v, dribbleFactor)}
	c.Dribbles = p.Speed < c.Threshold.Likely
	c.MayDribble = p.Speed < c.Threshold.High
	return c, nil
}
