package main

import (
	"bytes"
	_ "embed"
	"fmt"
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
	Drawings []template.HTML
	Boxes    [][]string
	Tight    string // how small the text must be to stay on one side
}

// printed sets the pages for the printer.
func printed(p *shoot.Plan) ([]byte, error) {
	s := struct {
		Title           string
		Lead            []string
		Attention       *block
		Day             block
		Charts          []template.HTML
		Pages           []printPage
		Tasks, Shopping block
		Kit, Wrap       block
	}{
		Title: p.Title + ", " + p.Client, Lead: leadWords(p), Day: dayTable(p), Tasks: before(p),
		Shopping: shopping(p), Kit: kit(p), Wrap: wrap(p),
	}
	if b := attention(p); len(b.Items) > 0 {
		s.Attention = &b
	}
	for i := range p.Days {
		s.Charts = append(s.Charts, template.HTML(dayChart(p, i)))
	}
	for _, pg := range pages(p) {
		out := printPage{page: pg, Boxes: boxes(pg.Units.Prepare), Tight: tight(pg)}
		for _, d := range drawings(pg.Shot) {
			out.Drawings = append(out.Drawings, template.HTML(d))
		}
		s.Pages = append(s.Pages, out)
	}
	var b bytes.Buffer
	err := printTemplate.Execute(&b, s)
	return b.Bytes(), err
}

// drawings are all that a shot has to lay out.
func drawings(s *shoot.Shot) [][]byte {
	var out [][]byte
	if d := benchDrawing(s); d != nil {
		out = append(out, d)
	}
	for i := range s.Things {
		if c := s.Things[i].Cheese; c != nil && c.SVG != "" {
			out = append(out, []byte(c.SVG))
		}
		if c := s.Things[i].Pieces; c != nil && c.SVG != "" {
			out = append(out, []byte(c.SVG))
		}
	}
	return out
}

// boxes numbers the units, eight to a row.
func boxes(n int) [][]string {
	var rows [][]string
	for i := range min(n, mostBoxes) {
		if i%8 == 0 {
			rows = append(rows, nil)
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], fmt.Sprint(i+1))
	}
	return rows
}

// tight counts what a page has to say, in lines of its width, and sets the text smaller
// where it would not stay on one side of A4.
func tight(pg page) string {
	n := 0
	for _, list := range [][]line{pg.Product, pg.Work, pg.Windows} {
		for _, l := range list {
			n += 1 + utf8.RuneCountInString(l.Text)/95
		}
	}
	for _, text := range append(slices.Clone(pg.Attention), pg.Cautions...) {
		n += 1 + utf8.RuneCountInString(text)/95
	}
	switch {
	case n > 32:
		return "tighter"
	case n > 20:
		return "tight"
	}
	return ""
}
