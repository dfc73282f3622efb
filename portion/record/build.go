package record

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

// A Build is a product as it was put together on a scale, layer upon layer.
type Build struct {
	Scale portion.Scale `json:"scale"` // on which it was built
	// EmptyGrams is the reading before the first layer, g: the plate; 0 after taring.
	EmptyGrams float64  `json:"empty_grams,omitzero"`
	Layers     []Placed `json:"layers"` // as many as the specification has, in its order
	// Tared says that the scale was set to zero before every layer, so that each reading
	// is a layer's own. One zero for all is better: the total is then as sure as one
	// weighing, whatever the number of layers.
	Tared bool `json:"tared,omitzero"`
}

// A Placed layer is what the scale showed after it was laid.
type Placed struct {
	Reading float64 `json:"reading_grams"`   // g; the whole so far, or the layer alone in a Tared build
	Pieces  int     `json:"pieces,omitzero"` // counted; 0 if not
	Basis   Basis   `json:"basis,omitzero"`  // the state it was weighed in; empty means as declared
}

// A BuildCheck is what a build is worth against its specification.
type BuildCheck struct {
	Verdict portion.Verdict   `json:"verdict"`         // the worst of all: agrees only where everything does
	Layers  []portion.Finding `json:"layers"`          // in build order
	Total   portion.Finding   `json:"total"`           // without verdict where a layer is declared by count alone
	Ratios  []portion.Finding `json:"ratios,omitzero"` // as in the specification
}

// Check holds a build against the specification, layer by layer, in total and by its
// ratios. The readings R_0 .. R_n of one scale give the layers and what they share:
//
//	m_j = R_j - R_j-1      var = 2a + (rel m_j)^2
//	cov of neighbours = -a + rel^2 m_j m_j+1      of others = rel^2 m_i m_j
//
// with a = d^2/12 + s^2 a reading and rel the scale's own error, from its check weight
// or its class; in a Tared build each layer has its own zero and neighbours share only
// rel. The total then has 2a + (rel M)^2, a ratio loses what is common to both.
//
// Errors: those of Validate; [honestplate.InputError] where the build has other layers, a reading
// falls, or a state changed without a Yield; [honestplate.RangeError] beyond the scale.
//
// Source: JCGM 100:2008 (GUM), 5.2.2 (from memory); the decision rule is that of
// [portion.Limits.Decide].
func (s Specification) Check(b Build) (BuildCheck, error) {
	if err := s.Validate(); err != nil {
		return BuildCheck{}, err
	}
	m, err := b.measure(s.Layers)
	if err != nil {
		return BuildCheck{}, honestplate.In("Build", err)
	}
	out := BuildCheck{Verdict: portion.Agrees, Layers: make([]portion.Finding, len(s.Layers))}
	for i, l := range s.Layers {
		w := portion.Weighing{Grams: m.grams[i], Standard: math.Sqrt(m.covariance(i, i)), LeastGrams: m.least}
		f, err := l.Declared.Judge(&w, b.Layers[i].Pieces, s.Guard)
		if err != nil {
			return BuildCheck{}, err
		}
		f.Name = l.Name
		if d, err := f.Limits.Decide(f.Found, f.Standard); err != nil {
			return BuildCheck{}, err
		} else if d.Verdict != portion.Agrees {
			f.AddGrams = (l.Declared.Grams - m.grams[i]) / m.states[i]
		}
		out.Layers[i], out.Verdict = f, out.Verdict.Worst(f.Verdict)
	}
	if out.Total, err = s.total(m); err != nil {
		return BuildCheck{}, err
	}
	out.Verdict = out.Verdict.Worst(out.Total.Verdict)
	for _, r := range s.Ratios {
		f, err := s.ratio(r, m)
		if err != nil {
			return BuildCheck{}, err
		}
		out.Ratios, out.Verdict = append(out.Ratios, f), out.Verdict.Worst(f.Verdict)
	}
	return out, nil
}

// total judges the sum of the layers, in the states they are declared in.
func (s Specification) total(m measured) (portion.Finding, error) {
	var whole portion.Amount
	for _, l := range s.Layers {
		if l.Declared.Grams == 0 {
			return portion.Finding{}, nil
		}
		whole.Grams += l.Declared.Grams
		whole.MinusGrams += l.Declared.MinusGrams
		whole.PlusGrams += l.Declared.PlusGrams
	}
	if s.TotalMinusGrams != 0 || s.TotalPlusGrams != 0 {
		whole.MinusGrams, whole.PlusGrams = s.TotalMinusGrams, s.TotalPlusGrams
	}
	w := portion.Weighing{LeastGrams: m.least}
	variance := 0.0
	for i := range m.grams {
		w.Grams += m.grams[i]
		for j := range m.grams {
			variance += m.covariance(i, j)
		}
	}
	w.Standard = math.Sqrt(max(0, variance))
	f, err := whole.Judge(&w, 0, s.Guard)
	f.Name = "total"
	return f, err
}

// ratio judges one ratio of layers.
func (s Specification) ratio(r Ratio, m measured) (portion.Finding, error) {
	at := func(name string) (i int) {
		for s.Layers[i].Name != name { // Validate has found it
			i++
		}
		return i
	}
	i, j := at(r.Layer), at(r.To)
	f := portion.Finding{Name: r.Layer + " / " + r.To, Limits: portion.Limits{Low: honestplate.Some(r.Least),
		High: honestplate.Some(r.Most), Guard: s.Guard}}
	if !(m.grams[j] > 0) || !(m.grams[i] > 0) {
		f.Verdict, f.Reason = portion.CannotTell, "one of the two weighs nothing"
		return f, nil
	}
	f.Found = m.grams[i] / m.grams[j]
	share := func(i, j int) float64 { return m.covariance(i, j) / (m.grams[i] * m.grams[j]) }
	f.Standard = f.Found * math.Sqrt(max(0, share(i, i)+share(j, j)-2*share(i, j)))
	var err error
	f.Decision, err = f.Limits.Decide(f.Found, f.Standard)
	switch f.Verdict {
	case portion.Differs:
		f.Reason = "outside the ratio that is signed off"
	case portion.CannotTell:
		f.Reason = fmt.Sprintf("nearer to a limit than the weighing is good to, +- %.2g", 2*f.Standard*s.Guard.Or(1))
	}
	return f, err
}

// BeforeWeighing says what a perfect build, every layer in the middle of its tolerance
// and weighed in the state that is declared, would be worth on the scale: whatever
// cannot be told there can never agree, and its reason says that the tolerance is too
// narrow for the scale. Errors: those of Check.
func (s Specification) BeforeWeighing(scale portion.Scale) (BuildCheck, error) {
	if err := s.Validate(); err != nil {
		return BuildCheck{}, err
	}
	b, so := Build{Scale: scale}, 0.0
	for _, l := range s.Layers {
		so += l.Declared.Grams + (l.Declared.PlusGrams-l.Declared.MinusGrams)/2
		b.Layers = append(b.Layers, Placed{Reading: so, Pieces: l.Declared.Count})
	}
	return s.Check(b)
}
