package pour

import (
	_ "embed"
	"math"

	"example.org/honestplate/rheology/internal/root"
	"example.org/honestplate/rheology/internal/table"
	"example.org/honestplate/rheology/law"
)

const (
	// thinSplash is the viscosity in Pa s up to which the evidence on thickness is mixed,
	// and from which on a thicker liquid splashes less: the criteria of smooth dry plates,
	// found up to 10 mPa s, are asked at it and carried on.
	thinSplash = 0.005
	// thickerSlower is the power of the viscosity with which the threshold speed rises
	// beyond: that of Mundo's We^0.5 Re^0.25 at a constant value, 0.25/1.25.
	thickerSlower = 0.2
	// crownK is We Oh^-0.4 from which a crown rises and splashK that from which it throws
	// droplets (Rioboo and others 2003, from memory). Okawa and others 2006 have the
	// same 2100 for a plane pool, and Cossali's law tends to it for a thin film.
	crownK  = 400.0
	splashK = 2100.0
	// deepFilm is the depth in drop diameters beyond which it no longer matters (Mutchler
	// and Hansen 1970, Science 169, 1311: splash falls to a constant beyond 3, read in the
	// abstract).
	deepFilm = 3.0
)

// criteria.json says of each criterion whose it is, what it measures, what happens above its
// threshold, where it was found, and whether that was read.
//
//go:embed criteria.json
var criteriaTable []byte

var criteria = table.Read[map[string]Verdict](criteriaTable)

// judge adds a criterion's verdict; speed is that of the same drop at its threshold.
func (p *Splash) judge(criterion string, value, threshold, speed float64, applies bool) {
	v := criteria[criterion]
	v.Value, v.Threshold, v.ThresholdSpeed, v.Applies = value, threshold, speed, applies
	v.Exceeded = value > threshold
	p.Verdicts = append(p.Verdicts, v)
}

// dry judges the landing on a dry surface by the criteria that Splash lists.
func (p *Splash) dry(s Stream, rough bool) error {
	k := math.Sqrt(s.Weber) * math.Sqrt(math.Sqrt(s.Reynolds))
	p.judge("mundo", k, 57.7, s.Speed*math.Pow(57.7/k, 0.8), s.Diameter >= 0.06e-3 && s.Diameter <= 0.15e-3)
	// From thinSplash on both ask the same drop of a liquid that thin, and their speeds
	// rise with the power of the thickness beyond it.
	thin := s
	thin.Viscosity = min(s.Viscosity, thinSplash)
	beyond := math.Pow(s.Viscosity/thin.Viscosity, thickerSlower)
	thin.Speed /= beyond
	ca := math.Sqrt(thin.Viscosity * thin.Speed / s.SurfaceTension)
	p.judge("vander wal, dry", ca, 0.35, s.Speed*(0.35/ca)*(0.35/ca), !rough)
	drop := law.Impact{Fluid: thin.Fluid, Diameter: s.Diameter, Speed: thin.Speed}
	lift, err := drop.Lift()
	if err != nil {
		return err
	}
	applies := !rough && s.Viscosity >= 3e-4 && s.SurfaceTension >= 0.017 && s.SurfaceTension <= 0.0735
	speed := 0.0
	if applies {
		speed = liftSpeed(drop) * beyond
	}
	p.judge("riboux", lift.Beta, lift.Threshold, speed, applies)
	return nil
}

// liftSpeed returns the speed at which a drop's beta meets its threshold; 0 where none is
// found between 0.01 and 100 m/s.
func liftSpeed(drop law.Impact) float64 {
	low, high := math.Log(0.01), math.Log(100)
	x, err := root.Search{
		Low: low, High: high, Start: min(max(math.Log(drop.Speed), low), high), Slope: 0.6, Tol: 1e-4,
	}.Rise(func(x float64) (float64, error) {
		drop.Speed = math.Exp(x)
		lift, err := drop.Lift()
		return math.Log(lift.Beta / lift.Threshold), err
	})
	if err != nil || x-low < 1e-9 || high-x < 1e-9 {
		return 0
	}
	return math.Exp(x)
}

// wet judges the landing on a film of delta drop diameters. Each threshold runs on without
// a jump from the thinnest film to a pool.
func (p *Splash) wet(s Stream, delta float64) {
	k := s.k()
	at := func(threshold float64) float64 { return s.Speed * math.Sqrt(threshold/k) }
	p.judge("rioboo, crown", k, crownK, at(crownK), true)
	lowest := "rioboo"
	if delta > 1 {
		lowest = "okawa"
	}
	p.judge(lowest, k, splashK, at(splashK), true)
	cossali := splashK + 5880*math.Pow(min(delta, 1), 1.44)*shallow(delta)
	p.judge("cossali", k, cossali, at(cossali), delta < deepFilm)
	we := math.Sqrt(s.Weber)
	p.judge("vander wal, film", we, 20, s.Speed*20/we, delta <= 1 && s.Viscosity <= thinSplash)
	if (s.Broken || s.Drips) && s.Rate > 0 {
		u := s.yarinWeiss()
		p.judge("yarin", u, 17.5, s.Speed*17.5/u, delta <= 1)
	}
}

// k is We Oh^-0.4, the measure of crowns and their droplets.
func (s *Stream) k() float64 { return s.Weber * math.Pow(s.Ohnesorge, -0.4) }

// shallow fades from 1 at a film of one drop diameter to 0 at deepFilm, straight in the
// logarithm of the depth.
func shallow(delta float64) float64 {
	return 1 - min(max(math.Log(delta)/math.Log(deepFilm), 0), 1)
}

// yarinWeiss is the dimensionless impact speed of a train of drops on the film that they
// leave themselves,
//
//	u = V (rho/sigma)^(1/4) nu^(-1/8) f^(-3/8)
//
// with the frequency f in 1/s: above 17 to 18 the crown throws droplets. Source: Yarin
// and Weiss 1995, "Impact of drops on solid surfaces: self-similar capillary waves, and
// splashing as a new type of kinematic discontinuity", J. Fluid Mech. 283, 141 (from
// memory).
func (s *Stream) yarinWeiss() float64 {
	f := s.Rate / (math.Pi / 6 * s.Diameter * s.Diameter * s.Diameter)
	return s.Speed * math.Pow(s.Density/s.SurfaceTension, 0.25) * math.Pow(s.Viscosity/s.Density, -0.125) * math.Pow(f, -0.375)
}
