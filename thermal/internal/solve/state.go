package solve

// A State is a body at one time.
type State struct {
	SurfaceC, MeanC, CoreC    float64 // degC
	HeatJ, StoredJ, PastShare float64
}

// state is what a computation has come to; PastShare counts what is warmer than markC.
func (e *Engine) State(markC float64) State {
	stored, volume, past := 0.0, 0.0, 0.0
	mark, from := e.Curve.EnthalpyAt(markC), e.Curve.below(markC)
	for i := range e.Shells {
		stored += e.Volumes[i] * e.Enthalpies[i]
		volume += e.Volumes[i]
		past += e.Volumes[i] * min(max((e.Enthalpies[i]-from)/(mark-from), 0), 1)
	}
	return State{
		SurfaceC:  e.SurfaceC(),
		MeanC:     e.Curve.TempOfEnthalpy(stored / volume),
		CoreC:     e.Curve.TempOfEnthalpy(e.Enthalpies[0]),
		HeatJ:     e.Heat,
		StoredJ:   stored - volume*e.StartH,
		PastShare: past / volume,
	}
}
