package shoot

import (
	"slices"
	"time"
)

// laterRules are what must hold of the plan of the rest of a day: what has happened is in
// it, and what is left follows from it.
var laterRules = []struct {
	name  string
	check func(fail func(format string, args ...any), b *Brief, f *Facts, before, p *Plan)
}{
	{"nothing is planned for what has passed, or for what is done", ahead},
	{"nothing is moved up before it is ready", movedUp},
	{"takes and what is left of a stock decide what to prepare", counts},
	{"the room is the measured one, and events say whether they were taught", taught},
	{"a cup time corrects its batch or leaves it, and what is bought covers it", corrected},
	{"the next minutes are those of the plan", nextOnes},
	{"weights are held against what is declared", weighed},
	{"everything in the frame is bought, with tests, corrections and losses, in whole packs",
		func(fail func(string, ...any), b *Brief, _ *Facts, _, p *Plan) { covered(fail, b, p) }},
	{"stand-ins have no clock of the real thing",
		func(fail func(string, ...any), b *Brief, _ *Facts, _, p *Plan) { standIns(fail, b, p) }},
	{"every record is written and reads back",
		func(fail func(string, ...any), b *Brief, _ *Facts, _, p *Plan) { recordsReadBack(fail, b, p) }},
}

func ahead(fail func(string, ...any), b *Brief, f *Facts, _, p *Plan) {
	if !p.Now.Equal(f.Now) {
		fail("now is %v, and the facts say %v", p.Now, f.Now)
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		if slices.Contains(f.Done, s.Dish) && !s.Done {
			fail("%s is finished, and planned", s.Dish)
		}
		if !s.Done && s.At.Before(f.Now) {
			fail("%s is planned for %v, before now, %v", s.Dish, s.At, f.Now)
		}
	}
	for _, t := range p.Tasks {
		if t.End.Before(f.Now) {
			fail("%s until %v, before now, %v", t.What, t.End, f.Now)
		}
		if t.Shot > 0 && p.Shots[t.Shot-1].Done {
			fail("%s for %s, which is done", t.What, p.Shots[t.Shot-1].Dish)
		}
	}
	for _, k := range p.Purchases {
		for _, n := range k.Shots {
			if p.Shots[n-1].Done {
				fail("%s is bought for %s, which is done", k.What, p.Shots[n-1].Dish)
			}
		}
	}
}

// movedUp holds that what a store does alone, for a shot that comes sooner than the morning
// had it, was not to begin before now.
func movedUp(fail func(string, ...any), b *Brief, f *Facts, before, p *Plan) {
	for _, t := range p.Tasks {
		if t.Shot == 0 || t.Hand > 0 || !t.Start.Before(f.Now.Truncate(time.Minute)) {
			continue
		}
		s := &p.Shots[t.Shot-1]
		k := slices.IndexFunc(before.Shots, func(o Shot) bool { return o.Dish == s.Dish })
		if s.Units.Taken == 0 && s.At.Before(before.Shots[k].At) {
			fail("%s is moved up to %v, and %s from %v needs what has passed", s.Dish, s.At, t.What, t.Start)
		}
	}
}

func counts(fail func(string, ...any), b *Brief, f *Facts, _, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		good, taken := 0, 0
		for _, t := range f.Takes {
			if t.Dish == s.Dish {
				taken++
				if t.Good {
					good++
				}
			}
		}
		if s.Units.Good != good || s.Units.Taken != taken {
			fail("%s: %d good of %d, and the facts have %d of %d", s.Dish, s.Units.Good, s.Units.Taken, good, taken)
		}
		d, _, _ := b.find(s.Dish, "", "")
		if good >= d.Wanted && !s.Done {
			fail("%s has its %d good takes, and is planned", s.Dish, d.Wanted)
		}
		for _, r := range f.RanOut {
			if r.Dish == s.Dish && s.Units.Prepare > r.Left {
				fail("%s: %d units of %d %s", s.Dish, s.Units.Prepare, r.Left, r.Thing)
			}
		}
		if s.Units.Prepare < s.Units.Need && !s.Done && !has(s.Notes, UnitsLimited) && !has(s.Notes, NoUnitFits) && !has(s.Notes, CannotStand) && !has(s.Notes, HardlyStands) {
			fail("%s: %d of %d units, unsaid", s.Dish, s.Units.Prepare, s.Units.Need)
		}
	}
}

func taught(fail func(string, ...any), b *Brief, f *Facts, _, p *Plan) {
	if r := f.Room; r != nil && (!p.Air.Measured || p.Air.TempC.Likely != r.TempC || p.Air.RHPercent.Likely != r.RHPercent) {
		fail("measured %+v, planned with %+v", *r, p.Air)
	}
	for i := range p.Shots {
		for _, t := range p.Shots[i].Things {
			for _, e := range t.Events {
				kind := slices.ContainsFunc(f.Seen, func(q Seen) bool {
					_, of, _ := b.find(q.Dish, q.Thing, "")
					fog := of.Drink != nil || of.Bottle != nil
					return of.kinds()[0] == t.Kind || fog && (t.Kind == "iced_drink" || t.Kind == "bottle")
				})
				if e.Taught != kind {
					fail("%s, %s: taught %v, and of its kind was something seen: %v", p.Shots[i].Dish, e.Key, e.Taught, kind)
				}
			}
		}
	}
}

func corrected(fail func(string, ...any), b *Brief, f *Facts, _, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		for k := range s.Things {
			q := s.Things[k].Pour
			if q == nil {
				continue
			}
			timed := slices.ContainsFunc(f.Cups, func(c CupTimes) bool { return c.Dish == s.Dish && c.Thing == s.Things[k].Name })
			if timed != (q.Corrected != nil) {
				fail("%s: timed %v, corrected %+v", s.Dish, timed, q.Corrected)
			}
			if !timed || q.Corrected == nil || q.Corrected.Leave || s.Done || s.Units.Prepare == 0 {
				continue
			}
			c, bought, used := q.Corrected, 0.0, 0.0
			for _, o := range p.Purchases {
				if o.What == c.Add {
					bought += o.Grams
				}
			}
			for _, part := range q.Blend {
				if part.Name == c.Add {
					used = part.Grams*float64(q.Batches) + c.Grams
				}
			}
			if used == 0 || bought < used {
				fail("%s: %g g of %s go in and %g g are added, of %g g bought", s.Dish, used-c.Grams, c.Add, c.Grams, bought)
			}
		}
	}
}

func nextOnes(fail func(string, ...any), b *Brief, f *Facts, _, p *Plan) {
	for i, n := range p.Next {
		if n.At.Before(f.Now) && n.What != string(ShotTask) || n.At.After(f.Now.Add(20*time.Minute)) || i > 0 && n.At.Before(p.Next[i-1].At) {
			fail("next is %s at %v, and it is %v", n.What, n.At, f.Now)
		}
		known := n.What == string(ShotTask) && !p.Shots[n.Shot-1].Done
		for _, t := range p.Tasks {
			known = known || string(t.What) == n.What && t.Shot == n.Shot && t.Thing == n.Thing
		}
		if !known {
			fail("next is %+v, which is not in the plan", n)
		}
	}
}

func weighed(fail func(string, ...any), b *Brief, f *Facts, _, p *Plan) {
	for _, w := range f.Weights {
		_, t, _ := b.find(w.Dish, w.Thing, "")
		i := slices.IndexFunc(p.Shots, func(s Shot) bool { return s.Dish == w.Dish })
		told := slices.ContainsFunc(p.Shots[i].Weights, func(o Weight) bool { return o.Thing == w.Thing && o.Grams == w.Grams && o.Declared == t.Grams })
		if told != t.Advertised {
			fail("%s of %s weighed %g g, told %v", w.Thing, w.Dish, w.Grams, told)
		}
	}
}
