package main

import (
	"fmt"
	"io"
	"math"
	"text/tabwriter"

	"example.org/honestplate/examples/published"
)

// A row is one line of the table of agreement.
type row struct {
	published.Result
	points, inside, skipped int
	meanRatio               float64 // geometric mean of predicted over published; NaN if not of positive numbers
	worst                   published.Point
	worstRatio              float64
}

func results() ([]row, error) {
	var rows []row
	for _, c := range published.All() {
		r, err := published.Run(c)
		if err != nil {
			return nil, err
		}
		rows = append(rows, summarise(r))
	}
	return rows, nil
}

// summarise counts a result. The worst point is the one whose predicted and
// published values differ by the largest factor; where a value is not positive,
// the one with the largest difference.
func summarise(r published.Result) row {
	s := row{Result: r, meanRatio: math.NaN(), worstRatio: math.NaN()}
	logs, allPositive, widest := 0.0, true, -1.0
	for _, p := range r.Compared() {
		allPositive = allPositive && p.Published > 0 && p.Predicted > 0
	}
	for _, p := range r.Compared() {
		s.points++
		if p.Inside() {
			s.inside++
		}
		off := math.Abs(p.Predicted - p.Published)
		if allPositive {
			off = math.Log(p.Predicted / p.Published)
			logs += off
			off = math.Abs(off)
		}
		if off > widest {
			widest, s.worst = off, p
		}
	}
	s.skipped = len(r.Points) - s.points
	if allPositive && s.points > 0 {
		s.meanRatio = math.Exp(logs / float64(s.points))
		s.worstRatio = s.worst.Predicted / s.worst.Published
	}
	return s
}

// cells are the row's columns as text.
func (r row) cells() []string {
	mean, worst := "-", fmt.Sprintf("off by %.3g", math.Abs(r.worst.Predicted-r.worst.Published))
	if !math.IsNaN(r.meanRatio) {
		mean, worst = fmt.Sprintf("%.3f", r.meanRatio), fmt.Sprintf("%.3f", r.worstRatio)
	}
	if r.worst.Predicted == r.worst.Published {
		worst = "equal"
	}
	inside := fmt.Sprintf("%d", r.inside)
	if r.skipped > 0 {
		inside += fmt.Sprintf(" (%d not compared)", r.skipped)
	}
	return []string{r.Table, r.Quantity, fmt.Sprint(r.points), inside, mean, worst, r.Known}
}

var head = []string{"data set", "quantity", "points", "inside", "mean ratio", "worst", "known"}

func writeText(w io.Writer, rows []row) error {
	tw := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	pkg := ""
	points, inside := 0, 0
	for _, r := range rows {
		if r.Package != pkg {
			pkg = r.Package
			fmt.Fprintf(tw, "\n%s\n", pkg)
			writeCells(tw, head)
		}
		writeCells(tw, r.cells())
		points, inside = points+r.points, inside+r.inside
	}
	fmt.Fprintf(tw, "\n%d points in %d comparisons, %d inside their band\n", points, len(rows), inside)
	return tw.Flush()
}

func writeCells(w io.Writer, cells []string) {
	for i, c := range cells {
		if i > 0 {
			fmt.Fprint(w, "\t")
		}
		fmt.Fprint(w, c)
	}
	fmt.Fprintln(w)
}
