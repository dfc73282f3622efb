package shoot

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/rheology/viscometer"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/light"
)

// A day is what all dishes of a plan share.
type day struct {
	brief *Brief
	facts *Facts // never nil
	air   thermal.Air
	lamps []light.Lamp
	// lesson is what the day has taught so far.
	lesson thermal.Lesson
	// seen are the kinds of which something was seen.
	seen map[string]bool
	// clocks are those that were asked for, by the thing they are of; trays the pieces that
	// were chosen, by the thing and the units wanted.
	clocks map[any]any
	trays  map[trayKey]*PiecesPlan
}

// Plan works the brief out from what has happened so far; nil facts are the morning's.
// It is a pure function: the same brief and facts give the same plan, byte for byte.
// Its errors name the field of the brief, or of the facts under facts; there is one for
// every dish that cannot be planned, joined.
func (b *Brief) Plan(facts *Facts) (*Plan, error) {
	d := &day{brief: b, facts: facts, clocks: map[any]any{}, trays: map[trayKey]*PiecesPlan{}}
	if facts == nil {
		d.facts = &Facts{}
	}
	if err := d.check(); err != nil {
		return nil, err
	}
	zone, err := b.Place.zone()
	if err != nil {
		return nil, err
	}
	p := &Plan{Title: b.Title, Client: b.Client, About: b.About, Place: b.Place, People: b.People, Days: b.days(zone)}
	if !d.facts.Now.IsZero() {
		p.Now = d.facts.Now.In(zone)
	}
	jobs, err := d.jobs(p)
	if err != nil {
		return nil, err
	}
	if p.Now.IsZero() || !d.asInTheMorning(jobs, zone) {
		b.order(jobs)
	}
	b.place(jobs, p.Days, p.Now)
	tasks, notes := b.tasksOf(jobs, p.Days, p.Now)
	tasks, more := b.stores(tasks, jobs, p.Days, p.Now)
	p.Tasks, p.Notes = tasks, append(notes, more...)
	d.finish(p, jobs)
	return p, p.Check()
}

// jobs works the room, the light, what was learned and all dishes out.
func (d *day) jobs(p *Plan) (jobs []*job, err error) {
	if p.Air, err = d.room(); err != nil {
		return nil, in("room", roomNames.of(err))
	}
	if p.Lights, err = d.lights(); err != nil {
		return nil, err
	}
	if err := d.learn(); err != nil {
		return nil, err
	}
	jobs = make([]*job, len(d.brief.Dishes))
	var faults []error
	for i := range jobs {
		if jobs[i], err = d.job(&d.brief.Dishes[i], fmt.Sprintf("dishes[%d]", i)); err != nil {
			faults = append(faults, err)
		}
	}
	return jobs, errors.Join(faults...)
}

// asInTheMorning puts the jobs of a day that has begun into the order of its morning, and
// notes when each was planned for: work was begun for that. It reports false where the
// morning, with what was known then, had no plan.
func (d *day) asInTheMorning(jobs []*job, zone *time.Location) bool {
	m := &day{brief: d.brief, facts: &Facts{}, clocks: map[any]any{}, trays: d.trays}
	if d.facts.Room == nil && len(d.facts.Seen) == 0 {
		m.clocks = d.clocks // nothing that a clock hangs on is known better
	}
	then, err := m.jobs(new(Plan))
	if err != nil {
		return false
	}
	d.brief.order(then)
	d.brief.place(then, d.brief.days(zone), time.Time{})
	for _, j := range jobs {
		k := slices.IndexFunc(then, func(o *job) bool { return o.dish == j.dish })
		j.was = &then[k].shot
	}
	slices.SortStableFunc(jobs, func(x, y *job) int { return cmp.Compare(x.was.Number, y.was.Number) })
	return true
}

// check finds what facts say about things that the brief does not have.
func (d *day) check() error {
	for i, s := range d.facts.Seen {
		if _, _, err := d.brief.find(s.Dish, s.Thing, fmt.Sprintf("facts.seen[%d]", i)); err != nil {
			return err
		}
	}
	for i, s := range d.facts.Cups {
		field := fmt.Sprintf("facts.cups[%d]", i)
		_, t, err := d.brief.find(s.Dish, s.Thing, field)
		if err != nil {
			return err
		}
		if t == nil || t.Pour == nil || len(t.Pour.Liquids) != 2 {
			return &honestplate.InputError{Field: field + ".thing", Got: fmt.Sprintf("%q", s.Thing), Want: "a pour that is blended of two liquids"}
		}
		if _, err := viscometer.CupNamed(s.Cup); err != nil {
			return &honestplate.InputError{Field: field + ".cup", Got: fmt.Sprintf("%q", s.Cup), Want: honestplate.Cause(err).(*honestplate.InputError).Want}
		}
	}
	for i, s := range d.facts.Takes {
		if _, _, err := d.brief.find(s.Dish, "", fmt.Sprintf("facts.takes[%d]", i)); err != nil {
			return err
		}
	}
	for i, s := range d.facts.Weights {
		if _, _, err := d.brief.find(s.Dish, s.Thing, fmt.Sprintf("facts.weights[%d]", i)); err != nil {
			return err
		}
	}
	for i, s := range d.facts.RanOut {
		if _, _, err := d.brief.find(s.Dish, s.Thing, fmt.Sprintf("facts.ran_out[%d]", i)); err != nil {
			return err
		}
	}
	for i, s := range d.facts.Notes {
		if _, _, err := d.brief.find(s.Dish, "", fmt.Sprintf("facts.notes[%d]", i)); err != nil {
			return err
		}
	}
	for i, s := range d.facts.Done {
		if _, _, err := d.brief.find(s, "", fmt.Sprintf("facts.done[%d]", i)); err != nil {
			return err
		}
	}
	return nil
}

// job works one dish out, all but its time of day. Where not every unit shows the picture,
// or stands as long as it must, it is worked out again with that chance in the success rate.
func (d *day) job(dish *Dish, field string) (*job, error) {
	j, err := d.jobOf(dish, field, 1)
	if err != nil || j.stands >= SureShare || j.stands < leastStands {
		return j, err
	}
	return d.jobOf(dish, field, j.stands)
}

func (d *day) jobOf(dish *Dish, field string, stands float64) (*job, error) {
	j := &job{dish: dish, field: field, stands: 1, rate: stands}
	s := &j.shot
	s.Dish, s.About, s.Allergens = dish.Name, dish.About, dish.Allergens
	s.Editorial = dish.advertised() == "none"
	s.Done = slices.Contains(d.facts.Done, dish.Name)
	s.Said = d.facts.said(dish.Name)
	if err := d.countUnits(j); err != nil {
		return nil, err
	}
	var looks []shown
	for i := range dish.Things {
		t, at := &dish.Things[i], fmt.Sprintf("%s.things[%d]", field, i)
		planned, l, err := d.thing(j, t, at)
		if err != nil {
			return nil, in(at, err)
		}
		s.Things = append(s.Things, planned)
		if l != nil {
			looks = append(looks, *l)
		}
	}
	s.Picture = joint(looks, j.weights)
	d.mustStand(j, looks)
	d.mayShow(j)
	s.Picture.Remedies = d.remedies(j)
	d.limit(j)
	j.cut()
	for i := range dish.Things {
		if s.Units.Prepare == 0 {
			break
		}
		drafts, notes := dish.Things[i].own(s.Units.Prepare, d.brief)
		j.drafts = append(j.drafts, drafts...)
		s.Notes = append(s.Notes, notes...)
	}
	if err := d.weigh(j); err != nil {
		return nil, err
	}
	return j, d.chance(j)
}

// cut brings what was drafted for all units that are needed down to those that are
// prepared: no unit, no task and nothing bought for it.
func (j *job) cut() {
	n := j.shot.Units.Prepare
	for i := range j.drafts {
		j.drafts[i].task.Units = min(j.drafts[i].task.Units, n)
	}
	if n == 0 {
		j.drafts, j.buys = nil, nil
	}
}

// heroes is the question of how many units, as portion asks it.
func (d *day) heroes(dish *Dish, stands float64) (h portion.Heroes, good, taken int, err error) {
	for _, t := range d.facts.Takes {
		if t.Dish == dish.Name {
			taken++
			if t.Good {
				good++
			}
		}
	}
	rate := dish.SuccessRate * stands
	h = portion.Heroes{SuccessRate: rate, Wanted: max(dish.Wanted-good, 0), Confidence: cmp.Or(d.brief.Confidence, 0.9), Correlation: dish.Together}
	if taken >= 5 || dish.Earlier != nil {
		// Takes of today speak for themselves; a stated rate counts as ten takes.
		h.SuccessRate, h.Good, h.Takes = 0, good, taken
		h.Prior = portion.Prior{A: 1 + 10*rate, B: 1 + 10*(1-rate)}
	}
	if e := dish.Earlier; e != nil {
		h.Prior, err = portion.Prior{}.After(e.Takes, e.Good, cmp.Or(e.Weight, 0.5))
	}
	return h, good, taken, err
}

// mostUnits is the most units of one dish that a plan counts: more is no plan.
const mostUnits = 400

// countUnits says how many units the wanted takes need.
func (d *day) countUnits(j *job) error {
	h, good, taken, err := d.heroes(j.dish, j.rate)
	if err != nil {
		return in(j.field, dishNames.of(err))
	}
	u := &j.shot.Units
	u.Wanted, u.Good, u.Taken, u.Confidence = j.dish.Wanted, good, taken, h.Confidence
	if h.Wanted == 0 {
		j.shot.Done = true
		return nil
	}
	n, err := h.Units()
	var outside *honestplate.RangeError
	if errors.As(err, &outside) && outside.Field == "Confidence" {
		return &honestplate.RefusedError{Field: j.field + ".wanted_takes", Kind: honestplate.ErrInfeasible,
			Reason: fmt.Sprintf("no number of units gives %d good takes with a chance of %g, the confidence of the brief; a million give %.2g", h.Wanted, outside.Value, outside.High),
			Advice: "lower wanted_takes, confidence or go_wrong_together, or raise success_rate"}
	}
	if err != nil {
		return in(j.field, dishNames.of(err))
	}
	u.Need = n
	if n > mostUnits {
		j.shot.Notes = append(j.shot.Notes, Note{Code: ManyUnits, Value: honestplate.Some(float64(n))})
		j.limits = append(j.limits, limit{mostUnits, "day"})
	}
	return nil
}

// limit cuts the units to what slot, stocks and stores allow.
func (d *day) limit(j *job) {
	s := &j.shot
	one := minutes(cmp.Or(j.dish.TakeMinutes, 2))
	if l := s.Picture.Length(); !l.Never && s.Picture.Sure && l.After < one {
		one = l.After
	}
	one = max(one, minutes(j.dish.LongestMinutes)) + minutes(cmp.Or(j.dish.SwapMinutes, 1))
	one, by := d.keepUp(j, one)
	j.every = one
	j.limits = append(j.limits, limit{int(j.dish.slot() / one), by})
	for i := range j.dish.Things {
		t := &j.dish.Things[i]
		if t.Stock.Given {
			j.limits = append(j.limits, limit{int(t.Stock.Value), "stock of " + t.Name})
		}
		for _, r := range d.facts.RanOut {
			if r.Dish == j.dish.Name && r.Thing == t.Name {
				j.limits = append(j.limits, limit{r.Left, "stock of " + t.Name})
			}
		}
	}
	s.Units.Prepare, s.Units.LimitedBy = unitsOf(s.Units.Need, j.limits)
	if s.Units.Prepare > 1 && !s.Picture.Always {
		if l := s.Picture.Length(); !l.Never && l.After < j.dish.slot() {
			s.Swap = max(one, time.Second)
		}
	}
}

// chance says how likely the prepared units give the wanted takes.
func (d *day) chance(j *job) error {
	s := &j.shot
	if s.Done {
		s.Units.Chance = 1
		return nil
	}
	if s.Units.Prepare == 0 {
		if s.Units.LimitedBy != "picture" {
			s.Notes = append(s.Notes, Note{Code: NoUnitFits, Text: s.Units.LimitedBy})
		}
		return nil
	}
	h, _, _, err := d.heroes(j.dish, j.rate)
	if err != nil {
		return in(j.field, dishNames.of(err))
	}
	c, err := h.Chance(s.Units.Prepare)
	if err != nil {
		return in(j.field, dishNames.of(err))
	}
	s.Units.Chance = c
	if s.Units.Prepare < s.Units.Need {
		s.Notes = append(s.Notes, Note{Code: UnitsLimited, Value: honestplate.Some(c), Text: s.Units.LimitedBy})
	}
	return nil
}
