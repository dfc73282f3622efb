package main

import (
	"fmt"
	"strings"

	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/testdata"
)

// headline says in a few lines what a reader must know.
func headline(e evidence) string {
	var b strings.Builder
	m := e.tally(values)
	sets, missing := e.judged()
	share, experiments := e.courseShare()
	fmt.Fprintf(&b, "**%d measured points** from %d independent sources: %d read, %d from memory, %d worked out\nfrom readings. For %d of them an input had to be assumed.\n\n",
		m.points, len(m.origins), m.read, m.memory, m.computed, m.assumed)
	b.WriteString("| | points | read | from memory | worked out | sources | inside |\n|---|---|---|---|---|---|---|\n")
	for _, l := range []struct {
		name string
		c    count
	}{
		{"measured: values", e.tally(still)},
		{"measured: timed courses", e.tally(courses)},
		{"measured: good for order only", e.tally(orders)},
		{"formula: worked examples, tables of a law", e.tally(ofKind(testdata.Formula))},
		{"same: our constants against their source", e.tally(ofKind(testdata.Same))},
	} {
		fmt.Fprintf(&b, "| %s | %d | %d | %d | %d | %d | %d |\n", l.name, l.c.points, l.c.read, l.c.memory, l.c.computed, len(l.c.origins), l.c.inside)
	}
	fmt.Fprintf(&b, "\nOf %d measured sets with a 95 %% band of the model's own, %d miss: too many outside, a lean,\nor a band too wide or too narrow. Averaged over %d timed measurements, unfitted, %.0f %% of\nthe readings lie inside.\n",
		sets, missing, experiments, 100*share)
	return b.String()
}

// intoReadme puts the headline into the project's README.
func intoReadme(readme []byte, e evidence) ([]byte, error) {
	return notebook.Between(readme, "agreement", headline(e)+
		"\nWhat misses, which way and why, set by set and drawn: [agreement](examples/agreement/README.md).\n")
}
