package examples_test

import (
	"go/ast"
	"go/doc"
	"go/doc/comment"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

const module = "example.org/honestplate"

// A manual is what go doc knows of a package.
type manual struct {
	parse    *comment.Parser
	comments []*ast.CommentGroup
	symbols  map[string]bool // Name and Type.Name, fields too
}

// manuals reads every package of the module, by its path below the root.
func manuals(t *testing.T, fset *token.FileSet) map[string]*manual {
	t.Helper()
	files := map[string][]*ast.File{}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && path != ".." {
			return filepath.SkipDir // .ci's programs have no manual
		}
		if filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(fset, path, nil, parser.ParseComments)
		folder := strings.TrimPrefix(filepath.ToSlash(filepath.Dir(path)), "..")
		files[folder] = append(files[folder], f)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*manual{}
	for folder, list := range files {
		m := &manual{symbols: map[string]bool{}}
		for _, f := range list {
			m.comments = append(m.comments, f.Comments...)
			m.add(f)
		}
		p, err := doc.NewFromFiles(fset, list, module+folder, doc.PreserveAST)
		if err != nil {
			t.Fatal(folder, err)
		}
		m.parse = p.Parser()
		m.parse.LookupSym = func(recv, name string) bool {
			return m.symbols[strings.TrimPrefix(recv+"."+name, ".")]
		}
		out[folder] = m
	}
	return out
}

// add notes what a file declares.
func (m *manual) add(f *ast.File) {
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			name := d.Name.Name
			if d.Recv != nil {
				name = receiver(d.Recv.List[0].Type) + "." + name
			}
			m.symbols[name] = true
		case *ast.GenDecl:
			for _, s := range d.Specs {
				switch s := s.(type) {
				case *ast.ValueSpec:
					for _, n := range s.Names {
						m.symbols[n.Name] = true
					}
				case *ast.TypeSpec:
					m.symbols[s.Name.Name] = true
					ast.Inspect(s.Type, func(n ast.Node) bool {
						if field, ok := n.(*ast.Field); ok {
							for _, n := range field.Names {
								m.symbols[s.Name.Name+"."+n.Name] = true
							}
						}
						return true
					})
				}
			}
		}
	}
}

func receiver(e ast.Expr) string {
	switch x := e.(type) {
	case *ast.StarExpr:
		return receiver(x.X)
	case *ast.IndexExpr:
		return receiver(x.X)
	case *ast.IndexListExpr:
		return receiver(x.X)
	case *ast.Ident:
		return x.Name
	}
	return ""
}

// link is what stands in brackets as a link does, and was left as text.
var link = regexp.MustCompile(`(?:^|[^\w\]])\[(\*?(?:\w+\.)?[A-Z]\w*(?:\.[A-Z]\w*)?)\](?:$|[^\w(\[:])`)

// Every [Link] of a doc comment leads to something: go doc, which resolves them by the
// package's own names and imports, leaves none as text, and what is named of another
// package of the module is there.
func TestDocLinksResolve(t *testing.T) {
	fset := token.NewFileSet()
	all := manuals(t, fset)
	links := 0
	for _, folder := range slices.Sorted(maps.Keys(all)) {
		m := all[folder]
		for _, group := range m.comments {
			at := fset.Position(group.Pos())
			visit(m.parse.Parse(group.Text()).Content, func(text comment.Text) {
				switch text := text.(type) {
				case comment.Plain:
					for _, found := range link.FindAllStringSubmatch(string(text), -1) {
						t.Errorf("%s: [%s] leads nowhere", at, found[1])
					}
				case *comment.DocLink:
					links++
					there, ours := strings.CutPrefix(text.ImportPath, module)
					other := all[there]
					name := strings.TrimPrefix(text.Recv+"."+text.Name, ".")
					if ours && (other == nil || name != "" && !other.symbols[name]) {
						t.Errorf("%s: %s has no %s", at, text.ImportPath, name)
					}
				}
			})
		}
	}
	if links < 200 {
		t.Errorf("only %d links were looked at", links)
	}
	t.Logf("%d links", links)
}

// visit calls f for every piece of text that is not code.
func visit(blocks []comment.Block, f func(comment.Text)) {
	var texts func([]comment.Text)
	texts = func(list []comment.Text) {
		for _, x := range list {
			f(x)
			if l, ok := x.(*comment.Link); ok {
				texts(l.Text)
			}
		}
	}
	for _, b := range blocks {
		switch b := b.(type) {
		case *comment.Paragraph:
			texts(b.Text)
		case *comment.Heading:
			texts(b.Text)
		case *comment.List:
			for _, item := range b.Items {
				visit(item.Content, f)
			}
		}
	}
}
