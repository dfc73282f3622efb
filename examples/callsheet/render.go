package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// textWidth is the terminal the sheet is set for.
const textWidth = 100

// WriteText sets the sheet for a terminal of textWidth columns.
func (s *Sheet) WriteText(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintln(&b, strings.ToUpper(s.Title))
	for _, l := range s.Lead {
		hang(&b, "", l)
	}
	for _, sec := range s.Sections {
		if sec.Bench {
			continue
		}
		fmt.Fprintf(&b, "\n%s\n%s\n", strings.ToUpper(sec.Title), strings.Repeat("-", utf8.RuneCountInString(sec.Title)))
		if sec.Note != "" {
			hang(&b, "", sec.Note)
		}
		if sec.Table != nil {
			sec.Table.writeText(&b)
		}
		for _, l := range sec.Lines {
			hang(&b, pad(l.Label, 11), l.Text)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// hang writes text wrapped to the width, later lines indented under the first.
func hang(b *strings.Builder, first, text string) {
	indent := utf8.RuneCountInString(first)
	line, n := first, indent
	for word := range strings.FieldsSeq(text) {
		k := utf8.RuneCountInString(word)
		if n > indent && n+1+k > textWidth {
			fmt.Fprintln(b, strings.TrimRight(line, " "))
			line, n = strings.Repeat(" ", indent), indent
		}
		if n > indent {
			line, n = line+" ", n+1
		}
		line, n = line+word, n+k
	}
	fmt.Fprintln(b, strings.TrimRight(line, " "))
}

func pad(s string, n int) string {
	return s + strings.Repeat(" ", max(1, n-utf8.RuneCountInString(s)))
}

func (t *TableBlock) writeText(b *strings.Builder) {
	width := make([]int, len(t.Head))
	for _, row := range append([][]string{t.Head}, t.Rows...) {
		for i, c := range row {
			width[i] = max(width[i], utf8.RuneCountInString(c))
		}
	}
	for _, row := range append([][]string{t.Head}, t.Rows...) {
		first := ""
		for i, c := range row[:len(row)-1] {
			first += pad(c, width[i]+2)
		}
		hang(b, first, row[len(row)-1])
	}
}

// WriteMarkdown sets the sheet as Markdown, with its figures.
func (s *Sheet) WriteMarkdown(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", escape(s.Title))
	for _, l := range s.Lead {
		fmt.Fprintf(&b, "\n%s\n", escape(l))
	}
	for _, sec := range s.Sections {
		fmt.Fprintf(&b, "\n## %s\n", escape(sec.Title))
		if sec.Note != "" {
			fmt.Fprintf(&b, "\n%s\n", escape(sec.Note))
		}
		if sec.Table != nil {
			b.WriteString("\n")
			sec.Table.writeMarkdown(&b)
		}
		if len(sec.Lines) > 0 {
			t := TableBlock{Head: []string{"", ""}}
			for _, l := range sec.Lines {
				t.Rows = append(t.Rows, []string{l.Label, l.Text})
			}
			b.WriteString("\n")
			t.writeMarkdown(&b)
		}
		if sec.Figure != "" {
			fmt.Fprintf(&b, "\n![%s](%s)\n", escape(sec.Title), sec.Figure)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (t *TableBlock) writeMarkdown(b *strings.Builder) {
	row := func(cells []string) {
		for _, c := range cells {
			b.WriteString("| " + escape(c) + " ")
		}
		b.WriteString("|\n")
	}
	row(t.Head)
	b.WriteString(strings.Repeat("|---", len(t.Head)) + "|\n")
	for _, r := range t.Rows {
		row(r)
	}
}

// escape keeps a brief's own words from becoming Markdown.
var escape = strings.NewReplacer(`\`, `\\`, "&", "&amp;", "~", `\~`, "|", `\|`, "*", `\*`, "_", `\_`, "<", "&lt;", "`", "'", "[", `\[`, "#", `\#`).Replace
