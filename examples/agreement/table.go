package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"example.org/honestplate/examples/published"
)

// The columns of a measured set.
var head = []string{"data set", "quantity", "class", "points", "memory", "sources", "outside", "allowed", "lean", "sharpness", "misses on"}

// cells are the columns as text.
func cells(s published.Set) []string {
	memory := 0
	for _, p := range s.Points {
		if p.Known == "memory" {
			memory++
		}
	}
	return []string{
		s.Table, s.Quantity, orDash(s.Class), fmt.Sprint(len(s.Points)), fmt.Sprint(memory), fmt.Sprint(s.Origins),
		fmt.Sprint(s.Outside), allowed(s), lean(s), sharpness(s), orDash(strings.Join(s.Misses(), ", ")),
	}
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// allowed is how many points may be outside.
func allowed(s published.Set) string {
	switch least, most := published.OutsideLimits(len(s.Points)); {
	case !s.Judged():
		return "0"
	case s.Mark != "":
		return fmt.Sprintf("0..%d", int((1-published.CourseShare)*float64(len(s.Points))+1e-9))
	default:
		return fmt.Sprintf("%d..%d", least, most)
	}
}

// lean is how far nature lies from the likely value, in per cent or in the unit.
func lean(s published.Set) string {
	switch {
	case math.IsNaN(s.Lean) || math.IsInf(s.Lean, 0):
		return "-"
	case s.Floor > 0:
		return fmt.Sprintf("%+.2g %s", s.Lean, strings.ReplaceAll(s.Unit, "degC", "K"))
	}
	percent := 100 * (math.Exp(s.Lean) - 1)
	if math.Abs(percent) < 0.95 {
		return fmt.Sprintf("%+.1f %%", percent)
	}
	return fmt.Sprintf("%+.0f %%", percent)
}

func sharpness(s published.Set) string {
	// The readings of a course scatter less among themselves than courses do.
	if !s.Judged() || s.Mark != "" || math.IsNaN(s.Sharpness) {
		return "-"
	}
	return fmt.Sprintf("%.2f", s.Sharpness)
}

// writeText prints the headline and a line a measured set.
func writeText(w io.Writer, e evidence) error {
	fmt.Fprintln(w, headline(e))
	tw := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(tw, strings.Join(head, "\t"))
	for _, s := range e.sets {
		if values(s) {
			fmt.Fprintln(tw, strings.Join(cells(s), "\t"))
		}
	}
	return tw.Flush()
}

// markdown is a table of these columns.
func markdown(head []string, rows [][]string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "| %s |\n%s\n", strings.Join(head, " | "), strings.Repeat("|---", len(head))+"|")
	for _, r := range rows {
		fmt.Fprintf(&b, "| %s |\n", strings.Join(r, " | "))
	}
	return b.String()
}

// worst is the point of a set that lies furthest from its prediction, as a ratio
// where both are positive.
func worst(s published.Set) string {
	p := slices.MaxFunc(s.Points, func(a, b published.Point) int {
		return cmpFloat(distance(a), distance(b))
	})
	switch {
	case p.Published == p.Predicted:
		return "equal"
	case p.Published > 0 && p.Predicted > 0:
		return fmt.Sprintf("x %.3f", p.Predicted/p.Published)
	}
	return fmt.Sprintf("off by %.3g", math.Abs(p.Predicted-p.Published))
}

// distance is |ln(predicted/published)|, or the relative difference where that is
// none.
func distance(p published.Point) float64 {
	if p.Published > 0 && p.Predicted > 0 {
		return math.Abs(math.Log(p.Predicted / p.Published))
	}
	return math.Abs(p.Predicted-p.Published) / max(math.Abs(p.Predicted), math.Abs(p.Published), 1e-300)
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
