package shoot

import (
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

// ordered holds the order of the shots against the stated rule: a place that a dish asks
// for, then the brief's order where it is fixed, else what holds longest first.
func ordered(fail func(string, ...any), b *Brief, p *Plan) {
	if len(b.Days) > 1 {
		return // a day that a dish asks for, or that is full, comes before the order
	}
	var free []*Shot
	wanted := 0 // the place that the shot before asked for
	for i := range p.Shots {
		d, _, _ := b.find(p.Shots[i].Dish, "", "")
		switch {
		case d.Order == 0:
			free = append(free, &p.Shots[i])
		case i+1 > d.Order && (wanted == 0 || wanted > d.Order):
			fail("%s is number %d and asked for %d, behind one that did not ask for that", d.Name, i+1, d.Order)
		case i+1 < d.Order && len(free) < freeDishes(b):
			fail("%s is number %d and asked for %d, before one that asked for none", d.Name, i+1, d.Order)
		}
		wanted = d.Order
	}
	at := func(s *Shot) int {
		return slices.IndexFunc(b.Dishes, func(d Dish) bool { return d.Name == s.Dish })
	}
	for i := 1; i < len(free); i++ {
		x, y := free[i-1], free[i]
		longer := x.Picture.Length().Before(y.Picture.Length())
		if b.Order == "fixed" && at(x) > at(y) || b.Order != "fixed" && (longer || x.Picture.Length() == y.Picture.Length() && at(x) > at(y)) {
			fail("%s (%v) comes before %s (%v), order %q", x.Dish, x.Picture.Length(), y.Dish, y.Picture.Length(), b.Order)
		}
	}
}

// freeDishes counts the dishes that ask for no place.
func freeDishes(b *Brief) (n int) {
	for i := range b.Dishes {
		if b.Dishes[i].Order == 0 {
			n++
		}
	}
	return n
}

// nineInTen is the share of the runs that must show a picture, written once more: the
// plan's own is under test.
const nineInTen = 0.9

// A boundary is an event that opens or closes what a thing shows, with its runs.
type boundary struct {
	key    string
	event  thermal.Event
	runs   []honestplate.Moment
	opens  bool
	closes bool
}

// boundaries asks thermal itself for a thing's clock, and writes down once more what each
// wish begins and ends with. Nil for what does not change.
func boundaries(d *day, t *Thing) (out []boundary, err error) {
	if t.StandIn != "" {
		return nil, nil
	}
	var kept thermal.Runs
	ask := func(key, event string, opens, closes bool) {
		out = append(out, boundary{key, kept.Event(event), kept.At(event), opens, closes})
	}
	fog := func(wanted string) {
		ask("haze", "haze", wanted == "haze", wanted == "clear")
		ask("white", "opaque", false, wanted == "haze")
		ask("beads", "beads", wanted == "beads", false)
		ask("runs", "runs", false, wanted == "beads")
	}
	switch {
	case t.Bowl != nil:
		clock, e := d.hotDish(t.Bowl).Clock(d.air, d.lamps...)
		kept, err = clock.Kept, e
		ask("steam ends", "steam ends", false, t.Bowl.Wanted != "hot")
		ask("cool", "cool", false, t.Bowl.Wanted == "hot")
	case t.Drink != nil:
		clock, e := d.glass(t.Drink).Clock(d.air, d.lamps...)
		kept, err = clock.Kept, e
		if fog(t.Drink.Wanted); t.Drink.Ice != nil {
			ask("ice gone", "ice gone", false, true)
		}
	case t.Bottle != nil:
		clock, e := d.vessel(t.Bottle).Clock(d.air, d.lamps...)
		kept, err = clock.Kept, e
		fog(t.Bottle.Wanted)
	case t.Scoop != nil:
		s, _, _ := d.ball(t.Scoop)
		clock, e := s.Clock(d.air, d.lamps...)
		kept, err = clock.Kept, e
		ask("soft", "softens", false, true)
		ask("drip", "drips", false, true)
		ask("slump", "slumps", false, true)
		if t.Scoop.Rests == "" || t.Scoop.Rests == "plate" {
			ask("puddle", "puddle", false, true)
		}
	case t.Soft != nil:
		clock, e := d.piece(t.Soft).Clock(d.air, d.lamps...)
		kept, err = clock.Kept, e
		ask("soft", "softens", false, true)
		ask("runny", "runs", false, true)
	case t.Cheese != nil:
		clock, e := t.pull().Clock(d.air, d.lamps...)
		kept, err = clock.Kept, e
		ask("strings", "opens", true, false)
		ask("sets", "closes", false, true)
	}
	return out, err
}

// jointRuns counts, run by run and moment by moment, how many runs show everything in the
// frame, and holds the plan's window and chance against it.
func jointRuns(fail func(string, ...any), b *Brief, p *Plan) {
	d := &day{brief: b, facts: &Facts{}}
	if _, err := d.room(); err != nil {
		fail("%v", err)
		return
	}
	if _, err := d.lights(); err != nil {
		fail("%v", err)
		return
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		dish, _, _ := b.find(s.Dish, "", "")
		var all []boundary
		changes := false
		for k := range dish.Things {
			own, err := boundaries(d, &dish.Things[k])
			if err != nil {
				fail("%s: %v", dish.Things[k].Name, err)
				return
			}
			changes = changes || len(own) > 0
			all = append(all, own...)
			if len(own) != len(s.Things[k].Events) {
				fail("%s, %s: %d events of %d", s.Dish, s.Things[k].Name, len(s.Things[k].Events), len(own))
				continue
			}
			for n, e := range s.Things[k].Events {
				o := own[n]
				if e.Key != o.key || e.When != o.event.Window || e.Opens != o.opens || e.Closes != o.closes {
					fail("%s, %s: %+v, and thermal has %s at %v", s.Dish, s.Things[k].Name, e, o.key, o.event.Window)
				}
				for r, reason := range e.Reasons {
					if decides := o.event.Decides[r]; reason.Input != decides.Input || reason.Share != decides.Share {
						fail("%s, %s: %s of %s, and %s decides", s.Dish, e.Key, reason.Input, s.Things[k].Name, decides.Input)
					}
				}
			}
		}
		if changes == s.Picture.Always {
			fail("%s always stands (%v), and things that change are in it (%v)", s.Dish, s.Picture.Always, changes)
		}
		if changes {
			counted(fail, s, all)
		}
	}
}

// counted holds a picture against a count of the runs that show it.
func counted(fail func(string, ...any), s *Shot, all []boundary) {
	runs := len(all[0].runs)
	shown := func(at time.Duration) float64 {
		n := 0
		for r := range runs {
			ok := true
			for _, e := range all {
				came := !e.runs[r].Never && e.runs[r].After <= at
				ok = ok && !(e.opens && !came) && !(e.closes && came)
			}
			if ok {
				n++
			}
		}
		return float64(n) / float64(runs)
	}
	moments := []time.Duration{0}
	for _, e := range all {
		for _, at := range e.runs {
			if (e.opens || e.closes) && !at.Never {
				moments = append(moments, at.After)
			}
		}
	}
	slices.Sort(moments)
	moments = slices.Compact(moments)
	best, longest, since := 0.0, time.Duration(-1), time.Duration(-1)
	forever := false
	for k, at := range moments {
		share := shown(at)
		best = max(best, share)
		if share < nineInTen-1e-9 {
			since = -1
			continue
		}
		if since < 0 {
			since = at
		}
		if k+1 == len(moments) {
			forever = true
		} else {
			longest = max(longest, moments[k+1]-since)
		}
	}
	q := &s.Picture
	if sure := longest >= 0 || forever; sure != q.Sure {
		fail("%s surely stands (%v), and the runs say %v", s.Dish, q.Sure, sure)
		return
	}
	if !q.Sure {
		if diff := q.Chance - best; diff > 1e-9 || diff < -1e-9 {
			fail("%s stands with %g at best, and the runs say %g", s.Dish, q.Chance, best)
		}
		return
	}
	if l := q.Length(); l.Never != forever || !forever && l.After != longest {
		fail("%s stands for %v, and the runs say %v (for ever %v)", s.Dish, l, longest, forever)
	}
	if got := shown(q.Best.After); q.Chance-got > 1e-9 || got < nineInTen-1e-9 {
		fail("%s stands with %g at %v, and the runs say %g", s.Dish, q.Chance, q.Best, got)
	}
	if share := shown(q.From.After); share < nineInTen-1e-9 {
		fail("%s stands from %v in %g of the runs", s.Dish, q.From, share)
	}
	if !q.To.Never {
		if share := shown(q.To.After - time.Nanosecond); share < nineInTen-1e-9 {
			fail("%s stands until %v in %g of the runs", s.Dish, q.To, share)
		}
		if share := shown(q.To.After); share >= nineInTen+1e-9 {
			fail("%s stands after %v in %g of the runs", s.Dish, q.To, share)
		}
	}
}

// capacities holds what is in a freezer, fridge or oven at once against what fits, unless
// the plan says that it does not.
func capacities(fail func(string, ...any), b *Brief, p *Plan) {
	told := map[string]bool{}
	for _, n := range p.Notes {
		if n.Code == StoreFull {
			told[n.Text] = true
		}
	}
	fits := map[string]int{}
	for _, s := range slices.Concat(b.Freezers, b.Fridges) {
		fits[s.Name] = s.Units
	}
	for _, o := range b.Ovens {
		fits[o.Name] = o.Units
	}
	for name, units := range fits {
		for _, at := range p.Tasks {
			in := 0
			for _, o := range p.Tasks {
				until := o.End
				if o.Shot > 0 && o.What != Bake {
					until = p.Shots[o.Shot-1].End // units come out one by one
				}
				if o.Store == name && o.Shot > 0 && !o.Start.After(at.Start) && at.Start.Before(until) {
					in += o.Units
				}
			}
			if in > units && !told[name] {
				fail("%d units in %s, which holds %d, and the plan does not say so", in, name, units)
				break
			}
		}
	}
}

// keepsUp holds what is baked or built one by one against the rhythm of the set.
func keepsUp(fail func(string, ...any), b *Brief, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		d, _, _ := b.find(s.Dish, "", "")
		if s.Units.Prepare < 2 {
			continue
		}
		left := s.End.Sub(s.At)
		builders, work := 0, time.Duration(0)
		for _, t := range p.Tasks {
			if t.Shot == s.Number && t.What == Assemble {
				builders++
				work += t.End.Sub(t.Start)
			}
		}
		if d.Specification != nil && work < time.Duration(s.Units.Prepare)*2*time.Minute*time.Duration(len(d.Specification.Components)) {
			fail("%s: %d builders have %v for %d builds of %d layers", s.Dish, builders, work, s.Units.Prepare, len(d.Specification.Components))
		}
		for k := range d.Things {
			for _, prep := range d.Things[k].Prep {
				for _, o := range b.Ovens {
					if prep.Each && prep.OvenC > 0 && o.TempC >= prep.OvenC {
						if loads := float64(left)/float64(minutes(prep.Minutes)) + 1; loads*float64(o.Units) < float64(s.Units.Prepare) {
							fail("%s: %d are baked, %d at a time for %g min, in %v", s.Dish, s.Units.Prepare, o.Units, prep.Minutes, left)
						}
						break
					}
				}
			}
		}
	}
}
