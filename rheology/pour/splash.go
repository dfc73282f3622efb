package pour

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// A Target is what a stream lands on.
type Target struct {
	// Film is the depth of the same liquid that already lies there, m; 0 is a dry
	// surface.
	Film float64 `json:"film_m,omitzero"`
	// Rough marks a dry surface that is not smooth like glass or glazed ware: bread,
	// cereal, linen, wood.
	Rough bool `json:"rough,omitzero"`
}

// A Splash is what the published criteria say of a stream's landing: each with its
// value, its threshold, its range and its verdict. They differ by more than two
// times in speed for milk, so read all of them.
type Splash struct {
	// Diameter in m and Speed in m/s of the drop that the criteria judge, and Why it
	// is that one.
	Diameter float64 `json:"diameter_m"`
	Speed    float64 `json:"speed_m_per_s"`
	Why      string  `json:"why"`
	// Verdicts in the order of the surface: dry criteria or wet.
	Verdicts []Verdict `json:"verdicts"`
	// Summary of the verdicts that apply.
	Summary Summary `json:"summary"`
	// Speeds at which the criteria that apply put the threshold, m/s: from the lowest
	// to the highest, Likely in the geometric middle. All 0 where none applies ([OutsideRange]).
	Threshold honestplate.Estimate `json:"threshold_m_per_s"`
}

// A Verdict is one criterion's answer.
type Verdict struct {
	// Criterion, such as "Cossali, Coghe and Marengo 1997".
	Criterion string `json:"criterion"`
	// Measure compared, such as "We Oh^-0.4".
	Measure string `json:"measure"`
	// Value of the measure, and the Threshold above which it says Outcome.
	Value     float64 `json:"value"`
	Threshold float64 `json:"threshold"`
	// Outcome above the threshold: "crown", "crown that throws droplets" from its rim or
	// "droplets thrown along the surface", flat, at the moment of impact; and whether it is
	// Exceeded.
	Outcome  string `json:"outcome"`
	Exceeded bool   `json:"exceeded"`
	// ThresholdSpeed of the same drop at the threshold, m/s; 0 where none was found, or
	// looked for outside a criterion's range.
	ThresholdSpeed float64 `json:"threshold_speed_m_per_s"`
	// Range where the criterion was found, in words, and whether it Applies here.
	Range   string `json:"range"`
	Applies bool   `json:"applies"`
	// Known is "read" or "memory", as for published values.
	Known string `json:"known"`
}

// crownRises is the outcome of a rim that rises round the impact and falls back whole. Below a
// threshold the liquid lies down (deposition).
const crownRises = "crown"

// A Summary is what the criteria say together about droplets.
type Summary string

// The summaries.
const (
	// NoSplash: every criterion that applies says deposition.
	NoSplash Summary = "no splash"
	// CrownOnly: a crown is expected, and no criterion that applies says droplets.
	CrownOnly Summary = "crown without droplets"
	// SplashLikely: every criterion of droplets that applies says so.
	SplashLikely Summary = "splash likely"
	// CriteriaDisagree: some say droplets, some do not. Try it, or lower the spout.
	CriteriaDisagree Summary = "criteria disagree"
	// OutsideRange: what criterion there is was found for something else, so that it is
	// shown and says nothing. Try it.
	OutsideRange Summary = "only outside its range"
)

// Splash judges the stream's landing on a surface by every published criterion that was
// found. On a dry surface, of droplets thrown along it:
//
//   - Mundo, Sommerfeld and Tropea 1995, "Droplet-wall collisions": We^0.5 Re^0.25 > 57.7
//     (read, second-hand), found with spray of 0.06 to 0.15 mm at 12 to 18 m/s (from memory):
//     shown for a stream, and counted for drops of that size alone.
//   - Vander Wal, Berger and Mozes 2006, "The splash/non-splash boundary upon a dry surface
//     and thin fluid film": Ca^0.5 > 0.35, smooth (read in the abstract).
//   - Riboux and Gordillo 2014, smooth: see [law.Impact].
//
// The last two were found up to 10 mPa s. To 5 mPa s published experiments do not agree
// which way thickness works; from there on thicker splashes less, which neither says. So
// from 5 mPa s on both are asked at 5 and their speed is multiplied by (thickness/5)^0.2,
// Mundo's power; the join is ours. On a rough surface none counts: [OutsideRange].
//
// On a film of delta drop diameters of the same liquid, of a crown and of the droplets it
// throws, with K = We Oh^-0.4:
//
//   - Rioboo and others 2003: crown at K > 400, droplets at K > 2100, 0.06 < delta < 0.15
//     (from memory). Okawa, Shiraishi and Mori 2006: K > 2100 on a plane water surface (from
//     memory), named for pools deeper than a drop. The two and Cossali's limit for a thin
//     film have one number, so it is used at every depth. For liquids thicker than water
//     it leans on Oh to carry the viscosity. A crown is expected from 400 at any depth;
//     on a pool it is the rim of a crater.
//   - Cossali, Coghe and Marengo 1997, "The impact of a single drop on a wetted solid
//     surface": K > 2100 + 5880 delta^1.44, 0.1 < delta < 1, Oh > 0.007 (formula from memory,
//     abstract read), leant on below both. From delta 1 to 3 it is led over to the pool's
//     2100, by us: splash falls to a constant beyond 3 (Mutchler and Hansen 1970, Science
//     169, 1311, abstract read). That paper has the largest splash at a film of a third of
//     the drop, which none of these criteria knows.
//   - Vander Wal, Berger and Mozes 2006: We^0.5 > 20 on thin films (read in the abstract). It
//     knows no viscosity: up to 5 mPa s and delta of 1.
//   - Yarin and Weiss 1995: drops one after the other, so only
//     for a broken stream or a dripping one, delta up to 1 (from memory).
//
// Wang and Chen 2000 (the critical We of very thin films rises with viscosity) is not among
// them: its figures were not found.
//
// The criteria were found with single drops, and a stream is not one. What lands
// first is: the head of a stream gathers into a blob of about its width, so for a
// whole stream the drop has the stream's diameter and speed where it lands, and the
// verdict is on the first moment of the pour. A whole stream that keeps running
// into its own pool throws less than that. A broken stream lands as its drops, of
// 1.89 times the thread's width where it breaks: there the verdict is on every
// drop. Where the break-up is uncertain (MayBreak) expect the larger drops' verdict.
//
// Errors: InputError for the zero Stream; RangeError for sizes that no stream has.
func (s Stream) Splash(onto Target) (Splash, error) {
	if err := cmp.Or(s.check(), honestplate.InRange("Onto.Film", onto.Film, 0, 10, "m", "a diving pool")); err != nil {
		return Splash{}, err
	}
	out := Splash{Diameter: s.Diameter, Speed: s.Speed, Verdicts: make([]Verdict, 0, 6)}
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
	if onto.Film > 0 {
		out.wet(s, onto.Film/s.Diameter)
	} else if err := out.dry(s, onto.Rough); err != nil {
		return Splash{}, err
	}
	out.summarise()
	return out, nil
}

// summarise reads the verdicts that apply.
func (p *Splash) summarise() {
	droplets, silent, crown := 0, 0, false
	low, high := math.Inf(1), 0.0
	for _, v := range p.Verdicts {
		if !v.Applies {
			continue
		}
		if v.Outcome == crownRises {
			crown = crown || v.Exceeded
			continue
		}
		if v.Exceeded {
			droplets++
		} else {
			silent++
		}
		if v.ThresholdSpeed > 0 {
			low, high = min(low, v.ThresholdSpeed), max(high, v.ThresholdSpeed)
		}
	}
	if high > 0 {
		p.Threshold = honestplate.Estimate{Low: low, Likely: math.Sqrt(low * high), High: high}
	}
	switch {
	case droplets == 0 && silent == 0:
		p.Summary = OutsideRange
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
