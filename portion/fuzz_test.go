package portion_test

import (
	"go/ast"
	"slices"
	"strings"
	"testing"
)

// Every exported function and method is called, by its name, from the body of a fuzz
// target or from a test helper that one calls.
func TestEveryExportedCallIsFuzzed(t *testing.T) {
	calls := map[string][]string{} // by function of the tests: the names it calls
	var reached []string
	files := slices.Concat(parsed(t, ".", true), parsed(t, "apportion", true), parsed(t, "plate", true), parsed(t, "record", true))
	for _, f := range files {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			if strings.HasPrefix(fn.Name.Name, "Fuzz") {
				reached = append(reached, fn.Name.Name)
			}
			ast.Inspect(fn, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.SelectorExpr: // a method called, or passed on to be called
					calls[fn.Name.Name] = append(calls[fn.Name.Name], n.Sel.Name)
				case *ast.CallExpr:
					if id, ok := n.Fun.(*ast.Ident); ok {
						calls[fn.Name.Name] = append(calls[fn.Name.Name], id.Name)
					}
				}
				return true
			})
		}
	}
	fuzzed := map[string]bool{}
	for len(reached) > 0 {
		name := reached[len(reached)-1]
		reached = reached[:len(reached)-1]
		if !fuzzed[name] {
			fuzzed[name] = true
			reached = append(reached, calls[name]...)
		}
	}
	for _, name := range exportedCalls(t) {
		if strings.HasSuffix(name, "Text") || strings.HasSuffix(name, ".Error") || strings.HasSuffix(name, ".Unwrap") {
			continue // words and texts: TestTheWireLosesNothing, FuzzErrorsStayOnOneLine
		}
		if !fuzzed[name[strings.LastIndex(name, ".")+1:]] {
			t.Errorf("no fuzz target calls %s", name)
		}
	}
}
