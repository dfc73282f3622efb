package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"example.org/honestplate/examples/published"
	"example.org/honestplate/testdata"
)

var packages = []string{"rheology", "thermal", "portion"}

// page makes README.md and its figures, by file name.
func page(e evidence) (map[string][]byte, error) {
	files, figures, err := drawAll(e)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString("<!-- Made by go generate ./examples; do not edit. -->\n\n# How far the numbers agree\n\n")
	b.WriteString(headline(e))
	b.WriteString(`
Only what was measured is a claim about the world. A worked example, a table of a law, a
straight line that somebody tabulated is a formula; our own constants against their source
are the same again: both show that the code computes what it says.

- **Sources** counts who measured: twenty cells of one table are one source.
- **Outside** counts the points beyond the band, **allowed** is the central 95 % of the
  binomial distribution of that many points at 0.05. A comparison without a band of the
  model's own must be inside in full.
- **Lean** is how far nature lies above (+) or below (-) the likely value on average. It
  misses from 5 % on, if that is more than twice its standard error, and from 2 points on.
- **Sharpness** is the mean width of the band over the 3.92 standard deviations that the
  points scatter by: 1 is right, more is too wide. It misses outside 0.7 to 1.6, from 8
  points on.
- A point three half bands away (**far**) misses by itself.
- **Timed courses** hang together within a run: they miss when less than 85 % of the
  readings are inside. Nothing is fitted; what had to be assumed is said. The clocks give
  bands to events and not yet to the time between, so a reading is compared with the window
  in which the clock expects it.
`)
	for _, pkg := range packages {
		var still [][]string
		for _, s := range e.sets {
			if s.Package == pkg && values(s) && s.Mark == "" {
				still = append(still, cells(s))
			}
		}
		if len(still) == 0 {
			continue
		}
		fmt.Fprintf(&b, "\n## Measured: %s\n\n", pkg)
		for _, f := range figures[pkg] {
			fmt.Fprintf(&b, "![%s](%s)\n\n", f.title, f.file)
		}
		b.WriteString(markdown(head, still))
	}
	b.WriteString("\n## Measured: timed courses\n\n" +
		"Mark A: the conditions were given. B: one thing had to be assumed. C: several; such a set is good for\norder only.\n\n")
	for _, f := range figures["courses"] {
		fmt.Fprintf(&b, "![%s](%s)\n\n", f.title, f.file)
	}
	b.WriteString(courseTable(e))
	b.WriteString("\n## What misses\n\n")
	for _, s := range e.sets {
		if m := s.Misses(); len(m) > 0 {
			fmt.Fprintf(&b, "- **%s** (%s): %s\n", s.Name(), strings.Join(m, ", "), e.why(s))
		}
	}
	b.WriteString("\n## Outside their band\n\n")
	for _, s := range e.sets {
		b.WriteString(outside(s))
	}
	b.WriteString("\n## Assumed\n\n")
	b.WriteString(assumed(e))
	for _, k := range []struct{ kind, title string }{
		{testdata.Formula, "Formula: worked examples and tables of a law"},
		{testdata.Same, "Same: our constants and equations against their own source"},
	} {
		fmt.Fprintf(&b, "\n## %s\n\n%s", k.title, formulaTable(e, k.kind))
	}
	files["README.md"] = b.Bytes()
	return files, nil
}

// courseTable has a line a timed measurement, those left out included.
func courseTable(e evidence) string {
	var rows [][]string
	for _, r := range e.results {
		if r.Mark == "" {
			continue
		}
		if r.Left != "" {
			rows = append(rows, []string{r.Table, r.Mark, r.Quantity, "-", "-", "-", "-", "-", "not compared: " + r.Left})
			continue
		}
		for _, s := range r.Sets() {
			sentence := s.Points[0].Assumed
			if sentence != "" {
				sentence = "assumed: " + sentence
			}
			out := fmt.Sprintf("%d", s.Outside)
			if s.Order {
				out = fmt.Sprintf("%d (order only)", s.Outside)
			}
			rows = append(rows, []string{r.Table, r.Mark, r.Quantity, orDash(s.Class), fmt.Sprint(len(s.Points)), out, lean(s), orDash(strings.Join(s.Misses(), ", ")), orDash(sentence)})
		}
	}
	return markdown([]string{"data set", "mark", "quantity", "class", "readings", "outside", "lean", "misses on", "remarks"}, rows)
}

// mostNamed is how many points outside a set are named before the rest is counted.
const mostNamed = 6

// outside lists the points that leave their band, so that no disagreement hides in a
// count.
func outside(s published.Set) string {
	if s.Outside == 0 {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "- %s\n", s.Name())
	named := 0
	for _, p := range s.Points {
		if p.Inside() {
			continue
		}
		if named++; named > mostNamed {
			fmt.Fprintf(&b, "  - and %d more\n", s.Outside-mostNamed)
			break
		}
		fmt.Fprintf(&b, "  - %s: published %.4g %s, likely %.4g, band %.4g..%.4g\n", strings.TrimSpace(p.Label), p.Published, s.Unit, p.Predicted, p.Low, p.High)
	}
	return b.String()
}

// assumed lists, by table, the inputs that nobody published.
func assumed(e evidence) string {
	var lines []string
	for _, s := range e.sets {
		of := map[string]int{}
		var order []string
		for _, p := range s.Points {
			if p.Assumed == "" {
				continue
			}
			if of[p.Assumed]++; of[p.Assumed] == 1 {
				order = append(order, p.Assumed)
			}
		}
		for _, a := range order {
			lines = append(lines, fmt.Sprintf("- %s: %s (%d of %d points)\n", s.Name(), a, of[a], len(s.Points)))
		}
	}
	return strings.Join(slices.Compact(lines), "")
}

// formulaTable has a line a set of a kind that must agree in full.
func formulaTable(e evidence, kind string) string {
	var rows [][]string
	for _, r := range e.results {
		for _, s := range r.Sets() {
			if s.Kind == kind {
				rows = append(rows, []string{
					s.Package, s.Table, s.Quantity, orDash(s.Class), fmt.Sprint(len(s.Points)), fmt.Sprint(len(s.Points) - s.Outside), lean(s), worst(s), s.Claim, r.Source,
				})
			}
		}
	}
	return markdown([]string{"package", "data set", "quantity", "class", "points", "inside", "lean", "worst", "claim", "source"}, rows)
}
