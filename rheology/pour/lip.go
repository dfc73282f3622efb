package pour

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/physics"
)

// A Lip is the edge of a jug or a bowl over which the liquid runs with a free
// surface.
type Lip struct {
	// Width of the running sheet at the edge, m, above 0.
	Width float64 `json:"width_m"`
	// Length of the lip along the flow, m: friction acts on it. 0: a sharp edge.
	Length float64 `json:"length_m,omitzero"`
	// Head is the height of the liquid's surface over the edge at the start, m,
	// above 0: what the hand that tilts the jug decides.
	Head float64 `json:"head_m"`
	// SurfaceArea of the liquid in the vessel, m2, as in Spout; 0: the hand keeps
	// the head.
	SurfaceArea float64 `json:"surface_area_m2,omitzero"`
	// Rested, as in Spout.
	Rested bool `json:"rested,omitzero"`
	// RateSpread is how well the rate at this head is known, as a fraction, to 1: what
	// [Lip.Calibrate] fills in. 0: 0.25.
	RateSpread float64 `json:"rate_spread,omitzero"`
}

const (
	// weirCoefficient of a rounded lip without side walls. Textbook rectangular
	// weirs have 0.56 to 0.62 (Schaschke, Fluid Mechanics: Worked Examples for
	// Engineers, Ex 7.7 uses 0.56).
	weirCoefficient = 0.58
	// lipSpread is the fractional uncertainty of a lip's rate at a given head: the
	// coefficient, the side edges, the lip's shape (estimated, no source).
	lipSpread = 0.25
)

// Pour predicts the pour of a mass in grams of a liquid at tempC over the lip.
//
// The head is the sum of what a weir needs for its velocity and what a film on a
// level lip needs for its friction:
//
//	H = (3 q/(2 Cd sqrt(2g)))^(2/3) + (12 nu L q/g)^(1/4),  Cd = 0.58
//
// with q in m2/s the rate per width. The second term is lubrication flow q =
// g H4/(12 nu L) driven by the slope of its own surface, with the depth itself
// added to the length L; both limits are textbook (the weir: Schaschke Ex 7.7;
// lubrication: derived here), the sum between them is ours. The rate at a given
// head is good to 25 %, a hand's head rather less: the pour's band is for the head
// as given; [Lip.ForDuration] asks the other way round. Errors as for Spout.Pour.
func (s Lip) Pour(l rheology.Liquid, tempC, grams float64) (Pour, error) {
	if err := s.check(); err != nil {
		return Pour{}, err
	}
	p, err := newPour(l, tempC, grams)
	if err != nil {
		return Pour{}, err
	}
	p.out.width, p.out.length, p.out.spread = s.Width, s.Length, cmp.Or(s.RateSpread, lipSpread)
	// A film that slopes from H to nothing over L + H pulls at its bed with
	// rho g H2/(2 (L + H)).
	stress := p.Density.Likely * physics.Gravity * s.Head * s.Head / (2 * (s.Length + s.Head))
	if err := p.yields(l, stress, s.Head, 0, s.Rested); err != nil {
		return Pour{}, err
	}
	if err := p.run(s.Head, s.SurfaceArea); err != nil {
		return Pour{}, err
	}
	return p, nil
}

func (s Lip) check() error {
	return cmp.Or(honestplate.InRange("Width", s.Width, 1e-3, maxBore, "m", "from a sauce boat to a trough"),
		honestplate.InRange("Length", s.Length, 0, 1, "m", "a chute"),
		honestplate.Positive("Head", s.Head, "m"), honestplate.InRange("Head", s.Head, leastLipHead, mostLipHead, "m", "deeper, no lip"),
		honestplate.InRange("RateSpread", s.RateSpread, 0, 1, "", "a fraction of the rate"),
		honestplate.InRange("SurfaceArea", s.SurfaceArea, 0, 1e4, "m2", "a pond"))
}

// weirHead is the head of a weir, m, for q in m2/s.
func weirHead(q float64) float64 {
	h := math.Cbrt(q / (2.0 / 3 * weirCoefficient * math.Sqrt(2*physics.Gravity)))
	return h * h
}

// filmHead is the depth at which a film of its own slope runs, m: the root of
// h4 = 12 nu (L + h) q/g, to the 10 % of a smooth maximum of its two limits.
func filmHead(q, nu, length float64) float64 {
	long := math.Sqrt(math.Sqrt(12 * nu * length * q / physics.Gravity))
	short := math.Cbrt(12 * nu * q / physics.Gravity)
	return math.Sqrt(math.Sqrt(long*long*long*long + short*short*short*short))
}

func lipHead(q, nu, length float64) float64 { return weirHead(q) + filmHead(q, nu, length) }

// lipFriction is the share of the head that friction takes.
func lipFriction(q, nu, length float64) float64 {
	return filmHead(q, nu, length) / lipHead(q, nu, length)
}

// brink returns the depth at the edge, m: 0.715 of the critical depth
// (q2/g)^(1/3) in a free overfall (Rouse 1936, from memory), and half the head of a
// film held by friction (estimated).
func (o *outlet) brink(flow, nu float64) float64 {
	q := flow / o.width
	return 0.715*math.Cbrt(q*q/physics.Gravity) + filmHead(q, nu, o.length)/2
}
