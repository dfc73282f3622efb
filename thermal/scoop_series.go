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
	drip := face.e.Expect(p.dripRadius, p.flowC)
	frost := 0.0
	moments := make([]ScoopPoint, 0, scoopMoments+1)
	for i := range scoopMoments + 1 {
		t := end * float64(i) / scoopMoments
		for ball.e.Time < t {
			if err := ball.e.AdvanceShedding(t, p.flowC, p.film); err != nil {
				return nil, err
			}
		}
		for face.e.Time < t && face.e.FiredAt(drip) == never {
			before := face.table.vapour(face.e.SurfaceC())
			if err := face.e.Advance(t); err != nil {
				return nil, err
			}
			frost += face.e.Span * (before + face.table.vapour(face.e.SurfaceC())) / 2 * 1000
		}
		moments = append(moments, ball.moment(t, p, face.e.SurfaceC(), frost))
	}
	return moments, ball.table.err
}

func (r *scoopRun) moment(t float64, p scoopSample, surfaceC, frost float64) ScoopPoint {
	e := &r.e
	stored, volume := 0.0, 0.0
	for i := range e.Shells {
		stored += e.Volumes[i] * e.Enthalpies[i]
		volume += e.Volumes[i]
	}
	outer := e.Faces[e.Shells]
	solid := outer - e.FilmFrom(e.Curve.PotentialAt(p.flowC), e.Shells)
	whole := e.Content(p.radius)
	return ScoopPoint{
		Time:         seconds(t),
		SurfaceC:     surfaceC,
		MeanC:        e.Curve.TempOfEnthalpy(stored / volume),
		CoreC:        e.Curve.TempOfEnthalpy(e.Enthalpies[0]),
		SoftMM:       1000 * (p.radius - outer + e.FilmFrom(e.Curve.PotentialAt(p.softC), e.Shells)),
		MeltedShare:  1 - e.Content(solid)/whole,
		DrippedGrams: 1000 * p.density * (whole - e.Content(outer)),
		FrostGM2:     frost,
	}
}
