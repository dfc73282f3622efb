package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/honestplate/examples/shoot"
)

//go:embed print.html
var printSource string

var printTemplate = template.Must(template.New("print").Funcs(template.FuncMap{"tie": tie}).Parse(printSource))

// tied are a number and its unit, which stay on one line.
var tied = regexp.MustCompile(`([0-9]) (%|°C|(?:g|mm|cm|min|h|s)\b)`)

// tie keeps numbers and their units together.
func tie(text string) string { return tied.ReplaceAllString(text, "$1\u00a0$2") }

// mostBoxes is how many units have a box on a page; more are counted on the set's page.
const mostBoxes = 24

// printPage is what is printed on A4: the day, a page a picture, tasks, shopping, kit.
type printPage struct {
	page
	Drawing template.HTML
	Boxes   []int
	Weigh   []string // what is weighed of every unit
	Before  []line   // what is done for it before, by the clock
	More    int      // units that have no box
	Tight   string   // how small the text must be to stay on one side
}

// printed sets the pages for the printer.
func printed(p *shoot.Plan, kept ...keptRecord) ([]byte, error) {
	s := struct {
		Title           string
		Lead            []string
		Now, Attention  *block
		Day             block
		Charts          []template.HTML
		Pages           []printPage
		Tasks, Shopping block
		People          block
		Kit, Wrap       block
	}{
		Title: p.Title + ", " + p.Client, Lead: leadWords(p), Day: dayTable(p), Tasks: before(p),
		Now: now(p), Attention: attention(p), Shopping: shopping(p), Kit: kit(p), People: people(p), Wrap: wrap(p, kept),
	}
	for i := range p.Days {
		s.Charts = append(s.Charts, template.HTML(dayChart(p, i)))
	}
	for _, pg := range pages(p) {
		if pg.Shot.Done {
			continue
		}
		out := printPage{page: pg, More: max(pg.Units.Prepare-mostBoxes, 0)}
		for k := range min(pg.Units.Prepare, mostBoxes) {
			out.Boxes = append(out.Boxes, k+1)
		}
		out.Before = prepared(p, pg.Shot)
		sold := 0
		for k := range pg.Shot.Things {
			if b := pg.Shot.Things[k].Build; b != nil {
				for _, l := range b.Layers {
					out.Weigh = append(out.Weigh, l.Name)
				}
			}
			if t := &pg.Shot.Things[k]; t.Advertised && t.Grams > 0 && sold < 3 {
				sold++
				out.Weigh = append(out.Weigh, t.Name)
			}
		}
		out.Drawing = template.HTML(benchDrawing(pg.Shot))
		out.Tight = tight(&out)
		s.Pages = append(s.Pages, out)
	}
	var b bytes.Buffer
	err := printTemplate.Execute(&b, s)
	return b.Bytes(), err
}

// prepared lists what is done for a picture before it, by the clock, and what it takes
// out of the kit, so that its page is enough for whoever works at it alone.
func prepared(p *shoot.Plan, s *shoot.Shot) (out lines) {
	label := "Before"
	for i := range p.Tasks {
		t := &p.Tasks[i]
		if t.Shot != s.Number {
			continue
		}
		when := wall(t.Start)
		if t.Start.YearDay() != s.At.YearDay() {
			when = t.Start.Format("Mon ") + when
		}
		if t.End.After(t.Start) {
			when += "–" + wall(t.End)
		}
		text := strings.TrimPrefix(taskWords(t), fmt.Sprintf("%d: ", s.Number)) + nightBefore(p, t)
		if who := whoWords(t); who != "–" {
			text += " (" + who + ")"
		}
		out.add(label, "%s  %s", when, text)
		label = ""
	}
	var kit []string
	for _, k := range p.Kit {
		if !slices.Contains(k.Shots, s.Number) {
			continue
		}
		text := k.What
		if k.Count > 1 {
			text = fmt.Sprintf("%d × %s", k.Count, k.What)
		}
		kit = append(kit, text)
	}
	if len(kit) > 0 {
		out.add("Kit", "%s", strings.Join(kit, "; "))
	}
	return out
}

// pageLines is how many lines of text an A4 page holds at its normal size; a row of the
// table takes a third more, a row of boxes two and one a thing that is weighed, a drawing
// that can be laid out from sixteen.
const pageLines, drawingLines = 60.0, 16.0

// tight counts what a page has to say, in lines of its width, and sets the text smaller
// where it would not stay on one side of A4.
func tight(pg *printPage) string {
	n := 12 + float64((len(pg.Boxes)+3)/4*(2+len(pg.Weigh)))
	if pg.Drawing != "" {
		n += drawingLines
	}
	for _, list := range [][]line{pg.Before, pg.Product, pg.Work, pg.Windows} {
		for _, l := range list {
			n += 1.35 + float64(utf8.RuneCountInString(l.Text)/88)
		}
	}
	for _, text := range slices.Concat(pg.Attention, pg.Cautions, []string{pg.About, pg.Dish + pg.Dish}) {
		n += 1.35 + float64(utf8.RuneCountInString(text)/95)
	}
	switch {
	case n > pageLines*1.25:
		return "tighter"
	case n > pageLines:
		return "tight"
	}
	return ""
}
