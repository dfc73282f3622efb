package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"example.org/honestplate"
)

// columns is how wide the terminal's sheet is.
const columns = 100

// writeText sets the sheet for a terminal.
func (s *sheet) writeText(w io.Writer) error {
	var b strings.Builder
	put := func(text string) { b.WriteString(strings.TrimRight(text, " ") + "\n") }
	put(honestplate.OneLine(s.Title))
	put(strings.Repeat("=", min(cells(s.Title), columns)))
	for _, l := range s.Lead {
		for _, part := range wrapText(l, columns) {
			put(part)
		}
	}
	for _, k := range s.Blocks {
		put("")
		put(strings.ToUpper(honestplate.OneLine(k.Title)))
		for _, i := range k.Items {
			for n, part := range wrapText(i, columns-2) {
				put(map[bool]string{true: "- ", false: "  "}[n == 0] + part)
			}
		}
		for _, l := range k.Lines {
			label := l.Label
			for _, part := range wrapText(l.Text, columns-12) {
				put(fmt.Sprintf("%-11s %s", shortened(label, 11), part))
				label = ""
			}
		}
		for _, r := range table(k.Head, k.Rows) {
			put(r)
		}
		if k.Foot != "" {
			for _, part := range wrapText(k.Foot, columns) {
				put(part)
			}
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// table sets rows in columns; the last but one and the widest columns wrap.
func table(head []string, rows [][]string) []string {
	if len(rows) == 0 {
		return nil
	}
	n := len(head)
	width := make([]int, n)
	all := append([][]string{head}, rows...)
	for _, r := range all {
		for i, cell := range r {
			width[i] = max(width[i], cells(cell))
		}
	}
	// The widest column gives until all fit.
	for total(width)+2*(n-1) > columns {
		widest := 0
		for i := range width {
			if width[i] > width[widest] {
				widest = i
			}
		}
		width[widest]--
	}
	var out []string
	for _, r := range all {
		parts := make([][]string, n)
		tall := 1
		for i, cell := range r {
			parts[i] = wrapText(cell, width[i])
			tall = max(tall, len(parts[i]))
		}
		for line := range tall {
			text := ""
			for i := range n {
				cell := ""
				if line < len(parts[i]) {
					cell = parts[i][line]
				}
				text += cell + strings.Repeat(" ", max(width[i]-cells(cell), 0)+2)
			}
			out = append(out, text)
		}
	}
	return out
}

func total(v []int) int {
	sum := 0
	for _, x := range v {
		sum += x
	}
	return sum
}

// wrapText breaks a text into lines of at most so many characters; a longer word is cut.
func wrapText(text string, width int) []string {
	width = max(width, 4)
	var out []string
	now := ""
	for _, word := range strings.Fields(honestplate.OneLine(text)) {
		for cells(word) > width {
			if now != "" {
				out, now = append(out, now), ""
			}
			n := fitting(word, width)
			out, word = append(out, word[:n]), word[n:]
		}
		switch {
		case now == "":
			now = word
		case cells(now)+1+cells(word) <= width:
			now += " " + word
		default:
			out, now = append(out, now), word
		}
	}
	return append(out, now)
}

func shortened(text string, width int) string {
	if cells(text) <= width {
		return text
	}
	return text[:fitting(text, width-1)] + "…"
}

// cells is how many columns of a terminal a text takes: a wide script's letter two, a mark
// that stands on another letter none.
func cells(text string) (n int) {
	for _, r := range text {
		n += cell(r)
	}
	return n
}

func cell(r rune) int {
	switch w := letter(r); {
	case w == 0:
		return 0
	case w == 1:
		return 2
	}
	return 1
}

// fitting is how many bytes of a text, and at least one letter, fit so many columns.
func fitting(text string, width int) int {
	used, end := 0, 0
	for i, r := range text {
		if used += cell(r); used > width && end > 0 {
			return end
		}
		end = i + utf8.RuneLen(r)
		if r == utf8.RuneError {
			end = i + 1
		}
	}
	return len(text)
}
