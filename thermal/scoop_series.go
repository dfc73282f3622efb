package thermal

import (
	"cmp"
	"math"
)

// series computes the course: to a little beyond the loss of shape, or to
// the horizon, or where it is read for so many seconds alone no further.
func (r *scoopRun) series(m *scoopModel, slumped, read float64) ([]ScoopPoint, error) {
	p, err := r.prepare(m)
	if err != nil {
		return nil, err
	}
	end := min(m.s.Horizon.Seconds(), 1.25*slumped)
	r.face.e.Expect(p.dripRadius, p.flowC) // steps are short where it begins to drip
	const steps = 60
	last := steps
	if read > 0 && read < end {
		last = int(math.Ceil(read / end * steps))
	}
	course := make([]ScoopPoint, last+1)
	for i := range course {
		t := end * float64(i) / steps
		if err := cmp.Or(r.shade.runTo(t), r.face.runTo(t)); err != nil {
			return nil, err
		}
		course[i] = r.moment(t, p)
	}
	return course, r.table.err
}

func (r *scoopRun) moment(t float64, p scoopSample) ScoopPoint {
	point := ScoopPoint{Time: seconds(t), SurfaceC: r.face.e.SurfaceC()}
	heat, left := 0.0, 0.0 // J and m3 of the whole ball
	core := 0.0
	for _, c := range []*column{&r.face, &r.shade} {
		if c.part == 0 {
			continue
		}
		e := &c.e
		for i := range e.Shells {
			heat += c.part * e.Volumes[i] * e.Enthalpies[i]
			left += c.part * e.Volumes[i]
		}
		core += c.part * e.Enthalpies[0]
		soft := p.radius - e.Faces[e.Shells] + e.FilmFrom(e.Curve.PotentialAt(p.softC), e.Shells)
		point.SoftMM += c.part * 1000 * soft
		whole := e.Content(p.radius)
		point.MeltedShare += c.part * (1 - e.Content(c.solid())/whole)
		point.DrippedGrams += c.part * 1000 * p.density * whole * c.is
	}
	point.MeanC = r.c.TempOfEnthalpy(heat / left)
	point.CoreC = r.c.TempOfEnthalpy(core)
	return point
}
