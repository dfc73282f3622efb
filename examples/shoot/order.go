package shoot

import (
	"cmp"
	"slices"
	"time"

	"example.org/honestplate"
)

// A job is a dish on its way into the plan.
type job struct {
	dish   *Dish
	field  string // of the dish in the brief, for errors
	shot   Shot
	drafts []draft
	buys   []Purchase
	kit    []Kit
	// limits are the most units that something allows, with what it is.
	limits []limit
	// stands is the share of units that show the picture as long as they must; 1 where
	// they surely do.
	stands float64
	rate   float64 // what the success rate is multiplied by: the stands of an earlier pass
	// weights are those of the joint runs; all clocks of a plan have the same.
	weights []float64
	// was is the shot as the morning planned it, of a day that has begun.
	was *Shot
	// every is how often a unit comes on the set.
	every time.Duration
	// build is how long one pair of hands builds one unit of the thing called built.
	build time.Duration
	built string
}

type limit struct {
	units int
	by    string
}

// keepUp is how often a unit can be made, where each is built or baked while the shot goes
// on: by no more pairs of hands, and no faster than the oven, than there are. It returns
// the longer of that and of how often one is wanted, with what it hangs on, and drafts who
// builds.
func (d *day) keepUp(j *job, wanted time.Duration) (every time.Duration, by string) {
	every, by = wanted, "slot"
	for i := range j.dish.Things {
		t := &j.dish.Things[i]
		for _, p := range t.Prep {
			oven, ok := hotEnough(d.brief.Ovens, p.OvenC)
			if !p.Each || p.OvenC == 0 || !ok {
				continue
			}
			if load := minutes(p.Minutes) / time.Duration(oven.Units); load > every {
				every, by = load, oven.Name
			}
		}
	}
	if j.build == 0 {
		return every, by
	}
	builders := min(int((j.build+every-1)/every), cmp.Or(d.brief.Hands, 2))
	if each := j.build / time.Duration(builders); each > every {
		every, by = each, "hands"
	}
	for range builders {
		j.drafts = append(j.drafts, draft{through: true, task: Task{What: Assemble, Thing: j.built, Units: 1}, ahead: carry, lasts: j.build, hands: true})
	}
	return every, by
}

// slot is the time that the dish has on the set.
func (d *Dish) slot() time.Duration { return minutes(d.SlotMinutes) }

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// order sorts the jobs. The rule: a place in the order that a dish asks for comes first;
// then a fixed order is the brief's; else what holds longest comes first, to settle the
// light on what waits, and what goes fastest when everything else is proven. Ties keep
// the brief's order. It is a rule, not an optimum: a brief can overrule it.
func (b *Brief) order(jobs []*job) {
	hold := func(j *job) honestplate.Moment { return j.shot.Picture.Length() }
	if b.Order != "fixed" {
		slices.SortStableFunc(jobs, func(x, y *job) int {
			switch {
			case hold(y).Before(hold(x)):
				return -1
			case hold(x).Before(hold(y)):
				return 1
			}
			return 0
		})
	}
	// Wanted places: the dishes that name one are put there, the others fill the rest.
	var placed, free []*job
	for _, j := range jobs {
		if j.dish.Order > 0 {
			placed = append(placed, j)
		} else {
			free = append(free, j)
		}
	}
	slices.SortStableFunc(placed, func(x, y *job) int { return cmp.Compare(x.dish.Order, y.dish.Order) })
	out := jobs[:0:0]
	for len(placed) > 0 || len(free) > 0 {
		if len(placed) > 0 && (placed[0].dish.Order <= len(out)+1 || len(free) == 0) {
			out, placed = append(out, placed[0]), placed[1:]
			continue
		}
		out, free = append(out, free[0]), free[1:]
	}
	copy(jobs, out)
}

// days lays out the dates of the brief.
func (b *Brief) days(zone *time.Location) []PlanDay {
	out := make([]PlanDay, len(b.Days))
	for i, d := range b.Days {
		p := &out[i]
		p.Date, p.Call, p.FirstShot, p.Wrap = d.Date, d.at(d.Call, zone), d.at(d.FirstShot, zone), d.at(d.Wrap, zone)
		if !d.Lunch.IsZero() {
			p.LunchFrom = d.at(d.Lunch, zone)
			p.LunchTo = p.LunchFrom.Add(minutes(cmp.Or(d.LunchMinutes, 45)))
		}
		_, before := p.Call.Add(-18 * time.Hour).Zone()
		_, after := p.Wrap.Zone()
		p.Shift = time.Duration(after-before) * time.Second
		if p.Shift != 0 {
			p.ShiftAt, _ = p.Wrap.ZoneBounds()
		}
		p.Ends = p.FirstShot
	}
	return out
}

// ready is when a job can begin, of a day that has begun: as the morning planned it, since
// work was begun for that, or prepared from now on, whichever is sooner. What is on the set
// goes on.
func (j *job) ready(now time.Time) time.Time {
	if j.was == nil || j.shot.Units.Taken > 0 {
		return now
	}
	var longest time.Duration
	for _, d := range j.drafts {
		longest = max(longest, d.ahead+d.lasts+d.heats)
	}
	soonest := now.Add(longest + time.Minute - 1).Truncate(time.Minute)
	return earlier(j.was.At, soonest)
}

// slot is the time that a job has on the set: the dish's; of one that is on it what the
// morning left of that, and no less than the units to come need.
func (j *job) slot(now time.Time) time.Duration {
	all := j.dish.slot()
	if j.was == nil || j.shot.Units.Taken == 0 {
		return all
	}
	left := j.was.End.Sub(now).Truncate(time.Minute)
	need := (time.Duration(j.shot.Units.Prepare)*j.every + time.Minute - 1).Truncate(time.Minute)
	return min(all, max(left, need, time.Minute))
}

// place gives every job its slot. Jobs are taken in their order; one that names its day
// goes there, another to the first day on which it ends before the wrap, or, where it
// fits on none, to the last. A slot does not run into lunch: it begins after it, nor into
// one of another day that is late. What is done keeps no slot, nothing begins before now,
// and nothing before it can be ready.
func (b *Brief) place(jobs []*job, days []PlanDay, now time.Time) {
	change := minutes(cmp.Or(b.ChangeoverMinutes, 10))
	next := make([]time.Time, len(days))
	for i := range days {
		next[i] = days[i].FirstShot
		if now.After(next[i]) {
			next[i] = now.Add(time.Minute - 1).Truncate(time.Minute).In(next[i].Location())
		}
	}
	var placed []*job
	for _, j := range jobs {
		if j.shot.Done {
			continue
		}
		slot := j.slot(now)
		from := func(day int) time.Time {
			at := next[day]
			if ready := j.ready(now); ready.After(at) {
				at = ready.In(at.Location())
			}
			at = afterLunch(at, slot, days[day])
			for moved := true; moved; { // a day that is late runs into the next one
				moved = false
				for _, o := range placed {
					if at.Before(o.shot.End.Add(change)) && o.shot.At.Before(at.Add(slot)) {
						at, moved = afterLunch(o.shot.End.Add(change), slot, days[day]), true
					}
				}
			}
			return at
		}
		day := len(days) - 1
		for i := range days {
			if j.dish.Day == i+1 || j.dish.Day == 0 && !from(i).Add(slot).After(days[i].Wrap) {
				day = i
				break
			}
		}
		at := from(day)
		j.shot.Day, j.shot.At, j.shot.End = day, at, at.Add(slot)
		next[day] = j.shot.End
		placed = append(placed, j)
		days[day].Ends = j.shot.End
		if over := j.shot.End.Sub(days[day].Wrap); over > 0 {
			j.shot.Notes = append(j.shot.Notes, Note{Code: Overtime, Value: honestplate.Some(over.Minutes())})
		}
	}
	// What is done stands where it stood, so that numbers stay what they were; the others
	// share the rest of the places by their time.
	var left []*job
	for _, j := range jobs {
		if !j.shot.Done {
			left = append(left, j)
		}
	}
	slices.SortStableFunc(left, func(x, y *job) int {
		return cmp.Or(cmp.Compare(x.shot.Day, y.shot.Day), x.shot.At.Compare(y.shot.At))
	})
	for i, j := range jobs {
		if !j.shot.Done {
			jobs[i], left = left[0], left[1:]
		}
	}
	for i, j := range jobs {
		j.shot.Number = i + 1
	}
}

// afterLunch moves a slot that would run into lunch behind it.
func afterLunch(at time.Time, slot time.Duration, d PlanDay) time.Time {
	if !d.LunchFrom.IsZero() && at.Before(d.LunchTo) && at.Add(slot).After(d.LunchFrom) {
		return d.LunchTo
	}
	return at
}
