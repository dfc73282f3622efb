package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

const (
	openMark  = "<!-- agreement: made by go generate ./examples -->\n"
	closeMark = "<!-- end of agreement -->\n"
)

// intoReadme puts the summary and the whole table between the marks of the
// project's README.
func intoReadme(readme []byte, rows []row) ([]byte, error) {
	before, rest, ok := bytes.Cut(readme, []byte(openMark))
	_, after, ok2 := bytes.Cut(rest, []byte(closeMark))
	if !ok || !ok2 {
		return nil, fmt.Errorf("README.md has no %q and %q", openMark, closeMark)
	}
	var text bytes.Buffer
	if err := writeText(&text, rows); err != nil {
		return nil, err
	}
	return slices.Concat(before, []byte(openMark),
		[]byte(summary(rows)+"\n<details><summary>Every data set</summary>\n\n```text\n"+strings.TrimSpace(text.String())+"\n```\n\n</details>\n"),
		[]byte(closeMark), after), nil
}
