package shoot

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/honestplate/portion"
)

// ordinary is a day of one picture that needs nothing.
func ordinary(things ...Thing) *Brief {
	return &Brief{
		Title: "ordinary", Client: "nobody", About: "made by a test",
		Days:   []Day{{Date: Date{2026, 10, 14}, Call: TimeOfDay{8 * 60}, FirstShot: TimeOfDay{10 * 60}, Wrap: TimeOfDay{18 * 60}}},
		Room:   Room{TempC: 22, RHPercent: 50},
		Dishes: []Dish{{Name: "the picture", SlotMinutes: 60, Wanted: 1, SuccessRate: 0.5, Things: things}},
	}
}

func plannedDay(t *testing.T, b *Brief, facts *Facts) *Plan {
	t.Helper()
	if errs := b.faults(); len(errs) > 0 {
		t.Fatal(errs)
	}
	p, err := b.Plan(facts)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A cover, a book, a test: nothing is sold, and the record says so of every item.
func TestWorkThatAdvertisesNothing(t *testing.T) {
	b := ordinary(Thing{Name: "loaf", Grams: 600}, Thing{Name: "knife"})
	b.Dishes[0].Advertised = "none"
	p := plannedDay(t, b, nil)
	if !p.Shots[0].Editorial || p.Shots[0].Units.Prepare == 0 {
		t.Errorf("%+v", p.Shots[0])
	}
	for _, i := range p.Records()[0].Items {
		if i.Advertised || !strings.Contains(i.How, "no product is shown") {
			t.Errorf("%+v", i)
		}
	}
}

// No freezer, no fridge, no oven, no lamp: a scoop from its cabinet and a glass in a dark
// room are planned, and what is cold and has no store is told.
func TestADayWithoutStoresAndLamps(t *testing.T) {
	b := ordinary(Thing{Name: "scoop", Advertised: true, Grams: 60, Scoop: &Scoop{Mix: "gelato", Diameter: 55, CabinetC: -13}},
		Thing{Name: "tea", Advertised: true, Grams: 250, Drink: &Drink{DiameterMM: 72, HeightMM: 150, WallMM: 2.5, FillGrams: 250, DrinkC: 6, Wanted: "clear"}})
	p := plannedDay(t, b, nil)
	s := &p.Shots[0]
	if len(p.Lights) != 0 || s.Picture.Always || slices.Contains(p.Cautions, HotLamp) {
		t.Errorf("lights %v, picture %+v", p.Lights, s.Picture)
	}
	if !has(s.Things[1].Notes, NoColdStore) {
		t.Errorf("nobody is told that there is no fridge: %+v", s.Things[1].Notes)
	}
	if len(s.Things[0].Notes) != 0 {
		t.Errorf("a scoop from its cabinet: %+v", s.Things[0].Notes)
	}
}

// Window light is light: the more of it, the sooner a scoop goes soft.
func TestDaylightWarms(t *testing.T) {
	var last time.Duration
	for i, lux := range []float64{0, 2000, 40000} {
		b := ordinary(Thing{Name: "scoop", Advertised: true, Grams: 60, Scoop: &Scoop{Mix: "gelato", Diameter: 55, CabinetC: -13}})
		b.Daylight = lux
		p := plannedDay(t, b, nil)
		soft := p.Shots[0].Things[0].Events[0].When.Likely.After
		if i > 0 && (soft >= last || len(p.Lights) != 1 || p.Lights[0].Name != "daylight") {
			t.Errorf("%g lx: soft after %v, with less light after %v; lights %v", lux, soft, last, p.Lights)
		}
		last = soft
	}
}

// A night's shoot, over the end of summer time: what is earlier than the call is on the
// next date, instants are what they are, and the plan marks both.
func TestANightOverAClockChange(t *testing.T) {
	b := ordinary(Thing{Name: "tea", Advertised: true, Grams: 250, Drink: &Drink{DiameterMM: 72, HeightMM: 150, WallMM: 2.5, FillGrams: 250, DrinkC: 6, Wanted: "clear"}})
	b.Place.TimeZone = "Europe/Vienna"
	b.Fridges = []Store{{Name: "fridge", TempC: 3, Units: 20}}
	b.Days = []Day{{Date: Date{2026, 10, 24}, Call: TimeOfDay{22 * 60}, FirstShot: TimeOfDay{30}, Lunch: TimeOfDay{60}, Wrap: TimeOfDay{5 * 60}}}
	p := plannedDay(t, b, nil)
	d, s := p.Days[0], p.Shots[0]
	const form = "02 15:04 -0700"
	// A slot of an hour from half past midnight would run into the pause at one.
	if got := s.At.Format(form); got != "25 01:45 +0200" {
		t.Errorf("shot at %s", got)
	}
	if got := s.End.Format(form); got != "25 02:45 +0200" {
		t.Errorf("until %s", got)
	}
	if d.Shift != -time.Hour || !has(p.Notes, ClockChanges) || !has(p.Notes, PastMidnight) || d.Wrap.Sub(d.Call) != 8*time.Hour {
		t.Errorf("shift %v, wrap %v after the call, notes %v", d.Shift, d.Wrap.Sub(d.Call), p.Notes)
	}
	// Fourteen hours in the fridge are fourteen hours, whatever the clocks do.
	for _, q := range p.Tasks {
		if q.What == Chill && (q.End.Sub(q.Start) != overnight || !q.Early) {
			t.Errorf("chilled %v, %v", q.End.Sub(q.Start), q)
		}
	}
}

// A core temperature teaches as an event does: a bowl that is hotter than expected after
// five minutes steams longer.
func TestATemperatureThatWasReadTeaches(t *testing.T) {
	b := ordinary(Thing{Name: "broth", Advertised: true, Grams: 400, Bowl: &Bowl{DiameterMM: 180, FillGrams: 400, StartC: 85, VesselGrams: 600, Wanted: "hot"}})
	cool := func(p *Plan) time.Duration { return p.Shots[0].Things[0].Events[1].When.Likely.After }
	expected := cool(plannedDay(t, b, nil))
	read := func(tempC string) *Plan {
		return plannedDay(t, b, facts(t, `{"now": "2026-10-14T09:30:00Z", "seen": [{"dish": "the picture", "thing": "broth", "temp_c": `+tempC+`, "within_k": 0.5, "after_seconds": 300}]}`))
	}
	hot, cold := read("58.5"), read("53.5")
	if !(cool(cold) < cool(hot)) || !hot.Shots[0].Things[0].Events[1].Taught {
		t.Errorf("too cool after %v expected, %v where it was hot, %v where it was cold", expected, cool(hot), cool(cold))
	}
}

// A unit that was weighed and is not what is declared is told; the last reading counts,
// what agrees as far as the scale tells is silent, and nobody is promised a prop.
func TestWeightsAreHeldAgainstTheDeclaration(t *testing.T) {
	b := ordinary(Thing{Name: "plums", Advertised: true, Grams: 162, Count: 9, Pieces: &Pieces{ToleranceGrams: 2}}, Thing{Name: "crumbs", Grams: 20})
	b.Dishes[0].SuccessRate = 0.95 // one unit: how many plums to weigh is not the question
	p := plannedDay(t, b, facts(t, `{"now": "2026-10-14T09:30:00Z", "weights": [
		{"dish": "the picture", "thing": "plums", "unit": 1, "grams": 162.4}, {"dish": "the picture", "thing": "plums", "unit": 2, "grams": 170},
		{"dish": "the picture", "thing": "plums", "unit": 3, "grams": 150}, {"dish": "the picture", "thing": "plums", "unit": 3, "grams": 161.9},
		{"dish": "the picture", "thing": "crumbs", "unit": 1, "grams": 33}]}`))
	s := p.Shots[0]
	want := []portion.Verdict{portion.Agrees, portion.Differs, portion.Agrees}
	if len(s.Weights) != len(want) {
		t.Fatalf("%+v", s.Weights)
	}
	for i, w := range s.Weights {
		if w.Verdict != want[i] {
			t.Errorf("unit %d, %g g: %s", w.Unit, w.Grams, w.Verdict)
		}
	}
	off := 0
	for _, n := range s.Notes {
		if n.Code == WeightOff {
			off++
			if n.Text != "2" || n.Value.Value != 170 || n.Second.Value != 162 || n.Thing != "plums" {
				t.Errorf("%+v", n)
			}
		}
	}
	if off != 1 {
		t.Errorf("%d weights are off", off)
	}
}

// What must stand for two hours and does so in few units is told with the numbers of the
// plan's own picture; a unit has the set for all that time.
func TestAPictureThatMustStand(t *testing.T) {
	p := plannedDay(t, demo(t, "motion"), nil)
	s := shot(t, p, "Ginger cordial over ice")
	var n Note
	for _, k := range s.Notes {
		if k.Code == CannotStand {
			n = k
		}
	}
	likely := s.Picture.Closes.Likely.After - s.Picture.Opens.Likely.After
	if n.Value.Value != 120 || time.Duration(n.Second.Value)*time.Minute > likely || time.Duration(n.Second.Value+1)*time.Minute <= likely {
		t.Errorf("%+v, and the picture lasts likely %v", n, likely)
	}
	if n.Share.Value >= SureShare || s.Picture.Length().After >= 2*time.Hour || !slices.Contains(s.Picture.Remedies, DeclareOther) {
		t.Errorf("%+v, %+v", n, s.Picture)
	}
	want, err := portion.Heroes{SuccessRate: 0.6 * n.Share.Value, Wanted: 1, Confidence: 0.85}.Chance(s.Units.Prepare)
	if err != nil || s.Units.Prepare != 1 || s.Units.Chance != want {
		t.Errorf("%+v, want a chance of %g (%v)", s.Units, want, err)
	}
}

// What is too much is answered or refused, and never worked on for long: the most dishes
// of a brief, and the most units of a dish.
func TestTooMuchIsRefusedOrCounted(t *testing.T) {
	one := `{"name": "d", "slot_minutes": 60, "wanted_takes": 1, "success_rate": 0.5, "things": [{"name": "x", "advertised": true, "count": 1}]},`
	head := `{"title": "t", "client": "c", "about": "a", "days": [{"date": "2026-10-14", "call": "08:00", "first_shot": "10:00", "wrap": "17:00"}], "room": {"temp_c": 20, "rh_percent": 50}, "dishes": [`
	many := head + strings.TrimSuffix(strings.Repeat(`{"name":"d"},`, 10000), ",") + "]}"
	if _, err := Read(strings.NewReader(many)); err == nil || err.Error() != "line 1: dishes is a list of 10000, want 1 to 200 entries" {
		t.Errorf("10,000 short dishes: %.200v", err)
	}
	many = head + strings.TrimSuffix(strings.Repeat(one, 10000), ",") + "]}"
	if _, err := Read(strings.NewReader(many)); err == nil || err.Error() != "line 1: file is too long, want at most 1048576 bytes" {
		t.Errorf("10,000 dishes: %.200v", err)
	}
	// A success rate of 2 % and ten wanted takes: 1,292 heroes and more.
	b := ordinary(Thing{Name: "plums", Advertised: true, Grams: 162, Count: 9, Pieces: &Pieces{}})
	b.Dishes[0].Wanted, b.Dishes[0].SuccessRate, b.Dishes[0].SlotMinutes = 20, 0.02, 720
	for i := range 2000 {
		b.Dishes[0].Things[0].Pieces.Weighed = append(b.Dishes[0].Things[0].Pieces.Weighed, Weighed{Name: "p" + time.Duration(i).String(), Grams: 15 + float64(i%60)/10, Looks: float64(i % 100)})
	}
	p := plannedDay(t, b, nil)
	s := p.Shots[0]
	if s.Units.Need < 1292 || s.Units.Prepare > mostUnits || !has(s.Notes, ManyUnits) || !has(s.Notes, UnitsLimited) {
		t.Errorf("%+v, %v", s.Units, s.Notes)
	}
}

// What is built or baked while the shot goes on comes no faster than hands and oven make
// it: more pairs of hands build side by side, a fuller oven bakes more at once.
func TestBuildersAndOvensSetThePace(t *testing.T) {
	build := func(hands int) *Shot {
		b := ordinary(Thing{Name: "burger", Advertised: true, Build: true})
		b.Hands = hands
		d := &b.Dishes[0]
		d.TakeMinutes, d.SwapMinutes, d.SlotMinutes, d.Wanted = 2, 1, 30, 4
		d.Specification = &Specification{Product: "p", Version: "1"}
		for _, name := range []string{"bun", "sauce", "patty", "leaf", "crown"} { // ten minutes for one pair of hands
			d.Specification.Components = append(d.Specification.Components, Component{Name: name, Grams: 30, MinusGrams: 3, PlusGrams: 3})
		}
		p := plannedDay(t, b, nil)
		builders := 0
		for _, k := range p.Tasks {
			if k.What == Assemble {
				builders++
			}
		}
		if builders != min(hands, 4) {
			t.Errorf("%d of %d pairs of hands build", builders, hands)
		}
		return &p.Shots[0]
	}
	for hands, want := range map[int]int{1: 3, 2: 6, 4: 10} {
		u := build(hands).Units
		if by := map[bool]string{true: "hands", false: "slot"}[hands < 4]; u.Prepare > want || u.Prepare < min(want, u.Need) || u.LimitedBy != by && u.Prepare < u.Need {
			t.Errorf("with %d pairs of hands %+v, want %d in half an hour", hands, u, want)
		}
	}
	for fits, want := range map[int]int{1: 3, 2: 6} {
		b := ordinary(Thing{Name: "flatbread", Advertised: true, Count: 1, Prep: []Prep{{What: "bake", Minutes: 10, OvenC: 200, Each: true}}})
		b.Ovens = []Oven{{Name: "oven", TempC: 250, Units: fits}}
		b.Dishes[0].SlotMinutes, b.Dishes[0].Wanted = 30, 4
		p := plannedDay(t, b, nil)
		if u := p.Shots[0].Units; u.Prepare != want || u.LimitedBy != "oven" {
			t.Errorf("%d at a time: %+v, want %d", fits, u, want)
		}
	}
}

// An oven that holds one and is wanted for two at once is told; pieces that are still to be
// weighed hold the sets with nine chances in ten.
func TestAFullOvenAndATrayToFillAreTold(t *testing.T) {
	bake := func(name string) Thing {
		return Thing{Name: name, Advertised: true, Count: 1, Prep: []Prep{{What: "bake", Minutes: 20, OvenC: 200}}}
	}
	b := ordinary(bake("pie"), bake("tart"))
	b.Dishes[0].SuccessRate = 0.95
	b.Ovens = []Oven{{Name: "oven", TempC: 220, Units: 1}}
	if p := plannedDay(t, b, nil); !has(p.Notes, StoreFull) {
		t.Errorf("two in an oven for one: %v", p.Notes)
	}
	b.Ovens[0].Units = 2
	if p := plannedDay(t, b, nil); has(p.Notes, StoreFull) {
		t.Errorf("two in an oven for two: %v", p.Notes)
	}
	b = ordinary(Thing{Name: "pair", Advertised: true, Grams: 36, Count: 2, Pieces: &Pieces{ToleranceGrams: 0.5}})
	b.Dishes[0].SuccessRate = 0.95
	q := plannedDay(t, b, nil).Shots[0].Things[0].Pieces
	if q.Missing != 1 || q.Weigh <= 2 || q.Chance.Likely < 0.9 {
		t.Errorf("%+v", q)
	}
}
