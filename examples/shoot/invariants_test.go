package shoot

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

// rules are what must hold of every plan of a morning; each stands under the sentences of
// the design that it covers. What needs no brief (pictures inside their
// bands, reasons, no pair of hands at two things, slots that do not overlap) is in
// [Plan.Check], which every plan passes. A rule with every is tried on one brief in so
// many: it runs the clocks again.
var rules = []struct {
	name  string
	every int
	check func(fail func(format string, args ...any), b *Brief, p *Plan)
}{
	// "slots", "fixed order, lunch, changeover" are ordinary wishes; "order by a stated rule
	// that a brief can overrule".
	{"slots keep the first shot, lunch, changeover and wrap, or say so", 0, keepsTheDay},
	{"the order is the stated rule's, or the brief's", 0, ordered},
	// "midnight, days and daylight saving marked".
	{"days past midnight, long ones and changes of clocks are marked", 0, marksTheDay},
	// "from the joint runs of its clocks (not from separate bands), the interval in which at
	// least 90 % of the runs show it, between its opening and the first thing that ends it";
	// "reasons belong to their event".
	{"a window is that of the joint runs, and a reason its own event's", 8, jointRuns},
	// "where no such interval exists, the best instant, its chance, and what would raise it".
	{"a picture that does not stand has a best moment, its chance and what would help", 0, helps},
	// "units fit their slot, hands, freezer, oven and fridge; where they do not, the chance
	// that results and the options"; "three bottles".
	{"units fit, and where not the chance and the reason are told", 0, unitsFit},
	{"what is in a store at once fits it, or the plan says so", 0, capacities},
	{"what is baked or built one by one keeps up", 0, keepsUp},
	// "the swap rhythm comes from the same runs".
	{"a unit comes on the set as often as it stands", 0, swaps},
	// "a stand-in has its own clock (or none), the thing it replaces has none".
	{"stand-ins have no clock of the real thing", 0, standIns},
	// "times counted back from each shot including warming, baking, chilling, setting out".
	{"what is cold, hot, mixed or prepared is so in time", 0, inTime},
	// "freezers verified the evening before".
	{"stores are switched on, verified the evening before, ovens preheated", 0, storesReady},
	// "heroes are drawn from a tray all at once, and how many pieces to weigh is a computed
	// chance".
	{"heroes are drawn from the tray all at once", 0, piecesOnce},
	// "what is bought covers units, tests, corrections and losses, rounded up to packs;
	// stand-ins and props are bought too"; "bought >= used in the worst permitted course".
	{"everything in the frame is bought, with tests, corrections and losses, in whole packs", 0, covered},
	// "every file written is read back by the library"; "advertised: none" is said.
	{"every record is written and reads back", 0, recordsReadBack},
}

func keepsTheDay(fail func(string, ...any), b *Brief, p *Plan) {
	change := minutes(10)
	if b.ChangeoverMinutes > 0 {
		change = minutes(b.ChangeoverMinutes)
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		day := p.Days[s.Day]
		if s.At.Before(day.FirstShot) {
			fail("%s at %v, before the first shot", s.Dish, s.At)
		}
		if !day.LunchFrom.IsZero() && s.At.Before(day.LunchTo) && s.End.After(day.LunchFrom) {
			fail("%s runs into lunch", s.Dish)
		}
		if i > 0 && p.Shots[i-1].Day == s.Day && s.At.Sub(p.Shots[i-1].End) < change {
			fail("%s follows after %v", s.Dish, s.At.Sub(p.Shots[i-1].End))
		}
		if over := s.End.Sub(day.Wrap); over > 0 && !has(s.Notes, Overtime) {
			fail("%s ends %v after the wrap, unsaid", s.Dish, over)
		}
		d, _, _ := b.find(s.Dish, "", "")
		if s.End.Sub(s.At) != d.slot() || d.Day > 0 && s.Day != d.Day-1 {
			fail("%s has not its slot or its day", s.Dish)
		}
	}
}

func has(notes []Note, code NoteCode) bool {
	return slices.ContainsFunc(notes, func(n Note) bool { return n.Code == code })
}

func marksTheDay(fail func(string, ...any), b *Brief, p *Plan) {
	past, shift, long := false, false, false
	for i, d := range p.Days {
		past = past || d.Ends.Format(time.DateOnly) != d.Call.Format(time.DateOnly)
		// On the wall clock the wrap is so long after six of the evening before; else clocks change.
		wall := func(t time.Time) time.Duration {
			return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), 0, 0, time.UTC).Sub(time.Unix(0, 0))
		}
		before := d.Call.Add(-18 * time.Hour)
		change := wall(d.Wrap) - wall(before) - d.Wrap.Sub(before).Truncate(time.Minute)
		shift = shift || change != 0
		if change != d.Shift {
			fail("day %d: the clocks change by %v, marked %v", i+1, change, d.Shift)
		}
		if want := b.Days[i].Wrap.String(); d.Wrap.Format("15:04") != want || d.Wrap.Before(d.FirstShot) {
			fail("day %d wraps at %v, wanted %s", i+1, d.Wrap, want)
		}
		long = long || d.Ends.Sub(d.Call) > 12*time.Hour
	}
	if past != has(p.Notes, PastMidnight) || shift != has(p.Notes, ClockChanges) || long != has(p.Notes, LongDay) {
		fail("past midnight %v, clocks %v, long %v, and the notes are %v", past, shift, long, p.Notes)
	}
}

func helps(fail func(string, ...any), b *Brief, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		if q := s.Picture; !q.Always && !q.Sure {
			if q.Chance >= nineInTen || q.Best != q.From || q.From != q.To || q.Chance == 0 != q.Best.Never {
				fail("%s: best at %v with %g, from %v to %v", s.Dish, q.Best, q.Chance, q.From, q.To)
			}
			if len(q.Remedies) == 0 {
				fail("%s does not stand (%g) and nothing is said to help: %+v", s.Dish, q.Chance, q)
			}
		}
		d, _, _ := b.find(s.Dish, "", "")
		if l := s.Picture.Length(); d.LongestMinutes > 0 && has(s.Notes, CannotStand) && s.Picture.Always {
			fail("%s never changes and cannot stand %v", s.Dish, l)
		}
	}
}

// oneUnit is the time that a unit takes on the set, without the change.
func oneUnit(d *Dish, s *Shot) time.Duration {
	one := minutes(2)
	if d.TakeMinutes > 0 {
		one = minutes(d.TakeMinutes)
	}
	if l := s.Picture.Length(); s.Picture.Sure && !l.Never {
		one = min(one, l.After)
	}
	return max(one, minutes(d.LongestMinutes))
}

func change(d *Dish) time.Duration {
	if d.SwapMinutes > 0 {
		return minutes(d.SwapMinutes)
	}
	return time.Minute
}

// neverLooks reports whether a look of the shot has to be made by a declared stand-in.
func neverLooks(s *Shot) bool {
	return slices.ContainsFunc(s.Things, func(t PlannedThing) bool { return has(t.Notes, NeverLooks) })
}

func unitsFit(fail func(string, ...any), b *Brief, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		d, _, _ := b.find(s.Dish, "", "")
		if time.Duration(s.Units.Prepare)*(oneUnit(d, s)+change(d)) > d.slot() {
			fail("%s: %d units of %v do not fit %v", s.Dish, s.Units.Prepare, oneUnit(d, s), d.slot())
		}
		for k := range d.Things {
			if t := &d.Things[k]; t.Stock.Given && float64(s.Units.Prepare) > t.Stock.Value {
				fail("%s: %d units of %g %s", s.Dish, s.Units.Prepare, t.Stock.Value, t.Name)
			}
		}
		if s.Units.Prepare < s.Units.Need && !has(s.Notes, UnitsLimited) && !has(s.Notes, NoUnitFits) && !has(s.Notes, CannotStand) && !has(s.Notes, HardlyStands) {
			fail("%s: %d of %d units, unsaid", s.Dish, s.Units.Prepare, s.Units.Need)
		}
		if q := s.Picture; !q.Always && !q.Sure && q.Chance < 0.05 && s.Units.Prepare > 0 && !neverLooks(s) {
			fail("%s: %d units, of which %g show the picture", s.Dish, s.Units.Prepare, q.Chance)
		}
		if d.Earlier == nil && d.LongestMinutes == 0 && s.Units.Prepare > 0 {
			rate := d.SuccessRate
			if q := s.Picture; !q.Always && !q.Sure && !neverLooks(s) {
				rate *= q.Chance // only what shows the picture can be good
			}
			want, err := portion.Heroes{SuccessRate: rate, Wanted: d.Wanted, Confidence: s.Units.Confidence, Correlation: d.Together}.Chance(s.Units.Prepare)
			if err != nil || math.Abs(want-s.Units.Chance) > 1e-12 {
				fail("%s: chance %g, portion says %g (%v)", s.Dish, s.Units.Chance, want, err)
			}
		}
		if s.Units.Prepare == 0 && s.Units.Chance != 0 && !s.Done {
			fail("%s: a chance of %g with no unit", s.Dish, s.Units.Chance)
		}
	}
	hands := 2
	if b.Hands > 0 {
		hands = b.Hands
	}
	for _, t := range p.Tasks {
		if t.Hand > hands {
			fail("hand %d of %d", t.Hand, hands)
		}
	}
}

func swaps(fail func(string, ...any), b *Brief, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		d, _, _ := b.find(s.Dish, "", "")
		l := s.Picture.Length()
		made := s.Units.LimitedBy == "hands" || slices.ContainsFunc(b.Ovens, func(o Oven) bool { return o.Name == s.Units.LimitedBy })
		slow := d.Specification != nil || slices.ContainsFunc(d.Things, func(t Thing) bool {
			return slices.ContainsFunc(t.Prep, func(q Prep) bool { return q.Each && q.OvenC > 0 })
		}) // it may be made slower than the set wants it
		if want := max(oneUnit(d, s)+change(d), time.Second); s.Swap > 0 && s.Swap != want && !(slow && s.Swap > want) || made && !slow {
			fail("%s: a fresh one every %v, and one takes %v and %v", s.Dish, s.Swap, oneUnit(d, s), change(d))
		}
		if s.Swap > 0 && d.LongestMinutes == 0 && s.Picture.Sure && !l.Never && s.Swap-change(d) > l.After && !slow {
			fail("%s: a fresh one every %v, and one stands %v", s.Dish, s.Swap, l)
		}
		if s.Swap == 0 && s.Units.Prepare > 1 && !s.Picture.Always && !l.Never && l.After < d.slot() {
			fail("%s: %d units of %v in %v, and no rhythm", s.Dish, s.Units.Prepare, l, d.slot())
		}
	}
}

func standIns(fail func(string, ...any), b *Brief, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		for k := range s.Things {
			t := &s.Things[k]
			if t.StandIn == "" || t.Pour != nil || t.Coil != nil {
				continue
			}
			if len(t.Events) > 0 || t.Cold != nil {
				fail("%s: the stand-in for %s has the clock of it", s.Dish, t.Name)
			}
			for _, q := range p.Tasks {
				if q.Shot == s.Number && q.Thing == t.Name && q.What != OwnStep && q.What != Bake {
					fail("%s: %s for the stand-in of %s", s.Dish, q.What, t.Name)
				}
			}
			if c := s.Picture.ClosesBy; c != nil && c.Thing == t.Name {
				fail("%s ends with what is not there", s.Dish)
			}
		}
	}
}

func inTime(fail func(string, ...any), b *Brief, p *Plan) {
	tasks := func(s *Shot, thing string, kinds ...TaskKind) (out []Task) {
		for _, t := range p.Tasks {
			if t.Shot == s.Number && t.Thing == thing && slices.Contains(kinds, t.What) {
				out = append(out, t)
			}
		}
		return out
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		d, _, _ := b.find(s.Dish, "", "")
		for k := range s.Things {
			t, x := &s.Things[k], &d.Things[k]
			if s.Units.Prepare == 0 {
				if len(tasks(s, t.Name, Harden, Chill, ChillDry, Mix, Warm, Assemble, OwnStep, Bake)) > 0 {
					fail("%s: work for no unit", s.Dish)
				}
				continue
			}
			if c := t.Cold; c != nil && c.Store != "" && !c.Needs.Latest.Never {
				cold := tasks(s, t.Name, Harden, Chill)
				if len(cold) == 0 && !has(t.Notes, NoColdStore) {
					fail("%s: %s never goes into %s", s.Dish, t.Name, c.Store)
				}
				for _, q := range cold {
					if q.End.After(s.At.Add(-time.Minute)) || q.End.Sub(q.Start) < c.Needs.Latest.After-time.Minute && !c.Bursts {
						fail("%s: %s is in %s from %v to %v, wants %v before %v", s.Dish, t.Name, q.Store, q.Start, q.End, c.Needs.Latest, s.At)
					}
				}
			}
			if x.Drink != nil && x.StandIn == "" && x.Drink.GlassC.Given && x.Drink.GlassC.Value < b.Room.TempC-1 && len(tasks(s, t.Name, ChillDry)) == 0 && !has(t.Notes, NoColdStore) {
				fail("%s: nobody chills the glasses for %s", s.Dish, t.Name)
			}
			for _, q := range tasks(s, t.Name, ChillDry) {
				if x.Drink != nil && q.TempC < x.Drink.GlassC.Value-4 && !has(t.Notes, StoreTooCold) {
					fail("%s: the glasses for %s wait at %g degC and are wanted at %g", s.Dish, t.Name, q.TempC, x.Drink.GlassC.Value)
				}
			}
			if x.Soft != nil && x.StandIn == "" && x.Soft.StartC < b.Room.TempC-1 && len(tasks(s, t.Name, Chill)) == 0 && !has(t.Notes, NoColdStore) {
				fail("%s: nobody chills %s", s.Dish, t.Name)
			}
			if x.Drizzle != nil && math.Abs(x.Drizzle.TempC-b.Room.TempC) > 2 || t.Pour != nil && len(t.Pour.Blend) == 1 && math.Abs(t.Pour.TempC-b.Room.TempC) > 2 {
				if warm := tasks(s, t.Name, Warm); len(warm) != 1 || warm[0].End.After(s.At) || warm[0].End.Sub(warm[0].Start) < 30*time.Minute {
					fail("%s: nobody brings %s to its temperature: %v", s.Dish, t.Name, warm)
				}
			}
			for _, q := range tasks(s, t.Name, Bake) {
				if q.Start.After(s.At.Add(-minutes(x.Prep[0].Minutes))) {
					fail("%s: %s is baked from %v, for %g min, and wanted at %v", s.Dish, t.Name, q.Start, x.Prep[0].Minutes, s.At)
				}
			}
			if t.Pour != nil && len(t.Pour.Blend) == 2 && len(tasks(s, t.Name, Mix)) != 1 {
				fail("%s: nobody mixes %s", s.Dish, t.Name)
			}
			if t.Build != nil && len(tasks(s, t.Name, Assemble)) == 0 {
				fail("%s: nobody builds %s", s.Dish, t.Name)
			}
			if got := len(tasks(s, t.Name, OwnStep, Bake)); got != len(x.Prep) {
				fail("%s: %d of the %d steps of %s", s.Dish, got, len(x.Prep), t.Name)
			}
			for _, step := range x.Prep {
				for _, q := range tasks(s, t.Name, OwnStep) {
					if q.Text == step.What && q.End.After(s.At.Add(-minutes(step.Ahead))) {
						fail("%s: %s ends %v, wanted %v before %v", s.Dish, step.What, q.End, minutes(step.Ahead), s.At)
					}
				}
			}
		}
	}
}

func storesReady(fail func(string, ...any), b *Brief, p *Plan) {
	first := map[string]Task{}
	for _, t := range p.Tasks { // in the order of their beginning
		if _, ok := first[t.Store]; !ok && t.Shot > 0 && t.Store != "" {
			first[t.Store] = t
		}
	}
	for _, s := range slices.Concat(b.Freezers, b.Fridges) {
		use, used := first[s.Name]
		verified, on := time.Time{}, time.Time{}
		for _, t := range p.Tasks {
			if t.Store == s.Name && t.What == Verify {
				verified = t.Start
			}
			if t.Store == s.Name && (t.What == SwitchOn || t.What == DryIced && s.DryIce) {
				on = t.Start
			}
		}
		cool := 4 * time.Hour
		if s.CoolDownMin > 0 {
			cool = minutes(s.CoolDownMin)
		}
		evening := use.Start.AddDate(0, 0, -1).Format("2006-01-02") + " 18:00"
		if used && (verified.Format("2006-01-02 15:04") != evening || verified.Sub(on) < cool) {
			fail("%s is used from %v, switched on %v, verified %v", s.Name, use.Start, on, verified)
		}
		if !used && !verified.IsZero() {
			fail("%s is verified for nothing", s.Name)
		}
	}
	for _, o := range b.Ovens {
		use, used := first[o.Name]
		heat := 20 * time.Minute
		if o.PreheatMin > 0 {
			heat = minutes(o.PreheatMin)
		}
		ready := slices.ContainsFunc(p.Tasks, func(t Task) bool {
			return t.What == Preheat && t.Store == o.Name && t.End.Equal(use.Start) && t.End.Sub(t.Start) == heat
		})
		if used && !ready {
			fail("%s is used from %v and not preheated", o.Name, use.Start)
		}
	}
}

func piecesOnce(fail func(string, ...any), b *Brief, p *Plan) {
	for i := range p.Shots {
		s := &p.Shots[i]
		for k := range s.Things {
			plan := s.Things[k].Pieces
			if plan == nil {
				continue
			}
			_, t, _ := b.find(s.Dish, s.Things[k].Name, "")
			used, tray := map[string]bool{}, map[string]float64{}
			for _, w := range t.Pieces.Weighed {
				tray[w.Name] = w.Grams
			}
			for _, set := range plan.Sets {
				sum := 0.0
				for _, name := range set.Names {
					if used[name] {
						fail("%s: %s is in two heroes", s.Dish, name)
					}
					used[name] = true
					sum += tray[name]
				}
				low := t.Grams - t.Pieces.ToleranceGrams
				if t.Pieces.NeverBelow {
					low = t.Grams
				}
				if len(set.Names) != t.Count || math.Abs(sum-set.Grams) > 1e-6 || sum < low-1e-6 || sum > t.Grams+t.Pieces.ToleranceGrams+1e-6 {
					fail("%s: a hero of %d pieces, %g g (said %g), wanted %d and %g", s.Dish, len(set.Names), sum, set.Grams, t.Count, t.Grams)
				}
			}
			if missing := max(min(max(s.Units.Need, 1), mostUnits)-len(plan.Sets), 0); plan.Missing != missing || (missing > 0) != (plan.Weigh > plan.OnTray) || plan.Chance.Likely > 0 && plan.Chance.Likely < 0.9 {
				fail("%s: %d sets of %d, missing %d, weigh %d with %d on the tray", s.Dish, len(plan.Sets), s.Units.Need, plan.Missing, plan.Weigh, plan.OnTray)
			}
		}
	}
}

func covered(fail func(string, ...any), b *Brief, p *Plan) {
	grams, count := map[string]float64{}, map[string]int{}
	for _, k := range p.Purchases {
		grams[k.What] += k.Grams
		count[k.What] += k.Count
		if k.Packs < 1 || k.PackGrams > 0 && float64(k.Packs)*k.PackGrams < k.Grams*(1-1e-9) || k.PackCount > 0 && k.Packs*k.PackCount < k.Count {
			fail("%d packs of %s", k.Packs, k.What)
		}
	}
	use, pieces := map[string]float64{}, map[string]int{}
	for i := range p.Shots {
		s := &p.Shots[i]
		if s.Units.Prepare == 0 || s.Done {
			continue
		}
		d, _, _ := b.find(s.Dish, "", "")
		for k := range d.Things {
			x, t := &d.Things[k], &s.Things[k]
			switch {
			case t.Pour != nil:
				for _, part := range t.Pour.Blend {
					add := 0.0
					if t.Pour.Cup != nil {
						for _, c := range t.Pour.Cup.Corrections {
							if c.Add == part.Name {
								add = max(add, c.Grams)
							}
						}
					}
					use[part.Name] += (part.Grams + add) * float64(t.Pour.Batches) * 1.1
				}
				if len(t.Pour.Blend) == 2 && float64(t.Pour.Batches)*(t.Pour.BatchGrams-3*110) < x.Pour.PouredG*float64(s.Units.Prepare)*(1-1e-9) && t.Pour.BatchGrams > x.Pour.PouredG+3*110 {
					fail("%s: %d batches of %g g for %d takes and their tests", s.Dish, t.Pour.Batches, t.Pour.BatchGrams, s.Units.Prepare)
				}
			case t.Coil != nil:
				use[x.Drizzle.Liquid.Name] += x.Drizzle.DrizzleG * float64(s.Units.Prepare) * 1.1
			case t.Build != nil:
				for _, c := range d.Specification.Components {
					if g := c.Grams * float64(s.Units.Prepare) * 1.1; c.Cooked {
						use[c.Name] += g / (c.YieldPercent / 100)
					} else {
						use[c.Name] += g
					}
				}
			case x.StandIn != "":
				if count[x.StandIn] == 0 {
					fail("%s: %s is not bought", s.Dish, x.StandIn)
				}
			case x.Count > 0 && (x.PackCount > 0 || x.Grams == 0) || x.Pieces != nil:
				pieces[x.Name] += x.Count * s.Units.Prepare
			default:
				use[x.Name] += x.Grams * float64(s.Units.Prepare) * 1.1
			}
		}
	}
	for name, g := range use {
		if grams[name] < g*(1-1e-9) {
			fail("%s: %g g are used at the most, with losses, and %g bought", name, g, grams[name])
		}
	}
	for name, n := range pieces {
		if count[name] < n {
			fail("%s: %d pieces are used and %d bought", name, n, count[name])
		}
	}
}

func recordsReadBack(fail func(string, ...any), b *Brief, p *Plan) {
	for i, r := range p.Records() {
		var text bytes.Buffer
		if err := r.Write(&text); err != nil {
			fail("record %d: %v", i+1, err)
			continue
		}
		before := text.String()
		back, err := record.Read(&text)
		if err != nil {
			fail("record %d: %v", i+1, err)
			continue
		}
		var again bytes.Buffer
		if err := back.Write(&again); err != nil || again.String() != before {
			fail("record %d does not read back: %v %s", i+1, err, cmp.Diff(before, again.String()))
		}
		if p.Shots[i].Editorial != strings.Contains(before, "no product is shown") {
			fail("record %d: editorial %v", i+1, p.Shots[i].Editorial)
		}
	}
}
