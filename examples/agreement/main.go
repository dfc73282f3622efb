// Command agreement prints how far the library agrees with the published values
// in testdata: how many points were measured and by how many, and for each set of
// them what is outside the band, which way it leans and how sharp the band is. With
// -out it also writes the page and its figures into a folder, with -readme the
// headline into the project's README.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

func main() {
	out := flag.String("out", "", "also write README.md and the figures into this folder")
	readme := flag.String("readme", "", "also renew the headline in this README")
	flag.Parse()
	if err := run(os.Stdout, *out, *readme); err != nil {
		fmt.Fprintln(os.Stderr, "agreement:", err)
		os.Exit(1)
	}
}

func run(w io.Writer, out, readme string) error {
	e, err := gather()
	if err != nil {
		return err
	}
	if err := writeText(w, e); err != nil {
		return err
	}
	if out != "" {
		files, err := page(e)
		if err != nil {
			return err
		}
		for name, data := range files {
			if err := os.WriteFile(filepath.Join(out, name), data, 0o644); err != nil {
				return err
			}
		}
	}
	if readme == "" {
		return nil
	}
	old, err := os.ReadFile(readme)
	if err != nil {
		return err
	}
	renewed, err := intoReadme(old, e)
	if err != nil {
		return err
	}
	return os.WriteFile(readme, renewed, 0o644)
}
