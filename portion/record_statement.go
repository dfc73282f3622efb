package portion

import (
	"fmt"
	"math"
	"strings"

	"example.org/honestplate/portion/internal/decimal"
)

// Statement returns the record in Markdown, for whoever uses the picture: how it was
// made, in a table of declared, planned and weighed amounts, the stand-ins with
// their reasons, the cautions and the signatures. What is missing is said to be
// missing. Text is escaped, so that no name can change the document's structure.
func (r Record) Statement() string {
	var b strings.Builder
	b.WriteString("# How this picture was made\n\n")
	b.WriteString("**" + markdown(r.Picture) + "**")
	if r.Date != "" {
		b.WriteString(", " + markdown(r.Date))
	}
	b.WriteString("\n\n")
	r.writeItems(&b)
	r.writeStandIns(&b)
	r.writePreparation(&b)
	if len(r.Cautions) > 0 {
		b.WriteString("## Cautions\n\n")
		for _, c := range r.Cautions {
			b.WriteString("- " + markdown(c) + "\n")
		}
		b.WriteString("\n")
	}
	b.WriteString("## Signed\n\n")
	for _, s := range r.Signed {
		line := "- " + markdown(s.Name)
		for _, more := range []string{s.Role, s.Date} {
			if more != "" {
				line += ", " + markdown(more)
			}
		}
		b.WriteString(line + "\n")
	}
	if len(r.Signed) == 0 {
		b.WriteString("Not signed yet.\n")
	}
	b.WriteString("\nThis record documents the picture. Whether the picture may be used is for local advertising and weights-and-measures law.\n")
	return b.String()
}

func (r Record) writeItems(b *strings.Builder) {
	b.WriteString("| item | in the picture | declared | planned | weighed | weighed minus declared |\n|---|---|---|---|---|---|\n")
	for _, i := range r.Items {
		kind := "itself"
		switch {
		case i.Advertised:
			kind = "itself: the advertised product"
		case i.StandIn != nil:
			kind = "stand-in: " + markdown(i.StandIn.What)
		}
		declared, planned, weighed := "nothing", "no plan", "not weighed"
		if i.Declared != (Amount{}) {
			declared = amount(i.Declared.Grams, i.Declared.Count)
		}
		if i.Planned != nil {
			planned = amount(i.Planned.Grams, i.Planned.Count)
		}
		if w := i.Weighed; w != nil {
			weighed = amount(w.Grams, w.Count)
			if w.ErrorGrams > 0 {
				weighed += " +- " + decimal.Plain(w.ErrorGrams) + " g"
			}
			if w.Scale != "" {
				weighed += " (" + markdown(w.Scale) + ")"
			}
		}
		fmt.Fprintf(b, "| %s | %s | %s | %s | %s | %s |\n", markdown(i.Item), kind,
			declared, planned, weighed, i.difference())
	}
	b.WriteString("\n")
}

// difference says how what was weighed differs from what is declared, in whatever
// is declared.
func (i RecordItem) difference() string {
	w := i.Weighed
	switch {
	case i.Declared == (Amount{}):
		return "-"
	case w == nil:
		return "open"
	}
	var parts []string
	if i.Declared.Grams > 0 {
		// No scale shows a microgram: what is left below it is dust of the subtraction.
		switch d := math.Round((w.Grams-i.Declared.Grams)*1e6) / 1e6; {
		case w.Grams == 0:
			parts = append(parts, "mass not weighed")
		case d == 0:
			parts = append(parts, "0 g")
		default:
			parts = append(parts, fmt.Sprintf("%+.6g g", d))
		}
	}
	if i.Declared.Count > 0 {
		if w.Count == 0 {
			parts = append(parts, "pieces not counted")
		} else {
			parts = append(parts, fmt.Sprintf("%+d pieces", w.Count-i.Declared.Count))
		}
	}
	return strings.ReplaceAll(strings.Join(parts, ", "), "+0 pieces", "0 pieces")
}

func (r Record) writeStandIns(b *strings.Builder) {
	b.WriteString("## Stand-ins\n\n")
	none := true
	for _, i := range r.Items {
		if i.StandIn != nil {
			fmt.Fprintf(b, "- %s in place of %s: %s\n", markdown(i.StandIn.What), markdown(i.Item), markdown(i.StandIn.Reason))
			none = false
		}
	}
	if none {
		b.WriteString("None: every item is what it is called.\n")
	}
	b.WriteString("\n")
}

func (r Record) writePreparation(b *strings.Builder) {
	head := "## Placing and preparation\n\n"
	for _, i := range r.Items {
		if i.How != "" {
			b.WriteString(head + "- " + markdown(i.Item) + ": " + markdown(i.How) + "\n")
			head = ""
		}
	}
	if head == "" {
		b.WriteString("\n")
	}
}

func amount(grams float64, count int) string {
	var parts []string
	if count == 1 {
		parts = append(parts, "1 piece")
	} else if count > 0 {
		parts = append(parts, fmt.Sprintf("%d pieces", count))
	}
	if grams > 0 || count == 0 {
		parts = append(parts, decimal.Plain(grams)+" g")
	}
	return strings.Join(parts, ", ")
}

// markdown escapes text for one line of Markdown.
func markdown(s string) string {
	var b strings.Builder
	for _, r := range strings.Join(strings.Fields(s), " ") {
		if strings.ContainsRune("\\`*_{}[]<>#|~&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
