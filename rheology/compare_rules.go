package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"gonum.org/v1/gonum/stat"
)

// A BlendCase is a milk or cream of known viscosity between two others of known
// viscosity, to try the mixing rules on: from a publication, or from the user's own
// cup. All three at one temperature.
type BlendCase struct {
	Source          string  `json:"source"`            // whose numbers
	TempC           float64 `json:"temp_c"`            // degC
	ThinFatPercent  float64 `json:"thin_fat_percent"`  // fat of the thin part, % by mass
	ThinPaS         float64 `json:"thin_pas"`          // viscosity of the thin part, Pa s
	ThickFatPercent float64 `json:"thick_fat_percent"` // fat of the thick part, % by mass
	ThickPaS        float64 `json:"thick_pas"`         // viscosity of the thick part, Pa s
	FatPercent      float64 `json:"fat_percent"`       // of the blend, % by mass, between the two
	PaS             float64 `json:"pas"`               // of the blend, as measured, Pa s
}

// thick returns the mass fraction of the thick part that gives the blend its fat.
func (c BlendCase) thick() (float64, error) {
	if err := cmp.Or(honestplate.InRange("ThickFatPercent", c.ThickFatPercent, 0, dairyHighFat, "%", sourceDairy),
		honestplate.NotNegative("ThinFatPercent", c.ThinFatPercent, "%")); err != nil {
		return 0, err
	}
	if c.ThinFatPercent >= c.ThickFatPercent {
		return 0, check.Input("ThinFatPercent", c.ThinFatPercent, "%", fmt.Sprintf("below that of the thick one, %.6g %%", c.ThickFatPercent))
	}
	if err := cmp.Or(honestplate.InRange("FatPercent", c.FatPercent, c.ThinFatPercent, c.ThickFatPercent, "%", "the fat of its two parts"),
		honestplate.Positive("PaS", c.PaS, "Pa s"),
		honestplate.InRange("PaS", c.PaS, 1e-9, 1e12, "Pa s", "a liquid that flows")); err != nil {
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
	return r.Blend(
		Part{Measured{Liquid: Dairy{FatPercent: c.ThinFatPercent}, TempC: c.TempC, PaS: honestplate.Exactly(c.ThinPaS)}, 1 - w},
		Part{Measured{Liquid: Dairy{FatPercent: c.ThickFatPercent}, TempC: c.TempC, PaS: honestplate.Exactly(c.ThickPaS)}, w},
	)
}

// A RuleScore is how a rule did on some blends. Ratios are predicted/measured.
type RuleScore struct {
	Rule    Rule      `json:"rule"`    // that was tried
	Blends  int       `json:"blends"`  // on how many
	Mean    float64   `json:"mean"`    // geometric mean ratio: above 1 the rule is high
	Lowest  float64   `json:"lowest"`  // ratio
	Highest float64   `json:"highest"` // ratio
	Spread  float64   `json:"spread"`  // factor of one standard deviation about Mean; 1 for one blend
	Inside  int       `json:"inside"`  // how many measured values lie in the rule's own band
	Ratios  []float64 `json:"ratios"`  // of each blend in turn
}

// CompareRules tries each rule on each blend. Without rules it tries the house rule and
// log-mixing alone. Trust the one whose Mean and Spread are nearest to 1 on blends like
// yours; the Example has the published creams.
//
// No blends are an InputError; other errors are those of Blend and of the parts.
func CompareRules(cases []BlendCase, rules ...Rule) ([]RuleScore, error) {
	if len(cases) == 0 {
		return nil, check.Missing("Cases", "at least one blend")
	}
	if len(rules) == 0 {
		rules = []Rule{{}, {NoDeparture: true}}
	}
	scores := make([]RuleScore, len(rules))
	for i, r := range rules {
		s := RuleScore{Rule: r, Blends: len(cases), Lowest: math.Inf(1)}
		logs := make([]float64, 0, len(cases))
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
			if !(ratio > 0 && ratio <= math.MaxFloat64) {
				return nil, check.Input("Rule", ratio, "for predicted over measured", "a number above 0: a weaker interaction")
			}
			s.Ratios, logs = append(s.Ratios, ratio), append(logs, math.Log(ratio))
			s.Lowest, s.Highest = min(s.Lowest, ratio), max(s.Highest, ratio)
			if e.Contains(c.PaS) {
				s.Inside++
			}
		}
		s.Mean, s.Spread = math.Exp(stat.Mean(logs, nil)), 1
		if len(logs) > 1 {
			s.Spread = math.Exp(stat.StdDev(logs, nil))
		}
		scores[i] = s
	}
	return scores, nil
}

// FitInteraction returns the Rule whose D and E fits measured blends of the same two
// kinds of liquid by least squares in ln(viscosity), in place of any law's departure. D and E need blends of two
// compositions; from one composition D alone is found and E is 0. A case at
// either end tells nothing and is an InputError, as are no cases. For liquids other than milk and cream see [Recipe.FitRule].
func FitInteraction(cases []BlendCase) (Rule, error) {
	if len(cases) == 0 {
		return Rule{}, check.Missing("Cases", "at least one blend")
	}
	var f interactionFit
	for _, c := range cases {
		w, err := c.thick()
		if err != nil {
			return Rule{}, err
		}
		m, err := c.Mix(Rule{NoDeparture: true})
		if err != nil {
			return Rule{}, err
		}
		e, err := m.Viscosity(c.TempC)
		if err != nil {
			return Rule{}, err
		}
		if !f.add(w, math.Log(c.PaS/e.Likely)) {
			return Rule{}, check.Input("FatPercent", c.FatPercent, "%", "between the ends, not at one")
		}
	}
	return f.rule(), nil
}
