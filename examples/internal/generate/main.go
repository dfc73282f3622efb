// Command generate rebuilds every chapter's page and figures, the page of
// agreement, the project's README where it shows results, and the index. It runs in the
// folder examples, through go generate.
package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

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
		if err := goRun(folder, "."); err != nil {
			return err
		}
	}
	for file, of := range map[string]string{"shoot/schema.json": "brief", "shoot/facts.schema.json": "facts"} {
		schema, err := exec.Command("go", "run", "./callsheet", "-schema", of).Output()
		if err != nil {
			return fmt.Errorf("schema of %s: %w", of, err)
		}
		if err := os.WriteFile(file, schema, 0o644); err != nil {
			return err
		}
	}
	if err := firstResult("../README.md"); err != nil {
		return err
	}
	if err := goRun(".", "./agreement", "-out", "agreement", "-readme", "../README.md"); err != nil {
		return err
	}
	index, err := notebook.Index(".")
	if err != nil {
		return err
	}
	return os.WriteFile("README.md", index, 0o644)
}

// firstResult renews the part of the README that shows what callsheet prints.
func firstResult(readme string) error {
	sheet, err := exec.Command("go", "run", "./callsheet").Output()
	if err != nil {
		return fmt.Errorf("callsheet: %w", err)
	}
	old, err := os.ReadFile(readme)
	if err != nil {
		return err
	}
	renewed, err := notebook.Between(old, "callsheet", notebook.FirstResult(string(sheet)))
	if err != nil {
		return err
	}
	if err := os.WriteFile(readme, renewed, 0o644); err != nil {
		return err
	}
	return chart("callsheet/day.svg")
}

// chart renews the picture of the day that the README shows.
func chart(file string) error {
	dir, err := os.MkdirTemp("", "sheet-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if err := goRun(".", "./callsheet", "-out", dir); err != nil {
		return err
	}
	data, err := os.ReadFile(filepath.Join(dir, "day.svg"))
	if err != nil {
		return err
	}
	return os.WriteFile(file, data, 0o644)
}

func goRun(folder string, args ...string) error {
	cmd := exec.Command("go", append([]string{"run"}, args...)...)
	cmd.Dir = folder
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("%s: go run %v: %w", folder, args, err)
	}
	return nil
}
