package shoot

import (
	"fmt"
	"math"
	"math/rand/v2"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
)

// A maker makes briefs of every kind, and facts that fit them.
type maker struct{ *rand.Rand }

func makerOf(seed int) maker { return maker{rand.New(rand.NewPCG(uint64(seed), 16))} }

func (m maker) in(low, high float64) float64 { return low + (high-low)*m.Float64() }

func (m maker) word(words ...string) string { return words[m.IntN(len(words))] }

func (m maker) maybe() bool { return m.IntN(2) == 0 }

func (m maker) one(of int) bool { return m.IntN(of) == 0 }

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
		Confidence: m.in(0.5, 0.95), Hands: 1 + m.IntN(4), Order: m.word("", "fixed", "free"), ChangeoverMinutes: float64(m.IntN(3) * 5),
		Room: Room{TempC: m.in(15, 35), RHPercent: m.in(20, 90), AirSpeed: m.optional(0, 1), Measured: m.maybe()},
	}
	m.days(b)
	for i := range m.IntN(3) {
		b.Lamps = append(b.Lamps, m.lamp(fmt.Sprint("lamp ", i)))
	}
	if m.one(4) {
		b.Daylight = m.in(100, 20000)
	}
	if m.maybe() {
		b.Freezers = []Store{{Name: "deep", TempC: m.in(-70, -20), Units: 1 + m.IntN(30), AirSpeed: m.in(0, 3), CoolDownMin: float64(m.IntN(3) * 120), DryIce: m.one(4)}}
	}
	if m.maybe() {
		b.Fridges = []Store{{Name: "fridge", TempC: m.in(0, 6), Units: 1 + m.IntN(30)}}
	}
	if m.maybe() {
		b.Ovens = []Oven{{Name: "oven", TempC: m.in(180, 300), Units: 1 + m.IntN(4), PreheatMin: float64(m.IntN(3) * 15)}}
	}
	if m.one(3) {
		b.Cups = []string{m.word("ISO 3", "ISO 4", "DIN 4", "Ford 3", "Zahn 2")}
	}
	if m.one(3) {
		b.Scale = Scale{StepGrams: 0.1, MaxGrams: m.in(2000, 9000), CheckG: 0.1}
	}
	for i := range 1 + m.IntN(4) {
		b.Dishes = append(b.Dishes, m.dish(fmt.Sprint("dish ", i), b))
	}
	return b
}

// days are one or two, some of them nights, around the end of summer time in Europe and
// in America.
func (m maker) days(b *Brief) {
	date := Date{2026, 10, 20 + m.IntN(13)}
	for i := range 1 + m.IntN(2) {
		d := Day{Date: date, Call: TimeOfDay{7*60 + m.IntN(90)}, FirstShot: TimeOfDay{9*60 + m.IntN(120)}, Wrap: TimeOfDay{17*60 + m.IntN(300)}}
		if m.one(4) { // a night
			d = Day{Date: date, Call: TimeOfDay{19*60 + m.IntN(60)}, FirstShot: TimeOfDay{21*60 + m.IntN(180)}, Wrap: TimeOfDay{3*60 + m.IntN(120)}}
		}
		d.Date.Day += i
		if d.Date.Day > 31 {
			d.Date.Month, d.Date.Day = 11, d.Date.Day-31
		}
		if m.maybe() && d.Call.Minutes < 12*60 {
			d.Lunch, d.LunchMinutes = TimeOfDay{12*60 + m.IntN(60)}, float64(m.IntN(3)*30)
		}
		b.Days = append(b.Days, d)
	}
}

func (m maker) lamp(name string) Lamp {
	l := Lamp{Name: name, Source: m.word("tungsten", "led", "discharge", "flash"), DistanceM: m.in(0.8, 3), BeamDegrees: m.in(20, 90), Stops: m.in(0, 2)}
	if l.Source == "flash" {
		l.Joules, l.PopsPerMinute, l.ModellingW = m.in(100, 1200), m.in(0.2, 10), m.in(20, 300)
		return l
	}
	l.Watts = m.in(50, 1000)
	if m.one(4) {
		l.Lux, l.DistanceM, l.BeamDegrees = m.in(200, 20000), 0, 0
	}
	return l
}

func (m maker) dish(name string, b *Brief) Dish {
	d := Dish{Name: name, SlotMinutes: m.in(10, 120), TakeMinutes: m.in(0.2, 4), SwapMinutes: float64(m.IntN(3)), Wanted: 1 + m.IntN(3), SuccessRate: m.in(0.25, 0.9)}
	if m.one(4) {
		d.SuccessRate, d.Earlier = 0, &Earlier{Good: 3 + m.IntN(5), Takes: 9 + m.IntN(9), Weight: m.in(0.2, 1)}
	}
	if m.one(5) {
		d.LongestMinutes = m.in(1, 90)
	}
	if m.one(5) {
		d.Together = m.in(0, 0.3)
	}
	if len(b.Days) > 1 && m.one(4) {
		d.Day = 1 + m.IntN(2)
	}
	if m.one(6) {
		d.Order = 1 + m.IntN(4)
	}
	for k := range 1 + m.IntN(3) {
		d.Things = append(d.Things, m.thing(fmt.Sprint("thing ", k), b))
	}
	if m.one(6) {
		d.Things = append(d.Things, Thing{Name: "the build", Advertised: true, Build: true})
		d.Specification = &Specification{Product: "p", Version: "1", SignedBy: m.word("", "a technician"), Components: []Component{
			{Name: "base", Grams: 30, MinusGrams: m.in(0, 3), PlusGrams: 2, PackCount: 6, Count: 1}, {Name: "filling", Grams: 80, MinusGrams: 3, PlusGrams: 3, Cooked: true, YieldPercent: 70, PackGrams: 500}}}
	}
	sold := false
	for k := range d.Things {
		sold = sold || d.Things[k].Advertised
		if q := d.Things[k].Drink; q != nil && q.Ice != nil {
			d.Things = append(d.Things, Thing{Name: q.Ice.Thing, Advertised: d.Things[k].Advertised, Grams: q.Ice.Grams, PackGrams: 2000})
		}
	}
	if !sold {
		d.Advertised = "none"
	}
	return d
}

func (m maker) thing(name string, b *Brief) Thing {
	t := Thing{Name: name, Advertised: m.maybe(), Grams: float64(20 + m.IntN(200))}
	if !t.Advertised && m.one(4) {
		t.StandIn, t.Why = "something else", "it is out of focus"
	}
	if m.one(5) {
		t.Stock = honestplate.Some(float64(m.IntN(6)))
	}
	if m.maybe() {
		t.PackGrams = float64(50 * (1 + m.IntN(20)))
	}
	if m.one(3) {
		t.Prep = []Prep{{What: "prepare it", Minutes: m.in(1, 20), Ahead: m.in(0, 60), Each: m.maybe(), Who: m.word("", "stylist")}}
		if m.one(3) {
			t.Prep[0].OvenC = m.in(150, 250)
		}
	}
	switch m.IntN(12) {
	case 0: // plain
		if m.maybe() {
			t.Count, t.PackCount, t.PackGrams = 1+m.IntN(3), 1+m.IntN(12), 0
		}
	case 1:
		t.Bowl = &Bowl{DiameterMM: m.in(70, 220), FillGrams: m.in(150, 500), StartC: m.in(60, 88), VesselGrams: m.in(100, 600), VesselC: m.optional(15, 70),
			LimitC: m.in(40, 58), Wanted: m.word("steam", "hot", ""), Solid: m.one(3)}
	case 2, 3:
		t.Drink = &Drink{DiameterMM: m.in(60, 90), HeightMM: 200, WallMM: m.in(1.5, 4), FillGrams: t.Grams, DrinkC: m.in(1, 22), GlassC: m.optional(4, 15), Brix: m.in(0, 12), Wanted: m.word("haze", "beads", "clear")}
		if m.one(4) {
			t.Drink.Brix, t.Drink.AlcoholPercent = 0, m.in(5, 40)
		}
		if m.maybe() {
			t.Drink.Wanted = m.word(t.Drink.Wanted, "ice")
			t.Drink.Ice = &Ice{Thing: name + " ice", Grams: min(float64(20+m.IntN(100)), 4*t.Grams), Shape: m.word("", "cubes", "ball", "crushed")}
			if m.one(3) {
				t.Drink.Ice.TempC = m.in(-18, -1)
			}
		}
	case 4:
		t.Bottle = &Bottle{Vessel: m.word("glass bottle", "can", "plastic bottle"), DiameterMM: 66, HeightMM: 240, FillGrams: 330, FromC: m.in(15, 25), ServeC: m.in(2, 8),
			Chill: m.word("", "fridge", "iced water"), Wanted: m.word("beads", "haze", "clear", "cold")}
		if len(b.Freezers) > 0 && m.one(3) {
			t.Bottle.Chill = "freezer"
		}
		if m.one(3) {
			t.Bottle.Alcohol = m.in(4, 12)
		}
	case 5:
		t.Scoop = &Scoop{Mix: m.word("vanilla ice cream", "chocolate ice cream", "premium ice cream", "gelato", "sorbet", "soft serve", "frozen yogurt", "ice pop"), Diameter: m.in(35, 70), CabinetC: m.in(-16, -11),
			Freeze: len(b.Freezers) > 0 && m.maybe(), Rests: m.word("", "plate", "cone", "nothing"), RestC: m.optional(-15, 15), Structure: m.word("", "natural", "stabilised", "much destabilised fat")}
	case 6:
		t.Soft = &Soft{Food: m.word("butter", "dark chocolate", "milk chocolate", "white chocolate", "whipped cream", "set cream"), ThicknessMM: m.in(4, 20), AcrossMM: m.in(20, 90), StartC: m.in(2, 14),
			On: m.word("", "ceramic", "wood", "plastic", "glass", "stone", "metal", "rack")}
	case 7:
		t.Cheese = &Cheese{DiameterMM: m.in(200, 320), RimMM: m.in(0, 20), Slices: 4 + m.IntN(6), Favour: m.in(0, 0.5), SoldAs: m.word("", "slice", "whole"), BakedC: m.in(75, 91), BreadMM: m.in(3, 20), SauceMM: m.optional(0, 3)}
	case 8, 9:
		m.pour(&t, b)
	case 10:
		s, low, high := m.thick(name)
		t.Drizzle = &Drizzle{Liquid: s, TempC: m.in(low, high), DrizzleG: t.Grams, Outlet: m.outlet(), DropMM: m.in(60, 200)}
	case 11:
		m.pieces(&t)
	}
	return t
}

func (m maker) outlet() Outlet {
	o := Outlet{Kind: m.word("spout", "lip"), WidthMM: m.in(5, 20), HeadMM: m.in(8, 40)}
	if m.one(4) {
		o.HeadMM, o.Seconds = 0, m.in(1, 12)
	}
	return o
}

// liquid is any liquid that the library has, your own and measured ones among them, with
// temperatures at which it is poured.
func (m maker) liquid(name string) (s Supply, low, high float64) {
	s, low, high = Supply{Name: name + " liquid", PackGrams: float64(m.IntN(4) * 250)}, 5, 25
	switch m.IntN(8) {
	case 0:
		s.Is.Liquid, high = rheology.Water{}, 60
	case 1:
		s.Is.Liquid = rheology.Sucrose{Brix: m.in(0, 60)}
	case 2:
		s.Is.Liquid = rheology.Glycerol{Percent: m.in(0, 90)}
		low = 15
	case 3:
		s.Is.Liquid = rheology.Food(m.word("olive oil", "evaporated milk", "custard", "stirred yoghurt"))
	case 4:
		return m.thick(name)
	default:
		s.Is.Liquid = m.dairy(0.1, 40)
	}
	return s, low, high
}

// dairy is milk or cream, as the table has it or as somebody measured it.
func (m maker) dairy(low, high float64) rheology.Liquid {
	d := rheology.Dairy{FatPercent: m.in(low, high)}
	if !m.one(4) {
		return d
	}
	eta, err := d.Viscosity(7)
	if err != nil {
		panic(err)
	}
	return rheology.Measured{Liquid: d, TempC: 7, PaS: honestplate.Factor(eta.Likely*m.in(0.8, 1.3), 1.05)}
}

// thick is what is thick: honey, syrups, sauces, and liquids of which somebody has a flow
// curve or viscosities of their own.
func (m maker) thick(name string) (s Supply, low, high float64) {
	s, low, high = Supply{Name: name + " sauce", PackGrams: float64(m.IntN(4) * 250)}, 20, 30
	switch m.IntN(6) {
	case 0:
		s.Is.Liquid = rheology.Honey{}
	case 1:
		s.Is.Liquid = rheology.Syrup{Of: m.word("maple", "invert", "golden", "glucose")}
	case 2:
		s.Is.Liquid = rheology.Food(m.word("tomato ketchup", "mayonnaise", "mustard", "chocolate sauce", "sweetened condensed milk"))
	case 3, 4: // a flow curve of its own
		s.Is.Liquid = rheology.Custom{Name: "ours", Flow: m.curve(), FlowC: 25, KgPerM3: m.in(1000, 1400)}
	case 5: // what is known, as somebody measured it
		known := rheology.Food(m.word("tomato ketchup", "chocolate sauce", "sweetened condensed milk"))
		eta, err := known.Viscosity(25)
		if err != nil {
			panic(err)
		}
		s.Is.Liquid = rheology.Measured{Liquid: known, TempC: 25, PaS: honestplate.Factor(eta.Likely*m.in(0.7, 1.4), 1.1)}
	}
	return s, low, high
}

func (m maker) curve() flow.Model {
	switch m.IntN(5) {
	case 0:
		return flow.PowerLaw{K: m.in(0.5, 5), N: m.in(0.3, 0.9)}
	case 1:
		return flow.Bingham{Yield: m.in(0.1, 5), Plastic: m.in(0.05, 0.5)}
	case 2:
		return flow.HerschelBulkley{Yield: m.in(0.1, 5), K: m.in(0.5, 3), N: m.in(0.3, 0.9)}
	case 3:
		return flow.Casson{Yield: m.in(0.1, 5), Plastic: m.in(0.05, 0.5)}
	}
	return flow.Newtonian{PaS: m.in(0.05, 2)}
}

// pour is a pour of one liquid as it is, at a chosen temperature, of a blend, of one that
// pours like another, or out of a bottle until it is empty.
func (m maker) pour(t *Thing, b *Brief) {
	p := &Pour{PouredG: t.Grams, Outlet: m.outlet(), DropMM: m.in(40, 250), Onto: m.word("dry plate", "film", "pool"), FrameMM: m.in(100, 400)}
	t.Pour = p
	if p.Onto != "dry plate" {
		p.DepthMM = m.in(0.5, 20)
	}
	if !t.Advertised && m.one(4) {
		p.Hides = m.word("flake", "glass", "chocolate")
	}
	blend := !t.Advertised && m.maybe()
	if blend {
		p.TempC = m.in(4, 12)
		thin, thick := m.dairy(0.1, 4), m.dairy(28, 40)
		p.Liquids = []Supply{{Name: t.Name + " milk", Is: Liquid{thin}, PackGrams: 1000}, {Name: t.Name + " cream", Is: Liquid{thick}, PackGrams: 500}}
		if m.maybe() {
			p.PoursLike = &Supply{Name: "like", Is: Liquid{m.dairy(8, 22)}}
		} else {
			p.WantedMPaS = 1000 * math.Exp(m.in(0.2, 0.8)*m.span(thin, thick, p.TempC)) * m.at(thin, p.TempC)
		}
		if m.one(3) {
			p.BatchGrams = p.PouredG + float64(m.IntN(2000))
		}
		return
	}
	s, low, high := m.liquid(t.Name)
	p.Liquids, p.TempC = []Supply{s}, m.in(low, high)
	switch {
	case t.Advertised && m.maybe(): // its temperature is chosen
		p.LowestC, p.HighestC = honestplate.Some(low), honestplate.Some(high)
		p.WantedMPaS = 1000 * m.at(s.Is.Liquid, m.in(low+1, high-1))
		if m.one(3) {
			p.PoursLike, p.WantedMPaS = &Supply{Name: "like", Is: s.Is}, 0 // as thick as itself at the pour's temperature
		}
	case m.one(3): // a bottle that is emptied
		t.Grams = float64(100 * (2 + m.IntN(6)))
		p.PouredG, p.Liquids[0].PackGrams = t.Grams, t.Grams
		t.Stock = honestplate.Some(float64(1 + m.IntN(12)))
		p.Outlet = Outlet{Kind: m.word("bottle", "closed bottle"), WidthMM: m.in(16, 26), LengthMM: m.in(30, 80), HeadMM: m.in(60, 160)}
	}
}

// at is a liquid's viscosity, Pa s; span how far two are apart, in ln.
func (m maker) at(l rheology.Liquid, tempC float64) float64 {
	eta, err := l.Viscosity(tempC)
	if err != nil {
		panic(fmt.Sprintf("%T at %g: %v", l, tempC, err))
	}
	return eta.Likely
}

func (m maker) span(thin, thick rheology.Liquid, tempC float64) float64 {
	return math.Log(m.at(thick, tempC) / m.at(thin, tempC))
}

// pieces are mostly on the tray; on some trays sets are missing, and how many to weigh is
// simulated, which takes longer than all the rest.
func (m maker) pieces(t *Thing) {
	p := &Pieces{NeverBelow: m.maybe(), ToleranceGrams: m.in(0.2, 2)}
	t.Count, t.PackGrams, t.PackCount = 2+m.IntN(3), 0, m.IntN(3)*12
	t.Grams = float64(t.Count * 18)
	n := 60
	if m.one(4) {
		n, t.Count, t.Grams = m.IntN(10), 2, 36
	}
	for i := range n {
		p.Weighed = append(p.Weighed, Weighed{Name: fmt.Sprint("p", i), Grams: float64(160+m.IntN(40)) / 10, Looks: m.in(0, 100)})
	}
	if m.one(3) {
		p.PlateMM, p.PieceMM = 250, m.in(20, 40)
	}
	if m.one(4) {
		p.SpreadGrams = m.in(0.5, 2)
	}
	t.Pieces = p
}

// facts are what may have happened by some moment of the days of a plan.
func (m maker) facts(b *Brief, p *Plan) *Facts {
	first, last := p.Days[0].Call, p.Days[len(p.Days)-1].Wrap
	f := &Facts{Now: first.Add(time.Duration(m.Int64N(int64(last.Sub(first))))).Truncate(time.Second)}
	if m.maybe() {
		f.Room = &Room{TempC: m.in(15, 35), RHPercent: m.in(20, 90)}
	}
	for i := range p.Shots {
		s := &p.Shots[i]
		d, _, _ := b.find(s.Dish, "", "")
		for unit := range m.IntN(8) {
			f.Takes = append(f.Takes, Take{Dish: s.Dish, Unit: unit + 1, Good: m.one(3), At: f.Now.Add(-time.Minute)})
		}
		if m.one(6) {
			f.Done = append(f.Done, s.Dish)
		}
		for k := range d.Things {
			t := &d.Things[k]
			if m.one(6) {
				f.RanOut = append(f.RanOut, RanOut{Dish: s.Dish, Thing: t.Name, Left: m.IntN(4)})
			}
			if t.Grams > 0 && m.one(4) {
				f.Weights = append(f.Weights, WeighedThing{Dish: s.Dish, Thing: t.Name, Unit: 1, Grams: t.Grams + float64(m.IntN(20)-10)/10})
			}
			if q := s.Things[k].Pour; q != nil && q.Cup != nil && m.maybe() {
				f.Cups = append(f.Cups, CupTimes{Dish: s.Dish, Thing: t.Name, Cup: q.Cup.Cup, TempC: q.TempC, Seconds: []float64{math.Round(10*q.Cup.Leave.Likely.After.Seconds()*m.in(0.97, 1.03)) / 10}})
			}
		}
	}
	return f
}

// sees adds up to two events of one unit, at times when the plan lets them come, and
// reports whether there was any.
func (m maker) sees(f *Facts, p *Plan) bool {
	for i := range p.Shots {
		for k := range p.Shots[i].Things {
			t := &p.Shots[i].Things[k]
			var seen []Seen
			for _, e := range t.Events {
				w := e.When
				if !CanBeSeen(e.Key) || w.Likely.Never || w.Likely.After > 3*time.Hour || w.Earliest.After < 5*time.Second {
					continue
				}
				at := w.Likely.After.Seconds() * m.in(0.85, 1.15)
				seen = append(seen, Seen{Dish: p.Shots[i].Dish, Thing: t.Name, Event: e.Key, Seconds: math.Round(at), Unit: 1})
			}
			if len(seen) > 0 {
				f.Seen = append(f.Seen, seen[0])
				if len(seen) > 1 && m.maybe() {
					last := seen[len(seen)-1]
					last.NotYet, last.Seconds = true, math.Max(seen[0].Seconds, last.Seconds/2)
					f.Seen = append(f.Seen, last)
				}
				return true
			}
		}
	}
	return false
}
