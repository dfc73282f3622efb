package main

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
)

//go:embed set.html
var setSource []byte

// A setShot is what the page for the set needs of a shot, already in words.
type setShot struct {
	Number     int             `json:"number"`
	When       string          `json:"when"`
	Dish       string          `json:"dish"`
	Name       string          `json:"name"` // the dish as the brief writes it, for the facts
	Do         []string        `json:"do"`   // at most four lines
	More       []string        `json:"more"` // what is not for the moment
	Start      string          `json:"start"`
	Wanted     int             `json:"wanted"`
	Prepare    int             `json:"prepare"`
	SwapS      float64         `json:"swap_s"` // from one unit to the next; 0 where one lasts
	Picture    shoot.Picture   `json:"picture"`
	Events     []setEvent      `json:"events"`
	Seen       []setSeen       `json:"seen"`
	Cautions   []string        `json:"cautions"`
	Weigh      []setWeigh      `json:"weigh"`
	Cups       []setCup        `json:"cups"`
	RecordName string          `json:"record_name"`
	Kept       bool            `json:"kept"` // the folder has one that is filled in
	Record     json.RawMessage `json:"record"`
}

type setEvent struct {
	Words string             `json:"words"`
	When  honestplate.Window `json:"when"`
}

type setSeen struct {
	Thing string `json:"thing"`
	Event string `json:"event"`
	Words string `json:"words"`
}

type setWeigh struct {
	Thing       string `json:"thing"`
	Item        string `json:"item"` // what the record calls it
	Words       string `json:"words"`
	Placeholder string `json:"placeholder"`
}

// A setCup is a batch that is timed in a cup: what is right, and what the cup can tell.
type setCup struct {
	Thing string             `json:"thing"`
	Words string             `json:"words"`
	Cup   string             `json:"cup"`
	TempC float64            `json:"temp_c"`
	Leave honestplate.Window `json:"leave"`
	Least honestplate.Moment `json:"least_s"`
	Most  honestplate.Moment `json:"most_s"`
	Thin  string             `json:"thin"`  // what to do where it runs out too soon
	Thick string             `json:"thick"` // and too late
}

// cupOf puts a cup test into words for the page.
func cupOf(t *shoot.PlannedThing) setCup {
	c := t.Pour.Cup
	out := setCup{
		Thing: t.Name, Cup: c.Cup, TempC: c.TempC, Leave: c.Leave, Least: c.Least, Most: c.Most,
		Words: fmt.Sprintf("%s, %s cup: %s is right", t.Name, c.Cup, cupRange(c)),
		Thin:  "too thin", Thick: "too thick",
	}
	for _, k := range c.Corrections {
		text := fmt.Sprintf(": at %s s add %s of %s, stir, bring back to temperature, time it again", number(k.Seconds), grams(k.Grams, 1), k.Add)
		if k.Seconds < c.Leave.Likely.After.Seconds() {
			out.Thin += text
		} else {
			out.Thick += text
		}
	}
	return out
}

// setPage fills the page for a phone on the set with the plan. The page loads nothing
// and computes no window: what it counts down to stands in the plan.
func setPage(p *shoot.Plan, records []recordFile, kept ...keptRecord) ([]byte, error) {
	data := struct {
		Key   string    `json:"key"`
		Title string    `json:"title"`
		Shots []setShot `json:"shots"`
	}{Title: honestplate.OneLine(p.Title)}
	for i, pg := range pages(p) {
		s := pg.Shot
		out := setShot{
			Number: s.Number, When: pg.When, Dish: honestplate.OneLine(s.Dish), Name: s.Dish, Start: startWords(s),
			Wanted: s.Units.Wanted - s.Units.Good, Prepare: s.Units.Prepare, SwapS: s.Swap.Seconds(), Picture: s.Picture,
			Cautions: append([]string{}, pg.Cautions...), More: []string{}, Events: []setEvent{}, Seen: []setSeen{}, Weigh: []setWeigh{}, Cups: []setCup{},
			RecordName: records[i].name, Kept: records[i].kept, Record: records[i].data,
		}
		out.Do, out.More = doWords(pg)
		out.Picture.OpensBy, out.Picture.ClosesBy, out.Picture.Remedies = nil, nil, nil // in words already
		for k := range s.Things {
			t := &s.Things[k]
			for _, e := range t.Events {
				out.Events = append(out.Events, setEvent{event(e.Key), e.When})
				if shoot.CanBeSeen(e.Key) {
					out.Seen = append(out.Seen, setSeen{t.Name, e.Key, event(e.Key)})
				}
			}
			if t.Pour != nil && t.Pour.Cup != nil {
				out.Cups = append(out.Cups, cupOf(t))
			}
			if t.Advertised {
				w := setWeigh{Thing: t.Name, Item: honestplate.OneLine(t.Name), Words: t.Name}
				if t.Grams > 0 {
					w.Words += ", declared " + grams(t.Grams, t.StepGrams)
					w.Placeholder = number(t.Grams)
				}
				out.Weigh = append(out.Weigh, w)
			}
		}
		data.Shots = append(data.Shots, out)
	}
	sum := sha256.New()
	for _, s := range data.Shots {
		fmt.Fprintf(sum, "%d %s\n", s.Number, s.Dish)
	}
	fmt.Fprint(sum, p.Title, p.Days[0].Date)
	data.Key = hex.EncodeToString(sum.Sum(nil)[:8])
	b, err := json.Marshal(data) // which escapes what could end the script
	if err != nil {
		return nil, err
	}
	return bytes.Replace(setSource, []byte("/*PLAN*/null"), b, 1), nil
}

// startWords is what the button says that starts a unit's clock.
func startWords(s *shoot.Shot) string {
	for i := range s.Things {
		switch s.Things[i].Kind {
		case "scoop":
			return "It is out of the freezer"
		case "iced_drink":
			return "It is filled"
		case "bottle":
			return "It is out of the cold"
		case "melted_cheese":
			return "It is out of the oven"
		case "bowl":
			return "It is served"
		}
	}
	return "It is on the set"
}

// mostDo is how many lines stand before the button: more is not read with a unit waiting.
const mostDo = 4

// doWords are the few lines for the moment before a unit comes out, and all the others.
func doWords(pg page) (now, more []string) {
	now = []string{"Shoot: " + pg.Window}
	if pg.About != "" {
		more = append(more, pg.About)
	}
	for _, first := range []bool{true, false} {
		last := ""
		for _, l := range pg.Work {
			if l.Label != "" {
				last = l.Label
			}
			moment := slices.Contains([]string{"Jug", "Pour", "Stream", "Drizzle", "Fill", "Scoop"}, l.Label)
			switch {
			case moment && first && len(now) < mostDo:
				now = append(now, l.Label+": "+l.Text)
			case !first && !(moment && slices.Contains(now, l.Label+": "+l.Text)):
				more = append(more, last+": "+l.Text)
			}
		}
	}
	for _, l := range slices.Concat(pg.Windows, pg.Product) {
		more = append(more, l.Label+": "+l.Text)
	}
	return now, append(more, pg.Attention...)
}
