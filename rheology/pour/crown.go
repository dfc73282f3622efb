package pour

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// A Crown is the rim that rises round a drop on a film.
type Crown struct {
	Diameter float64 `json:"diameter_m"`    // of the drop, m
	Speed    float64 `json:"speed_m_per_s"` // of the drop, m/s
	Film     float64 `json:"film_m"`        // its depth, m
	// Expected reports that the crown criterion of Rioboo and others 2003 (We Oh^-0.4 >
	// 400, from memory) is passed, the one of [Stream.Splash]: found for films of 0.06 to
	// 0.15 drop diameters and leant on for others.
	Expected bool `json:"expected"`
	// Largest is the radius in m at which the crown falls back, to an order of
	// magnitude: crowns last some 10 to 30 D/V (from memory).
	Largest honestplate.Estimate `json:"largest_m"`
	// Lasts is that time.
	Lasts honestplate.Window `json:"lasts"`
}

const (
	// crownPower of the time with which the foot of a crown widens: 0.43 in measurements
	// (Cossali and others 2004, Exp. Fluids 36, 888, from memory), 1/2 in the law.
	crownPower = 0.43
	// crownSpread is the band of the radius: no radius with all its inputs was found, and
	// the two powers differ by 23 % over 1 to 20 D/V.
	crownSpread = 0.25
)

// Crown returns the crown of the stream's drop (see [Stream.Splash] for which) on a film of the
// depth in m. Range: a film of 0.02 to 1 drop diameters; on a deep pool a crater
// opens instead. Errors: RangeError there, InputError for the zero Stream.
func (s Stream) Crown(film float64) (Crown, error) {
	if err := cmp.Or(s.check(),
		honestplate.InRange("Film", film, 0.02*s.Diameter, s.Diameter, "m", "Yarin and Weiss 1995, films below the drop")); err != nil {
		return Crown{}, err
	}
	s.numbers()
	c := Crown{Diameter: s.Diameter, Speed: s.Speed, Film: film}
	c.Expected = s.k() > crownK
	unit := s.Diameter / s.Speed
	c.Lasts = honestplate.Lasting(inSeconds(10*unit), inSeconds(20*unit), inSeconds(30*unit))
	c.Largest = honestplate.Estimate{Low: c.radius(10*unit) * (1 - crownSpread), Likely: c.radius(20 * unit), High: c.radius(30*unit) * (1 + crownSpread)}
	return c, nil
}

// radius is the radius in m of the crown's foot a time after the impact:
//
//	r/D = (2/3)^(1/4) (h/D)^(-1/4) (V t/D)^0.43
//
// with the film's depth h. Source: Yarin and Weiss 1995, J. Fluid Mech. 283, 141 (from
// memory), there with the power 1/2, which meets this at t = D/V.
func (c Crown) radius(t float64) float64 {
	return c.Diameter * math.Sqrt(math.Sqrt(2.0/3*c.Diameter/c.Film)) * math.Pow(c.Speed*t/c.Diameter, crownPower)
}
