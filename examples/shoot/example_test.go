package shoot_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
	"example.org/honestplate/portion/record"
)

// A short brief of an invented day: a glass with real ice, and bread that nothing happens to.
const brief = `{
  "title": "Two pictures", "client": "Invented & Sons", "about": "made up for this page",
  "place": {"time_zone": "Europe/Vienna"},
  "days": [{"date": "2026-10-14", "call": "08:00", "first_shot": "10:00", "wrap": "16:00"}],
  "room": {"temp_c": 23, "rh_percent": 50},
  "fridges": [{"name": "fridge", "temp_c": 3, "units": 20}],
  "dishes": [
    {"name": "Iced tea", "slot_minutes": 60, "take_minutes": 4, "wanted_takes": 2, "success_rate": 0.5,
     "things": [
       {"name": "tea", "advertised": true, "grams": 280, "pack_grams": 1000,
        "iced_drink": {"diameter_mm": 75, "height_mm": 150, "wall_mm": 2.5, "fill_grams": 280, "drink_c": 5,
                       "ice": {"thing": "ice", "grams": 90}, "wanted": "ice"}},
       {"name": "ice", "advertised": true, "grams": 90, "pack_grams": 2000}]},
    {"name": "Loaf", "slot_minutes": 30, "wanted_takes": 1, "success_rate": 0.8,
     "things": [{"name": "loaf", "advertised": true, "count": 1}]}
  ]
}`

// plan reads the brief and the facts, if there are any, and plans the day.
func plan(facts string) (*shoot.Plan, error) {
	b, err := shoot.Read(strings.NewReader(brief))
	if err != nil {
		return nil, err
	}
	if facts == "" {
		return b.Plan(nil)
	}
	f, err := shoot.ReadFacts(strings.NewReader(facts))
	if err != nil {
		return nil, err
	}
	return b.Plan(f)
}

// A brief is read strictly, and says what is to be shot.
func ExampleRead() {
	b, err := shoot.Read(strings.NewReader(brief))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range b.Dishes {
		fmt.Printf("%s: good takes wanted %d, things in the frame %d\n", d.Name, d.Wanted, len(d.Things))
	}
	// Output:
	// Iced tea: good takes wanted 2, things in the frame 2
	// Loaf: good takes wanted 1, things in the frame 1
}

// The plan says when, how many and how long each unit stands. What holds longest comes
// first.
func ExampleBrief_Plan() {
	p, err := plan("")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range p.Shots {
		fmt.Printf("%s %s: prepare %d\n", s.At.Format("15:04"), s.Dish, s.Units.Prepare)
		if !s.Picture.Always {
			fmt.Printf("  nine in ten still stand after %.0f min; it ends with: %s\n", s.Picture.Length().After.Minutes(), s.Picture.ClosesBy.Event)
		}
	}
	for _, b := range p.Purchases {
		fmt.Printf("buy %d of %s\n", b.Packs, b.What)
	}
	// Output:
	// 10:00 Loaf: prepare 2
	// 10:40 Iced tea: prepare 7
	//   nine in ten still stand after 59 min; it ends with: ice gone
	// buy 3 of loaf
	// buy 3 of tea
	// buy 1 of ice
}

// Facts come back at five to eleven: the room as it is, what a glass weighed, a take. The
// plan of the rest of the day follows, and what to do now. What was seen of a unit (its
// ice gone, its first drip) teaches the windows too: see [Seen].
func ExampleBrief_Plan_facts() {
	p, err := plan(`{
	  "now": "2026-10-14T10:55:00+02:00",
	  "room": {"temp_c": 26, "rh_percent": 45, "measured": true},
	  "weights": [{"dish": "Iced tea", "thing": "tea", "unit": 2, "grams": 271.5}],
	  "takes": [{"dish": "Iced tea", "unit": 1, "good": true}],
	  "done": ["Loaf"]
	}`)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range p.Shots {
		if s.Done {
			fmt.Printf("%s is done\n", s.Dish)
			continue
		}
		fmt.Printf("%s at %s: %d good, prepare %d more, each stands %.0f min\n",
			s.Dish, s.At.Format("15:04"), s.Units.Good, s.Units.Prepare, s.Picture.Length().After.Minutes())
	}
	for _, w := range p.Shots[1].Weights {
		fmt.Printf("%s of unit %d: %.1f g of %.1f g: %s\n", w.Thing, w.Unit, w.Grams, w.Declared, w.Verdict)
	}
	for _, n := range p.Next {
		fmt.Printf("%s: %s, picture %d\n", n.At.Format("15:04"), n.What, n.Shot)
	}
	// Output:
	// Loaf is done
	// Iced tea at 10:55: 1 good, prepare 4 more, each stands 53 min
	// tea of unit 2: 271.5 g of 280.0 g: differs
	// 10:55: on the set, picture 2
}

// Every fault of a file is told at once, with its line; a service finds the field, to
// mark it in its form.
func ExampleFaults() {
	text := strings.Replace(brief, `"rh_percent": 50`, `"rh": 50`, 1)
	text = strings.Replace(text, `"success_rate": 0.8`, `"success_rate": 80`, 1)
	_, err := shoot.Read(strings.NewReader(text))
	fmt.Println(err)

	var faults shoot.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			if e, ok := honestplate.Cause(f).(*honestplate.InputError); ok {
				fmt.Printf("mark %s in line %d\n", e.Field, f.Line)
			}
		}
	}
	// Output:
	// line 5: room.rh is not a field here, want one of temp_c, rh_percent, air_speed_m_s, measured
	// line 5: room.rh_percent is missing, want it given
	// line 14: dishes[1].success_rate is 80, want 0.02 to 0.99
	// mark room.rh in line 5
	// mark room.rh_percent in line 5
	// mark dishes[1].success_rate in line 14
}

// The schema is what an editor or a form checks a brief by before it is sent.
func ExampleSchema() {
	text, err := shoot.Schema()
	if err != nil {
		fmt.Println(err)
		return
	}
	var s struct {
		Required   []string
		Properties struct {
			Confidence struct {
				Minimum, Maximum float64
				Description      string
			}
		}
	}
	if err := json.Unmarshal(text, &s); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("required:", strings.Join(s.Required, ", "))
	c := s.Properties.Confidence
	fmt.Printf("confidence: %g to %g; %s\n", c.Minimum, c.Maximum, c.Description)
	// Output:
	// required: title, client, about, days, room, dishes
	// confidence: 0.5 to 0.999; wanted chance that the prepared units suffice; default 0.9
}

// One record a picture is left to fill in: what is declared and planned stands in it. What
// the scale says is added, and the record library reads and judges it.
func ExamplePlan_Records() {
	p, err := plan("")
	if err != nil {
		fmt.Println(err)
		return
	}
	r := p.Records()[1]
	r.Items[0].Weighed = &record.Weighed{Grams: 271.5, ErrorGrams: 0.2, Scale: "bench scale"}
	var file bytes.Buffer
	if err := r.Write(&file); err != nil {
		fmt.Println(err)
		return
	}
	back, err := record.Read(&file)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(back.Picture, back.Date)
	for _, i := range back.Items {
		f, err := i.Verdict()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: declared %s; %s %s\n", i.Item, i.Declared, f.Verdict, f.Reason)
	}
	// Output:
	// Iced tea 2026-10-14
	// tea: declared 280 g; differs short
	// ice: declared 90 g;
}
