package main

import (
	"bytes"
	"fmt"
	"strings"

	"example.org/honestplate/examples/internal/figure"
	"gonum.org/v1/plot/plotter"
)

var packages = []string{"rheology", "thermal", "portion"}

// page makes README.md and a figure a package, by file name.
func page(rows []row) (map[string][]byte, error) {
	files := map[string][]byte{}
	var b bytes.Buffer
	b.WriteString(`<!-- Made by go generate ./examples; do not edit. -->

# How far the numbers agree

Each data set in [testdata](../../testdata) beside what the library says today.
"Inside" counts the points within the band that the comparison claims; "mean ratio"
is the geometric mean of predicted over published; "worst" is the ratio of the worst
point. Known: "read" in the source or a copy of it, "memory" recalled, not
seen, "computed" made with the general-purpose library that the source names.
`)
	for _, pkg := range packages {
		svg, drawn, err := ratios(pkg, rows)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, "\n## %s\n\n", pkg)
		if drawn {
			files[pkg+".svg"] = svg
			fmt.Fprintf(&b, "![Predicted against published, %s](%s.svg)\n\n", pkg, pkg)
		}
		fmt.Fprintf(&b, "| %s | claim | source |\n%s\n", strings.Join(head, " | "), strings.Repeat("|---", len(head)+2)+"|")
		for _, r := range rows {
			if r.Package == pkg {
				fmt.Fprintf(&b, "| %s | %s | %s |\n", strings.Join(r.cells(), " | "), r.Claim, r.Source)
			}
		}
		b.WriteString(outside(pkg, rows))
	}
	files["README.md"] = b.Bytes()
	return files, nil
}

// outside lists the points that leave their band, so that no disagreement hides
// in a count.
func outside(pkg string, rows []row) string {
	var b strings.Builder
	for _, r := range rows {
		for _, p := range r.Compared() {
			if r.Package == pkg && !p.Inside() {
				fmt.Fprintf(&b, "- %s, %s: published %.4g %s, predicted %.4g, band %.4g..%.4g\n",
					r.Table, p.Label, p.Published, r.Unit, p.Predicted, p.Low, p.High)
			}
		}
	}
	if b.Len() == 0 {
		return "\nNo point is outside its band.\n"
	}
	return "\nOutside their band:\n\n" + b.String()
}

// ratios draws predicted over published against the published value, for the
// comparisons of positive numbers that are not exact by nature.
func ratios(pkg string, rows []row) (svg []byte, drawn bool, err error) {
	p := figure.New("", "published value, each in its own unit", "predicted / published")
	figure.LogX(p)
	figure.LogY(p)
	var read, other plotter.XYs
	for _, r := range rows {
		if r.Package != pkg || r.meanRatio != r.meanRatio {
			continue
		}
		for _, pt := range r.Compared() {
			xy := plotter.XY{X: pt.Published, Y: pt.Predicted / pt.Published}
			if r.Known == "read" {
				read = append(read, xy)
			} else {
				other = append(other, xy)
			}
		}
	}
	for i, s := range []struct {
		name string
		pts  plotter.XYs
	}{{"read in the source", read}, {"from memory, or computed with a named library", other}} {
		if len(s.pts) == 0 {
			continue
		}
		drawn = true
		if err := figure.Points(p, i, s.name, s.pts); err != nil {
			return nil, false, err
		}
	}
	if !drawn {
		return nil, false, nil
	}
	// Room above the points for the legend.
	p.Y.Min, p.Y.Max = min(p.Y.Min/1.2, 0.5), max(p.Y.Max*2, 4)
	p.X.Min, p.X.Max = p.X.Min/2, p.X.Max*2
	svg, err = figure.SVG(p, figure.Width, figure.Height)
	return svg, true, err
}

// Summary is the short table of the project's README: a row a package.
func summary(rows []row) string {
	var b strings.Builder
	b.WriteString("| package | comparisons | points | inside their band |\n|---|---|---|---|\n")
	for _, pkg := range packages {
		n, points, inside := 0, 0, 0
		for _, r := range rows {
			if r.Package == pkg {
				n, points, inside = n+1, points+r.points, inside+r.inside
			}
		}
		fmt.Fprintf(&b, "| %s | %d | %d | %d |\n", pkg, n, points, inside)
	}
	return b.String()
}
