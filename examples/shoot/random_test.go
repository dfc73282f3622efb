package shoot

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"sync/atomic"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// How many random briefs are planned: 100, or as many as SHOOT_BRIEFS says.
func briefs(t *testing.T) int {
	if n, err := strconv.Atoi(os.Getenv("SHOOT_BRIEFS")); err == nil {
		return n
	}
	if testing.Short() {
		return 25
	}
	return 100
}

// A maker makes briefs of every kind.
type maker struct{ *rand.Rand }

func (m maker) in(low, high float64) float64 { return low + (high-low)*m.Float64() }

func (m maker) word(words ...string) string { return words[m.IntN(len(words))] }

func (m maker) maybe() bool { return m.IntN(2) == 0 }

func (m maker) optional(low, high float64) honestplate.Optional {
	if m.maybe() {
		return honestplate.Optional{}
	}
	return honestplate.Some(m.in(low, high))
}

func (m maker) brief() *Brief {
	b := &Brief{
		Title: "random", Client: "nobody", About: "made by a test",
		Place:      Place{AltitudeM: m.in(0, 2500), TimeZone: m.word("", "Europe/Vienna", "America/New_York")},
		Confidence: m.in(0.5, 0.95), Hands: 1 + m.IntN(4), Order: m.word("", "fixed", "free"),
		Room: Room{TempC: m.in(15, 35), RHPercent: m.in(20, 90), AirSpeed: m.optional(0, 1)},
	}
	date := Date{2026, 10, 20 + m.IntN(8)}
	for i := range 1 + m.IntN(2) {
		d := Day{Date: date, Call: TimeOfDay{7*60 + m.IntN(90)}, FirstShot: TimeOfDay{9*60 + m.IntN(120)}, Wrap: TimeOfDay{17*60 + m.IntN(300)}}
		if m.IntN(5) == 0 { // a night
			d = Day{Date: date, Call: TimeOfDay{19*60 + m.IntN(60)}, FirstShot: TimeOfDay{21*60 + m.IntN(200)}, Wrap: TimeOfDay{3*60 + m.IntN(120)}}
		}
		d.Date.Day += i
		if m.maybe() && d.Call.Minutes < 12*60 {
			d.Lunch = TimeOfDay{12*60 + m.IntN(60)}
		}
		b.Days = append(b.Days, d)
	}
	for i := range m.IntN(3) {
		l := Lamp{Name: fmt.Sprint("lamp ", i), Source: m.word("tungsten", "led", "discharge"), Watts: m.in(50, 1000), DistanceM: m.in(0.8, 3), BeamDegrees: m.in(20, 90), Stops: m.in(0, 2)}
		b.Lamps = append(b.Lamps, l)
	}
	if m.IntN(4) == 0 {
		b.Daylight = m.in(100, 20000)
	}
	if m.maybe() {
		b.Freezers = []Store{{Name: "deep", TempC: m.in(-60, -20), Units: 1 + m.IntN(30)}}
	}
	if m.maybe() {
		b.Fridges = []Store{{Name: "fridge", TempC: m.in(0, 6), Units: 1 + m.IntN(30)}}
	}
	if m.maybe() {
		b.Ovens = []Oven{{Name: "oven", TempC: m.in(180, 300), Units: 1 + m.IntN(4)}}
	}
	for i := range 1 + m.IntN(5) {
		d := Dish{Name: fmt.Sprint("dish ", i), SlotMinutes: m.in(10, 120), TakeMinutes: m.in(0.2, 4), Wanted: 1 + m.IntN(3), SuccessRate: m.in(0.2, 0.9)}
		if m.IntN(4) == 0 {
			d.SuccessRate, d.Earlier = 0, &Earlier{Good: 3 + m.IntN(5), Takes: 9 + m.IntN(9)}
		}
		if m.IntN(5) == 0 {
			d.LongestMinutes = m.in(1, 90)
		}
		if len(b.Days) > 1 && m.IntN(4) == 0 {
			d.Day = 1 + m.IntN(2)
		}
		for k := range 1 + m.IntN(3) {
			d.Things = append(d.Things, m.thing(fmt.Sprint("thing ", k), b))
		}
		if m.IntN(6) == 0 {
			d.Things = append(d.Things, Thing{Name: "the build", Advertised: true, Build: true})
			d.Specification = &Specification{Product: "p", Version: "1", Components: []Component{
				{Name: "base", Grams: 30, MinusGrams: m.in(0, 3), PlusGrams: 2}, {Name: "filling", Grams: 80, MinusGrams: 3, PlusGrams: 3, Cooked: true, YieldPercent: 70}}}
		}
		sold := false
		for k := range d.Things {
			sold = sold || d.Things[k].Advertised
			if ice := d.Things[k].Drink; ice != nil && ice.Ice != nil {
				d.Things = append(d.Things, Thing{Name: ice.Ice.Thing, Grams: ice.Ice.Grams})
			}
		}
		if !sold {
			d.Advertised = "none"
		}
		b.Dishes = append(b.Dishes, d)
	}
	return b
}

func (m maker) thing(name string, b *Brief) Thing {
	t := Thing{Name: name, Advertised: m.maybe()}
	if !t.Advertised && m.IntN(4) == 0 {
		t.StandIn, t.Why = "something else", "it is out of focus"
	}
	t.Grams = float64(20 + m.IntN(200))
	if m.IntN(5) == 0 {
		t.Stock = honestplate.Some(float64(m.IntN(6)))
	}
	if m.IntN(3) == 0 {
		t.Prep = []Prep{{What: "prepare it", Minutes: m.in(1, 20), Ahead: m.in(0, 60), Each: m.maybe()}}
		if m.IntN(3) == 0 {
			t.Prep[0].OvenC = m.in(150, 250)
		}
	}
	dairy := func(low, high float64) Supply {
		return Supply{Name: name + " cream", Is: Liquid{rheology.Dairy{FatPercent: m.in(low, high)}}}
	}
	outlet := Outlet{Kind: m.word("spout", "lip"), WidthMM: m.in(5, 20), HeadMM: m.in(8, 40)}
	switch m.IntN(11) {
	case 10: // plain
	case 0:
		t.Bowl = &Bowl{DiameterMM: m.in(70, 220), FillGrams: m.in(150, 500), StartC: m.in(60, 88), VesselGrams: m.in(100, 600), Wanted: m.word("steam", "hot")}
	case 1, 2:
		t.Drink = &Drink{DiameterMM: m.in(60, 90), HeightMM: 200, WallMM: m.in(1.5, 4), FillGrams: t.Grams, DrinkC: m.in(1, 22), GlassC: m.optional(4, 25), Brix: m.in(0, 12), Wanted: m.word("haze", "beads", "clear")}
		if m.maybe() {
			t.Drink.Wanted = m.word(t.Drink.Wanted, "ice")
			t.Drink.Ice = &Ice{Thing: name + " ice", Grams: float64(20 + m.IntN(100))}
		}
	case 3:
		t.Bottle = &Bottle{Vessel: m.word("glass bottle", "can"), DiameterMM: 66, HeightMM: 240, FillGrams: 330, FromC: 20, ServeC: m.in(2, 8), Wanted: m.word("beads", "haze", "cold")}
	case 4:
		t.Scoop = &Scoop{Mix: m.word("vanilla ice cream", "sorbet", "gelato"), Diameter: m.in(35, 70), CabinetC: m.in(-16, -11), Freeze: len(b.Freezers) > 0 && m.maybe(), Rests: m.word("", "plate", "cone")}
	case 5:
		t.Soft = &Soft{Food: m.word("butter", "dark chocolate", "milk chocolate"), ThicknessMM: m.in(4, 20), AcrossMM: m.in(20, 90), StartC: m.in(2, 15)}
	case 6:
		t.Cheese = &Cheese{DiameterMM: m.in(200, 320), RimMM: m.in(0, 20), Slices: 4 + m.IntN(6), Favour: m.in(0, 0.5), SoldAs: m.word("", "slice", "whole"), BreadMM: m.in(3, 20)}
	case 7:
		t.Pour = &Pour{Liquids: []Supply{dairy(0.1, 4), dairy(28, 40)}, WantedMPaS: m.in(4, 12), TempC: m.in(4, 10), PouredG: t.Grams, Outlet: outlet, DropMM: m.in(40, 250), Onto: m.word("film", "pool"), DepthMM: m.in(0.5, 20)}
		if t.Advertised {
			t.Pour.Liquids, t.Pour.WantedMPaS = t.Pour.Liquids[:1], 0
		}
	case 8:
		t.Drizzle = &Drizzle{Liquid: Supply{Name: name + " honey", Is: Liquid{rheology.Honey{}}}, TempC: m.in(20, 32), DrizzleG: t.Grams, Outlet: outlet, DropMM: m.in(60, 200)}
	case 9:
		p := &Pieces{NeverBelow: m.maybe(), ToleranceGrams: m.in(0, 2)}
		t.Count = 3 + m.IntN(2)
		t.Grams = float64(t.Count * 18)
		for i := range m.IntN(40) {
			p.Weighed = append(p.Weighed, Weighed{Name: fmt.Sprint("p", i), Grams: float64(160+m.IntN(40)) / 10, Looks: m.in(0, 100)})
		}
		t.Pieces = p
	}
	return t
}

// What must hold of every plan, whatever the brief; several at a time.
func TestRandomBriefsGivePlansThatDoNotContradictThemselves(t *testing.T) {
	const lanes = 4
	n := briefs(t)
	var planned atomic.Int64
	t.Run("lanes", func(t *testing.T) {
		for lane := range lanes {
			t.Run(fmt.Sprint(lane), func(t *testing.T) {
				t.Parallel()
				for seed := lane; seed < n; seed += lanes {
					if planFits(t, seed) {
						planned.Add(1)
					}
				}
			})
		}
	})
	if planned.Load() < int64(n*8/10) {
		t.Errorf("only %d of %d briefs could be planned", planned.Load(), n)
	}
}

// planFits plans the brief of a seed, holds the plan against it, and tells whether it could
// be planned.
func planFits(t *testing.T, seed int) bool {
	b := maker{rand.New(rand.NewPCG(uint64(seed), 16))}.brief()
	if errs := b.faults(); len(errs) > 0 {
		t.Fatalf("seed %d: the brief itself: %v", seed, errors.Join(errs...))
	}
	p, err := b.Plan(nil)
	if err != nil {
		if c := honestplate.Cause(err); !errors.Is(c, honestplate.ErrRange) && !errors.Is(c, honestplate.ErrInfeasible) && !errors.Is(c, honestplate.ErrNoFlow) {
			t.Errorf("seed %d: %v", seed, err)
		}
		return false
	}
	for _, r := range rules {
		r.check(func(format string, args ...any) {
			t.Errorf("seed %d: %s: "+format, append([]any{seed, r.name}, args...)...)
		}, b, p)
	}
	bought(t, seed, b, p)
	capacities(t, seed, b, p)
	if seed%10 == 0 {
		same(t, seed, b, p)
	}
	return true
}

// bought holds the shopping list against what all units use.
func bought(t *testing.T, seed int, b *Brief, p *Plan) {
	grams, count := map[string]float64{}, map[string]int{}
	for _, k := range p.Purchases {
		g, c := k.Grams, k.Count
		if k.PackGrams > 0 {
			if have := float64(k.Packs) * k.PackGrams; have < g {
				t.Errorf("seed %d: %s: %d packs hold %g of %g g", seed, k.What, k.Packs, have, g)
			}
		}
		grams[k.What] += g
		count[k.What] += c
	}
	use, pieces := map[string]float64{}, map[string]int{}
	for i := range p.Shots {
		s := &p.Shots[i]
		d, _, _ := b.find(s.Dish, "", "")
		for k := range d.Things {
			x := &d.Things[k]
			if x.StandIn != "" || x.Build || x.Drizzle != nil {
				continue
			}
			if x.Pour != nil {
				for _, part := range s.Things[k].Pour.Blend {
					if s.Units.Prepare > 0 {
						use[part.Name] += part.Grams
					}
				}
				continue
			}
			if x.Pieces != nil {
				pieces[x.Name] += x.Count * s.Units.Prepare
				continue
			}
			use[x.Name] += x.Grams * float64(s.Units.Prepare)
		}
	}
	for name, g := range use {
		if grams[name] < g*(1-1e-9) {
			t.Errorf("seed %d: %s: %g g are used and %g bought", seed, name, g, grams[name])
		}
	}
	for name, c := range pieces {
		if count[name] < c {
			t.Errorf("seed %d: %s: %d pieces are used and %d bought", seed, name, c, count[name])
		}
	}
}

// capacities holds what is in a store at once against what fits, unless the plan says
// that it does not.
func capacities(t *testing.T, seed int, b *Brief, p *Plan) {
	told := map[string]bool{}
	for _, n := range p.Notes {
		if n.Code == StoreFull {
			told[n.Text] = true
		}
	}
	for _, s := range append(append([]Store(nil), b.Freezers...), b.Fridges...) {
		for _, at := range p.Tasks {
			in := 0
			for _, o := range p.Tasks {
				if o.Store == s.Name && o.Shot > 0 && !o.Start.After(at.Start) && at.Start.Before(p.Shots[o.Shot-1].End) {
					in += o.Units
				}
			}
			if in > s.Units && !told[s.Name] {
				t.Errorf("seed %d: %d units in %s, which holds %d, and the plan does not say so", seed, in, s.Name, s.Units)
			}
		}
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		if s.Swap > 0 && s.Units.Prepare > 0 && s.Units.Prepare > int(s.End.Sub(s.At)/s.Swap)+1 {
			t.Errorf("seed %d: %d units at one every %v do not fit %v", seed, s.Units.Prepare, s.Swap, s.End.Sub(s.At))
		}
	}
}

// same plans again, and reads the plan back from JSON.
func same(t *testing.T, seed int, b *Brief, p *Plan) {
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	again, err := b.Plan(nil)
	if err != nil {
		t.Fatal(err)
	}
	other, _ := json.Marshal(again)
	if string(text) != string(other) {
		t.Errorf("seed %d: two plans of one brief differ", seed)
	}
	var back Plan
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if third, _ := json.Marshal(&back); string(third) != string(text) {
		t.Errorf("seed %d: the plan does not read back", seed)
	}
	if err := back.Check(); err != nil {
		t.Errorf("seed %d: %v", seed, err)
	}
}
