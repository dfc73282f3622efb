package record

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
)

// measured are the layers of a build in the states that are declared.
type measured struct {
	grams  []float64
	states []float64 // grams declared for one gram as weighed
	yields []float64 // variance of grams through the yield, g2
	portion.Evidence
	tared bool
	least float64 // least load of the scale, g
}

// covariance of two layers, g2: see [Specification.Check].
func (m measured) covariance(i, j int) float64 {
	v := m.Relative * m.Relative * m.grams[i] * m.grams[j]
	k := m.Factor * m.Factor * m.states[i] * m.states[j]
	switch {
	case i == j:
		v += 2*m.Reading*k + m.yields[i]
	case !m.tared && (i-j == 1 || j-i == 1):
		v -= m.Reading * k
	}
	return v
}

// measure turns readings into layers.
func (b Build) measure(layers []Layer) (measured, error) {
	if len(b.Layers) != len(layers) {
		return measured{}, check.Input("Layers", len(b.Layers), "", fmt.Sprintf("one reading a layer, %d",
			len(layers)))
	}
	if err := honestplate.NotNegative("EmptyGrams", b.EmptyGrams, "g"); err != nil {
		return measured{}, err
	}
	n := len(layers)
	m := measured{grams: make([]float64, n), states: make([]float64, n), yields: make([]float64, n), tared: b.Tared}
	before, load := b.EmptyGrams, b.EmptyGrams
	for i, p := range b.Layers {
		at := fmt.Sprintf("Layers[%d]", i)
		if err := honestplate.NotNegative(at+".Reading", p.Reading, "g"); err != nil {
			return measured{}, err
		}
		if p.Pieces < 0 {
			return measured{}, check.Input(at+".Pieces", p.Pieces, "", "0 or more")
		}
		m.grams[i] = p.Reading
		if !b.Tared {
			m.grams[i] -= before
			before = p.Reading
		}
		if m.grams[i] < 0 {
			return measured{}, check.Input(at+".Reading", fmt.Sprintf("%.6g g after %.6g g", p.Reading,
				p.Reading-m.grams[i]), "", "no less than before the layer was laid, or a Tared build")
		}
		load += m.grams[i]
	}
	var err error
	if m.Evidence, err = b.Scale.Evidence(load); err != nil {
		return measured{}, honestplate.In("Scale", err)
	}
	m.least, _ = b.Scale.LeastLoad() // Evidence found the scale in order
	for i, l := range layers {
		state, spread, err := l.state(b.Layers[i].Basis)
		if err != nil {
			return measured{}, honestplate.In(fmt.Sprintf("Layers[%d]", i), err)
		}
		m.states[i] = state
		m.grams[i] *= m.Factor * state
		m.yields[i] = m.grams[i] * spread * m.grams[i] * spread
	}
	return m, nil
}

// state returns how many grams in the declared state one gram as weighed stands for,
// and the relative standard uncertainty of that.
func (l Layer) state(weighed Basis) (state, spread float64, err error) {
	if weighed == "" || weighed == l.Basis {
		return 1, 0, nil
	}
	if l.Basis == "" || weighed != Raw && weighed != Cooked {
		return 0, 0, check.Input("Basis", fmt.Sprintf("%q", weighed), "",
			fmt.Sprintf("the state that %s is declared in, or none", l.Name))
	}
	if l.Yield == (honestplate.Estimate{}) {
		return 0, 0, check.Input("Basis", fmt.Sprintf("%s where %s is declared", weighed, l.Basis), "",
			"the declared state, or a Yield in the specification")
	}
	state = l.Yield.Likely
	if l.Basis == Raw {
		state = 1 / state
	}
	// A 95 % band is four standard uncertainties wide, as everywhere with k = 2.
	return state, (l.Yield.High - l.Yield.Low) / (4 * l.Yield.Likely), nil
}
