package shoot

import (
	"slices"
	"time"

	"example.org/honestplate"
)

// finish puts the jobs into the plan, with all that is summed over them.
func (d *day) finish(p *Plan, jobs []*job) {
	b := d.brief
	p.Chance = 1
	for _, j := range jobs {
		if !j.shot.Done {
			p.Chance *= j.shot.Units.Chance
		}
		if !j.shot.Done && j.shot.Units.Prepare > 0 {
			j.things()
		}
		d.cautions(j, p)
		if q := j.dish.Specification; q != nil && q.ValidUntil != nil && j.shot.At.Format(time.DateOnly) > text(*q.ValidUntil) {
			j.shot.Notes = append(j.shot.Notes, Note{Code: SpecExpired, Text: text(*q.ValidUntil)})
		}
		p.Shots = append(p.Shots, j.shot)
	}
	p.Purchases, p.Kit = purchases(jobs), kitOf(b, jobs)
	for i := range p.Days {
		q := &p.Days[i]
		if q.Shift != 0 {
			p.Notes = append(p.Notes, Note{Code: ClockChanges, Value: honestplate.Some(q.Shift.Hours())})
		}
		if long := q.Ends.Sub(q.Call); long > 12*time.Hour {
			p.Notes = append(p.Notes, Note{Code: LongDay, Value: honestplate.Some(roundTo(long.Hours(), 0.5))})
		}
		if q.Ends.YearDay() != q.Call.YearDay() {
			p.Notes = append(p.Notes, Note{Code: PastMidnight, Text: q.Call.Format(time.DateOnly)})
		}
	}
	p.Cautions = []Caution{NotEaten, Allergens, Advertising}
	for _, l := range p.Lights {
		if l.Hot && !slices.Contains(p.Cautions, HotLamp) {
			p.Cautions = append([]Caution{HotLamp}, p.Cautions...)
		}
	}
	if !p.Now.IsZero() {
		p.Next = next(p)
	}
}

// cautions are what a job's things bring with them.
func (d *day) cautions(j *job, p *Plan) {
	add := func(c Caution) {
		if !slices.Contains(j.shot.Cautions, c) {
			j.shot.Cautions = append(j.shot.Cautions, c)
		}
	}
	for i := range j.dish.Things {
		t := &j.dish.Things[i]
		switch {
		case t.StandIn != "" && t.Pour == nil:
		case t.Pour != nil, t.Drizzle != nil:
			add(Mains)
		case t.Scoop != nil && t.Scoop.Freeze:
			add(DeepFrozen)
			if s, ok := coldest(d.brief.Freezers); ok && (s.DryIce || s.TempC <= -50) {
				add(DryIce)
			}
		case t.Drink != nil:
			add(GlassShock)
			if t.Drink.AlcoholPercent > 20 {
				add(Alcohol)
			}
		case t.Bottle != nil:
			add(GlassShock)
			if t.Bottle.Chill == "freezer" {
				add(BottleBursts)
			}
		case t.Cheese != nil:
			add(HotBoard)
			if t.Cheese.Favour > 0 {
				add(Favoured)
			}
		case t.Bowl != nil:
			add(HotBoard)
		}
	}
}

func roundTo(v, step float64) float64 {
	n := v / step
	return step * float64(int(n+0.5))
}

// next lists what the next twenty minutes ask for.
func next(p *Plan) []Step {
	var out []Step
	until := p.Now.Add(20 * time.Minute)
	for _, t := range p.Tasks {
		// What a store does alone and has begun asks for nothing.
		if !t.End.Before(p.Now) && t.Start.Before(until) && (t.Hand > 0 || !t.Start.Before(p.Now)) {
			at := t.Start
			if at.Before(p.Now) {
				at = p.Now
			}
			out = append(out, Step{At: at, What: string(t.What), Shot: t.Shot, Thing: t.Thing})
		}
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		if !s.Done && s.At.Before(until) && s.End.After(p.Now) {
			out = append(out, Step{At: s.At, What: string(ShotTask), Shot: s.Number})
		}
	}
	slices.SortStableFunc(out, func(a, b Step) int { return a.At.Compare(b.At) })
	return out
}

// text is a date as files write it.
func text(d Date) string {
	b, _ := d.MarshalText() // a date always has a text
	return string(b)
}
