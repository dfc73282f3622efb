package main

// A Sheet is what the crew reads, before it is set as text or Markdown.
type Sheet struct {
	Title    string
	Lead     []string // what, when, where: the first lines
	Sections []Section
}

// A Section is a heading with lines under it, a table, or both.
type Section struct {
	Title  string
	Note   string // one sentence under the title
	Table  *TableBlock
	Lines  []Line
	Figure string // file name of the section's figure, for the Markdown sheet
	Bench  bool   // a drawing to print for the bench: in the Markdown sheet only
}

// A Line is one answer: what it is about, and what to do.
type Line struct{ Label, Text string }

// A TableBlock has a heading row; its last column may wrap.
type TableBlock struct {
	Head []string
	Rows [][]string
}

func (s *Section) add(label, text string) { s.Lines = append(s.Lines, Line{label, text}) }
