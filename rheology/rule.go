package rheology

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
)

// A Rule says how the viscosities of the parts of a blend combine. The zero Rule is the
// house rule, log-mixing by mass:
//
//	ln eta = sum w_i ln eta_i        w mass fraction, eta in Pa s
//
// It is exact where the logarithm of the viscosity is linear in fat, as in
// Bakshi & Smith 1984. Elsewhere that logarithm is convex and the rule is
// high in the middle: 5..13 % on hot cream (Phipps 1969), 9..51 % between
// the creams of the few cold values printed (testdata/dairy_blends.csv, n = 5),
// and by factors when syrup or glycerol is thinned with water. The band of a
// [Mix] holds this. [CompareRules] shows how each rule does against blends of known
// viscosity.
type Rule struct {
	// Emulsion draws the logarithm of the viscosity as linear not in the fat itself but in
	//
	//	g = p + p^(5/3)        p volume fraction of fat
	//
	// between the parts: the shape that Phipps 1969 found for hot cream to 40 %
	// fat (he used the mass fraction; read in Advanced Dairy Chemistry vol. 3,
	// Table 15.5). With more than two parts the line is the least-squares one
	// through them. It is for parts that are all milk or cream, and an
	// InputError for others. Of the rules it is the nearest to the cold creams
	// printed (20 % high in the mean against 33 %), and still high.
	Emulsion bool `json:"emulsion,omitzero"`
	// D and E are the interaction of Grunberg & Nissan 1949 written by mass, with a skew
	// term after Redlich & Kister 1948 (both from memory):
	//
	//	ln eta = sum w_i ln eta_i + sum over pairs w_i w_j (D + E (w_j - w_i))
	//
	// where j is the thicker of the pair. Both are pure numbers; D is negative where a blend
	// is thinner than log-mixing says, a positive E moves the effect to blends rich in the
	// thicker part. They have no published values for milk and cream: [FitInteraction] finds
	// them from blends that were measured. For water with sucrose or glycerol D is about -1
	// times the logarithm of the ratio of the two viscosities.
	D float64 `json:"d,omitzero"`
	E float64 `json:"e,omitzero"`
}

func (r Rule) check() error {
	err := cmp.Or(honestplate.Finite("Rule.D", r.D, ""), honestplate.Finite("Rule.E", r.E, ""))
	if err == nil && r.Emulsion && (r.D != 0 || r.E != 0) {
		return &honestplate.InputError{Field: "Rule.Emulsion", Got: "set beside D or E", Want: "one of the two"}
	}
	return err
}

func (r Rule) interacts() bool { return r.D != 0 || r.E != 0 }

// String names the rule, such as "log-mixing by mass".
func (r Rule) String() string {
	switch {
	case r.Emulsion:
		return "emulsion rule"
	case r.interacts():
		return fmt.Sprintf("log-mixing by mass with interaction %.4g, skew %.4g", r.D, r.E)
	}
	return "log-mixing by mass"
}

// Blend mixes parts by the rule: see [Blend].
func (r Rule) Blend(parts ...Part) (Mix, error) { return blend(r, parts) }
