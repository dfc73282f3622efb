// Package notebook makes a chapter's page from its tested Go file.
//
// A chapter is a folder with two Go files. story_test.go tells it: each Example
// function is a step, its doc comment the prose, its body the code, its Output
// comment the result that go test checks. main.go names the chapter and draws its
// figures. The page, README.md, holds the same prose, code and output, so none of
// them can drift from the others; Check fails when the page or a figure is stale.
//
// In the prose, a paragraph "Figure: name" stands where the figure goes.
package notebook

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/doc"
	"go/doc/comment"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// StoryFile is the tested file a page is made from.
const StoryFile = "story_test.go"

// A Chapter is what main.go says of its folder.
type Chapter struct {
	Title   string // the page's heading
	Line    string // one sentence for the index
	Figures []Figure
}

// A Figure is drawn as SVG; the first of a chapter is its thumbnail in the index.
type Figure struct {
	Name    string // file name without .svg
	Caption string // what to see in it, one sentence
	Draw    func() ([]byte, error)
}

// Build makes the chapter's files from the story in dir: README.md and the
// figures, by file name.
func (c Chapter) Build(dir string) (map[string][]byte, error) {
	files := map[string][]byte{}
	for _, f := range c.Figures {
		svg, err := f.Draw()
		if err != nil {
			return nil, fmt.Errorf("figure %s: %w", f.Name, err)
		}
		files[f.Name+".svg"] = svg
	}
	src, err := os.ReadFile(filepath.Join(dir, StoryFile))
	if err != nil {
		return nil, err
	}
	page, err := c.page(src)
	if err != nil {
		return nil, err
	}
	files["README.md"] = page
	return files, nil
}

// page sets the story as Markdown.
func (c Chapter) page(src []byte) ([]byte, error) {
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, StoryFile, src, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	if g := loose(file); g != nil {
		return nil, fmt.Errorf("%v: a paragraph that belongs to no Example and would not be on the page: join it to the one after", fset.Position(g.Pos()))
	}
	examples := doc.Examples(file)
	position := map[string]token.Pos{}
	for _, d := range file.Decls {
		if f, ok := d.(*ast.FuncDecl); ok {
			position[strings.TrimPrefix(f.Name.Name, "Example")] = f.Pos()
		}
	}
	slices.SortFunc(examples, func(a, b *doc.Example) int { return int(position[a.Name] - position[b.Name]) })

	placed := map[string]bool{}
	var b bytes.Buffer
	fmt.Fprintf(&b, "<!-- Made from %s by go generate ./examples; do not edit. -->\n\n# %s\n\n> %s\n", StoryFile, c.Title, c.Line)
	for _, ex := range examples {
		if err := c.prose(&b, ex.Doc, placed); err != nil {
			return nil, err
		}
		if code := body(fset, src, file, ex); code != "" {
			fmt.Fprintf(&b, "\n```go\n%s\n```\n", code)
		}
		if out := strings.TrimRight(ex.Output, "\n"); out != "" {
			fmt.Fprintf(&b, "\nwhich prints\n\n```text\n%s\n```\n", out)
		}
	}
	for _, f := range c.Figures {
		if !placed[f.Name] {
			return nil, fmt.Errorf("figure %s stands nowhere in the prose", f.Name)
		}
	}
	return b.Bytes(), nil
}

// loose returns a comment that stands between declarations and is the doc of none. A story
// begins with an Example, so that the comment before the package is none of it.
func loose(file *ast.File) *ast.CommentGroup {
	for _, g := range file.Comments {
		within := g.Pos() < file.Package
		for _, d := range file.Decls {
			from := d.Pos()
			if f, ok := d.(*ast.FuncDecl); ok && f.Doc != nil {
				from = f.Doc.Pos()
			}
			if v, ok := d.(*ast.GenDecl); ok && v.Doc != nil {
				from = v.Doc.Pos()
			}
			within = within || from <= g.Pos() && g.End() <= d.End()
		}
		if !within {
			return g
		}
	}
	return nil
}

// prose sets a doc comment, with each figure where it is named.
func (c Chapter) prose(b *bytes.Buffer, text string, placed map[string]bool) error {
	var p comment.Parser
	d := p.Parse(text)
	printer := comment.Printer{HeadingLevel: 2, HeadingID: func(*comment.Heading) string { return "" }}
	for _, block := range d.Content {
		if name, ok := figureName(block); ok {
			i := slices.IndexFunc(c.Figures, func(f Figure) bool { return f.Name == name })
			if i < 0 {
				return fmt.Errorf("the prose names a figure %q that the chapter does not draw", name)
			}
			placed[name] = true
			fmt.Fprintf(b, "\n![%s](%s.svg)\n\n*%s*\n", c.Figures[i].Caption, name, c.Figures[i].Caption)
			continue
		}
		b.WriteString("\n")
		b.Write(printer.Markdown(&comment.Doc{Content: []comment.Block{block}, Links: d.Links}))
	}
	return nil
}

func figureName(block comment.Block) (string, bool) {
	p, ok := block.(*comment.Paragraph)
	if !ok || len(p.Text) != 1 {
		return "", false
	}
	plain, ok := p.Text[0].(comment.Plain)
	if !ok {
		return "", false
	}
	return strings.CutPrefix(string(plain), "Figure: ")
}

// body cuts the statements of an example out of the source, without the braces
// and the Output comment, one tab to the left.
func body(fset *token.FileSet, src []byte, file *ast.File, ex *doc.Example) string {
	block, ok := ex.Code.(*ast.BlockStmt)
	if !ok || len(block.List) == 0 {
		return ""
	}
	end := block.Rbrace
	for _, g := range file.Comments {
		if g.Pos() > block.Lbrace && g.End() < block.Rbrace && isOutput(g) {
			end = g.Pos()
		}
	}
	text := string(src[fset.Position(block.Lbrace).Offset+1 : fset.Position(end).Offset])
	lines := strings.Split(strings.Trim(text, "\n\t "), "\n")
	for i, l := range lines {
		lines[i] = strings.TrimPrefix(l, "\t")
	}
	return strings.Join(lines, "\n")
}

func isOutput(g *ast.CommentGroup) bool {
	text := strings.ToLower(g.Text())
	return strings.HasPrefix(text, "output:") || strings.HasPrefix(text, "unordered output:")
}

// Main writes the chapter's page and figures into dir, the chapter's folder.
func (c Chapter) Main(dir string) error {
	files, err := c.Build(dir)
	if err != nil {
		return err
	}
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// Check fails the test if a file of the chapter in the current folder is not what
// Build makes of it today, or if the prose is shorter or longer than a chapter.
func (c Chapter) Check(t *testing.T) {
	t.Helper()
	files, err := c.Build(".")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range files {
		got, err := os.ReadFile(name)
		if err != nil {
			t.Error(err)
		} else if !bytes.Equal(got, want) {
			t.Errorf("%s is stale: run go generate ./examples", name)
		}
	}
	if n := words(files["README.md"]); n < 600 || n > 1500 {
		t.Errorf("the page has %d words, want 600..1500", n)
	}
}

// words counts the words of a page outside its code.
func words(page []byte) int {
	n, inCode := 0, false
	for line := range strings.Lines(string(page)) {
		if strings.HasPrefix(line, "```") {
			inCode = !inCode
		} else if !inCode {
			n += len(strings.Fields(line))
		}
	}
	return n
}
