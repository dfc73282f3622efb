package pour

import (
	"math"

	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
	"example.org/honestplate/rheology/law"
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
		Range:          "dry surface, rough or smooth; limits not seen", Applies: true, Known: "read",
	})
	thin := !rough && s.Viscosity <= physics.ThinLiquid
	ca := math.Sqrt(s.Viscosity * s.Speed / s.SurfaceTension)
	p.add(Verdict{
		Criterion: "Vander Wal, Berger and Mozes 2006", Measure: "Ca^0.5",
		Value: ca, Threshold: 0.35, Outcome: promptSplash,
		ThresholdSpeed: s.Speed * (0.35 / ca) * (0.35 / ca),
		Range:          "dry smooth surface, up to 10 mPa s", Applies: thin, Known: "read",
	})
	drop := law.Impact{Fluid: s.Fluid, Diameter: s.Diameter, Speed: s.Speed}
	lift, err := drop.Lift()
	if err != nil {
		return err
	}
	v := Verdict{
		Criterion: "Riboux and Gordillo 2014", Measure: "beta",
		Value: lift.Beta, Threshold: lift.Threshold, Outcome: promptSplash,
		Range:   "dry smooth surface, 0.3 to 10 mPa s, 17 to 72 mN/m",
		Applies: thin && s.Viscosity >= 3e-4 && s.SurfaceTension >= 0.017 && s.SurfaceTension <= 0.0735,
		Known:   "read",
	}
	if v.Applies {
		v.ThresholdSpeed = liftSpeed(drop)
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

// wet judges the landing on a film of delta drop diameters.
func (p *Splash) wet(s Stream, delta float64) {
	k := s.Weber * math.Pow(s.Ohnesorge, -0.4)
	at := func(threshold float64) float64 { return s.Speed * math.Sqrt(threshold/k) }
	thin := delta > 0.06 && delta < 0.15
	p.add(Verdict{
		Criterion: "Rioboo and others 2003, crown", Measure: "We Oh^-0.4",
		Value: k, Threshold: 400, Outcome: crownRises, ThresholdSpeed: at(400),
		Range: "film of 0.06 to 0.15 drop diameters", Applies: thin, Known: "memory",
	})
	p.add(Verdict{
		Criterion: "Rioboo and others 2003, droplets", Measure: "We Oh^-0.4",
		Value: k, Threshold: 2100, Outcome: crownSplash, ThresholdSpeed: at(2100),
		Range: "film of 0.06 to 0.15 drop diameters", Applies: thin, Known: "memory",
	})
	cossali := 2100 + 5880*math.Pow(delta, 1.44)
	p.add(Verdict{
		Criterion: "Cossali, Coghe and Marengo 1997", Measure: "We Oh^-0.4",
		Value: k, Threshold: cossali, Outcome: crownSplash, ThresholdSpeed: at(cossali),
		Range: "film of 0.1 to 1 drop diameter, Oh above 0.007", Applies: delta >= 0.1 && delta <= 1 && s.Ohnesorge > 0.007,
		Known: "memory",
	})
	p.add(Verdict{
		Criterion: "Okawa, Shiraishi and Mori 2006", Measure: "We Oh^-0.4",
		Value: k, Threshold: 2100, Outcome: crownSplash, ThresholdSpeed: at(2100),
		Range: "plane surface of a pool; found with water", Applies: delta > 1, Known: "memory",
	})
	we := math.Sqrt(s.Weber)
	p.add(Verdict{
		Criterion: "Vander Wal, Berger and Mozes 2006", Measure: "We^0.5",
		Value: we, Threshold: 20, Outcome: crownSplash, ThresholdSpeed: s.Speed * 20 / we,
		Range: "film up to a drop diameter, up to 10 mPa s", Applies: delta <= 1 && s.Viscosity <= physics.ThinLiquid, Known: "read",
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
