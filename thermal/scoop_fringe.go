package thermal

// fringeSteps divides the way of a fringe from its start to where it flows.
const fringeSteps = 96

// fringeDrips is when the thin edge of a scoop has melted, s: too thin for differences
// within it, it takes what the air brings to both its faces and the light to one,
//
//	t = d/2 integral of dH/q(T(H))
//
// Never where it comes to rest before, or holds its own melt.
func (r *scoopRun) fringeDrips(m *scoopModel, p scoopSample) float64 {
	thick := m.s.Fringe.Value * m.fringe
	if thick == 0 || m.s.ClingGM2.Likely >= 1000*p.density*thick/2 {
		return never
	}
	h := r.c.EnthalpyAt(p.startC) + 2*r.face.dipped*dipSeconds/thick
	step := (r.c.EnthalpyAt(p.flowC) - h) / fringeSteps
	t := 0.0
	for range fringeSteps {
		q, _ := r.table.at(r.c.TempOfEnthalpy(h + step/2))
		q += r.face.surface.light / 2
		if q <= 0 {
			return never
		}
		t += max(0, step) * thick / 2 / q
		h += step
	}
	return max(t, dipSeconds)
}
