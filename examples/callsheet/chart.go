package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/honestplate/examples/shoot"
)

// chartStyle sets bars apart by their edges and fills, so that they are told apart in
// grey too.
const chartStyle = `text{font:13px system-ui,sans-serif;fill:#1c1a17}.small{font-size:11px;paint-order:stroke;stroke:#fff;stroke-width:2px}.head{font-weight:700;font-size:15px}` +
	`.hour{stroke:#cfc8ba;stroke-width:1}.half{stroke:#e8e2d6;stroke-width:1}.lane{stroke:#1c1a17;stroke-width:.6}` +
	`.set{fill:#1c1a17}.on{fill:#fff}.work{fill:#e2d9c5;stroke:#1c1a17}.store{fill:#fff;stroke:#1c1a17;stroke-dasharray:5 3}` +
	`.rest{fill:#efe9da}.edge{stroke:#1c1a17;stroke-width:2}`

const laneHeight, chartWidth, laneNames = 34.0, 1120.0, 150.0

// A bar is something in a lane.
type bar struct {
	from, to time.Time
	text     string
	class    string
}

type lane struct {
	name string
	bars []bar
}

// dayChart draws one day by the clock: the set, every pair of hands, every store.
func dayChart(p *shoot.Plan, day int) []byte {
	d := p.Days[day]
	set := lane{name: "set"}
	numbers := map[int]bool{}
	for i := range p.Shots {
		if s := &p.Shots[i]; s.Day == day && !s.Done {
			numbers[s.Number] = true
			set.bars = append(set.bars, bar{s.At, s.End, fmt.Sprintf("%d %s", s.Number, s.Dish), "set"})
		}
	}
	if !d.LunchFrom.IsZero() {
		set.bars = append(set.bars, bar{d.LunchFrom, d.LunchTo, "lunch", "rest"})
	}
	hands, stores := map[int]*lane{}, map[string]*lane{}
	from, to := d.Call, d.Wrap
	if d.Ends.After(to) {
		to = d.Ends
	}
	dawn := d.Call.Add(-4 * time.Hour)
	var tasks []shoot.Task
	for _, t := range p.Tasks {
		if t.Shot != 0 && !numbers[t.Shot] || t.Shot == 0 && dayOf(p, t) != day {
			continue
		}
		tasks = append(tasks, t)
		if t.Hand > 0 && t.Start.Before(from) && !t.End.Before(dawn) {
			from = t.Start // stores that work alone before that come in from the left
		}
	}
	if from.Before(dawn) {
		from = dawn
	}
	var early []shoot.Task // what is over before the chart begins
	for _, t := range tasks {
		if t.End.Before(from) {
			early = append(early, t)
			continue
		}
		b := bar{t.Start, t.End, taskWords(&t), "work"}
		if t.Hand > 0 {
			if hands[t.Hand] == nil {
				hands[t.Hand] = &lane{name: fmt.Sprintf("hands %d", t.Hand)}
			}
			hands[t.Hand].bars = append(hands[t.Hand].bars, b)
		}
		if t.Store != "" {
			if stores[t.Store] == nil {
				stores[t.Store] = &lane{name: t.Store}
			}
			b.class, b.text = "store", strings.Replace(strings.Replace(b.text, " into "+t.Store, "", 1), " "+t.Store, "", 1)
			stores[t.Store].bars = append(stores[t.Store].bars, b)
		}
	}
	lanes := []lane{set}
	for _, k := range sortedKeys(hands) {
		lanes = append(lanes, *hands[k])
	}
	for _, k := range sortedKeys(stores) {
		lanes = append(lanes, *stores[k])
	}
	from, to = from.Truncate(30*time.Minute), to.Add(30*time.Minute-1).Truncate(30*time.Minute)
	top := 56.0
	c := &canvas{w: chartWidth}
	x := func(t time.Time) float64 {
		share := float64(t.Sub(from)) / float64(to.Sub(from))
		return laneNames + min(max(share, 0), 1)*(chartWidth-laneNames-20)
	}
	rows := 0
	for i := range lanes {
		_, n := rowsOf(lanes[i].bars, x)
		rows += n
	}
	rows++ // under the set stand the names
	c.h = top + laneHeight*float64(rows) + 26 + 18*float64(len(early))
	head := d.Call.Format("Monday 2 January 2006")
	c.fit(10, 24, chartWidth-20, 15, "head", head+"   "+p.Title)
	step := time.Hour
	if to.Sub(from) > 14*time.Hour {
		step = 2 * time.Hour
	}
	for t := from; !t.After(to); t = t.Add(30 * time.Minute) {
		class := "half"
		if t.Minute() == 0 && t.Hour()%int(step/time.Hour) == 0 {
			class = "hour"
			label := t.Format("15:04")
			if t.Format("15:04") == "00:00" {
				label = t.Format("Mon 2 Jan")
			}
			c.text(x(t), top-8, "middle", "small", label)
		}
		c.line(x(t), top, x(t), top+laneHeight*float64(rows), class)
	}
	y := top
	for _, l := range lanes {
		at, n := rowsOf(l.bars, x)
		if l.name == set.name {
			n++
		}
		c.line(0, y, chartWidth, y, "lane")
		c.fit(10, y+21, laneNames-16, 13, "", l.name)
		for i, b := range l.bars {
			row := y + laneHeight*float64(at[i])
			left, right := x(b.from), x(b.to)
			if b.from.Before(from) {
				c.text(left-3, row+22, "end", "", "◂")
			}
			c.rect(left, row+5, max(right-left, 3), laneHeight-10, b.class)
			switch {
			case b.class == "set":
				number, name, _ := strings.Cut(b.text, " ")
				c.text((left+right)/2, row+22, "middle", "on", number)
				for k, part := range namesUnder(name, nextBar(l.bars, at, i, x, chartWidth-10)-left-6) {
					c.text(left, row+laneHeight+9+12*float64(k), "start", "small", part)
				}
			case b.class == "rest":
				c.text((left+right)/2, row+22, "middle", "small", b.text)
			case fitsInside(b, right-left):
				c.text(left+5, row+22, "start", "small", b.text)
			case textLeft(b, x):
				c.text(left-4, row+22, "end", "small", cutTo(b.text, mostText, 11))
			default:
				c.text(max(right, left+3)+4, row+22, "start", "small", cutTo(b.text, mostText, 11))
			}
		}
		y += laneHeight * float64(n)
	}
	c.line(0, y, chartWidth, y, "lane")
	marks := []bar{{from: d.Call, text: "call"}, {from: d.Wrap, text: "wrap"}}
	if d.ShiftAt.After(from) && d.ShiftAt.Before(to) {
		marks = append(marks, bar{from: d.ShiftAt, text: clocksChange(&d)})
	}
	for _, m := range marks {
		c.line(x(m.from), top-4, x(m.from), y, "edge")
		c.text(x(m.from), y+16, "middle", "small", m.text)
	}
	for i, t := range early {
		c.fit(10, y+34+18*float64(i), chartWidth-30, 13, "", "before: "+t.Start.Format("Mon 15:04")+"  "+taskWords(&t))
	}
	return c.svg("The day by the clock: "+p.Title, chartStyle)
}

// namesUnder breaks a dish's name into at most three lines that fit a width.
func namesUnder(name string, width float64) []string {
	letters := max(int(width/6.6), 5)
	if widthOf(name, 11) > float64(utf8.RuneCountInString(name))*8 {
		letters = max(int(width/11), 3) // a wide script
	}
	out := wrapText(name, letters)
	if len(out) > 3 {
		out = append(out[:2], out[2]+"…")
	}
	for i := range out {
		out[i] = cutTo(out[i], width, 11)
	}
	return out
}

// dayOf is the day that a task of no shot is for: the first that begins after it ends.
func dayOf(p *shoot.Plan, t shoot.Task) int {
	for i := range p.Days {
		if !t.End.After(p.Days[i].Wrap) {
			return i
		}
	}
	return len(p.Days) - 1
}

// rowsOf gives each bar of a lane its row, so that none covers another or its text,
// and says how many rows there are.
func rowsOf(bars []bar, x func(time.Time) float64) (rows []int, count int) {
	rows, count = make([]int, len(bars)), 1
	for i := range bars {
		for covered := true; covered; {
			covered = false
			for j := range i {
				from, to := reach(bars[i], x)
				otherFrom, otherTo := reach(bars[j], x)
				if rows[j] == rows[i] && otherFrom < to && from < otherTo {
					covered = true
				}
			}
			if covered {
				rows[i]++
			}
		}
		count = max(count, rows[i]+1)
	}
	return rows, count
}

// mostText is how wide a bar's text may be beside it.
const mostText = 410.0

// fitsInside reports whether a bar's text has room in it.
func fitsInside(b bar, width float64) bool { return widthOf(b.text, 11)+10 < width }

// textLeft reports whether a bar's text stands before it, because the chart ends after it.
func textLeft(b bar, x func(time.Time) float64) bool {
	w := min(widthOf(b.text, 11), mostText) + 10
	return x(b.to)+w > chartWidth && x(b.from)-w > laneNames
}

// reach is from where to where a bar goes with its text.
func reach(b bar, x func(time.Time) float64) (from, to float64) {
	from, to = x(b.from), max(x(b.to), x(b.from)+3)
	w := min(widthOf(b.text, 11), mostText) + 10
	switch {
	case b.class == "set" || b.class == "rest" || fitsInside(b, to-from):
	case textLeft(b, x):
		from -= w
	default:
		to += w
	}
	return from, to
}

// nextBar is where the next bar of the same row begins.
func nextBar(bars []bar, rows []int, i int, x func(time.Time) float64, end float64) float64 {
	for j := range bars {
		if rows[j] == rows[i] && x(bars[j].from) > x(bars[i].from) {
			end = min(end, x(bars[j].from))
		}
	}
	return end
}

func sortedKeys[K cmp.Ordered, V any](m map[K]V) []K {
	var out []K
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// taskWords puts a task into words.
func taskWords(t *shoot.Task) string {
	text := string(t.What)
	switch t.What {
	case shoot.OwnStep, shoot.Bake:
		text = t.Text
		if text == "" {
			text = "bake"
		}
	case shoot.Verify:
		text = "read the thermometer in " + t.Store
	case shoot.SwitchOn, shoot.DryIced, shoot.Preheat:
		text += " " + t.Store
	case shoot.Harden, shoot.Chill:
		text = fmt.Sprintf("%d × %s into %s", t.Units, t.Thing, t.Store)
	case shoot.ChillDry:
		text = fmt.Sprintf("%d glasses for %s into %s", t.Units, t.Thing, t.Store)
	case shoot.Mix, shoot.Warm, shoot.Weigh, shoot.Assemble:
		text = t.Thing + ": " + text
	}
	if t.HasTemp && t.What != shoot.OwnStep {
		text += fmt.Sprintf(", %s °C", degrees(t.TempC))
	}
	if t.Shot > 0 {
		text = fmt.Sprintf("%d: %s", t.Shot, text)
	}
	return text
}
