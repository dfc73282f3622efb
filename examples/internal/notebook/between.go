package notebook

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// Between replaces what stands in a page between two marks for name:
//
//	<!-- name: made by go generate ./examples -->
//	<!-- end of name -->
func Between(page []byte, name, text string) ([]byte, error) {
	opening := fmt.Sprintf("<!-- %s: made by go generate ./examples -->\n", name)
	closing := fmt.Sprintf("<!-- end of %s -->\n", name)
	before, rest, ok := bytes.Cut(page, []byte(opening))
	_, after, ok2 := bytes.Cut(rest, []byte(closing))
	if !ok || !ok2 {
		return nil, fmt.Errorf("the page has no %q and %q", opening, closing)
	}
	return slices.Concat(before, []byte(opening), []byte(text), []byte(closing), after), nil
}

// FirstResult is the part of a call sheet that the project's README shows: the day
// and its first dish.
func FirstResult(sheet string) string {
	_, day, _ := strings.Cut(sheet, "THE DAY\n")
	day, _, _ = strings.Cut(day, "\n2 ")
	return "```text\nTHE DAY\n" + strings.TrimSpace(day) + "\n```\n"
}
