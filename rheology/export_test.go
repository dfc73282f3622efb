package rheology

import (
	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// EmulsionShape is how far the logarithm of the viscosity of milk or cream moves with K.
func EmulsionShape(fatPercent, tempC float64) float64 {
	e := emulsionAt(tempC)
	return e.perK(fatPercent)
}

// Reach is the viscosities of the recipe's two liquids as they are.
func (r Recipe) Reach() (low, high honestplate.Estimate, err error) {
	var p pair
	err = r.pair(&p)
	if err != nil {
		return honestplate.Estimate{}, honestplate.Estimate{}, err
	}
	return p.terms[0].end(), p.terms[1].end(), nil
}

// Correct is Batch.Correct for a measurement without a band.
func Correct(b Batch, measuredPaS float64) (Correction, error) {
	return b.Correct(honestplate.Exactly(measuredPaS), 0)
}

// Curve is the flow curve of a food that has one.
func (f Food) Curve(tempC float64) (flow.Model, error) {
	d, err := f.data(tempC)
	if err != nil {
		return nil, err
	}
	if d.PaS > 0 {
		return flow.Newtonian{PaS: d.newtonian(tempC)}, nil
	}
	c := d.at(tempC)
	if d.Casson {
		return flow.Casson{Yield: c.yield, Plastic: c.k}, nil
	}
	return flow.HerschelBulkley{Yield: c.yield, K: c.k, N: c.n}, nil
}
