package shoot

import (
	"cmp"
	"slices"
	"time"

	"example.org/honestplate"
)

// A draft is a task before it has its time: it must have ended some time before the
// shot begins, and lasts.
type draft struct {
	task  Task
	ahead time.Duration // from its end to the shot
	lasts time.Duration
	hands bool          // it needs a pair of hands all the while
	heats time.Duration // what its oven needs before
	// through goes on until the slot ends: units leave the oven one by one, and lasts is
	// what the first of them needs before the slot begins.
	through bool
}

// tasksOf gives the drafts of all jobs their times, and the hands that do them.
//
// The rule: what must end latest is placed first, as late as it may be, with the pair of
// hands that lets it end latest; of several the first. Where none is free in time the
// task starts sooner. It is a rule, not an optimum.
func (b *Brief) tasksOf(jobs []*job, days []PlanDay, now time.Time) ([]Task, []Note) {
	type placed struct {
		draft
		end time.Time
		day int
	}
	var all []placed
	for _, j := range jobs {
		if j.shot.Done {
			continue
		}
		for _, d := range j.drafts {
			d.task.Shot = j.shot.Number
			end := j.shot.At.Add(-d.ahead)
			if d.through {
				end, d.lasts = j.shot.End, d.lasts+j.shot.End.Sub(j.shot.At)
			}
			all = append(all, placed{d, end, j.shot.Day})
		}
	}
	slices.SortStableFunc(all, func(x, y placed) int { return y.end.Compare(x.end) })
	hands := cmp.Or(b.Hands, 2)
	free := make([]time.Time, hands) // each pair of hands is free before this
	for i := range free {
		free[i] = days[len(days)-1].Wrap.Add(48 * time.Hour)
	}
	var tasks []Task
	var notes []Note
	for _, p := range all {
		t := p.task
		t.End = p.end.Truncate(time.Minute)
		if p.hands {
			best := 0
			for h := range free {
				if end := earlier(free[h], t.End); end.After(earlier(free[best], t.End)) {
					best = h
				}
			}
			t.Hand, t.End = best+1, earlier(free[best], t.End)
			free[best] = t.End.Add(-p.lasts)
		}
		t.Start = t.End.Add(-p.lasts)
		t.Early = t.Start.Before(days[p.day].Call)
		if !now.IsZero() && t.End.Before(now) {
			continue // it is done, or too late
		}
		tasks = append(tasks, t)
	}
	slices.SortStableFunc(tasks, func(x, y Task) int {
		return cmp.Or(x.Start.Compare(y.Start), cmp.Compare(x.Shot, y.Shot), x.End.Compare(y.End))
	})
	for i, d := range days {
		late := d.Call
		for _, t := range tasks {
			if t.Hand > 0 && t.Early && t.Start.Before(late) && jobDay(jobs, t.Shot) == i {
				late = t.Start
			}
		}
		if early := d.Call.Sub(late); early > 30*time.Minute && needsMoreHands(tasks, jobs, i, hands) {
			notes = append(notes, Note{Code: HandsShort, Value: honestplate.Some(float64(hands + 1)), Second: honestplate.Some(float64(hands)), Text: d.Call.Format(time.DateOnly)})
		}
	}
	return tasks, notes
}

// needsMoreHands reports whether every pair of hands has work before the call.
func needsMoreHands(tasks []Task, jobs []*job, day, hands int) bool {
	busy := map[int]bool{}
	for _, t := range tasks {
		if t.Hand > 0 && t.Early && jobDay(jobs, t.Shot) == day {
			busy[t.Hand] = true
		}
	}
	return len(busy) == hands
}

func jobDay(jobs []*job, number int) int {
	for _, j := range jobs {
		if j.shot.Number == number {
			return j.shot.Day
		}
	}
	return 0
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

// stores adds what freezers, fridges and ovens need of their own: verified the evening
// before, switched on in time, preheated. And it holds their capacity against what is
// in them at once.
func (b *Brief) stores(tasks []Task, jobs []*job, days []PlanDay, now time.Time) ([]Task, []Note) {
	var out []Task
	var notes []Note
	for _, s := range append(slices.Clone(b.Freezers), b.Fridges...) {
		first, most := usage(s.Name, tasks, jobs)
		if first.IsZero() {
			continue
		}
		if most > s.Units {
			notes = append(notes, Note{Code: StoreFull, Value: honestplate.Some(float64(most)), Second: honestplate.Some(float64(s.Units)), Text: s.Name})
		}
		cool := minutes(cmp.Or(s.CoolDownMin, 240))
		evening := eveningBefore(first)
		on := earlier(first.Add(-cool), evening.Add(-cool))
		start := SwitchOn
		if s.DryIce {
			start = DryIced
		}
		for _, t := range []Task{
			{What: start, Store: s.Name, TempC: s.TempC, HasTemp: true, Start: on, End: on, Early: true},
			{What: Verify, Store: s.Name, TempC: s.TempC, HasTemp: true, Start: evening, End: evening, Early: true},
		} {
			if now.IsZero() || t.End.After(now) {
				out = append(out, t)
			}
		}
	}
	for _, o := range b.Ovens {
		first, most := usage(o.Name, tasks, jobs)
		if first.IsZero() {
			continue
		}
		if most > o.Units {
			notes = append(notes, Note{Code: StoreFull, Value: honestplate.Some(float64(most)), Second: honestplate.Some(float64(o.Units)), Text: o.Name})
		}
		heat := o.heats()
		if now.IsZero() || first.After(now) {
			out = append(out, Task{What: Preheat, Store: o.Name, TempC: o.TempC, HasTemp: true, Start: first.Add(-heat), End: first, Early: first.Add(-heat).Before(days[0].Call)})
		}
	}
	out = append(out, tasks...)
	slices.SortStableFunc(out, func(x, y Task) int { return x.Start.Compare(y.Start) })
	return out, notes
}

// eveningBefore is six in the evening of the date before.
func eveningBefore(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day()-1, 18, 0, 0, 0, t.Location())
}

// usage is when a store is first used, and the most units in it at once. What is put in
// stays until its shot ends: units come out one by one, and the last stays longest. An
// oven holds what is baked only while it bakes.
func usage(store string, tasks []Task, jobs []*job) (first time.Time, most int) {
	type edge struct {
		at    time.Time
		units int
	}
	var edges []edge
	for _, t := range tasks {
		if t.Store != store {
			continue
		}
		if first.IsZero() || t.Start.Before(first) {
			first = t.Start
		}
		until := t.End
		if t.What != Bake {
			for _, j := range jobs {
				if j.shot.Number == t.Shot {
					until = j.shot.End
				}
			}
		}
		edges = append(edges, edge{t.Start, t.Units}, edge{until, -t.Units})
	}
	slices.SortStableFunc(edges, func(x, y edge) int { return cmp.Or(x.at.Compare(y.at), cmp.Compare(x.units, y.units)) })
	in := 0
	for _, e := range edges {
		in += e.units
		most = max(most, in)
	}
	return first, most
}

// coldest returns the coldest store of a list, or false.
func coldest(stores []Store) (Store, bool) {
	if len(stores) == 0 {
		return Store{}, false
	}
	return slices.MinFunc(stores, func(x, y Store) int { return cmp.Compare(x.TempC, y.TempC) }), true
}

// atLeast returns the warmest store that is as cold as wanted, else the coldest and false.
func atLeast(stores []Store, tempC float64) (Store, bool) {
	var best *Store
	for i := range stores {
		if s := &stores[i]; s.TempC <= tempC && (best == nil || s.TempC > best.TempC) {
			best = s
		}
	}
	if best != nil {
		return *best, true
	}
	s, _ := coldest(stores)
	return s, false
}

// own are the drafts of a thing's own steps.
func (t *Thing) own(units int, b *Brief) ([]draft, []Note) {
	var out []draft
	var notes []Note
	for _, p := range t.Prep {
		lasts, through := minutes(p.Minutes), p.Each && p.OvenC > 0
		if p.Each && !through {
			lasts *= time.Duration(units)
		}
		d := draft{through: through, task: Task{What: OwnStep, Text: p.What, Thing: t.Name, Who: p.Who}, ahead: minutes(p.Ahead), lasts: lasts, hands: true}
		if p.OvenC > 0 {
			oven, ok := hotEnough(b.Ovens, p.OvenC)
			if !ok {
				notes = append(notes, Note{Code: NoOven, Thing: t.Name, Value: honestplate.Some(p.OvenC)})
			}
			if ok {
				d.heats = oven.heats()
			}
			d.task.What, d.task.Store, d.task.TempC, d.task.HasTemp, d.task.Units = Bake, oven.Name, p.OvenC, true, min(units, max(oven.Units, 1))
		}
		out = append(out, d)
	}
	return out, notes
}

// heats is how long an oven takes to be hot.
func (o Oven) heats() time.Duration { return minutes(cmp.Or(o.PreheatMin, 20)) }

func hotEnough(ovens []Oven, tempC float64) (Oven, bool) {
	for _, o := range ovens {
		if o.TempC >= tempC {
			return o, true
		}
	}
	return Oven{}, false
}
