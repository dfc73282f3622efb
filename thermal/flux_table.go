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
	rate  [fluxKelvins]float64 // kg/(m2 s) of dew or frost
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
	t.heat[i], t.rate[i] = f.Total(), f.VapourRate
}

func (t *fluxTable) cell(tempC float64) (int, float64) {
	x := tempC - fluxLow
	i := min(max(int(x), 0), fluxKelvins-2)
	if !t.ready[i] {
		t.entry(i)
	}
	if !t.ready[i+1] {
		t.entry(i + 1)
	}
	return i, x - float64(i)
}

func (t *fluxTable) at(tempC float64) (heat, slope float64) {
	i, f := t.cell(tempC)
	slope = t.heat[i+1] - t.heat[i]
	return t.heat[i] + f*slope, slope
}

func (t *fluxTable) vapour(tempC float64) float64 {
	i, f := t.cell(tempC)
	return t.rate[i] + f*(t.rate[i+1]-t.rate[i])
}
