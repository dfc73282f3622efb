package serial

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Complete reports every exported function, and every exported method of an exported
// type, of the package in the working directory that the table has no entry for, and
// every entry that names none. tables are the files that hold the table: a function
// or method that none of them calls, or hands on, is reported too, so that an entry
// cannot stand under a name it does not call.
func (c Calls) Complete(t testing.TB, tables ...string) {
	t.Helper()
	exported, err := exportedCalls(".")
	if err != nil {
		t.Error(err)
		return
	}
	if len(exported) == 0 {
		t.Error("no exported function or method found: run it in the package's folder")
	}
	used, err := usedNames(tables)
	if err != nil {
		t.Error(err)
		return
	}
	entries := map[string]bool{}
	for name := range c {
		entry, _, _ := strings.Cut(name, " ")
		entries[entry] = true
		if !slices.Contains(exported, entry) {
			t.Errorf("%s: the package exports no function or method %s", name, entry)
		}
	}
	for _, name := range exported {
		switch {
		case !entries[name]:
			t.Errorf("%s is in no entry", name)
		case !used[name[strings.LastIndex(name, ".")+1:]]:
			t.Errorf("%s is named and not called", name)
		}
	}
}

// exportedCalls lists what a package outside can call: Func and Type.Method.
func exportedCalls(folder string) ([]string, error) {
	paths, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return nil, err
	}
	var out []string
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		for _, d := range file.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || !fn.Name.IsExported() {
				continue
			}
			if fn.Recv == nil {
				out = append(out, fn.Name.Name)
				continue
			}
			if receiver := typeName(fn.Recv.List[0].Type); ast.IsExported(receiver) {
				out = append(out, receiver+"."+fn.Name.Name)
			}
		}
	}
	slices.Sort(out)
	return out, nil
}

// typeName returns the name of a receiver's type without star and type parameters.
func typeName(e ast.Expr) string {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return x.Name
		case *ast.StarExpr:
			e = x.X
		case *ast.IndexExpr:
			e = x.X
		case *ast.IndexListExpr:
			e = x.X
		default:
			return fmt.Sprintf("%T", e)
		}
	}
}

// usedNames returns the names that the bodies in files call or hand on.
func usedNames(files []string) (map[string]bool, error) {
	used := map[string]bool{}
	for _, path := range files {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.SelectorExpr:
				used[n.Sel.Name] = true
			case *ast.CallExpr:
				if id, ok := n.Fun.(*ast.Ident); ok {
					used[id.Name] = true
				}
			}
			return true
		})
	}
	return used, nil
}
