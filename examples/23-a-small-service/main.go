// Command 23-a-small-service redraws this chapter's page; with -listen it serves.
package main

import (
	"fmt"
	"net/http"
	"os"
	"time"

	"example.org/honestplate/examples/internal/notebook"
)

var chapter = notebook.Chapter{
	Title: "A small service",
	Line:  "Three questions of a set over HTTP: when does this glass bead, what to weigh, plan this brief; every error at its field.",
	Figures: []notebook.Figure{{
		Name:    "beads",
		Caption: "When a glass beads, as the service answers it for nine rooms and two drinks: a bar from the earliest to the latest moment, the mark where it is likely. A bar without a mark: likely never.",
		Draw:    drawBeads,
	}},
}

func main() {
	var err error
	if len(os.Args) == 3 && os.Args[1] == "-listen" {
		s := http.Server{Addr: os.Args[2], Handler: service(), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 20 * time.Second, WriteTimeout: time.Minute}
		err = s.ListenAndServe()
	} else {
		err = chapter.Main(".")
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
