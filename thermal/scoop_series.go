package thermal

// scoopMoments is how many steps of time a series has.
const scoopMoments = 60

// series computes the course: to a little beyond the loss of shape, or to
// the horizon.
func (m *scoopModel) series(slumped float64) ([]ScoopPoint, error) {
	var face, ball scoopRun
	p, err := face.prepare(m)
	if err != nil {
		return nil, err
	}
	if _, err := ball.prepare(m); err != nil {
		return nil, err
	}
	end := min(m.s.Horizon.Seconds(), 1.25*slumped)
	face.begin(m, &face.face, p)
	ball.begin(m, &ball.ball, p)
	drip := face.e.expect(p.dripRadius, p.flowC)
	frost := 0.0
	moments := make([]ScoopPoint, 0, scoopMoments+1)
	for i := range scoopMoments + 1 {
		t := end * float64(i) / scoopMoments
		for ball.e.t < t {
			if err := ball.e.advanceShedding(t, p.flowC, p.film); err != nil {
				return nil, err
			}
		}
		for face.e.t < t && face.e.firedAt(drip) == never {
			before := face.table.vapour(face.e.surfaceC())
			if err := face.e.advance(t); err != nil {
				return nil, err
			}
			frost += face.e.span * (before + face.table.vapour(face.e.surfaceC())) / 2 * 1000
		}
		moments = append(moments, ball.moment(t, p, face.e.surfaceC(), frost))
	}
	return moments, ball.table.err
}

func (r *scoopRun) moment(t float64, p scoopSample, surfaceC, frost float64) ScoopPoint {
	e := &r.e
	stored, volume := 0.0, 0.0
	for i := range e.n {
		stored += e.vol[i] * e.h[i]
		volume += e.vol[i]
	}
	outer := e.face[e.n]
	solid := outer - e.filmFrom(e.c.potentialAt(p.flowC), e.n)
	whole := e.content(p.radius)
	return ScoopPoint{
		Time:         seconds(t),
		SurfaceC:     surfaceC,
		MeanC:        e.c.tempOfEnthalpy(stored / volume),
		CoreC:        e.c.tempOfEnthalpy(e.h[0]),
		SoftMM:       1000 * (p.radius - outer + e.filmFrom(e.c.potentialAt(p.softC), e.n)),
		MeltedShare:  1 - e.content(solid)/whole,
		DrippedGrams: 1000 * p.density * (whole - e.content(outer)),
		FrostGM2:     frost,
	}
}
