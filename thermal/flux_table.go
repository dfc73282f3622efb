package thermal

import "example.org/honestplate/thermal/heat"

// A fluxTable keeps what an Exchanger says, kelvin by kelvin, so that a solver
// that asks hundreds of times pays for a few. Between whole kelvins it is
// straight: the radiation and the vapour pressure bend by less than 0.1 W/m2.
type fluxTable struct {
	x     heat.Exchanger
	err   error // the first the Exchanger gave
	ready [fluxKelvins]bool
	heat  [fluxKelvins]float64 // W/m2, without light
}

const (
	fluxLow     = -95 // degC
	fluxKelvins = 191 // to 95 degC
)

func (t *fluxTable) reset(x heat.Exchanger) {
	t.x, t.err = x, nil
	clear(t.ready[:])
}

func (t *fluxTable) entry(i int) {
	t.ready[i] = true
	f, err := t.x.At(float64(i+fluxLow), 0)
	if err != nil && t.err == nil {
		t.err = err
	}
	t.heat[i] = f.Total()
}

// at returns the heat at a temperature, W/m2, and its slope.
func (t *fluxTable) at(tempC float64) (heat, slope float64) {
	x := tempC - fluxLow
	i := min(max(int(x), 0), fluxKelvins-2)
	if !t.ready[i] {
		t.entry(i)
	}
	if !t.ready[i+1] {
		t.entry(i + 1)
	}
	slope = t.heat[i+1] - t.heat[i]
	return t.heat[i] + (x-float64(i))*slope, slope
}
