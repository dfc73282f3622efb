package main

import (
	"fmt"
	"strings"
	"time"

	"example.org/honestplate/examples/shoot"
)

// A sheet is what goes to the terminal and into Markdown: headings with lines, lists and
// tables under them.
type sheet struct {
	Title  string
	Lead   []string
	Blocks []block
}

type block struct {
	Title  string
	Lines  []line
	Items  []string
	Head   []string
	Rows   [][]string
	Figure string // file beside the Markdown sheet
}

// newSheet sets a plan in the order in which a crew reads it.
func newSheet(p *shoot.Plan) *sheet {
	s := &sheet{Title: p.Title + ", " + p.Client, Lead: leadWords(p)}
	if len(p.Next) > 0 {
		b := block{Title: "Now"}
		for _, n := range p.Next {
			b.Items = append(b.Items, stepWords(p, n))
		}
		s.Blocks = append(s.Blocks, b)
	}
	s.Blocks = append(s.Blocks, dayTable(p))
	if b := attention(p); len(b.Items) > 0 {
		s.Blocks = append(s.Blocks, b)
	}
	if b := before(p); len(b.Lines) > 0 {
		s.Blocks = append(s.Blocks, b)
	}
	for _, pg := range pages(p) {
		s.Blocks = append(s.Blocks, dishBlock(pg))
	}
	s.Blocks = append(s.Blocks, shopping(p), kit(p), wrap(p))
	return s
}

func leadWords(p *shoot.Plan) []string {
	var out []string
	for _, d := range p.Days {
		text := fmt.Sprintf("%s: call %s, first shot %s", d.Call.Format("Mon 2 Jan 2006"), d.Call.Format("15:04"), d.FirstShot.Format("15:04"))
		if !d.LunchFrom.IsZero() {
			text += ", lunch " + d.LunchFrom.Format("15:04")
		}
		text += ", last slot ends " + d.Ends.Format("15:04") + ", wrap " + d.Wrap.Format("15:04")
		out = append(out, text+".")
	}
	if !p.Now.IsZero() {
		out = append(out, "Planned again at "+p.Now.Format("15:04")+" from what the day has shown.")
	}
	air := fmt.Sprintf("Room %.0f °C at %.0f %% humidity", p.Air.TempC.Likely, p.Air.RHPercent.Likely)
	if !p.Air.Measured {
		air += " (expected: measure it)"
	}
	out = append(out, air+fmt.Sprintf("; what is colder than %.0f °C fogs. %s", p.Air.DewPointC, lightWords(p)))
	out = append(out, p.About)
	return out
}

func lightWords(p *shoot.Plan) string {
	var hot []string
	for _, l := range p.Lights {
		if l.Hot {
			hot = append(hot, l.Name)
		}
	}
	switch {
	case len(p.Lights) == 0:
		return "No lamps."
	case len(hot) == 0:
		return "No hot lamps."
	}
	return "Hot: " + strings.Join(hot, ", ") + "."
}

func dayTable(p *shoot.Plan) block {
	b := block{Title: "The day", Head: []string{"time", "picture", "shoot it, after it is out", "best before", "units", "chance", "decided by"}, Figure: "day.svg"}
	for i := range p.Shots {
		s := &p.Shots[i]
		when := slot(p, s)
		if s.Done {
			when = "done"
		}
		decided := ""
		if c := s.Picture.ClosesBy; c != nil {
			decided = reasons(c.Reasons)
		}
		b.Rows = append(b.Rows, []string{when, fmt.Sprintf("%d %s", s.Number, s.Dish), shootIt(s), bestBefore(s),
			fmt.Sprint(s.Units.Prepare), percent(s.Units.Chance), decided})
	}
	return b
}

// attention lists what somebody must decide or mend before the day holds.
func attention(p *shoot.Plan) block {
	b := block{Title: "Decide before it holds"}
	for _, n := range p.Notes {
		b.Items = append(b.Items, note(n))
	}
	for _, pg := range pages(p) {
		for _, a := range pg.Attention {
			b.Items = append(b.Items, fmt.Sprintf("%d %s: %s", pg.Number, pg.Dish, a))
		}
	}
	return b
}

// before lists tasks by the clock, with who does them.
func before(p *shoot.Plan) block {
	b := block{Title: "Who does what, by the clock"}
	call := time.Time{}
	for _, d := range p.Days {
		call = d.Call
		break
	}
	for i := range p.Tasks {
		t := &p.Tasks[i]
		label := t.Start.Format("15:04")
		if len(p.Days) > 1 || t.Start.Format(time.DateOnly) != call.Format(time.DateOnly) {
			label = t.Start.Format("Mon 15:04")
		}
		text := taskWords(t)
		if t.Hand > 0 {
			text += fmt.Sprintf("; hands %d, until %s", t.Hand, t.End.Format("15:04"))
		} else if t.End.After(t.Start) {
			text += "; until " + t.End.Format("15:04")
		}
		if t.Early {
			text += "; before the call"
		}
		b.Lines = append(b.Lines, line{label, text})
	}
	return b
}

func dishBlock(pg page) block {
	b := block{Title: fmt.Sprintf("%d %s, %s", pg.Number, pg.Dish, pg.When)}
	if pg.About != "" {
		b.Lines = append(b.Lines, line{"Shows", pg.About})
	}
	b.Lines = append(b.Lines, line{"Shoot it", pg.Window})
	b.Lines = append(b.Lines, pg.Product...)
	b.Lines = append(b.Lines, pg.Work...)
	b.Lines = append(b.Lines, pg.Windows...)
	for _, c := range pg.Cautions {
		b.Lines = append(b.Lines, line{"Safety", c})
	}
	if pg.Allergens != "" {
		b.Lines = append(b.Lines, line{"Allergens", pg.Allergens})
	}
	return b
}

func shopping(p *shoot.Plan) block {
	b := block{Title: "To buy", Head: []string{"packs", "what", "needed", "for"}}
	for _, k := range p.Purchases {
		need := ""
		switch {
		case k.Count > 0:
			need = fmt.Sprintf("%d pieces", k.Count)
		case k.Grams > 0:
			need = number(float64(int(k.Grams+0.999))) + " g"
		}
		pack := fmt.Sprint(k.Packs)
		switch {
		case k.PackGrams > 0:
			pack += fmt.Sprintf(" × %s g", number(k.PackGrams))
		case k.PackCount > 0:
			pack += fmt.Sprintf(" × %d", k.PackCount)
		}
		what := k.What
		if k.StandIn {
			what += " (stand-in)"
		}
		if k.Prop {
			what += " (prop)"
		}
		b.Rows = append(b.Rows, []string{pack, what, need, ints(k.Shots)})
	}
	return b
}

func kit(p *shoot.Plan) block {
	b := block{Title: "Kit"}
	for _, k := range p.Kit {
		text := k.What
		if k.Count > 1 {
			text = fmt.Sprintf("%d × %s", k.Count, k.What)
		}
		if len(k.Shots) > 0 {
			text += " (" + ints(k.Shots) + ")"
		}
		b.Items = append(b.Items, text)
	}
	return b
}

// wrap is the end of the day: people, place, what is left to sign, safety.
func wrap(p *shoot.Plan) block {
	b := block{Title: "People, place, wrap"}
	for _, who := range p.People {
		b.Lines = append(b.Lines, line{who.Role, strings.TrimSuffix(who.Name+", "+who.Phone, ", ")})
	}
	if len(p.People) == 0 {
		for _, role := range []string{"Photographer", "Food stylist", "Client", "Assistant"} {
			b.Lines = append(b.Lines, line{role, "______________ phone ______________"})
		}
	}
	b.Lines = append(b.Lines, line{"Address", blank(p.Place.Address)}, line{"Emergency", blank(p.Place.Hospital)})
	for _, c := range p.Cautions {
		b.Lines = append(b.Lines, line{"Safety", cautionWords[c]})
	}
	b.Lines = append(b.Lines, line{"Wrap", "records signed; stand-ins named in them; lamps cold before they are packed; nothing from the set is eaten"})
	return b
}

func blank(text string) string {
	if text == "" {
		return "______________"
	}
	return text
}

func ints(v []int) string { return strings.Trim(fmt.Sprint(v), "[]") }

func stepWords(p *shoot.Plan, s shoot.Step) string {
	dish := ""
	for i := range p.Shots {
		if p.Shots[i].Number == s.Shot {
			dish = p.Shots[i].Dish
		}
	}
	return strings.TrimSpace(fmt.Sprintf("%s  %d %s: %s %s", s.At.Format("15:04"), s.Shot, dish, s.What, s.Thing))
}
