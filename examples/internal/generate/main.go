// Command generate rebuilds every chapter's page and figures, and the index. It
// runs in the folder examples, through go generate.
package main

import (
	"fmt"
	"os"
	"os/exec"

	"example.org/honestplate/examples/internal/notebook"
)

func main() {
	if err := generate(); err != nil {
		fmt.Fprintln(os.Stderr, "generate:", err)
		os.Exit(1)
	}
}

func generate() error {
	folders, err := notebook.Folders(".")
	if err != nil {
		return err
	}
	for _, folder := range folders {
		cmd := exec.Command("go", "run", ".")
		cmd.Dir = folder
		cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
		if err := cmd.Run(); err != nil {
			return fmt.Errorf("%s: %w", folder, err)
		}
	}
	index, err := notebook.Index(".")
	if err != nil {
		return err
	}
	return os.WriteFile("README.md", index, 0o644)
}
