package main

import (
	"cmp"
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/honestplate/examples/shoot"
)

// A line is one answer: what it is about, and what to do.
type line struct{ Label, Text string }

// A page is what a picture's bench page says, in the order of the work.
type page struct {
	Number    int
	When      string // the slot
	Dish      string
	About     string
	Allergens string
	Product   []line // what is in the frame
	Work      []line // what to mix, test, pour, chill, build
	Window    string // the one line that matters on the set
	Windows   []line // and what it hangs on
	Attention []string
	Cautions  []string
	Units     shoot.Units
	Shot      *shoot.Shot
}

type lines []line

func (l *lines) add(label, format string, args ...any) {
	*l = append(*l, line{label, fmt.Sprintf(format, args...)})
}

// pages puts a plan's shots into words.
func pages(p *shoot.Plan) []page {
	out := make([]page, len(p.Shots))
	for i := range p.Shots {
		out[i] = pageOf(p, &p.Shots[i])
	}
	return out
}

func pageOf(p *shoot.Plan, s *shoot.Shot) page {
	out := page{
		Number: s.Number, Dish: s.Dish, About: s.About, Allergens: strings.Join(s.Allergens, ", "),
		When: slot(p, s), Units: s.Units, Shot: s, Window: shootIt(s),
	}
	var product, work, windows lines
	for i := range s.Things {
		t := &s.Things[i]
		label, text := frameWords(t)
		product.add(label, "%s", text)
		thing(&work, t)
		for _, n := range t.Notes {
			out.Attention = append(out.Attention, note(n))
		}
	}
	pictureWords(&windows, s)
	out.Product, out.Work, out.Windows = product, work, windows
	for _, n := range s.Notes {
		out.Attention = append(out.Attention, note(n))
	}
	for _, r := range s.Picture.Remedies {
		out.Attention = append(out.Attention, remedyWords[r])
	}
	for _, c := range s.Cautions {
		out.Cautions = append(out.Cautions, cautionWords[c])
	}
	return out
}

// slot gives day and time of a shot; the date where there is more than one.
func slot(p *shoot.Plan, s *shoot.Shot) string {
	text := s.At.Format("15:04") + "–" + s.End.Format("15:04")
	if len(p.Days) > 1 || s.At.YearDay() != p.Days[s.Day].Call.YearDay() {
		text = s.At.Format("Mon 2 Jan ") + text
	}
	return text
}

// frameWords says what a thing is in the frame: product, stand-in or prop.
func frameWords(t *shoot.PlannedThing) (label, text string) {
	text = t.Name
	if t.Count > 0 {
		text += fmt.Sprintf(", %d of it", t.Count)
	}
	if t.Grams > 0 {
		text += ", " + grams(t.Grams, t.StepGrams)
	}
	switch {
	case t.Advertised:
		return "Product", text
	case t.StandIn != "":
		return "Stand-in", fmt.Sprintf("%s is shown as %s: %s", t.Name, t.StandIn, t.Why)
	}
	return "Prop", text
}

// shootIt says in one line when to press.
func shootIt(s *shoot.Shot) string {
	p := s.Picture
	switch {
	case p.Always:
		return "any time in the slot"
	case p.Sure && p.To.Never:
		return "from " + stopwatch(p.From) + " on"
	case p.Sure:
		return stopwatch(p.From) + " to " + stopwatch(p.To)
	case p.Best.Never || p.Chance < 0.02:
		return "does not come by itself"
	}
	return fmt.Sprintf("best at %s, %s of units", stopwatch(p.Best), percent(p.Chance))
}

// bestBefore says when a unit is over for sure purposes.
func bestBefore(s *shoot.Shot) string {
	p := s.Picture
	switch {
	case p.Always, p.Sure && p.To.Never:
		return "–"
	case p.Sure:
		return stopwatch(p.To)
	}
	return "see page"
}

func pictureWords(w *lines, s *shoot.Shot) {
	p := s.Picture
	if p.Always {
		w.add("Picture", "nothing in the frame changes on the set")
	} else {
		if c := p.OpensBy; c != nil {
			w.add("Begins", "%s of %s: %s%s", event(c.Event), c.Thing, window(p.Opens), because(c))
		}
		if c := p.ClosesBy; c != nil {
			w.add("Ends", "%s of %s: %s%s", event(c.Event), c.Thing, window(p.Closes), because(c))
		}
		if !p.Sure {
			w.add("Chance", "no moment is sure; at %s %s of units show it", stopwatch(p.Best), percent(p.Chance))
		}
	}
	for i := range s.Things {
		for _, e := range s.Things[i].Events {
			taught := ""
			if e.Taught {
				taught = " (taught by today)"
			}
			w.add("", "%s, %s: %s%s", s.Things[i].Name, event(e.Key), window(e.When), taught)
		}
	}
	u := s.Units
	if u.Prepare == 0 && !s.Done {
		w.add("Units", "none: %d would be needed, and the %s allows none", u.Need, u.LimitedBy)
	} else {
		w.add("Units", "prepare %d for %s; chance %s%s", u.Prepare, takes(u.Wanted), percent(u.Chance), limited(u))
	}
	if u.Taken > 0 {
		w.add("", "so far %d good of %d", u.Good, u.Taken)
	}
	if s.Swap > 0 {
		w.add("Swap", "a fresh unit every %s", clock(s.Swap))
	}
}

func because(c *shoot.Cause) string {
	if r := reasons(c.Reasons); r != "" {
		return "; decided by " + r
	}
	return ""
}

func limited(u shoot.Units) string {
	if u.LimitedBy == "" {
		return ""
	}
	return fmt.Sprintf("; %d would be needed for %s, limited by the %s", u.Need, percent(u.Confidence), u.LimitedBy)
}

// takes counts good takes.
func takes(n int) string {
	if n == 1 {
		return "1 good take"
	}
	return fmt.Sprintf("%d good takes", n)
}

func clock(d time.Duration) string {
	s := int(d.Round(time.Second) / time.Second)
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// thing says what to do with a thing.
func thing(w *lines, t *shoot.PlannedThing) {
	if p := t.Pour; p != nil {
		pourWords(w, t, p)
	}
	if c := t.Coil; c != nil {
		if c.Coils {
			w.add("Drizzle", "%s coils: rings of %s; pour with a thread of %s mm", t.Name, millimetres(c.RingMM), two(c.ThreadMM))
		} else {
			w.add("Drizzle", "%s does not coil from this height: it lies as it falls", t.Name)
		}
		w.add("", "it takes %s", window(c.Lasts))
	}
	if c := t.Cold; c != nil {
		coldWords(w, t, c)
	}
	if c := t.Cheese; c != nil {
		w.add("Lay", "%s in strips over the cuts before baking: %s", t.Name, list(c.StripGrams, t.StepGrams))
		w.add("", "a slice then carries, from the camera clockwise: %s; together %s", list(c.SliceGrams, t.StepGrams), grams(t.Grams, t.StepGrams))
	}
	if p := t.Pieces; p != nil {
		piecesWords(w, t, p)
	}
	if b := t.Build; b != nil {
		buildWords(w, b)
	}
}

func pourWords(w *lines, t *shoot.PlannedThing, p *shoot.PourPlan) {
	switch {
	case len(p.Blend) == 2:
		w.add("Mix", "%s of %s + %s of %s, at %s °C; thickness like %s", grams(p.Blend[0].Grams, 1), p.Blend[0].Name,
			grams(p.Blend[1].Grams, 1), p.Blend[1].Name, number(p.TempC), likeness(p.PredictedPaS.Likely))
		if p.Batches > 1 {
			w.add("", "%d such batches", p.Batches)
		}
	case t.Advertised:
		w.add("Serve", "%s as it is sold, at %s °C", t.Name, number(p.TempC))
	default:
		w.add("Serve", "%s at %s °C", t.Name, number(p.TempC))
	}
	if c := p.Cup; c != nil {
		w.add("Test first", "%s cup at %s °C: %s to %s is right, leave it; expected %s", c.Cup, number(c.TempC),
			stopwatch(c.Leave.Earliest), stopwatch(c.Leave.Latest), stopwatch(c.Expected.Likely))
		for _, k := range c.Corrections {
			w.add("", "%s s: add %s of %s, stir, bring back to temperature, time it again", number(k.Seconds), grams(k.Grams, 1), k.Add)
		}
	}
	if k := p.Corrected; k != nil {
		if k.Leave {
			w.add("Batch", "the cup says it is right: leave it")
		} else {
			w.add("Batch", "the cup says: add %s of %s, stir, bring back to temperature, time it again", grams(k.Grams, 1), k.Add)
		}
	}
	w.add("Pour", "%s in %s from %s above the food, %s mm of liquid over the outlet", grams(p.PouredGrams, 1), window(p.Lasts), height(p.DropMM), two(p.HeadMM))
	if p.LiquidRules {
		w.add("", "how long hangs on the liquid: test it first")
	} else {
		w.add("", "how long hangs on the hand and the jug, not on the liquid")
	}
	switch {
	case p.NoHigherMM.Given && p.NoHigherMM.Value >= 10:
		w.add("Splash", "pour no higher than %s", height(p.NoHigherMM.Value))
	case p.Splash != "":
		w.add("Splash", "%s", p.Splash)
	}
	stream := two(p.StreamMM) + " mm thick where it lands"
	if p.Breaks {
		stream = "broken into drops where it lands"
	} else if p.MayBreak {
		stream += ", and may be ragged by then"
	}
	w.add("Stream", "%s", stream)
	if p.FreezeS.Given {
		w.add("Sharp", "flash %s or shorter (t0.1)", fraction(p.FreezeS.Value))
	}
	if p.CoatMM.High > 0 {
		w.add("Coat", "%s left on an upright wall after 2 s%s", millimetres(p.CoatMM), hides(p.Hides))
	}
	if p.PuddleMM.High > 0 {
		w.add("Spreads", "to %s across", millimetres(p.PuddleMM))
	}
}

func hides(h *shoot.Hides) string {
	if h == nil {
		return ""
	}
	if h.Does {
		return ": it hides the " + h.What
	}
	text := fmt.Sprintf(": the %s shows through; %s mm would hide it", h.What, two(h.NeedsMM.Likely))
	if h.MoreCream.Given {
		text += fmt.Sprintf(", or %s more cream", grams(h.MoreCream.Value, 1))
	}
	return text
}

// likeness says a thickness without a laboratory's unit. The examples are common
// practice, no source, beside the library's own values.
func likeness(paS float64) string {
	for _, k := range []struct {
		below float64
		words string
	}{
		{0.004, "milk"}, {0.012, "thin cream"}, {0.04, "whipping cream, not whipped"}, {0.12, "oil"}, {0.5, "maple syrup"},
		{3, "runny honey"}, {30, "honey"},
	} {
		if paS < k.below {
			return k.words
		}
	}
	return "stiff honey"
}

func coldWords(w *lines, t *shoot.PlannedThing, c *shoot.ColdPlan) {
	if c.Store != "" {
		w.add("Cold", "%s into %s (%s °C) for %s; it starts at %s °C", t.Name, c.Store, number(c.StoreC), window(c.Needs), number(c.StartC))
	} else {
		w.add("Start", "%s at %s °C", t.Name, number(c.StartC))
	}
	if c.FillMM > 0 {
		w.add("Fill", "to %s mm, counted inside from the bottom", number(float64(int(c.FillMM+0.5))))
	}
	if c.IceG > 0 {
		w.add("Ice", "%s, real", grams(c.IceG, 1))
	}
	if c.BallMM > 0 {
		w.add("Scoop", "%s mm across weighs %s", number(float64(int(c.BallMM+0.5))), grams(t.Grams, cmp.Or(t.StepGrams, 1)))
	}
	if c.ShockK != 0 {
		w.add("Glass", "%s K between glass and drink: expect it %s", number(math.Abs(c.ShockK)), map[bool]string{true: "to break", false: "to crack now and then"}[c.Breaks])
	}
}

func piecesWords(w *lines, t *shoot.PlannedThing, p *shoot.PiecesPlan) {
	for i, s := range p.Sets {
		label := "Choose"
		if i > 0 {
			label = ""
		}
		w.add(label, "hero %d: %s; together %s", i+1, strings.Join(s.Names, " "), grams(s.Grams, t.StepGrams))
	}
	if len(p.Sets) > 0 && p.Proven {
		w.add("", "no more and no better sets lie on this tray")
	}
	if p.Missing > 0 {
		w.add("Weigh", "%d pieces on the tray give all sets with a chance of %s; there are %d", p.Weigh, percent(p.Chance.Likely), p.OnTray)
	}
}

func buildWords(w *lines, b *shoot.BuildPlan) {
	w.add("Build", "%s, version %s, from the bottom up; read the scale after every layer, do not tare", b.Product, b.Version)
	for i, l := range b.Layers {
		text := fmt.Sprintf("%d. %s", i+1, l.Name)
		if l.Count > 0 {
			text += fmt.Sprintf(", %d of it", l.Count)
		}
		if l.Grams > 0 {
			text += fmt.Sprintf(", %s", number(l.Grams)+" g")
			if l.CanTell {
				text += fmt.Sprintf(": %s to %s g agrees", number(l.LowG), number(l.HighG))
			} else {
				text += ": this scale cannot tell"
			}
		}
		if l.RawGrams > 0 {
			text += fmt.Sprintf(" (%s g raw)", number(l.RawGrams))
		}
		w.add("", "%s", text)
	}
	signed := "not signed yet: technician ______________"
	if b.SignedBy != "" {
		signed = "signed by " + b.SignedBy
	}
	w.add("", "%s; fingerprint %.12s", signed, b.Hash)
}

func list(values []float64, step float64) string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = strings.TrimSuffix(grams(v, step), " g")
	}
	return strings.Join(out, " + ") + " g"
}
