package notebook

import (
	"bufio"
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// Folders lists the chapters' folders under examples, in order.
func Folders(examples string) ([]string, error) {
	return filepath.Glob(filepath.Join(examples, "[0-9][0-9]-*"))
}

// Index makes examples/README.md from the pages of the chapters: one line and a
// thumbnail each.
func Index(examples string) ([]byte, error) {
	folders, err := Folders(examples)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString(`<!-- Made by go generate ./examples; do not edit. -->

# The notebook

Worked chapters in the order a crew meets the questions. Each page is made from a
tested Go file in its folder, so its code and output are what the library does
today. The day itself is planned by the program in [callsheet](callsheet); how far
the numbers can be trusted is in [agreement](agreement).

| | |
|---|---|
`)
	for _, folder := range folders {
		title, line, figure, err := front(filepath.Join(folder, "README.md"))
		if err != nil {
			return nil, err
		}
		name := filepath.Base(folder)
		fmt.Fprintf(&b, "| <a href=\"%s\"><img src=\"%s/%s\" width=\"240\" alt=\"\"></a> | [%s %s](%s)<br>%s |\n",
			name, name, figure, name[:2], title, name, line)
	}
	return b.Bytes(), nil
}

// front reads a page's heading, its one line and its first figure.
func front(page string) (title, line, figure string, err error) {
	f, err := os.Open(page)
	if err != nil {
		return "", "", "", err
	}
	defer f.Close()
	for sc := bufio.NewScanner(f); sc.Scan() && figure == ""; {
		switch text := sc.Text(); {
		case title == "" && strings.HasPrefix(text, "# "): // later ones may be a page's output
			title = text[2:]
		case strings.HasPrefix(text, "> "):
			line = text[2:]
		case strings.HasPrefix(text, "!["):
			_, after, _ := strings.Cut(text, "](")
			figure = strings.TrimSuffix(after, ")")
		}
	}
	if title == "" || line == "" || figure == "" {
		return "", "", "", fmt.Errorf("%s: no heading, no line or no figure", page)
	}
	return title, line, figure, nil
}
