package examples_test

import (
	"fmt"
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var libraries = []string{"rheology", "thermal", "portion"}

// sources parses the Go files of a library and the packages below it, the tests
// apart; what is internal is nobody's manual.
func sources(t *testing.T, library string) (code, tests []*ast.File, fset *token.FileSet) {
	t.Helper()
	fset = token.NewFileSet()
	err := filepath.WalkDir(filepath.Join("..", library), func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if name := d.Name(); name == "internal" || name == "testdata" {
				return filepath.SkipDir
			}
			return nil
		}
		if filepath.Ext(path) != ".go" {
			return nil
		}
		f, err := parser.ParseFile(fset, path, nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		if strings.HasSuffix(path, "_test.go") {
			tests = append(tests, f)
		} else {
			code = append(code, f)
		}
		return nil
	})
	if err != nil || len(code) == 0 {
		t.Fatalf("no files of %s: %v", library, err)
	}
	return code, tests, fset
}

// Every exported symbol says what it is: types, functions, methods, constants,
// variables and the fields of structs.
func TestEveryExportedSymbolIsDocumented(t *testing.T) {
	for _, pkg := range libraries {
		code, _, fset := sources(t, pkg)
		count := 0
		need := func(name *ast.Ident, docs ...*ast.CommentGroup) {
			if !name.IsExported() {
				return
			}
			count++
			for _, d := range docs {
				if d != nil && strings.TrimSpace(d.Text()) != "" {
					return
				}
			}
			t.Errorf("%s: %s has no doc comment", fset.Position(name.Pos()), name.Name)
		}
		for _, f := range code {
			for _, d := range f.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					if d.Recv == nil || receiverExported(d) {
						need(d.Name, d.Doc)
					}
				case *ast.GenDecl:
					for _, s := range d.Specs {
						switch s := s.(type) {
						case *ast.TypeSpec:
							need(s.Name, s.Doc, d.Doc)
							if st, ok := s.Type.(*ast.StructType); ok && s.Name.IsExported() {
								for i, field := range st.Fields.List {
									for _, name := range field.Names {
										docs := []*ast.CommentGroup{field.Doc, field.Comment}
										// A comment on the line above a run of fields speaks for the run.
										if i > 0 && field.Doc == nil && field.Comment == nil {
											docs = append(docs, runComment(fset, st.Fields.List, i))
										}
										need(name, docs...)
									}
								}
							}
						case *ast.ValueSpec:
							for _, name := range s.Names {
								need(name, s.Doc, s.Comment, d.Doc)
							}
						}
					}
				}
			}
		}
		if count < 40 {
			t.Errorf("%s: only %d exported symbols were looked at", pkg, count)
		}
		t.Logf("%s: %d exported symbols documented", pkg, count)
	}
}

// runComment returns the comment above the first of the fields that stand on
// consecutive lines before field i, if no other comment comes between.
func runComment(fset *token.FileSet, fields []*ast.Field, i int) *ast.CommentGroup {
	for j := i; j > 0; j-- {
		if fset.Position(fields[j].Pos()).Line != fset.Position(fields[j-1].End()).Line+1 {
			return nil
		}
		if fields[j-1].Doc != nil {
			return fields[j-1].Doc
		}
	}
	return nil
}

func receiverExported(d *ast.FuncDecl) bool {
	typ := d.Recv.List[0].Type
	if star, ok := typ.(*ast.StarExpr); ok {
		typ = star.X
	}
	if index, ok := typ.(*ast.IndexExpr); ok {
		typ = index.X
	}
	id, ok := typ.(*ast.Ident)
	return ok && id.IsExported()
}

// Every exported function and every exported type that is not an error is used by
// an Example whose output go test checks.
func TestEveryEntryPointHasAnExample(t *testing.T) {
	for _, pkg := range libraries {
		code, tests, _ := sources(t, pkg)
		shown := map[string]bool{}
		n := 0
		for _, ex := range doc.Examples(tests...) {
			if ex.Output == "" && !ex.EmptyOutput {
				continue
			}
			n++
			ast.Inspect(ex.Code, func(node ast.Node) bool {
				if id, ok := node.(*ast.Ident); ok {
					shown[id.Name] = true
				}
				return true
			})
			// Example_type and ExampleType_Method speak for their names too.
			for part := range strings.SplitSeq(ex.Name, "_") {
				shown[part] = true
			}
		}
		var missing []string
		results := resultTypes(code)
		for _, f := range code {
			for _, d := range f.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					if d.Recv == nil && d.Name.IsExported() && !shown[d.Name.Name] {
						missing = append(missing, "func "+d.Name.Name)
					}
				case *ast.GenDecl:
					for _, s := range d.Specs {
						s, ok := s.(*ast.TypeSpec)
						if !ok || !s.Name.IsExported() || shown[s.Name.Name] || strings.HasSuffix(s.Name.Name, "Error") || results[s.Name.Name] {
							continue
						}
						if _, isStruct := s.Type.(*ast.StructType); isStruct {
							missing = append(missing, "type "+s.Name.Name)
						}
					}
				}
			}
		}
		slices.Sort(missing)
		if len(missing) > 0 {
			t.Errorf("%s: no Example with output shows\n\t%s", pkg, strings.Join(missing, "\n\t"))
		}
		t.Logf("%s: %d Examples with output", pkg, n)
	}
}

// resultTypes are the types that some exported function or method returns, or
// that stand in a field of such a type: a reader meets them, but does not start
// from them.
func resultTypes(files []*ast.File) map[string]bool {
	out := map[string]bool{}
	fields := map[string][]string{}
	named := func(e ast.Expr) string {
		for {
			switch x := e.(type) {
			case *ast.StarExpr:
				e = x.X
			case *ast.ArrayType:
				e = x.Elt
			case *ast.Ident:
				return x.Name
			default:
				return fmt.Sprintf("%T", e)
			}
		}
	}
	for _, f := range files {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && d.Type.Results != nil {
					for _, r := range d.Type.Results.List {
						out[named(r.Type)] = true
					}
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					if ts, ok := s.(*ast.TypeSpec); ok {
						if st, ok := ts.Type.(*ast.StructType); ok {
							for _, field := range st.Fields.List {
								fields[ts.Name.Name] = append(fields[ts.Name.Name], named(field.Type))
							}
						}
					}
				}
			}
		}
	}
	for grown := true; grown; {
		grown = false
		for name := range out {
			for _, inner := range fields[name] {
				if !out[inner] {
					out[inner], grown = true, true
				}
			}
		}
	}
	return out
}
