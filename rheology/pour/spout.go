package pour

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/physics"
)

// A Spout is a round outlet of a vessel: a tube, a tap, a hole, the neck of a bottle that
// is full to its mouth. For a jug's lip, over which the liquid runs with a free surface, and
// for a bottle that is tilted so that its neck runs half full, see [Lip].
//
// Zero values are useful: no Length is a hole in a thin wall, no SurfaceArea is a
// hand that keeps tilting the vessel so that the head stays, no Discharge leaves
// the losses to the model.
type Spout struct {
	// Diameter of the bore, m, above 0.
	Diameter float64 `json:"diameter_m"`
	// Length of the bore, m. A spout that points down adds its length to Head, since
	// Head is taken to its mouth.
	Length float64 `json:"length_m,omitzero"`
	// Head is the height of the liquid's surface over the spout's mouth when the
	// pour starts, m, above 0.
	Head float64 `json:"head_m"`
	// SurfaceArea of the liquid in the vessel, m2, taken the same at every height:
	// the head falls by volume over SurfaceArea. 0: the head stays.
	SurfaceArea float64 `json:"surface_area_m2,omitzero"`
	// Discharge is a measured discharge coefficient that
	// replaces every loss of the model (0.01 to 1). 0: the model.
	Discharge float64 `json:"discharge,omitzero"`
	// Closed marks a bottle turned upside down, into which air comes past the liquid alone:
	// it glugs. Not closed is a vessel that is open at the top or has an air hole.
	Closed bool `json:"closed,omitzero"`
	// Rested marks a sauce that has stood: it starts at its rested yield stress (see
	// [rheology.RestedYieldStress]) and, once a shake or a tap has broken that, runs as if
	// it had not.
	Rested bool `json:"rested,omitzero"`
}

// Pour predicts the pour of a mass in grams of a liquid at tempC through the
// spout.
//
// The head H pays for the friction of the bore, its entry and the velocity V, from
// creeping flow through the entrance regime to turbulence, without a jump:
//
//	H - 2 sigma/(rho g D) = k V2/(2 g)
//	laminar    k = 1 + 13.76 s + (1.25 + 64 x - 13.76 s)/(1 + 0.00021/x2) + 32/Re + edge
//	turbulent  k = 1 + 4 (0.0791 Re^-0.25) L/D + edge
//
// with Re = V D/nu, x = L/(D Re), s = x^(1/2), and surface tension's 2 sigma/D, which it
// keeps up in the jet, taken off. The laminar line is Shah's for developing flow (Shah 1978,
// J. Fluids Eng. 100, 177; from memory; long bores: 64 L/(D Re) + 2.25, which holds Hagenbach's
// correction) with Couette's entry of one radius, 32/Re; the turbulent is Blasius's; they
// are weighted from Re 2000 to 4000. edge is the loss of a sharp entry, 0 in creeping flow,
// 0.5 for a tube and 1.69 for a hole where inertia governs. Short tubes agree with
// Lichtarowicz, Duggins and Markland 1965 (from memory) within 8 % in the rate. A falling
// head is integrated:
//
//	t = A integral dH/Q(H),  A = SurfaceArea
//
// which for friction alone is that of a plain tube and for a hole Torricelli's
// t = 2 A (sqrt h1 - sqrt h2)/(Cd a sqrt(2 g)), a the section of the hole. A liquid that thins under
// shear is taken at the shear rate of its own flow: at pi/4 of the Newtonian wall rate, or
// where it has a yield stress by the exact integral over the bore (Rabinowitsch and Mooney).
//
// The band of the duration combines, in quadrature, the liquid's bands of viscosity and yield
// stress carried together through the flow law, that of its density, and the hydraulic uncertainty of the rate: 3 %
// where friction of a long bore governs to 10 % where entry and velocity do (estimated, no
// source), 3 % with a measured Discharge, which holds for liquids about as thick as the
// measured one. The sizes are taken as given: 1 % of the bore is 2 % of a thin pour's rate
// and 4 % of a thick one's, and a hand keeps a head to perhaps 20 %.
//
// A Closed bottle pours no faster than air comes in, at pi/12 sqrt(g) d^(5/2), slower in a
// thick liquid (Clanet and Searby 2004 and Wallis 1969, from memory), to a factor of 1.8, of
// thick liquids 2.5: what the liquid's own flow takes longer than that counts instead. The
// stream then comes in gulps and its speed is a mean. A vortex from swirling, which is
// several times faster, is not covered; a neck too narrow for a bubble is a RefusedError.
//
// Errors: InputError for sizes that make no sense; RangeError for more grams than the head
// can move, for a temperature or a shear rate outside the liquid's range and for a pour of
// more than a week; RefusedError (ErrNoFlow) for a liquid that stays in. The relaxation of the velocity
// profile (a laminar jet narrows by up to 13 %) and the swelling of elastic liquids are left
// out.
func (s Spout) Pour(l rheology.Liquid, tempC, grams float64) (Pour, error) {
	if err := s.check(); err != nil {
		return Pour{}, err
	}
	p, err := newPour(l, tempC, grams)
	if err != nil {
		return Pour{}, err
	}
	p.out.bore, p.out.length, p.out.discharge = s.Diameter, s.Length, s.Discharge
	hold := 2 * p.SurfaceTension.Likely / (p.Density.Likely * physics.Gravity * s.Diameter)
	if s.Head <= hold {
		return Pour{}, held("surface tension", s.Head, hold)
	}
	stress := (s.Head - hold) / p.out.standing(1)
	if err := p.yields(l, stress, s.Head, hold, s.Rested); err != nil {
		return Pour{}, err
	}
	if err := p.run(s.Head-hold, s.SurfaceArea); err != nil {
		return Pour{}, err
	}
	if s.Closed {
		if err := p.glug(); err != nil {
			return Pour{}, err
		}
	}
	return p, nil
}

func (s Spout) check() error {
	err := cmp.Or(honestplate.InRange("Diameter", s.Diameter, 1e-4, maxBore, "m", "from a needle to a bucket"),
		honestplate.InRange("Length", s.Length, 0, 100, "m", "a hose"),
		honestplate.Positive("Head", s.Head, "m"), honestplate.InRange("Head", s.Head, leastSpoutHead, mostSpoutHead, "m", "a house's water pipe"),
		honestplate.InRange("SurfaceArea", s.SurfaceArea, 0, 1e4, "m2", "a pond"))
	if err == nil && s.Discharge != 0 {
		err = honestplate.InRange("Discharge", s.Discharge, 0.01, 1, "", "a share of the frictionless flow")
	}
	return err
}
