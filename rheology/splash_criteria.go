package rheology

import (
	"math"

	"example.org/honestplate"
)

func (p *Splash) add(v SplashVerdict) {
	p.Verdicts[p.Count] = v
	p.Count++
}

// dry judges the landing on a dry surface by the criteria that Splash lists.
func (p *Splash) dry(s Stream, rough bool) {
	k := math.Sqrt(s.Weber) * math.Sqrt(math.Sqrt(s.Reynolds))
	p.add(SplashVerdict{
		Criterion: "Mundo, Sommerfeld and Tropea 1995", Measure: "We^0.5 Re^0.25",
		Value: k, Threshold: 57.7, Outcome: PromptSplash,
		ThresholdSpeed: s.Speed * math.Pow(57.7/k, 0.8),
		Range:          "dry surface, rough or smooth; limits not seen", Applies: true, Known: "read",
	})
	thin := !rough && s.Viscosity <= thinLiquid
	ca := math.Sqrt(s.Viscosity * s.Speed / s.SurfaceTension)
	p.add(SplashVerdict{
		Criterion: "Vander Wal, Berger and Mozes 2006", Measure: "Ca^0.5",
		Value: ca, Threshold: 0.35, Outcome: PromptSplash,
		ThresholdSpeed: s.Speed * (0.35 / ca) * (0.35 / ca),
		Range:          "dry smooth surface, up to 10 mPa s", Applies: thin, Known: "read",
	})
	rg := RibouxGordillo{Air: RoomAir()}
	beta, _, threshold := rg.judge(s.Diameter/2, s.Speed, s.Viscosity, s.Density, s.SurfaceTension)
	lift := SplashVerdict{
		Criterion: "Riboux and Gordillo 2014", Measure: "beta",
		Value: beta, Threshold: threshold, Outcome: PromptSplash,
		Range:   "dry smooth surface, 0.3 to 10 mPa s, 17 to 72 mN/m",
		Applies: thin && s.Viscosity >= 3e-4 && s.SurfaceTension >= 0.017 && s.SurfaceTension <= 0.0735,
		Known:   "read",
	}
	if lift.Applies {
		lift.ThresholdSpeed = rg.speed(s.Diameter/2, s.Speed, s.Viscosity, s.Density, s.SurfaceTension)
	}
	p.add(lift)
}

// wet judges the landing on a film of delta drop diameters.
func (p *Splash) wet(s Stream, delta float64) {
	k := s.Weber * math.Pow(s.Ohnesorge, -0.4)
	at := func(threshold float64) float64 { return s.Speed * math.Sqrt(threshold/k) }
	thin := delta > 0.06 && delta < 0.15
	p.add(SplashVerdict{
		Criterion: "Rioboo and others 2003, crown", Measure: "We Oh^-0.4",
		Value: k, Threshold: 400, Outcome: CrownRises, ThresholdSpeed: at(400),
		Range: "film of 0.06 to 0.15 drop diameters", Applies: thin, Known: "memory",
	})
	p.add(SplashVerdict{
		Criterion: "Rioboo and others 2003, droplets", Measure: "We Oh^-0.4",
		Value: k, Threshold: 2100, Outcome: CrownSplash, ThresholdSpeed: at(2100),
		Range: "film of 0.06 to 0.15 drop diameters", Applies: thin, Known: "memory",
	})
	cossali := 2100 + 5880*math.Pow(delta, 1.44)
	p.add(SplashVerdict{
		Criterion: "Cossali, Coghe and Marengo 1997", Measure: "We Oh^-0.4",
		Value: k, Threshold: cossali, Outcome: CrownSplash, ThresholdSpeed: at(cossali),
		Range: "film of 0.1 to 1 drop diameter, Oh above 0.007", Applies: delta >= 0.1 && delta <= 1 && s.Ohnesorge > 0.007,
		Known: "memory",
	})
	p.add(SplashVerdict{
		Criterion: "Okawa, Shiraishi and Mori 2006", Measure: "We Oh^-0.4",
		Value: k, Threshold: 2100, Outcome: CrownSplash, ThresholdSpeed: at(2100),
		Range: "plane surface of a pool; found with water", Applies: delta > 1, Known: "memory",
	})
	we := math.Sqrt(s.Weber)
	p.add(SplashVerdict{
		Criterion: "Vander Wal, Berger and Mozes 2006", Measure: "We^0.5",
		Value: we, Threshold: 20, Outcome: CrownSplash, ThresholdSpeed: s.Speed * 20 / we,
		Range: "film up to a drop diameter, up to 10 mPa s", Applies: delta <= 1 && s.Viscosity <= thinLiquid, Known: "read",
	})
	if (s.Broken || s.Drips) && s.Rate > 0 {
		f := s.Rate / (math.Pi / 6 * s.Diameter * s.Diameter * s.Diameter)
		u := yarinWeiss(s.Speed, f, s.Viscosity, s.Density, s.SurfaceTension)
		p.add(SplashVerdict{
			Criterion: "Yarin and Weiss 1995", Measure: "V (rho/sigma)^0.25 nu^-0.125 f^-0.375",
			Value: u, Threshold: 17.5, Outcome: CrownSplash, ThresholdSpeed: s.Speed * 17.5 / u,
			Range: "train of drops on the thin film it leaves, threshold 17 to 18", Applies: delta <= 1, Known: "memory",
		})
	}
}

// YarinWeiss returns the dimensionless impact speed of a train of drops on the film
// that they leave themselves,
//
//	u = V (rho/sigma)^(1/4) nu^(-1/8) f^(-3/8)
//
// with the speed V in m/s, the frequency f in 1/s, eta in Pa s, rho in kg/m3 and sigma
// in N/m: above 17 to 18 the crown throws droplets. Source: Yarin and Weiss 1995,
// "Impact of drops on solid surfaces: self-similar capillary waves, and splashing as
// a new type of kinematic discontinuity", J. Fluid Mech. 283, 141 (from memory).
func YarinWeiss(speed, frequency, eta, rho, sigma float64) (float64, error) {
	if err := positiveAll(eta, rho, sigma); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("drop speed", speed, 1e-6, 100, "m/s", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("drop frequency", frequency, 1e-6, 1e9, "1/s", poured); err != nil {
		return 0, err
	}
	return yarinWeiss(speed, frequency, eta, rho, sigma), nil
}

func yarinWeiss(v, f, eta, rho, sigma float64) float64 {
	return v * math.Pow(rho/sigma, 0.25) * math.Pow(eta/rho, -0.125) * math.Pow(f, -0.375)
}
