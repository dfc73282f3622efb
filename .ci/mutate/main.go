// Command mutate changes one constant of a formula at a time and checks that a
// test notices. Its list, constants.txt, holds a line a mutation: the file, the
// text to change (once in the file) and what to change it to, separated by " | ".
// The tree itself is not touched: the changed file is overlaid on the build.
//
// It runs from the module's root, go run ./.ci/mutate, and takes some minutes.
// -match runs only the mutations whose line contains a text; -check runs none and
// says whether the list fits the code.
package main

import (
	"bufio"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

type mutation struct{ file, old, new string }

func main() {
	match := flag.String("match", "", "only mutations whose line contains this")
	check := flag.Bool("check", false, "only check that each text stands once in its file")
	flag.Parse()
	survivors, n, err := run(*match, *check)
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
	if *check {
		fmt.Println("the list fits the code")
		return
	}
	fmt.Printf("%d constants changed, %d noticed by a test\n", n, n-survivors)
	if survivors > 0 {
		os.Exit(1)
	}
}

func run(match string, check bool) (survivors, n int, err error) {
	list, err := read(".ci/mutate/constants.txt")
	if err != nil {
		return 0, 0, err
	}
	// A list that has fallen behind the code is told at once, not after minutes.
	for _, m := range list {
		src, err := os.ReadFile(m.file)
		if err != nil {
			return 0, 0, err
		}
		if k := strings.Count(string(src), m.old); k != 1 {
			return 0, 0, fmt.Errorf("%s, %s: stands %d times in the file, want once", m.file, m.old, k)
		}
	}
	if check {
		return 0, 0, nil
	}
	dir, err := os.MkdirTemp("", "mutate-")
	if err != nil {
		return 0, 0, err
	}
	defer os.RemoveAll(dir)
	for _, m := range list {
		if !strings.Contains(m.file+m.old, match) {
			continue
		}
		n++
		noticed, err := m.noticed(dir)
		word := "noticed "
		switch {
		case err != nil: // told at once, and the others are still tried
			word = "FAILED  "
			survivors++
			fmt.Fprintln(os.Stderr, err)
		case !noticed:
			word = "SURVIVED"
			survivors++
		}
		fmt.Printf("%s  %s: %s -> %s\n", word, m.file, m.old, m.new)
	}
	return survivors, n, nil
}

func read(path string) ([]mutation, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var out []mutation
	sc := bufio.NewScanner(f)
	for sc.Scan() {
		line := strings.TrimSpace(sc.Text())
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, " | ")
		if len(parts) != 3 {
			return nil, fmt.Errorf("%s: want file | old | new: %s", path, line)
		}
		out = append(out, mutation{parts[0], parts[1], parts[2]})
	}
	return out, sc.Err()
}

// noticed runs the tests of the file's package with the constant changed, then those
// of its tree: a law in a folder of its own is tested where it is used. A change that
// does not compile is an error: it would prove nothing.
func (m mutation) noticed(dir string) (bool, error) {
	src, err := os.ReadFile(m.file)
	if err != nil {
		return false, err
	}
	changed := filepath.Join(dir, "changed.go")
	if err := os.WriteFile(changed, []byte(strings.Replace(string(src), m.old, m.new, 1)), 0o600); err != nil {
		return false, err
	}
	original, err := filepath.Abs(m.file)
	if err != nil {
		return false, err
	}
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {original: changed}})
	if err != nil {
		return false, err
	}
	path := filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(path, overlay, 0o600); err != nil {
		return false, err
	}
	pkg := "./" + filepath.ToSlash(filepath.Dir(m.file))
	if out, err := exec.Command("go", "build", "-overlay", path, pkg).CombinedOutput(); err != nil {
		return false, fmt.Errorf("does not compile: %s", out)
	}
	// The published values come first: they are quick and catch most.
	tree, _, inTree := strings.Cut(filepath.ToSlash(m.file), "/")
	runs := [][]string{{"-run", "TestPublished", pkg}, {"-failfast", pkg}, {"-failfast", "./" + tree + "/..."}}
	if !inTree {
		// The vocabulary is tested beside the notebook.
		runs = [][]string{{"-failfast", "./examples/vocabulary"}}
	}
	for _, args := range runs {
		cmd := exec.Command("go", append([]string{"test", "-vet=off", "-overlay", path}, args...)...)
		if err := cmd.Run(); err != nil {
			return true, nil
		}
	}
	return false, nil
}
