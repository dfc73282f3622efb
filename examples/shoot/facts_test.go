package shoot

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
)

func facts(t *testing.T, text string) *Facts {
	t.Helper()
	f, err := ReadFacts(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// only keeps some dishes of a brief: what is taught takes sixteen times as many runs.
func only(t *testing.T, b *Brief, dishes ...string) *Brief {
	t.Helper()
	b.Dishes = slices.DeleteFunc(b.Dishes, func(d Dish) bool { return !slices.Contains(dishes, d.Name) })
	if len(b.Dishes) != len(dishes) {
		t.Fatalf("not all of %q are there", dishes)
	}
	return b
}

func shot(t *testing.T, p *Plan, dish string) *Shot {
	t.Helper()
	for i := range p.Shots {
		if p.Shots[i].Dish == dish {
			return &p.Shots[i]
		}
	}
	t.Fatalf("no shot of %s", dish)
	return nil
}

func width(w honestplate.Window) time.Duration { return w.Latest.After - w.Earliest.After }

// One test glass: its haze and its white fog are seen, and the next glass is known far
// better; what hangs on the same room is known no worse.
func TestWhatWasSeenNarrowsTheRestOfTheDay(t *testing.T) {
	b := only(t, demo(t, "autumn"), "Rosehip cooler", "Buckwheat pancakes")
	before, err := b.Plan(nil)
	if err != nil {
		t.Fatal(err)
	}
	after, err := b.Plan(facts(t, `{"now": "2026-10-14T14:30:00+02:00", "seen": [
		{"dish": "Rosehip cooler", "thing": "rosehip cooler", "event": "haze", "after_seconds": 55, "unit": 1},
		{"dish": "Rosehip cooler", "thing": "rosehip cooler", "event": "white", "after_seconds": 200, "unit": 1}]}`))
	if err != nil {
		t.Fatal(err)
	}
	// Haze is seen by eye within seconds of the glass's own doubt (its wall, its film), which
	// the next glass has again: it narrows less than white, which hangs on the room.
	bar := []float64{0.75, 0.5}
	for i, key := range []string{"haze", "white"} {
		x, y := shot(t, before, "Rosehip cooler").Things[0].Events[i], shot(t, after, "Rosehip cooler").Things[0].Events[i]
		if x.Key != key || float64(width(y.When)) > bar[i]*float64(width(x.When)) || !y.Taught {
			t.Errorf("%s: %v before, %v after", key, x.When, y.When)
		}
	}
	if p := shot(t, after, "Rosehip cooler").Picture; !p.Sure || p.Chance < SureShare {
		t.Errorf("the picture still does not stand: %+v", p)
	}
	butter := func(p *Plan) honestplate.Window {
		for _, t := range shot(t, p, "Buckwheat pancakes").Things {
			if t.Name == "butter curl" {
				return t.Events[0].When
			}
		}
		return honestplate.Window{}
	}
	if x, y := butter(before), butter(after); width(x) == 0 || float64(width(y)) > 1.1*float64(width(x)) {
		t.Errorf("the butter is known less well: %v, then %v", x, y)
	}
}

func TestTakesAndStocksChangeWhatIsLeftToPrepare(t *testing.T) {
	b := demo(t, "autumn")
	after, err := b.Plan(facts(t, `{"now": "2026-10-14T10:20:00+02:00",
		"takes": [{"dish": "Filled plums", "unit": 1, "good": true}, {"dish": "Filled plums", "unit": 2, "good": true}, {"dish": "Brown-butter scoop", "unit": 1, "good": true}],
		"ran_out": [{"dish": "Flatbread with smoked cheese", "thing": "smoked cheese", "left": 3}], "done": ["Buckwheat pancakes"]}`))
	if err != nil {
		t.Fatal(err)
	}
	if s := shot(t, after, "Filled plums"); !s.Done || s.Units.Good != 2 {
		t.Errorf("the plums: %+v", s.Units)
	}
	if s := shot(t, after, "Buckwheat pancakes"); !s.Done {
		t.Error("the pancakes are not done")
	}
	if s := shot(t, after, "Brown-butter scoop"); s.Units.Need >= 8 || s.Units.Good != 1 {
		t.Errorf("one of two good scoops is there: %+v", s.Units)
	}
	if s := shot(t, after, "Flatbread with smoked cheese"); s.Units.Prepare != 3 || !strings.Contains(s.Units.LimitedBy, "stock") || s.Units.Chance > 0.9 {
		t.Errorf("three flatbreads are left: %+v", s.Units)
	}
	for i := range after.Shots {
		if s := &after.Shots[i]; !s.Done && s.At.Before(after.Now) {
			t.Errorf("%s is planned for %v, before now", s.Dish, s.At)
		}
	}
	if len(after.Next) == 0 {
		t.Error("nothing to do next")
	}
}

func TestAMeasuredRoomReplacesTheExpectedOne(t *testing.T) {
	b := demo(t, "coast")
	after, err := b.Plan(facts(t, `{"now": "2026-08-27T07:00:00+01:00", "room": {"temp_c": 24, "rh_percent": 45}}`))
	if err != nil {
		t.Fatal(err)
	}
	if !after.Air.Measured || after.Air.TempC.Likely != 24 || after.Air.DewPointC > 12 {
		t.Errorf("air %+v", after.Air)
	}
}

func TestFactsAboutWhatIsNotThereNameTheirField(t *testing.T) {
	b := demo(t, "autumn")
	for text, want := range map[string]string{
		`{"now": "2026-10-14T11:00:00Z", "takes": [{"dish": "Soup", "unit": 1, "good": true}]}`:                                                     "facts.takes[0].dish",
		`{"now": "2026-10-14T11:00:00Z", "seen": [{"dish": "Filled plums", "thing": "filled plum", "event": "haze", "after_seconds": 9}]}`:          "facts.seen[0].event",
		`{"now": "2026-10-14T11:00:00Z", "seen": [{"dish": "Filled plums", "thing": "crumbs", "event": "haze", "after_seconds": 9}]}`:               "facts.seen[0].thing",
		`{"now": "2026-10-14T11:00:00Z", "seen": [{"dish": "Rosehip cooler", "thing": "rosehip cooler", "event": "drip", "after_seconds": 9}]}`:     "facts.seen[0].event",
		`{"now": "2026-10-14T11:00:00Z", "seen": [{"dish": "Rosehip cooler", "thing": "rosehip cooler", "event": "haze", "after_seconds": 80000}]}`: "facts.seen[0]",
		`{"now": "2026-10-14T11:00:00Z", "cups": [{"dish": "Filled plums", "thing": "filled plum", "cup": "x", "temp_c": 7, "seconds": [30]}]}`:     "facts.cups[0].thing",
	} {
		_, err := b.Plan(facts(t, text))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %s", text, err, want)
		}
	}
}

// The batch's own predicted time means: leave it. A thinner one asks for cream, and what is
// bought covers it.
func TestACupTimeCorrectsTheBatchOrLeavesIt(t *testing.T) {
	b := only(t, demo(t, "autumn"), "Spiced oat bowl")
	before, err := b.Plan(nil)
	if err != nil {
		t.Fatal(err)
	}
	pour := shot(t, before, "Spiced oat bowl").Things[1].Pour
	if pour == nil || pour.Cup == nil {
		t.Fatal("no cup test")
	}
	at := func(seconds float64) *Correction {
		p, err := b.Plan(&Facts{Now: before.Days[0].Call, Cups: []CupTimes{{Dish: "Spiced oat bowl", Thing: "poured milk", Cup: pour.Cup.Cup, TempC: pour.Cup.TempC, Seconds: []float64{seconds}}}})
		if err != nil {
			t.Fatal(err)
		}
		return shot(t, p, "Spiced oat bowl").Things[1].Pour.Corrected
	}
	if c := at(pour.Cup.Leave.Likely.After.Seconds()); c == nil || !c.Leave {
		t.Errorf("the target's own time: %+v", c)
	}
	if c := at(pour.Cup.Leave.Latest.After.Seconds() * 1.15); c == nil || c.Leave || c.Add != "whole milk" {
		t.Errorf("too thick: %+v", c)
	}
}

// A picture that is done early does not move up what is not ready: what was begun for its
// time keeps it, what can be prepared from now on comes as soon as it is, and what is on
// the set keeps what the morning left of its slot. Numbers stay.
func TestWhatIsNotReadyIsNotMovedUp(t *testing.T) {
	b := ordinary(Thing{Name: "bread", Advertised: true, Count: 1})
	b.Hands = 3
	dish := func(name string, prep ...Prep) {
		b.Dishes = append(b.Dishes, Dish{Name: name, SlotMinutes: 60, Wanted: 1, SuccessRate: 0.5, Things: []Thing{{Name: "soup", Advertised: true, Grams: 300, Prep: prep}}})
	}
	dish("slow", Prep{What: "simmer", Minutes: 240})
	dish("quick", Prep{What: "warm", Minutes: 10})
	dish("plain")
	b.Ovens = []Oven{{Name: "oven", TempC: 250, Units: 2, PreheatMin: 25}}
	dish("baked", Prep{What: "bake", Minutes: 10, OvenC: 200})
	before := plannedDay(t, b, nil)
	at := func(p *Plan, dish string) string { return shot(t, p, dish).At.Format("15:04") }
	if got := at(before, "slow") + " " + at(before, "quick"); got != "11:10 12:20" {
		t.Fatalf("in the morning %s", got)
	}
	p := plannedDay(t, b, facts(t, `{"now": "2026-10-14T10:20:00Z", "done": ["the picture"]}`))
	if got := at(p, "slow"); got != "11:10" {
		t.Errorf("what simmers for four hours is at %s", got)
	}
	p = plannedDay(t, b, facts(t, `{"now": "2026-10-14T10:20:00Z", "done": ["the picture", "slow"]}`))
	if got := at(p, "quick") + " " + at(p, "plain"); got != "10:30 11:40" {
		t.Errorf("what is warmed in ten minutes, and what needs nothing, are at %s", got)
	}
	p = plannedDay(t, b, facts(t, `{"now": "2026-10-14T10:20:00Z", "done": ["the picture", "slow", "quick", "plain"]}`))
	if got := at(p, "baked"); got != "10:55" {
		t.Errorf("what is baked for ten minutes in an oven that heats for 25 is at %s", got)
	}
	p = plannedDay(t, b, facts(t, `{"now": "2026-10-14T10:20:00Z", "done": ["the picture", "slow"]}`))
	for i, name := range []string{"the picture", "slow", "quick", "plain"} {
		if s := shot(t, p, name); s.Number != i+1 {
			t.Errorf("%s is number %d, was %d", name, s.Number, i+1)
		}
	}
	p = plannedDay(t, b, facts(t, `{"now": "2026-10-14T10:50:00Z", "takes": [{"dish": "the picture", "unit": 1, "good": false}]}`))
	s := shot(t, p, "the picture")
	if left := s.End.Sub(s.At); s.At.Format("15:04") != "10:50" || left < time.Duration(s.Units.Prepare)*3*time.Minute || left > 15*time.Minute {
		t.Errorf("from %v to %v for %d units", s.At, s.End, s.Units.Prepare)
	}
	if got, want := at(p, "slow"), s.End.Add(10*time.Minute).Format("15:04"); got != max(want, "11:10") {
		t.Errorf("the next one is at %s, want %s", got, want)
	}
}
