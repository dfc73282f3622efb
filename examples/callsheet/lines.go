package main

import (
	"cmp"
	"fmt"
	"math"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/honestplate"
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
			out.Attention = append(out.Attention, sentence(note(n)))
		}
	}
	pictureWords(&windows, s)
	for _, n := range s.Said {
		windows.add("Noted", "%s", said(n))
	}
	out.Product, out.Work, out.Windows = merged(product), work, windows
	for _, n := range s.Notes {
		out.Attention = append(out.Attention, sentence(note(n)))
	}
	if help := remedies(s.Picture.Remedies); help != "" {
		out.Attention = append(out.Attention, map[bool]string{true: "To win time: ", false: "What helps: "}[s.Picture.Sure]+help)
	}
	for _, c := range s.Cautions {
		out.Cautions = append(out.Cautions, cautionWords[c])
	}
	return out
}

// said is a note from the set, with its unit and its time where it has them.
func said(n shoot.Said) string {
	text := honestplate.OneLine(n.Text)
	if n.Unit > 0 {
		text = fmt.Sprintf("unit %d: %s", n.Unit, text)
	}
	if !n.At.IsZero() {
		text = n.At.Format("15:04") + ", " + text
	}
	return text
}

// sentence begins a text with a capital.
func sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}

// merged puts lines of the same label beside each other into one.
func merged(in lines) lines {
	var out lines
	for _, l := range in {
		if n := len(out); n > 0 && out[n-1].Label == l.Label && l.Label != "Stand-in" {
			out[n-1].Text += "; " + l.Text
			continue
		}
		out = append(out, l)
	}
	return out
}

// slot gives the time of a shot; the date where there is more than one, or it has passed
// midnight.
func slot(p *shoot.Plan, s *shoot.Shot) string {
	text := hours(s)
	if s.Done {
		return text
	}
	if len(p.Days) > 1 || s.At.YearDay() != p.Days[s.Day].Call.YearDay() {
		text = s.At.Format("Mon 2 Jan ") + text
	}
	return text
}

// hours gives from when until when a shot has the set.
func hours(s *shoot.Shot) string {
	if s.Done {
		return "done"
	}
	return wall(s.At) + "–" + wall(s.End)
}

// frameWords says what a thing is in the frame: product, stand-in or prop.
func frameWords(t *shoot.PlannedThing) (label, text string) {
	text = t.Name
	if t.Count > 0 {
		text = fmt.Sprintf("%d × %s", t.Count, t.Name)
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
	case p.Sure && p.From.After == 0 && p.To.Never:
		return "at once, and it stays"
	case p.Sure && p.To.Never:
		return "from " + stopwatch(p.From) + ", and it stays"
	case p.Sure && p.From.After == 0:
		return "at once, best before " + stopwatch(p.To)
	case p.Sure:
		return stopwatch(p.From) + ", best before " + stopwatch(p.To)
	case p.Best.Never || p.Chance < 0.02:
		return "does not come by itself"
	}
	return fmt.Sprintf("look at %s: %s of units show it", stopwatch(p.Best), percent(p.Chance))
}

// shootShort is the same for a column.
func shootShort(s *shoot.Shot) string {
	p := s.Picture
	switch {
	case p.Always:
		return "any time"
	case p.Sure && p.To.Never:
		return "from " + stopwatch(p.From)
	case p.Sure:
		return stopwatch(p.From) + "–" + stopwatch(p.To)
	case p.Best.Never || p.Chance < 0.02:
		return "does not come"
	}
	return fmt.Sprintf("%s? %s", stopwatch(p.Best), percent(p.Chance))
}

// pictureWords say what the window hangs on: what opens and ends it with its reasons,
// and the other events of what is in the frame in one line a thing.
func pictureWords(w *lines, s *shoot.Shot) {
	p := s.Picture
	said := map[[2]string]bool{}
	if c := p.OpensBy; c != nil && !p.Always {
		w.add("Begins", "%s of %s: %s%s", event(c.Event), c.Thing, window(p.Opens), because(c))
		said[[2]string{c.Thing, c.Event}] = true
	}
	if c := p.ClosesBy; c != nil && !p.Always {
		w.add("Ends", "%s of %s: %s%s", event(c.Event), c.Thing, window(p.Closes), because(c))
		said[[2]string{c.Thing, c.Event}] = true
	}
	for i := range s.Things {
		t := &s.Things[i]
		var also []string
		for _, e := range t.Events {
			if said[[2]string{t.Name, e.Key}] || !e.When.MayHappen() {
				continue
			}
			text := event(e.Key) + " " + window(e.When)
			if e.Taught {
				text += ", as seen today"
			}
			also = append(also, text)
		}
		if len(also) > 0 {
			w.add("Also", "%s: %s", t.Name, strings.Join(also, "; "))
		}
	}
	u := s.Units
	text := fmt.Sprintf("prepare %d for %s; chance that they suffice %s%s", u.Prepare, takes(u.Wanted-u.Good), percent(u.Chance), limited(u))
	switch {
	case s.Done:
		text = "done"
	case u.Prepare == 0:
		text = fmt.Sprintf("none: %d would be needed, and the %s allows none", u.Need, u.LimitedBy)
	}
	if u.Taken > 0 {
		text += fmt.Sprintf("; so far %d good of %d", u.Good, u.Taken)
	}
	if s.Swap > 0 && u.Prepare > 0 {
		text += "; a unit every " + clock(s.Swap) + ", change included"
	}
	w.add("Units", "%s", text)
}

func because(c *shoot.Cause) string {
	if r := reasons(c.Reasons); r != "" {
		return ". Why so wide: " + r
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

// clock gives a time that is counted, minutes and seconds, with hours where there are any.
func clock(d time.Duration) string {
	s := int(d.Round(time.Second) / time.Second)
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// thing says what to do with a thing.
func thing(w *lines, t *shoot.PlannedThing) {
	if p := t.Pour; p != nil {
		pourWords(w, t, p)
	}
	if c := t.Coil; c != nil {
		w.add("Serve", "%s at %s °C", t.Name, degrees(c.TempC))
		w.add("Jug", "%s; %s mm of liquid over it while it pours", outlet(c.Outlet), two(c.HeadMM))
		w.add("Drizzle", "%s from %s above, in %s; a thread %s mm thick where it lands", grams(c.Grams, 1), height(c.DropMM), window(c.Lasts), two(c.ThreadMM))
		if c.Coils {
			w.add("Coils", "in rings %s to %s mm across, by order of magnitude", two(c.RingMM.Low), two(c.RingMM.High))
		} else {
			w.add("Coils", "not from this height: it lies as it falls")
		}
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
		w.add("Test first", "%s cup at %s °C: %s is right, leave it; expected %s s", c.Cup, number(c.TempC), cupRange(c), tenths(c.Expected.Likely))
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
	w.add("Jug", "%s; %s mm of liquid over it while it pours", outlet(p.Outlet), two(p.HeadMM))
	hangs := "the hand and the jug decide how long, not the liquid"
	if p.LiquidRules {
		hangs = "the liquid decides how long: time one pour first"
	}
	w.add("Pour", "%s from %s above %s, in %s; %s", grams(p.PouredGrams, 1), height(p.DropMM), onto(p), window(p.Lasts), hangs)
	stream := two(p.StreamMM) + " mm thick where it lands"
	if p.Breaks {
		stream = "broken into drops where it lands"
	} else if p.MayBreak {
		stream += ", and may be ragged by then"
	}
	switch {
	case p.NoHigherMM.Given && p.NoHigherMM.Value >= 10:
		stream += "; pour no higher than " + height(p.NoHigherMM.Value)
	case p.Splash != "":
		stream += "; " + p.Splash
	}
	w.add("Stream", "%s", stream)
	if p.FreezeS.Given {
		w.add("Sharp", "in print with a flash of %s (t0.1) or shorter, for a frame %s mm wide", fraction(p.FreezeS.Value), number(p.FrameMM))
	}
	if p.CoatMM.High > 0 {
		w.add("Coat", "%s left on an upright wall after 2 s%s", millimetres(p.CoatMM), hides(p.Hides))
	}
	if p.PuddleMM.High > 0 {
		w.add("Spreads", "to %s across on a plate, %s s after it lands", millimetres(p.PuddleMM), number(p.PuddleAfter.After.Seconds()))
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

// outlet says what it pours from.
func outlet(o shoot.Outlet) string {
	switch o.Kind {
	case "lip":
		return fmt.Sprintf("a lip %s mm wide", number(o.WidthMM))
	case "spout":
		return fmt.Sprintf("a spout %s mm wide inside", number(o.WidthMM))
	}
	return fmt.Sprintf("a %s, neck %s mm wide inside", o.Kind, number(o.WidthMM))
}

// onto says what it lands on.
func onto(p *shoot.PourPlan) string {
	switch p.Onto {
	case "pool":
		return fmt.Sprintf("the liquid in it (%s mm deep)", number(p.DepthMM))
	case "film":
		return fmt.Sprintf("the food (%s mm of liquid on it)", number(p.DepthMM))
	}
	return "the " + p.Onto
}

// cupRange is when a cup time is right, in seconds.
func cupRange(c *shoot.CupTest) string {
	return fmt.Sprintf("%s to %s s", tenths(c.Leave.Earliest), tenths(c.Leave.Latest))
}

// tenths gives seconds to a tenth, as a stop-watch shows them.
func tenths(m honestplate.Moment) string { return fmt.Sprintf("%.1f", m.After.Seconds()) }

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
		w.add("Cold", "%s into %s (%s °C) for %s; on the set it starts at %s °C", t.Name, c.Store, degrees(c.StoreC), long(c.Needs), degrees(c.StartC))
	} else {
		w.add("Start", "%s at %s °C", t.Name, degrees(c.StartC))
	}
	if c.FillMM > 0 {
		text := fmt.Sprintf("to %.0f mm, counted inside from the bottom", c.FillMM)
		if c.IceG > 0 {
			text += ", with " + grams(c.IceG, 1) + " of real ice in it"
		}
		w.add("Fill", "%s", text)
	}
	if c.BallMM > 0 {
		w.add("Scoop", "%s mm across weighs %s", number(float64(int(c.BallMM+0.5))), grams(t.Grams, cmp.Or(t.StepGrams, 1)))
	}
	if c.ShockK != 0 {
		w.add("Glass", "%s °C between glass and drink: expect it %s", number(math.Abs(c.ShockK)), map[bool]string{true: "to break", false: "to crack now and then"}[c.Breaks])
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
		text := fmt.Sprintf("have %d on the tray for the %d sets that are missing; there are %d", p.Weigh, p.Missing, p.OnTray)
		if p.Chance.Likely > 0 {
			text += "; chance that they hold them " + percent(p.Chance.Likely)
		}
		w.add("Weigh", "%s", text)
	}
}

func buildWords(w *lines, b *shoot.BuildPlan) {
	w.add("Build", "%s, version %s, from the bottom up; read the scale after every layer, do not tare", b.Product, b.Version)
	for i, l := range b.Layers {
		text := fmt.Sprintf("%d. ", i+1)
		if l.Count > 0 {
			text += fmt.Sprintf("%d × ", l.Count)
		}
		text += l.Name
		if l.Grams > 0 {
			text += fmt.Sprintf(", %s g, tolerance −%s +%s", number(l.Grams), number(l.MinusG), number(l.PlusG))
			if l.CanTell {
				text += fmt.Sprintf(": %s to %s g agrees", number(l.LowG), number(l.HighG))
			} else {
				text += ": this scale cannot tell"
			}
			text += fmt.Sprintf("; the scale then shows about %s g", number(l.TotalG))
		}
		if l.RawGrams > 0 {
			text += fmt.Sprintf(" (%s g raw)", number(l.RawGrams))
		}
		w.add("", "%s", text)
	}
	w.add("", "agrees: inside the tolerance by more than the scale’s own doubt; between that and the tolerance the scale cannot decide")
	signed := "not signed yet: technician ______________"
	if b.SignedBy != "" {
		signed = "signed by " + b.SignedBy
	}
	if b.ValidUntil != "" {
		signed += "; valid until " + b.ValidUntil
	}
	w.add("", "%s; fingerprint %.12s, the same in the record", signed, b.Hash)
}

func list(values []float64, step float64) string {
	out := make([]string, len(values))
	for i, v := range values {
		out[i] = strings.TrimSuffix(grams(v, step), " g")
	}
	return strings.Join(out, " + ") + " g"
}
