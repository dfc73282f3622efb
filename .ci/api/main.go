// Command api keeps the exported API of the module as text: one file a package,
// one line a symbol, so that a change of it is read in review. Without flags it
// fails when a file and the code disagree, and says which lines; -write renews the
// files; -count counts symbols and lines of code by tree.
//
// It runs from the module's root: go run ./.ci/api.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/scanner"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const folder = ".ci/api"

func main() {
	write := flag.Bool("write", false, "renew the files")
	count := flag.Bool("count", false, "count symbols and lines of code by tree")
	flag.Parse()
	if err := run(*write, *count); err != nil {
		fmt.Fprintln(os.Stderr, "api:", err)
		os.Exit(1)
	}
}

func run(write, count bool) error {
	packages, err := find("rheology", "thermal", "portion")
	if err != nil {
		return err
	}
	packages = append([]string{"."}, packages...)
	if count {
		return report(packages)
	}
	want := map[string]string{}
	for _, p := range packages {
		lines, err := symbols(p)
		if err != nil {
			return err
		}
		if len(lines) > 0 {
			want[name(p)] = strings.Join(lines, "\n") + "\n"
		}
	}
	old, err := filepath.Glob(folder + "/*.txt")
	if err != nil {
		return err
	}
	if write {
		for _, f := range old {
			if err := os.Remove(f); err != nil {
				return err
			}
		}
		for f, text := range want {
			if err := os.WriteFile(f, []byte(text), 0o666); err != nil {
				return err
			}
		}
		return nil
	}
	differ := 0
	for _, f := range old {
		if _, ok := want[f]; !ok {
			want[f] = ""
		}
	}
	for _, f := range slices.Sorted(maps.Keys(want)) {
		have, err := os.ReadFile(f)
		if err != nil && !os.IsNotExist(err) {
			return err
		}
		differ += diff(f, string(have), want[f])
	}
	if differ > 0 {
		return fmt.Errorf("%d lines of the API changed: if that is meant, go run ./.ci/api -write, and let the change be read", differ)
	}
	return nil
}

func diff(f, have, want string) int {
	a, b := strings.Split(have, "\n"), strings.Split(want, "\n")
	n := 0
	for _, l := range a {
		if l != "" && !slices.Contains(b, l) {
			fmt.Printf("%s: gone: %s\n", f, l)
			n++
		}
	}
	for _, l := range b {
		if l != "" && !slices.Contains(a, l) {
			fmt.Printf("%s: new:  %s\n", f, l)
			n++
		}
	}
	return n
}

// name is the file of a package.
func name(p string) string {
	if p == "." {
		p = "honestplate"
	}
	return filepath.Join(folder, strings.ReplaceAll(p, "/", "-")+".txt")
}

// find lists the folders of importable packages below the trees.
func find(trees ...string) ([]string, error) {
	var out []string
	for _, t := range trees {
		err := filepath.WalkDir(t, func(path string, d fs.DirEntry, err error) error {
			if err != nil || !d.IsDir() {
				return err
			}
			if d.Name() == "internal" || d.Name() == "testdata" {
				return fs.SkipDir
			}
			out = append(out, path)
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// files parses the Go files of a folder that are not tests.
func files(dir string) (*token.FileSet, []*ast.File, error) {
	set := token.NewFileSet()
	names, err := filepath.Glob(dir + "/*.go")
	if err != nil {
		return nil, nil, err
	}
	var out []*ast.File
	for _, n := range names {
		if strings.HasSuffix(n, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(set, n, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, nil, err
		}
		out = append(out, f)
	}
	return set, out, nil
}

// symbols lists the exported API of a package, sorted.
func symbols(dir string) ([]string, error) {
	set, parsed, err := files(dir)
	if err != nil {
		return nil, err
	}
	text := func(n any) string {
		var b bytes.Buffer
		if err := printer.Fprint(&b, set, n); err != nil {
			return err.Error()
		}
		return strings.Join(strings.Fields(b.String()), " ")
	}
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for _, f := range parsed {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if !d.Name.IsExported() {
					continue
				}
				signature := strings.TrimPrefix(text(d.Type), "func")
				if d.Recv == nil {
					add("func %s%s", d.Name.Name, signature)
				} else if r := text(d.Recv.List[0].Type); ast.IsExported(strings.TrimPrefix(r, "*")) {
					add("method (%s) %s%s", r, d.Name.Name, signature)
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					switch s := s.(type) {
					case *ast.ValueSpec:
						for _, n := range s.Names {
							if n.IsExported() {
								add("%s %s", d.Tok, n.Name)
							}
						}
					case *ast.TypeSpec:
						if s.Name.IsExported() {
							typeLines(s, text, add)
						}
					}
				}
			}
		}
	}
	slices.Sort(out)
	return out, nil
}

func typeLines(s *ast.TypeSpec, text func(any) string, add func(string, ...any)) {
	switch t := s.Type.(type) {
	case *ast.StructType:
		add("type %s struct", s.Name.Name)
		for _, f := range t.Fields.List {
			for _, n := range f.Names {
				if n.IsExported() {
					add("field %s.%s %s", s.Name.Name, n.Name, text(f.Type))
				}
			}
			if len(f.Names) == 0 {
				add("field %s embeds %s", s.Name.Name, text(f.Type))
			}
		}
	case *ast.InterfaceType:
		add("type %s interface", s.Name.Name)
		for _, f := range t.Methods.List {
			for _, n := range f.Names {
				add("field %s.%s%s", s.Name.Name, n.Name, strings.TrimPrefix(text(f.Type), "func"))
			}
			if len(f.Names) == 0 {
				add("field %s embeds %s", s.Name.Name, text(f.Type))
			}
		}
	default:
		add("type %s %s", s.Name.Name, text(s.Type))
	}
}

// plumbing are the methods that a count of symbols leaves out.
var plumbing = []string{"String", "Error", "Is", "Unwrap", "MarshalJSON", "UnmarshalJSON", "MarshalText", "UnmarshalText"}

// report counts symbols (fields and plumbing left out) and lines of code (blank
// lines, comments and tests left out) of each tree, internal packages included in
// the lines.
func report(packages []string) error {
	symbolsOf, linesOf := map[string]int{}, map[string]int{}
	for _, p := range packages {
		lines, err := symbols(p)
		if err != nil {
			return err
		}
		tree, _, _ := strings.Cut(p, "/")
		for _, l := range lines {
			if kind, rest, _ := strings.Cut(l, " "); kind != "field" {
				if kind == "method" {
					_, rest, _ = strings.Cut(rest, ") ")
					rest, _, _ = strings.Cut(rest, "(")
					if slices.Contains(plumbing, rest) {
						continue
					}
				}
				symbolsOf[tree]++
			}
		}
	}
	for tree := range symbolsOf {
		err := filepath.WalkDir(tree, func(path string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			if tree == "." && d.IsDir() && path != "." {
				return fs.SkipDir
			}
			if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return nil
			}
			n, err := codeLines(path)
			linesOf[tree] += n
			return err
		})
		if err != nil {
			return err
		}
	}
	s, l := 0, 0
	for _, tree := range []string{".", "rheology", "thermal", "portion"} {
		fmt.Printf("%-10s %5d symbols %7d lines of code\n", tree, symbolsOf[tree], linesOf[tree])
		if tree != "." {
			s, l = s+symbolsOf[tree], l+linesOf[tree]
		}
	}
	fmt.Printf("%-10s %5d symbols %7d lines of code\n", "the trees", s, l)
	return nil
}

// codeLines counts the lines of a file on which a token stands.
func codeLines(path string) (int, error) {
	src, err := os.ReadFile(path)
	if err != nil {
		return 0, err
	}
	set := token.NewFileSet()
	file := set.AddFile(path, set.Base(), len(src))
	var sc scanner.Scanner
	sc.Init(file, src, nil, 0)
	seen := map[int]bool{}
	for {
		pos, tok, lit := sc.Scan()
		if tok == token.EOF {
			return len(seen), nil
		}
		if tok == token.SEMICOLON && lit == "\n" {
			continue
		}
		at := set.Position(pos).Line
		for i := range strings.Count(lit, "\n") + 1 {
			seen[at+i] = true
		}
	}
}
