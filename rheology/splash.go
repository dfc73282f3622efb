package rheology

import "math"

// A Target is what a stream lands on.
type Target struct {
	// Film is the depth of the same liquid that already lies there, m; 0 is a dry
	// surface.
	Film float64
	// Rough marks a dry surface that is not smooth like glass or glazed ware: bread,
	// cereal, linen, wood.
	Rough bool
}

// A Splash is what the published criteria say of a stream's landing: each with its
// value, its threshold, its range and its verdict. They differ by more than two
// times in speed for milk, so read all of them.
type Splash struct {
	// Diameter in m and Speed in m/s of the drop that the criteria judge, and Why it
	// is that one.
	Diameter, Speed float64
	Why             string
	// Count of Verdicts in use, in the order of the surface: dry criteria or wet.
	Count    int
	Verdicts [maxVerdicts]SplashVerdict
	// Summary of the verdicts that apply.
	Summary SplashSummary
	// Speeds at which the criteria that apply put the threshold, m/s: from the lowest
	// to the highest, Value in the geometric middle. All 0 where none applies.
	Threshold Estimate
}

const maxVerdicts = 6

// A SplashVerdict is one criterion's answer.
type SplashVerdict struct {
	// Criterion, such as "Cossali, Coghe and Marengo 1997".
	Criterion string
	// Measure compared, such as "We Oh^-0.4".
	Measure string
	// Value of the measure, and the Threshold above which it says Outcome.
	Value, Threshold float64
	// Outcome above the threshold.
	Outcome SplashOutcome
	// ThresholdSpeed of the same drop at the threshold, m/s; 0 where none was found.
	ThresholdSpeed float64
	// Range where the criterion was found, in words, and whether it Applies here.
	Range   string
	Applies bool
	// Known is "read" or "memory", as for published values.
	Known string
}

// Exceeded reports that the criterion says its Outcome.
func (v SplashVerdict) Exceeded() bool { return v.Value > v.Threshold }

// A SplashOutcome names what lies above a criterion's threshold.
type SplashOutcome string

// The outcomes. Below a threshold the liquid lies down (deposition).
const (
	// CrownRises is a rim of liquid that rises round the impact and falls back whole.
	CrownRises SplashOutcome = "crown"
	// CrownSplash is a crown that throws droplets from its rim.
	CrownSplash SplashOutcome = "crown that throws droplets"
	// PromptSplash is droplets thrown flat along a dry surface at the moment of
	// impact.
	PromptSplash SplashOutcome = "droplets thrown along the surface"
)

// A SplashSummary is what the criteria say together about droplets.
type SplashSummary string

// The summaries.
const (
	// NoSplash: every criterion that applies says deposition.
	NoSplash SplashSummary = "no splash"
	// CrownOnly: a crown is expected, and no criterion that applies says droplets.
	CrownOnly SplashSummary = "crown without droplets"
	// SplashLikely: every criterion of droplets that applies says so.
	SplashLikely SplashSummary = "splash likely"
	// CriteriaDisagree: some say droplets, some do not. Try it, or lower the spout.
	CriteriaDisagree SplashSummary = "criteria disagree"
	// NoCriterion: none was found for this liquid and surface.
	NoCriterion SplashSummary = "no criterion applies"
)

// thinLiquid is the viscosity in Pa s up to which the smooth dry criteria hold. The
// capillary number's would make thick cream splash most easily of all.
const thinLiquid = 0.010

// Splash judges the stream's landing on a surface by every published criterion
// listed for it (dry: see drySplash; wet: wetSplash).
//
// The criteria were found with single drops, and a stream is not one. What lands
// first is: the head of a stream gathers into a blob of about its width, so for a
// whole stream the drop has the stream's diameter and speed where it lands, and the
// verdict is on the first moment of the pour. A whole stream that keeps running
// into its own pool throws less than that. A broken stream lands as its drops, of
// 1.89 times the thread's width where it breaks: there the verdict is on every
// drop. Where the break-up is uncertain (MayBreak) expect the larger drops' verdict.
//
// Errors: ErrNoStream for the zero Stream, InputError and RangeError for sizes that
// are none.
func (s Stream) Splash(onto Target) (Splash, error) {
	if err := s.check(); err != nil {
		return Splash{}, err
	}
	if err := within("film on the target", onto.Film, 0, 10, "m", poured); err != nil {
		return Splash{}, err
	}
	out := Splash{Diameter: s.Diameter, Speed: s.Speed}
	switch {
	case s.Drips:
		out.Why = "the spout drips: a drop of its own"
	case s.Broken:
		out.Why = "the stream has broken: a drop of 1.89 times the thread"
	default:
		out.Why = "the stream is whole: its head as it lands, as a drop of its width"
	}
	// Numbers of the drop from the fields, in case the caller built the stream.
	s.numbers()
	if onto.Film == 0 {
		out.dry(s, onto.Rough)
	} else {
		out.wet(s, onto.Film/s.Diameter)
	}
	out.summarise()
	return out, nil
}

func (p *Splash) add(v SplashVerdict) {
	p.Verdicts[p.Count] = v
	p.Count++
}

// summarise reads the verdicts that apply.
func (p *Splash) summarise() {
	droplets, silent, crown := 0, 0, false
	low, high := math.Inf(1), 0.0
	for _, v := range p.Verdicts[:p.Count] {
		if !v.Applies {
			continue
		}
		if v.Outcome == CrownRises {
			crown = crown || v.Exceeded()
			continue
		}
		if v.Exceeded() {
			droplets++
		} else {
			silent++
		}
		if v.ThresholdSpeed > 0 {
			low, high = min(low, v.ThresholdSpeed), max(high, v.ThresholdSpeed)
		}
	}
	if high > 0 {
		p.Threshold = Estimate{math.Sqrt(low * high), low, high}
	}
	switch {
	case droplets == 0 && silent == 0:
		p.Summary = NoCriterion
	case silent == 0:
		p.Summary = SplashLikely
	case droplets > 0:
		p.Summary = CriteriaDisagree
	case crown:
		p.Summary = CrownOnly
	default:
		p.Summary = NoSplash
	}
}

// dry judges the landing on a dry surface.
//
//   - Mundo, Sommerfeld and Tropea 1995, "Droplet-wall collisions": We^0.5 Re^0.25 >
//     57.7 (read, second-hand; its range not seen).
//   - Vander Wal, Berger and Mozes 2006, "The splash/non-splash boundary upon a dry
//     surface and thin fluid film": sqrt(Ca) > 0.35 on dry smooth surfaces (read in the
//     abstract). Only up to 10 mPa s here: see thinLiquid.
//   - Riboux and Gordillo 2014, with the threshold of Pierzyna and others 2021: see
//     RibouxGordillo.
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
	p.add(SplashVerdict{
		Criterion: "Riboux and Gordillo 2014", Measure: "beta",
		Value: beta, Threshold: threshold, Outcome: PromptSplash,
		ThresholdSpeed: rg.speed(s.Diameter/2, s.Speed, s.Viscosity, s.Density, s.SurfaceTension),
		Range:          "dry smooth surface, 0.3 to 10 mPa s, 17 to 72 mN/m",
		Applies:        thin && s.Viscosity >= 3e-4 && s.SurfaceTension >= 0.017 && s.SurfaceTension <= 0.0735,
		Known:          "read",
	})
}

// wet judges the landing on a film of delta drop diameters of the same liquid, by
// K = We Oh^-0.4 and by We:
//
//   - Rioboo, Bauthier, Conti, Voue and De Coninck 2003: crown above 400, droplets
//     above 2100, 0.06 < delta < 0.15 (from memory).
//   - Cossali, Coghe and Marengo 1997, "The impact of a single drop on a wetted solid
//     surface": droplets above 2100 + 5880 delta^1.44, 0.1 < delta < 1, Oh > 0.007
//     (formula from memory, abstract read).
//   - Okawa, Shiraishi and Mori 2006: droplets above 2100 on a plane water surface
//     (from memory). Taken for pools of more than one drop diameter; for liquids thicker
//     than water it leans on Oh to carry the viscosity, as Cossali's does.
//   - Vander Wal, Berger and Mozes 2006: sqrt(We) > 20 on thin films (read in the
//     abstract). It knows no viscosity: taken up to 10 mPa s and delta of 1.
//   - Yarin and Weiss 1995: a train of drops on its own film, see YarinWeiss; only
//     for a broken stream or a dripping one (from memory).
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
	if err := within("drop speed", speed, 1e-6, 100, "m/s", poured); err != nil {
		return 0, err
	}
	if err := within("drop frequency", frequency, 1e-6, 1e9, "1/s", poured); err != nil {
		return 0, err
	}
	return yarinWeiss(speed, frequency, eta, rho, sigma), nil
}

func yarinWeiss(v, f, eta, rho, sigma float64) float64 {
	return v * math.Pow(rho/sigma, 0.25) * math.Pow(eta/rho, -0.125) * math.Pow(f, -0.375)
}
