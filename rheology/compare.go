package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A BlendCase is a milk or cream of known viscosity between two others of known
// viscosity, to try the mixing rules on: from a publication, or from the user's own
// cup. All three at one temperature.
type BlendCase struct {
	Source          string  // whose numbers
	TempC           float64 // degC
	ThinFatPercent  float64 // fat of the thin part, % by mass
	ThinPaS         float64 // viscosity of the thin part, Pa s
	ThickFatPercent float64 // fat of the thick part, % by mass
	ThickPaS        float64 // viscosity of the thick part, Pa s
	FatPercent      float64 // of the blend, % by mass, between the two
	PaS             float64 // of the blend, as measured, Pa s
}

// thick returns the mass fraction of the thick part that gives the blend its fat.
func (c BlendCase) thick() (float64, error) {
	if err := honestplate.InRange("fat of the thick part", c.ThickFatPercent, 0, dairyHighFat, "%", sourceDairy); err != nil {
		return 0, err
	}
	if err := honestplate.NotNegative("fat of the thin part", c.ThinFatPercent, "%"); err != nil {
		return 0, err
	}
	if c.ThinFatPercent >= c.ThickFatPercent {
		return 0, check.Input("fat of the thin part", c.ThinFatPercent, "%", fmt.Sprintf("below that of the thick one, %.6g %%", c.ThickFatPercent))
	}
	if err := honestplate.InRange("fat of the blend", c.FatPercent, c.ThinFatPercent, c.ThickFatPercent, "%", "the fat of its two parts"); err != nil {
		return 0, err
	}
	if err := honestplate.Positive("viscosity of the blend", c.PaS, "Pa s"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("viscosity of the blend", c.PaS, 1e-9, 1e12, "Pa s", "a liquid that flows"); err != nil {
		return 0, err
	}
	return (c.FatPercent - c.ThinFatPercent) / (c.ThickFatPercent - c.ThinFatPercent), nil
}

// Mix returns the blend as a rule has it, from its two ends as Measured Dairy.
func (c BlendCase) Mix(r Rule) (Mix, error) {
	w, err := c.thick()
	if err != nil {
		return Mix{}, err
	}
	if r == nil {
		r = LogMass
	}
	return r.Blend(
		Part{Measured{Dairy{c.ThinFatPercent}, c.TempC, honestplate.Exactly(c.ThinPaS)}, 1 - w},
		Part{Measured{Dairy{c.ThickFatPercent}, c.TempC, honestplate.Exactly(c.ThickPaS)}, w},
	)
}

// A RuleScore is how a rule did on some blends. Ratios are predicted/measured.
type RuleScore struct {
	Rule            Rule      // that was tried
	Blends          int       // on how many
	Mean            float64   // geometric mean ratio: above 1 the rule is high
	Lowest, Highest float64   // ratios
	Spread          float64   // factor of one standard deviation about Mean; 1 for one blend
	Inside          int       // how many measured values lie in the rule's own band
	Ratios          []float64 // of each blend in turn
}

// CompareRules tries each rule on each blend. Without rules it tries LogMass,
// LogVolume and Emulsion. Trust the one whose Mean and Spread are nearest to 1
// on blends like yours. On the published creams (see the Example):
//
//   - Hot cream, 40..80 degC: Emulsion is within 4 %, LogMass 4..8 % high.
//   - Cold cream, five blends: Emulsion 20 % high in the mean, LogMass 33 %, and
//     neither within its mean by less than 15 %. Measure the blend and Correct.
//   - LogVolume is never the better one on milk and cream.
//   - Syrup or glycerol with water: no rule here. Measure a blend or two and
//     use FitInteraction's on your own ends, or Correct.
//
// No blends are an InputError; other errors are those of Blend and of the parts.
func CompareRules(cases []BlendCase, rules ...Rule) ([]RuleScore, error) {
	if len(cases) == 0 {
		return nil, check.Input("number of blends", 0, "", "at least 1")
	}
	if len(rules) == 0 {
		rules = []Rule{LogMass, LogVolume, Emulsion}
	}
	scores := make([]RuleScore, len(rules))
	for i, r := range rules {
		s := RuleScore{Rule: r, Blends: len(cases), Lowest: math.Inf(1)}
		var sum, squares float64
		for _, c := range cases {
			m, err := c.Mix(r)
			if err != nil {
				return nil, err
			}
			e, err := m.Viscosity(c.TempC)
			if err != nil {
				return nil, err
			}
			ratio := e.Likely / c.PaS
			s.Ratios = append(s.Ratios, ratio)
			s.Lowest, s.Highest = min(s.Lowest, ratio), max(s.Highest, ratio)
			sum += math.Log(ratio)
			squares += math.Log(ratio) * math.Log(ratio)
			if e.Contains(c.PaS) {
				s.Inside++
			}
		}
		n := float64(len(cases))
		s.Mean, s.Spread = math.Exp(sum/n), 1
		if n > 1 {
			s.Spread = math.Exp(math.Sqrt(max(0, squares-sum*sum/n) / (n - 1)))
		}
		scores[i] = s
	}
	return scores, nil
}

// FitInteraction returns the Interaction that fits measured blends of the same two
// kinds of liquid by least squares in ln(viscosity). D and E need blends of two
// compositions; from one composition D alone is found and E is 0. A case at
// either end tells nothing and is an InputError, as are no cases.
func FitInteraction(cases []BlendCase) (Interaction, error) {
	if len(cases) == 0 {
		return Interaction{}, check.Input("number of blends", 0, "", "at least 1")
	}
	// Unknowns D and E of y = a D + b E with a = w(1-w), b = a (2w - 1).
	var aa, ab, bb, ay, by float64
	for _, c := range cases {
		w, err := c.thick()
		if err != nil {
			return Interaction{}, err
		}
		a := w * (1 - w)
		if a < 1e-6 {
			return Interaction{}, check.Input("share of the thick part", w, "", "between the ends")
		}
		m, err := c.Mix(LogMass)
		if err != nil {
			return Interaction{}, err
		}
		e, err := m.Viscosity(c.TempC)
		if err != nil {
			return Interaction{}, err
		}
		b, y := a*(2*w-1), math.Log(c.PaS/e.Likely)
		aa, ab, bb = aa+a*a, ab+a*b, bb+b*b
		ay, by = ay+a*y, by+b*y
	}
	det := aa*bb - ab*ab
	if det <= 1e-9*aa*aa {
		return Interaction{D: ay / aa}, nil
	}
	return Interaction{D: (bb*ay - ab*by) / det, E: (aa*by - ab*ay) / det}, nil
}
