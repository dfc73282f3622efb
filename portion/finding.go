package portion

import (
	"fmt"
	"strings"
)

// A Finding is what a check found of one thing: a layer, a total, a ratio.
type Finding struct {
	Name     string  `json:"name"`            // of the layer, "total", "patty / bun" or the item
	Found    float64 `json:"found"`           // g, in the state that is declared; of a ratio a pure number
	Standard float64 `json:"standard"`        // its standard uncertainty
	Pieces   int     `json:"pieces,omitzero"` // counted; 0 if not
	Limits   Limits  `json:"limits,omitzero"` // within which it agrees; empty where only pieces are declared
	Decision
	// AddGrams is what to add, or below 0 to take off, to come to what is declared, g, in
	// the state that lies on the plate; 0 where the mass agrees.
	AddGrams float64 `json:"add_grams,omitzero"`
	Reason   string  `json:"reason,omitzero"` // why it does not agree; empty if it does
}

// set worsens the verdict and adds the reason: what differs outweighs what cannot be
// told, and that what agrees.
func (f *Finding) set(v Verdict, reason string) {
	f.Verdict = f.Verdict.Worst(v)
	f.Reason = strings.TrimPrefix(f.Reason+"; "+reason, "; ")
}

// String gives the finding on one line: "cheese: differs: 16.4 +- 0.2 against 13 to
// 15; over".
func (f Finding) String() string {
	text := fmt.Sprintf("%s: %s", f.Name, f.Verdict)
	if f.Limits != (Limits{}) {
		w := Weighing{Grams: f.Found, Expanded: 2 * f.Standard}
		text += fmt.Sprintf(": %s against %.6g to %.6g", strings.ReplaceAll(w.String(), " g", ""),
			f.Limits.Low.Value, f.Limits.High.Value)
	}
	if f.Reason != "" {
		text += "; " + f.Reason
	}
	return text
}
