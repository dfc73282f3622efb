package shoot

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

// vessel is the bottle as its clock takes it.
func (d *day) vessel(q *Bottle) thermal.Glass {
	wall := map[string]float64{"glass bottle": 3, "can": 0.12, "plastic bottle": 0.4}[q.Vessel]
	return thermal.Glass{
		Diameter: q.DiameterMM / 1000, Height: q.HeightMM / 1000, WallThickness: cmp.Or(q.WallMM, wall) / 1000,
		DrinkGrams: q.FillGrams, DrinkC: honestplate.Some(q.ServeC), WallC: honestplate.Some(q.ServeC),
	}
}

// bottle works a closed bottle or can out: how it is chilled and how it fogs.
func (d *day) bottle(j *job, t *Thing, p *PlannedThing) (*shown, error) {
	q := t.Bottle
	clock, err := d.vessel(q).Knowing(d.lesson, d.air, d.lamps...)
	if err != nil {
		return nil, err
	}
	haze, beads, clear := q.Wanted == "haze", q.Wanted == "beads", q.Wanted == "clear"
	events, l := d.clocked(j, t,
		kept(clock.Kept, "haze", "haze", haze, clear), kept(clock.Kept, "white", "opaque", false, haze),
		kept(clock.Kept, "beads", "beads", beads, false), kept(clock.Kept, "runs", "runs", false, beads))
	p.Events = events
	if haze && !clock.Haze.MayHappen() || beads && !clock.Beads.MayHappen() {
		p.Notes = append(p.Notes, Note{Code: NeverLooks, Thing: t.Name})
	}
	p.Cold = &ColdPlan{StartC: q.ServeC}
	if q.ServeC < d.air.TempC-1 {
		d.chill(j, t, p, q.ServeC, overnight, Chill)
	}
	return l, nil
}
