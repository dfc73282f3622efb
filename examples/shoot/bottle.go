package shoot

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

// vessel is the bottle as its clock takes it.
func (d *day) vessel(q *Bottle) thermal.Glass {
	wall := map[string]float64{"glass bottle": 3, "can": 0.12, "plastic bottle": 0.4}[q.Vessel]
	return thermal.Glass{
		Diameter: q.DiameterMM / 1000, Height: q.HeightMM / 1000, WallThickness: cmp.Or(q.WallMM, wall) / 1000,
		Drink: food.Drink{Brix: q.Brix, AlcoholPercent: q.Alcohol}, DrinkGrams: q.FillGrams, DrinkC: honestplate.Some(q.ServeC), WallC: honestplate.Some(q.ServeC),
	}
}

// bottle works a closed bottle or can out: how it is chilled and how it fogs.
func (d *day) bottle(j *job, t *Thing, p *PlannedThing) (*shown, error) {
	q := t.Bottle
	clock, err := clockOf(d, d.vessel(q))
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
	return l, d.chillBottle(j, t, p)
}

// bottleOf is the bottle as the clock of its chilling takes it, and where it is chilled.
func (d *day) bottleOf(q *Bottle) (b thermal.Bottle, store Store, ok bool) {
	b = thermal.Bottle{DrinkGrams: q.FillGrams, Drink: food.Drink{Brix: q.Brix, AlcoholPercent: q.Alcohol}, Diameter: q.DiameterMM / 1000,
		WallThickness: q.WallMM / 1000, StartC: honestplate.Some(q.FromC), TargetC: q.ServeC}
	if q.Vessel == "can" {
		b.Wall, b.WallThickness = heat.Aluminium(), cmp.Or(q.WallMM, 0.2)/1000
	}
	switch q.Chill {
	case "iced water":
		b.Medium = cold.Chillers().IcedWater
		return b, Store{Name: "iced water", TempC: b.Medium.TempC, Units: mostUnits}, q.ServeC > b.Medium.TempC
	case "freezer":
		store, ok = coldest(d.brief.Freezers)
		b.Medium = cold.Freezers().Home
	default:
		store, ok = atLeast(d.brief.Fridges, q.ServeC-0.9)
		b.Medium = cold.Chillers().Refrigerator
	}
	b.Medium.Name, b.Medium.TempC = store.Name, store.TempC
	return b, store, ok
}

// chillBottle drafts how long bottles are in the cold, by the late end of the band, and
// warns of a freezer that would burst them.
func (d *day) chillBottle(j *job, t *Thing, p *PlannedThing) error {
	q := t.Bottle
	if q.ServeC >= q.FromC {
		return nil
	}
	b, store, ok := d.bottleOf(q)
	if !ok {
		p.Notes = append(p.Notes, Note{Code: NoColdStore, Thing: t.Name, Value: honestplate.Some(q.ServeC - 1), Text: store.Name})
		return nil
	}
	clock, err := b.Knowing(d.lesson)
	if err != nil {
		return err
	}
	w := clock.Cold.Window
	p.Cold.Store, p.Cold.StoreC, p.Cold.Needs = store.Name, store.TempC, w
	if w.Latest.Never {
		w.Latest = honestplate.After(overnight)
	}
	if clock.Bursts.MayHappen() {
		p.Cold.OutBy = clock.Bursts.Earliest
		p.Cold.Bursts = true
		if clock.Bursts.Earliest.Before(w.Latest) {
			p.Notes = append(p.Notes, Note{Code: MayBurst, Thing: t.Name, Value: honestplate.Some(math.Floor(clock.Bursts.Earliest.After.Minutes()))})
			w.Latest = clock.Bursts.Earliest
		}
	}
	if store.Units < j.shot.Units.Need {
		j.limits = append(j.limits, limit{store.Units, store.Name})
	}
	j.drafts = append(j.drafts, draft{task: Task{What: Chill, Thing: t.Name, Store: store.Name, TempC: store.TempC, HasTemp: true, Units: min(j.shot.Units.Need, store.Units)}, ahead: carry, lasts: w.Latest.After.Round(time.Minute)})
	return nil
}
