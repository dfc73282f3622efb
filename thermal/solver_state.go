package thermal

// A state is a body at one time.
type state struct {
	SurfaceC, MeanC, CoreC    float64 // degC
	HeatJ, StoredJ, PastShare float64
}

// state is what a computation has come to; PastShare counts what is warmer than markC.
func (e *engine) state(markC float64) state {
	stored, volume, past := 0.0, 0.0, 0.0
	mark, from := e.c.enthalpyAt(markC), e.c.below(markC)
	for i := range e.n {
		stored += e.vol[i] * e.h[i]
		volume += e.vol[i]
		past += e.vol[i] * min(max((e.h[i]-from)/(mark-from), 0), 1)
	}
	return state{
		SurfaceC:  e.surfaceC(),
		MeanC:     e.c.tempOfEnthalpy(stored / volume),
		CoreC:     e.c.tempOfEnthalpy(e.h[0]),
		HeatJ:     e.heat,
		StoredJ:   stored - volume*e.startH,
		PastShare: past / volume,
	}
}
