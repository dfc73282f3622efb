package notebook

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const story = `package main

import "fmt"

// A question.
//
// # The first step
//
// Some prose.
func Example_second() {
	for i := range 2 { // counts
		fmt.Println(i)
	}
	// Output:
	// 0
	// 1
}

// More prose.
//
// Figure: curve
//
// The end.
func Example_first() {}
`

const page = "<!-- Made from story_test.go by go generate ./examples; do not edit. -->\n" + `
# A title

> A line.

A question.

## The first step

Some prose.

` + "```go\nfor i := range 2 { // counts\n\tfmt.Println(i)\n}\n```\n\nwhich prints\n\n```text\n0\n1\n```\n" + `
More prose.

![What to see.](curve.svg)

*What to see.*

The end.
`

var chapter = Chapter{Title: "A title", Line: "A line.", Figures: []Figure{{Name: "curve", Caption: "What to see."}}}

func TestPage(t *testing.T) {
	got, err := chapter.page([]byte(story))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(page, string(got)); diff != "" {
		t.Errorf("page (-want +got):\n%s", diff)
	}
}

func TestPageRefusesWhatDoesNotFit(t *testing.T) {
	for name, c := range map[string]struct {
		chapter Chapter
		story   string
		want    string
	}{
		"figure never named":  {chapter, strings.Replace(story, "Figure: curve", "No figure.", 1), "stands nowhere"},
		"figure never drawn":  {Chapter{Title: "A title"}, story, "does not draw"},
		"story is not Go":     {chapter, "nonsense", "expected 'package'"},
		"figure fails":        {Chapter{Figures: []Figure{{Draw: func() ([]byte, error) { return nil, errors.New("no ink") }}}}, story, "no ink"},
		"figure with no name": {Chapter{Figures: []Figure{{Name: "", Caption: "x"}}}, story, "does not draw"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := c.chapter.page([]byte(c.story))
			if c.chapter.Figures != nil && c.chapter.Figures[0].Draw != nil {
				_, err = c.chapter.Build(t.TempDir())
			}
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want one with %q", err, c.want)
			}
		})
	}
}

func TestWordsLeaveCodeOut(t *testing.T) {
	if n := words([]byte("one two\n```go\nthree four\n```\nfive\n")); n != 3 {
		t.Errorf("%d words, want 3", n)
	}
}

// A comment that a blank line parts from its Example would be lost from the page.
func TestAParagraphThatBelongsToNoExampleIsAnError(t *testing.T) {
	story := "package x\n\n// One.\nfunc Example() {\n\t// inside\n}\n\n// Lost.\n\n// Two.\nfunc Example_two() {}\n"
	c := Chapter{Title: "T", Line: "L"}
	if _, err := c.page([]byte(story)); err == nil || !strings.Contains(err.Error(), "story_test.go:8") {
		t.Errorf("%v", err)
	}
	if _, err := c.page([]byte(strings.Replace(story, "Lost.\n\n", "Lost.\n//\n", 1))); err != nil {
		t.Error(err)
	}
}
