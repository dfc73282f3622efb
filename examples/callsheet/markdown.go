package main

import (
	"fmt"
	"strings"

	"example.org/honestplate"
)

// markdown sets the sheet as CommonMark with tables.
func (s *sheet) markdown() []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\n", plain(s.Title))
	for _, l := range s.Lead {
		fmt.Fprintf(&b, "%s\n\n", plain(l))
	}
	for _, k := range s.Blocks {
		fmt.Fprintf(&b, "## %s\n\n", plain(k.Title))
		for _, i := range k.Items {
			fmt.Fprintf(&b, "- %s\n", plain(i))
		}
		if len(k.Items) > 0 {
			b.WriteString("\n")
		}
		rows, head := k.Rows, k.Head
		if len(k.Lines) > 0 {
			head = []string{"", ""}
			for _, l := range k.Lines {
				rows = append(rows, []string{l.Label, l.Text})
			}
		}
		if len(rows) > 0 {
			fmt.Fprintf(&b, "| %s |\n|%s\n", strings.Join(plains(head), " | "), strings.Repeat(" --- |", len(head)))
			for _, r := range rows {
				fmt.Fprintf(&b, "| %s |\n", strings.Join(plains(r), " | "))
			}
			b.WriteString("\n")
		}
		if k.Foot != "" {
			fmt.Fprintf(&b, "%s\n\n", plain(k.Foot))
		}
		if k.Figure != "" {
			fmt.Fprintf(&b, "![the day by the clock](%s)\n\n", k.Figure)
		}
	}
	return []byte(b.String())
}

// plain makes any text stand as it is in Markdown: every character that could mean
// something is escaped, what controls a line becomes a space.
func plain(text string) string {
	var b strings.Builder
	text = honestplate.OneLine(text)
	for i, r := range text {
		link := r == ':' && strings.HasPrefix(text[i:], "://") || r == '.' && strings.HasSuffix(strings.ToLower(text[:i]), "www") || r == '@'
		if link || r < 0x80 && strings.ContainsRune("\\`*_{}[]<>#!|~&^$", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	out := b.String()
	// What would begin a list, a heading rule or a code block at the start of a line.
	if out != "" && strings.ContainsRune("+-=:.\"'", rune(out[0])) {
		out = "\\" + out
	}
	if i := strings.IndexAny(out, ".)"); i > 0 && strings.Trim(out[:i], "0123456789") == "" {
		out = out[:i] + "\\" + out[i:]
	}
	return out
}

func plains(cells []string) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = plain(c)
	}
	return out
}
