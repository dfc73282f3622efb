package record

import (
	"fmt"
	"math"
	"strings"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/decimal"
)

// Statement returns the record in Markdown, for whoever uses the picture: how it was
// made, in a table of declared, planned and weighed amounts with their verdicts, then
// stand-ins, arrangement, takes, edits, cautions and signatures. What is missing is
// said to be missing: nothing recorded is not nothing done. Text is escaped and turned
// nowhere, so that no name can change the document.
func (r Record) Statement() string {
	s := &statement{}
	s.line("# How this picture was made\n")
	head := "**" + markdown(r.Picture) + "**"
	if r.Date != "" {
		head += ", " + markdown(r.Date)
	}
	s.line("%s, revision %d of this record\n", head, max(1, r.Revision))
	if p := r.Specification; p != nil {
		s.specification(*p, r.Date)
	}
	s.items(r.Items)
	s.list("Stand-ins", "None recorded.", r.Items, func(i Item) string {
		if i.StandIn == nil {
			return ""
		}
		return fmt.Sprintf("%s in place of %s: %s", markdown(i.StandIn.What), markdown(i.Item),
			markdown(i.StandIn.Reason))
	})
	s.list("Arranged towards the camera", "", r.Items, func(i Item) string {
		if i.Favour == 0 {
			return ""
		}
		return fmt.Sprintf("%s: up to %.0f %% more in front than an even share, and as much less behind. An arrangement can mislead although the total is true.",
			markdown(i.Item), 100*i.Favour)
	})
	s.list("Placing and preparation", "", r.Items, func(i Item) string {
		if i.How == "" {
			return ""
		}
		return markdown(i.Item) + ": " + markdown(i.How)
	})
	listed(s, "Takes", "None recorded.", r.Takes, Take.line)
	s.edits(r)
	listed(s, "Cautions", "", r.Cautions, markdown)
	listed(s, "Signed", "Not signed yet.", r.Signed, Signature.line)
	s.line("This record documents the picture. Whether the picture may be used is for local advertising and weights-and-measures law.")
	return s.b.String()
}

// A statement is a document being written.
type statement struct{ b strings.Builder }

func (s *statement) line(format string, v ...any) { fmt.Fprintf(&s.b, format+"\n", v...) }

func (s *statement) specification(p SpecificationRef, date string) {
	by := "by nobody"
	if p.SignedBy != "" {
		by = "by " + markdown(p.SignedBy)
	}
	text := fmt.Sprintf("Held against the specification of %s, version %s, signed %s", markdown(p.Product),
		markdown(p.Version), by)
	if p.ValidUntil != "" {
		text += ", valid until " + markdown(p.ValidUntil)
		if date > p.ValidUntil {
			text += ": **no longer in force on the day**"
		}
	}
	s.line("%s (SHA-256 %s).\n", text, markdown(p.SHA256))
}

func (s *statement) items(items []Item) {
	s.line("| item | in the picture | declared | planned | weighed | against what is declared |\n|---|---|---|---|---|---|")
	for _, i := range items {
		kind := "itself"
		switch {
		case i.Advertised:
			kind = "itself: the advertised product"
		case i.StandIn != nil:
			kind = "stand-in: " + markdown(i.StandIn.What)
		}
		declared, planned, weighed := "nothing", "no plan", "not weighed"
		if i.Declared != (portion.Amount{}) {
			declared = i.Declared.String()
		}
		if i.Planned != nil {
			planned = i.Planned.String()
		}
		if w := i.Weighed; w != nil {
			weighed = portion.Amount{Grams: w.Grams, Count: w.Count}.String()
			if w.ErrorGrams > 0 {
				weighed += " +- " + decimal.Plain(w.ErrorGrams) + " g"
			}
			weighed += also(string(w.Basis), w.Scale)
		}
		s.line("| %s | %s | %s | %s | %s | %s |", markdown(i.Item), kind, declared, planned, weighed, i.against())
	}
	s.line("")
}

// against says in words what the item's verdict is.
func (i Item) against() string {
	f, err := i.Verdict()
	switch {
	case err != nil:
		return "cannot be judged: " + markdown(err.Error())
	case i.Declared == (portion.Amount{}):
		return "-"
	case f.Verdict == "":
		return "open"
	}
	text := "**" + string(f.Verdict) + "**"
	if f.Reason != "" {
		text += ": " + markdown(f.Reason)
	}
	if i.Declared.Grams > 0 && i.Weighed.Grams > 0 {
		// No scale shows a microgram: what is left below it is dust of the subtraction.
		text += fmt.Sprintf(" (%+.6g g)", math.Round((i.Weighed.Grams-i.Declared.Grams)*1e6)/1e6)
		if i.Weighed.ErrorGrams > 0 && i.Declared.MinusGrams+i.Declared.PlusGrams > 0 {
			text += fmt.Sprintf("; %s likely to conform", chance(f.Probability))
		}
	}
	return text
}

// chance writes a probability without claiming what no scale can know.
func chance(p float64) string {
	switch {
	case p > 0.99:
		return "over 99 %"
	case p < 0.01:
		return "less than 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}

func (s *statement) edits(r Record) {
	s.line("## What was done to the picture\n")
	if r.SourceType != "" {
		s.line("It comes from: %s.\n", sourceText(r.SourceType))
	}
	for _, e := range r.Edits {
		text := markdown(e.Action)
		if e.What != "" {
			text += ": " + markdown(e.What)
		}
		if e.SourceType != "" {
			text += " (" + sourceText(e.SourceType) + ")"
		}
		s.line("- %s", text)
	}
	switch {
	case len(r.Edits) == 0 && r.EditsComplete:
		s.line("Nothing, it is declared.")
	case len(r.Edits) == 0:
		s.line("None recorded.")
	case r.EditsComplete:
		s.line("\nNothing else, it is declared.")
	}
	s.line("")
}

// sourceText says of a source type what a client must know.
func sourceText(term string) string {
	text := markdown(term)
	if sourceTypes[term] {
		text += ", **a generative model had a part in it**"
	}
	return text
}

// list writes a section of what the items have to say, or the text for nothing.
func (s *statement) list(title, none string, items []Item, say func(Item) string) {
	var lines []string
	for _, i := range items {
		if text := say(i); text != "" {
			lines = append(lines, text)
		}
	}
	listed(s, title, none, lines, func(text string) string { return text })
}

// listed writes a section with one line an element; without any, the text for nothing,
// or no section where there is none.
func listed[T any](s *statement, title, none string, list []T, say func(T) string) {
	if len(list) == 0 && none == "" {
		return
	}
	s.line("## %s\n", title)
	for _, v := range list {
		s.line("- %s", say(v))
	}
	if len(list) == 0 {
		s.line("%s", none)
	}
	s.line("")
}

func (t Take) line() string {
	text := fmt.Sprint(t.Number) + also(t.Time, t.File)
	if t.SHA256 != "" {
		text += ", SHA-256 " + markdown(t.SHA256)
	}
	if t.Chosen {
		text += ": **chosen**"
	}
	return text
}

func (g Signature) line() string { return markdown(g.Name) + also(g.Role, g.Date) }

// also writes what is known besides, each after a comma.
func also(more ...string) (text string) {
	for _, m := range more {
		if m != "" {
			text += ", " + markdown(m)
		}
	}
	return text
}
