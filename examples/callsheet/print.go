package main

import (
	"bytes"
	_ "embed"
	"html/template"
	"slices"
	"unicode/utf8"

	"example.org/honestplate/examples/shoot"
)

//go:embed print.html
var printSource string

var printTemplate = template.Must(template.New("print").Parse(printSource))

// mostBoxes is how many units have a box on a page; more are counted on the set's page.
const mostBoxes = 24

// printPage is what is printed on A4: the day, a page a picture, tasks, shopping, kit.
type printPage struct {
	page
	Drawing template.HTML
	Boxes   []int
	Weigh   []string // what is weighed of every unit
	More    int      // units that have no box
	Tight   string   // how small the text must be to stay on one side
}

// printed sets the pages for the printer.
func printed(p *shoot.Plan) ([]byte, error) {
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
		Now: now(p), Attention: attention(p), Shopping: shopping(p), Kit: kit(p), People: people(p), Wrap: wrap(p),
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
		for k := range pg.Shot.Things {
			if t := &pg.Shot.Things[k]; t.Advertised && t.Grams > 0 && len(out.Weigh) < 3 {
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
	for _, list := range [][]line{pg.Product, pg.Work, pg.Windows} {
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
