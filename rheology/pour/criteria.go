package pour

import (
	"math"

	"example.org/honestplate/rheology/internal/root"
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

func (p *Splash) add(v Verdict) {
	v.Exceeded = v.Value > v.Threshold
	p.Verdicts = append(p.Verdicts, v)
}

// dry judges the landing on a dry surface by the criteria that Splash lists.
func (p *Splash) dry(s Stream, rough bool) error {
	k := math.Sqrt(s.Weber) * math.Sqrt(math.Sqrt(s.Reynolds))
	p.add(Verdict{
		Criterion: "Mundo, Sommerfeld and Tropea 1995", Measure: "We^0.5 Re^0.25",
		Value: k, Threshold: 57.7, Outcome: promptSplash,
		ThresholdSpeed: s.Speed * math.Pow(57.7/k, 0.8),
		Range:          "spray of 0.06 to 0.15 mm at 12 to 18 m/s, rough or smooth (from memory)",
		Applies:        s.Diameter >= 0.06e-3 && s.Diameter <= 0.15e-3, Known: "read",
	})
	// From thinSplash on both ask the same drop of a liquid that thin, and their speeds
	// rise with the power of the thickness beyond it.
	thin := s
	thin.Viscosity = min(s.Viscosity, thinSplash)
	beyond := math.Pow(s.Viscosity/thin.Viscosity, thickerSlower)
	thin.Speed /= beyond
	ca := math.Sqrt(thin.Viscosity * thin.Speed / s.SurfaceTension)
	p.add(Verdict{
		Criterion: "Vander Wal, Berger and Mozes 2006", Measure: "Ca^0.5",
		Value: ca, Threshold: 0.35, Outcome: promptSplash,
		ThresholdSpeed: s.Speed * (0.35 / ca) * (0.35 / ca),
		Range:          "dry smooth surface, up to 10 mPa s; from 5 on at 5, times (thickness/5)^0.2 in speed", Applies: !rough, Known: "read",
	})
	drop := law.Impact{Fluid: thin.Fluid, Diameter: s.Diameter, Speed: thin.Speed}
	lift, err := drop.Lift()
	if err != nil {
		return err
	}
	v := Verdict{
		Criterion: "Riboux and Gordillo 2014", Measure: "beta",
		Value: lift.Beta, Threshold: lift.Threshold, Outcome: promptSplash,
		Range:   "dry smooth surface, 0.3 to 10 mPa s, 17 to 72 mN/m; from 5 on at 5, times (thickness/5)^0.2 in speed",
		Applies: !rough && s.Viscosity >= 3e-4 && s.SurfaceTension >= 0.017 && s.SurfaceTension <= 0.0735,
		Known:   "read",
	}
	if v.Applies {
		v.ThresholdSpeed = liftSpeed(drop) * beyond
	}
	p.add(v)
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
	p.add(Verdict{
		Criterion: "Rioboo and others 2003, crown", Measure: "We Oh^-0.4",
		Value: k, Threshold: crownK, Outcome: crownRises, ThresholdSpeed: at(crownK),
		Range: "film of 0.06 to 0.15 drop diameters; leant on for all", Applies: true, Known: "memory",
	})
	lowest := Verdict{
		Criterion: "Rioboo and others 2003, droplets", Measure: "We Oh^-0.4",
		Value: k, Threshold: splashK, Outcome: crownSplash, ThresholdSpeed: at(splashK),
		Range: "film of 0.06 to 0.15 drop diameters; Okawa's pools have the same, so between them too", Applies: true, Known: "memory",
	}
	if delta > 1 {
		lowest.Criterion, lowest.Range = "Okawa, Shiraishi and Mori 2006", "plane surface of a pool; found with water"
	}
	p.add(lowest)
	cossali := splashK + 5880*math.Pow(min(delta, 1), 1.44)*shallow(delta)
	p.add(Verdict{
		Criterion: "Cossali, Coghe and Marengo 1997", Measure: "We Oh^-0.4",
		Value: k, Threshold: cossali, Outcome: crownSplash, ThresholdSpeed: at(cossali),
		Range:   "film of 0.1 to 1 drop diameter, Oh above 0.007; from 1 led over to the pool's at 3, by us",
		Applies: delta < deepFilm, Known: "memory",
	})
	we := math.Sqrt(s.Weber)
	p.add(Verdict{
		Criterion: "Vander Wal, Berger and Mozes 2006", Measure: "We^0.5",
		Value: we, Threshold: 20, Outcome: crownSplash, ThresholdSpeed: s.Speed * 20 / we,
		Range: "thin film, up to a drop diameter; up to 5 mPa s, for it knows no thickness", Applies: delta <= 1 && s.Viscosity <= thinSplash, Known: "read",
	})
	if (s.Broken || s.Drips) && s.Rate > 0 {
		u := s.yarinWeiss()
		p.add(Verdict{
			Criterion: "Yarin and Weiss 1995", Measure: "V (rho/sigma)^0.25 nu^-0.125 f^-0.375",
			Value: u, Threshold: 17.5, Outcome: crownSplash, ThresholdSpeed: s.Speed * 17.5 / u,
			Range: "train of drops on the thin film it leaves, threshold 17 to 18", Applies: delta <= 1, Known: "memory",
		})
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
