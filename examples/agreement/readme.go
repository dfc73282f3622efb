package main

import (
	"bytes"
	"strings"

	"example.org/honestplate/examples/internal/notebook"
)

// intoReadme puts the summary and the whole table into the project's README.
func intoReadme(readme []byte, rows []row) ([]byte, error) {
	var text bytes.Buffer
	if err := writeText(&text, rows); err != nil {
		return nil, err
	}
	return notebook.Between(readme, "agreement",
		summary(rows)+"\n<details><summary>Every data set</summary>\n\n```text\n"+strings.TrimSpace(text.String())+"\n```\n\n</details>\n")
}
