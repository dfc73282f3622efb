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
	Foot   string // what the table's words mean
	Figure string // file beside the Markdown sheet
}

// newSheet sets a plan in the order in which a crew reads it: what to do now, what must
// be decided, the day, who does what, then each picture, then the lists.
func newSheet(p *shoot.Plan, kept ...keptRecord) *sheet {
	s := &sheet{Title: p.Title + ", " + p.Client, Lead: leadWords(p)}
	if b := now(p); b != nil {
		s.Blocks = append(s.Blocks, *b)
	}
	if b := attention(p); b != nil {
		s.Blocks = append(s.Blocks, *b)
	}
	s.Blocks = append(s.Blocks, dayTable(p))
	if b := before(p); len(b.Rows) > 0 {
		s.Blocks = append(s.Blocks, b)
	}
	for _, pg := range pages(p) {
		if !pg.Shot.Done {
			s.Blocks = append(s.Blocks, dishBlock(pg))
		}
	}
	s.Blocks = append(s.Blocks, shopping(p), kit(p), people(p), wrap(p, kept))
	return s
}

func leadWords(p *shoot.Plan) []string {
	var out []string
	for i := range p.Days {
		out = append(out, dayWords(&p.Days[i], !p.Now.IsZero()))
	}
	if !p.Now.IsZero() {
		out = append(out, "Planned again at "+wall(p.Now)+" from what the day has shown.")
	}
	out = append(out, holds(p))
	air := fmt.Sprintf("Room %.0f °C at %.0f %% humidity", p.Air.TempC.Likely, p.Air.RHPercent.Likely)
	if !p.Air.Measured {
		air += " (expected: measure it)"
	}
	out = append(out, air+fmt.Sprintf("; what is colder than %.0f °C fogs. %s", p.Air.DewPointC, lightWords(p)))
	out = append(out, p.About)
	return out
}

// dayWords say when a day begins and ends, and whether it holds.
func dayWords(d *shoot.PlanDay, begun bool) string {
	text := fmt.Sprintf("%s: call %s", d.Call.Format("Mon 2 Jan 2006"), wall(d.Call))
	wrap := ", wrap " + wall(d.Wrap)
	if d.Wrap.YearDay() != d.Call.YearDay() {
		wrap += " on " + d.Wrap.Format("Mon 2 Jan")
	}
	switch {
	case d.Ends.After(d.FirstShot):
	case begun:
		return text + ", nothing is left to shoot" + wrap + "."
	default:
		return text + ", nothing is shot" + wrap + "."
	}
	text += ", first shot " + wall(d.FirstShot)
	if !d.LunchFrom.IsZero() {
		text += ", lunch " + wall(d.LunchFrom)
	}
	return text + ", last slot ends " + wall(d.Ends) + wrap + spare(d) + "."
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

// now is what the next minutes ask for, where the day has begun.
func now(p *shoot.Plan) *block {
	if p.Now.IsZero() {
		return nil
	}
	b := &block{Title: "Now, " + wall(p.Now)}
	for _, n := range p.Next {
		b.Items = append(b.Items, stepWords(p, n))
	}
	if len(b.Items) == 0 {
		b.Items = []string{"nothing begins in the next 20 minutes" + nextSlot(p)}
	}
	return b
}

// nextSlot says which picture comes next.
func nextSlot(p *shoot.Plan) string {
	for i := range p.Shots {
		if s := &p.Shots[i]; !s.Done && s.At.After(p.Now) {
			return fmt.Sprintf("; next is %d %s, %s", s.Number, s.Dish, slot(p, s))
		}
	}
	return ""
}

// dayKey explains the table's words, once.
const dayKey = "Shoot: minutes and seconds after “it is out” (out of the cold or the oven, filled, set down). Between the two " +
	"times at least nine units in ten show the picture; the second is its “best before”. A time with “?” is the best one, " +
	"and how many show it. Two more times in brackets are early and late: 19 units in 20 lie between. Every: from one unit to the next, change included. Units: heroes to prepare. Chance: that they give the takes."

func dayTable(p *shoot.Plan) block {
	b := block{Title: "The day", Head: []string{"time", "picture", "shoot", "every", "units", "chance", "ends with"}, Figure: "day.svg"}
	day := -1
	for i := range p.Shots {
		s := &p.Shots[i]
		if len(p.Days) > 1 && s.Day != day {
			day = s.Day
			b.Rows = append(b.Rows, []string{p.Days[day].Call.Format("Mon 2 Jan"), "", "", "", "", "", ""})
		}
		swap, ends := "–", "–"
		if s.Swap > 0 {
			swap = clock(s.Swap)
		}
		if c := s.Picture.ClosesBy; c != nil && !s.Picture.Always {
			ends = event(c.Event)
		}
		if s.Done {
			b.Rows = append(b.Rows, []string{"done", fmt.Sprintf("%d %s", s.Number, s.Dish), "–", "–", "–", "–", "–"})
			continue
		}
		b.Rows = append(b.Rows, []string{hours(s), fmt.Sprintf("%d %s", s.Number, s.Dish), shootShort(s), swap,
			fmt.Sprint(s.Units.Prepare), percent(s.Units.Chance), ends})
	}
	b.Foot = dayKey
	return b
}

// attention lists what somebody must decide or mend, and says whether the day holds
// without it.
func attention(p *shoot.Plan) *block {
	b := &block{Title: "Decide first"}
	changed := time.Time{}
	for i := range p.Days {
		if d := &p.Days[i]; !d.ShiftAt.IsZero() && !d.ShiftAt.Equal(changed) {
			changed = d.ShiftAt
			b.Items = append(b.Items, d.ShiftAt.Format("Mon 2 Jan")+": the "+clocksChange(d)+"; all times here are on the wall clock")
		}
	}
	for _, n := range p.Notes {
		if n.Code != shoot.ClockChanges {
			b.Items = append(b.Items, note(n))
		}
	}
	for _, pg := range pages(p) {
		if len(pg.Attention) > 0 && !pg.Shot.Done {
			b.Items = append(b.Items, fmt.Sprintf("%d %s, %s (%s): %s", pg.Number, pg.Dish, pg.When, pg.Window, strings.Join(pg.Attention, ". ")))
		}
	}
	if len(b.Items) == 0 {
		return nil
	}
	return b
}

// holds says in one sentence whether the day holds.
func holds(p *shoot.Plan) string {
	sure, all := 0, 0
	for i := range p.Shots {
		s := &p.Shots[i]
		if s.Done {
			continue
		}
		all++
		if (s.Picture.Always || s.Picture.Sure) && s.Units.LimitedBy == "" {
			sure++
		}
	}
	text := fmt.Sprintf("All %d pictures have a window and the units they want.", all)
	switch {
	case all == 0:
		return "Every picture is done."
	case sure < all:
		text = fmt.Sprintf("%d of %d pictures have a window and the units they want; the others stand under “decide first”.", sure, all)
	}
	text += fmt.Sprintf(" Chance that every picture gets its takes: %s", percent(p.Chance))
	if weak := weakest(p); all > 1 && weak != nil {
		text += fmt.Sprintf("; weakest is %d %s with %s", weak.Number, weak.Dish, percent(weak.Units.Chance))
	}
	return text + "."
}

// weakest is the picture that is left with the least chance of its takes.
func weakest(p *shoot.Plan) (out *shoot.Shot) {
	for i := range p.Shots {
		if s := &p.Shots[i]; !s.Done && (out == nil || s.Units.Chance < out.Units.Chance) {
			out = s
		}
	}
	return out
}

// spare says how far before the wrap the last slot of a day ends, or how far after.
func spare(d *shoot.PlanDay) string {
	m := int(d.Wrap.Sub(d.Ends).Minutes())
	switch {
	case m < 0:
		return fmt.Sprintf(", %d min late: it does not hold", -m)
	case m == 0:
		return ", nothing to spare"
	}
	return fmt.Sprintf(", %d min to spare", m)
}

// before lists tasks by the clock, with who does them.
func before(p *shoot.Plan) block {
	b := block{Title: "Who does what, by the clock", Head: []string{"from", "until", "who", "what"}}
	date := ""
	early := false
	changed := time.Time{}
	for i := range p.Tasks {
		t := &p.Tasks[i]
		if d := changeBefore(p, t.Start); d != nil && d.ShiftAt.After(changed) && i > 0 && p.Tasks[i-1].Start.Before(d.ShiftAt) {
			changed = d.ShiftAt
			b.Rows = append(b.Rows, []string{"", "", "", d.ShiftAt.Format("Mon 2 Jan") + ": " + clocksChange(d)})
		}
		if d := t.Start.Format("Mon 2 Jan"); d != date {
			date, early = d, false
			b.Rows = append(b.Rows, []string{d, "", "", ""})
		}
		if call := callOf(p, t); t.Early && !early && !call.IsZero() && t.Start.Format(time.DateOnly) == call.Format(time.DateOnly) {
			early = true
			b.Rows = append(b.Rows, []string{"", "", "", "before the call at " + wall(call) + ":"})
		} else if early && !t.Early {
			early = false
			b.Rows = append(b.Rows, []string{"", "", "", "from the call on:"})
		}
		until := ""
		if t.End.After(t.Start) {
			until = wall(t.End)
			if t.End.Format(time.DateOnly) != t.Start.Format(time.DateOnly) {
				until = t.End.Format("Mon 15:04")
			}
		}
		b.Rows = append(b.Rows, []string{wall(t.Start), until, whoWords(t), taskWords(t) + nightBefore(p, t)})
	}
	b.Foot = "The number before a task is its picture’s. Hands: one person who prepares. Where nobody is named, whoever opens the studio."
	return b
}

// whoWords say who does a task.
func whoWords(t *shoot.Task) string {
	switch {
	case t.Hand > 0 && t.Who != "":
		return fmt.Sprintf("hands %d, %s", t.Hand, t.Who)
	case t.Hand > 0:
		return fmt.Sprintf("hands %d", t.Hand)
	case t.Who != "":
		return t.Who
	}
	return "–"
}

// nightBefore is what is added to a task that begins at night, hours before the call, when
// nobody is there: it is done the evening before.
func nightBefore(p *shoot.Plan, t *shoot.Task) string {
	call := callOf(p, t)
	if call.IsZero() || !t.Early || t.Start.Hour() >= 6 || call.Sub(t.Start) < 2*time.Hour {
		return ""
	}
	return "; at the latest: do it the evening before"
}

// callOf is the call of the day on which a task begins.
func callOf(p *shoot.Plan, t *shoot.Task) time.Time {
	for _, d := range p.Days {
		if d.Call.Format(time.DateOnly) == t.Start.Format(time.DateOnly) {
			return d.Call
		}
	}
	return time.Time{}
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
	if len(pg.Cautions) > 0 {
		b.Lines = append(b.Lines, line{"Safety", strings.Join(pg.Cautions, " ")})
	}
	if pg.Allergens != "" {
		b.Lines = append(b.Lines, line{"Allergens", pg.Allergens})
	}
	return b
}

func shopping(p *shoot.Plan) block {
	b := block{Title: "To buy", Head: []string{"packs", "what", "needed", "for picture"},
		Foot: "Needed at the most: units, tests, corrections and a tenth for losses."}
	for _, k := range p.Purchases {
		need := ""
		switch {
		case k.Count > 0:
			need = fmt.Sprint(k.Count)
		case k.Grams > 0:
			need = number(float64(int(k.Grams+0.999))) + " g"
		}
		pack := fmt.Sprint(k.Packs)
		switch {
		case k.PackGrams > 0:
			pack += fmt.Sprintf(" × %s g", number(k.PackGrams))
		case k.PackCount > 0:
			pack += fmt.Sprintf(" × %d", k.PackCount)
		case k.Grams > 0:
			pack = "–" // no pack is known
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

// people says who is there and where; what the brief does not know is a line to fill in.
func people(p *shoot.Plan) block {
	b := block{Title: "People and place", Head: []string{"role", "name", "phone"}}
	list := p.People
	if len(list) == 0 {
		for _, role := range []string{"Photographer", "Food stylist", "Assistant", "Client", "Producer"} {
			list = append(list, shoot.Person{Role: role})
		}
	}
	for _, who := range list {
		b.Rows = append(b.Rows, []string{who.Role, blank(who.Name), blank(who.Phone)})
	}
	b.Rows = append(b.Rows, []string{"Address", blank(p.Place.Address), ""}, []string{"Nearest emergency", blank(p.Place.Hospital), ""})
	return b
}

// wrap is what holds all day, and what is left to do at its end; a record that somebody
// filled in was kept, which whoever looks for a blank one must know.
func wrap(p *shoot.Plan, kept []keptRecord) block {
	b := block{Title: "Safety and wrap"}
	for _, c := range p.Cautions {
		b.Items = append(b.Items, cautionWords[c])
	}
	b.Items = append(b.Items, "Wrap: records signed, stand-ins named in them; lamps cold before they are packed; nothing from the set is eaten.")
	for _, k := range kept {
		b.Items = append(b.Items, k.name+" was filled in: it is kept as it is and not written anew. What this plan changes is not in it.")
	}
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
	text := s.What
	if s.Thing != "" {
		text = s.Thing + ": " + s.What
	}
	for i := range p.Shots {
		shot := &p.Shots[i]
		switch {
		case shot.Number != s.Shot:
		case s.What == string(shoot.ShotTask):
			text = fmt.Sprintf("%d %s is on the set until %s: %s; %d units", s.Shot, shot.Dish, wall(shot.End), shootIt(shot), shot.Units.Prepare)
		default:
			text = fmt.Sprintf("%d %s: %s", s.Shot, shot.Dish, text)
		}
	}
	return wall(s.At) + "  " + text
}
