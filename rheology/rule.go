package rheology

import (
	"fmt"

	"example.org/honestplate"
)

// A Rule says how the viscosities of the parts of a blend combine: log-mixing by mass with
// its departure named,
//
//	ln eta = sum w_i ln eta_i + E        w mass fraction, eta in Pa s
//
// The zero Rule is the house rule. Where parts share a composition E is what that
// composition's own law says of the mean, ln law(mean) - sum w_i ln law(part_i): milk and
// cream by fat; sugar, maple syrup and water by Brix; honey or invert syrup and water;
// glycerol and water. Between parts that share nothing E is 0, with the band that blends of
// known viscosity show. A [Mix] reports both terms, see [Mix.Departure].
//
// Known leans, left in the value: the law's E makes hot blends of cream 5 to 11 % too thin, 9 %
// in the mean of six (Steffe 1996 after Phipps 1969, from memory); of five at 3 and 16 degC
// three are thicker than it says, two of 30 % fat on one pump maker's chart by half and more, and two
// thinner, by 7 and 13 %. Where a blend matters, measure it: [Recipe.FitRule].
type Rule struct {
	// NoDeparture leaves E at 0: log-mixing alone, to see what the departure does. It is high
	// in the middle: solutions by 2 to 3 times, cold cream by 20 to 30 %, hot by 4 to 8 %.
	NoDeparture bool `json:"no_departure,omitzero"`
	// D is the interaction of Grunberg & Nissan 1949 (from memory) written by mass,
	//
	//	E = sum over pairs w_i w_j D
	//
	// which takes the place of any law: a pure number, negative where a blend is thinner than
	// log-mixing says. It has no published values for milk and cream: [Recipe.FitRule] finds it
	// from blends that were measured. For water with sucrose or glycerol it is about -1 times
	// the logarithm of the ratio of the two viscosities.
	D float64 `json:"d,omitzero"`
}

func (r Rule) check() error {
	if r.NoDeparture && r.interacts() {
		return &honestplate.InputError{Field: "Rule.NoDeparture", Got: "set beside D", Want: "one of the two"}
	}
	return honestplate.Finite("Rule.D", r.D, "")
}

func (r Rule) interacts() bool { return r.D != 0 }

// String names the rule, such as "log-mixing by mass with its departure".
func (r Rule) String() string {
	switch {
	case r.NoDeparture:
		return "log-mixing alone"
	case r.interacts():
		return fmt.Sprintf("log-mixing by mass with interaction %.4g", r.D)
	}
	return "log-mixing by mass with its departure"
}
