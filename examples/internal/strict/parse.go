package strict

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// A node is a JSON value with the place where it begins.
type node struct {
	at      int
	kind    jsontext.Kind
	raw     jsontext.Value // of a value that is neither list nor object
	names   []name
	members []*node // of an object, beside names; of a list
}

type name struct {
	text string
	at   int
}

// A syntaxError says where a file stops being JSON.
type syntaxError struct {
	at   int
	text string
}

type reader struct {
	data   []byte
	faults Faults
}

// line is the number of the line on which an offset lies.
func (r *reader) line(at int) int {
	return 1 + bytes.Count(r.data[:min(max(at, 0), len(r.data))], []byte("\n"))
}

// parse reads the whole file as one value. Members of one name are all kept, so that
// the second can be refused by name.
func (r *reader) parse() (*node, *syntaxError) {
	d := jsontext.NewDecoder(bytes.NewReader(r.data), jsontext.AllowDuplicateNames(true))
	root, err := r.value(d)
	if err == nil {
		if _, err = d.ReadToken(); err == io.EOF {
			return root, nil
		} else if err == nil {
			err = errors.New("more than one value")
		}
	}
	at := int(d.InputOffset())
	text := err.Error()
	var syntactic *jsontext.SyntacticError
	if errors.As(err, &syntactic) {
		at, text = int(syntactic.ByteOffset), syntactic.Err.Error()
	}
	if errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) {
		text = "it ends too early"
	}
	return nil, &syntaxError{at, strings.TrimPrefix(text, "jsontext: ")}
}

func (r *reader) value(d *jsontext.Decoder) (*node, error) {
	kind := d.PeekKind()
	if kind != '{' && kind != '[' {
		raw, err := d.ReadValue()
		if err != nil {
			return nil, err
		}
		return &node{at: int(d.InputOffset()) - len(raw), kind: kind, raw: raw.Clone()}, nil
	}
	if _, err := d.ReadToken(); err != nil {
		return nil, err
	}
	n := &node{at: int(d.InputOffset()) - 1, kind: kind}
	for {
		if k := d.PeekKind(); k == '}' || k == ']' {
			_, err := d.ReadToken()
			return n, err
		}
		if kind == '{' {
			token, err := d.ReadToken()
			if err != nil {
				return nil, err
			}
			n.names = append(n.names, name{token.String(), int(d.InputOffset())})
		}
		member, err := r.value(d)
		if err != nil {
			return nil, err
		}
		n.members = append(n.members, member)
	}
}

// find follows a path such as dishes[2].pour.temp_c as far as the file goes.
func (n *node) find(path string) *node {
	for path != "" && n.members != nil {
		var step string
		path = strings.TrimPrefix(path, ".")
		if end := strings.IndexAny(path[min(1, len(path)):], ".["); end >= 0 {
			step, path = path[:end+1], path[end+1:]
		} else {
			step, path = path, ""
		}
		next := n.step(step)
		if next == nil {
			return n
		}
		n = next
	}
	return n
}

func (n *node) step(step string) *node {
	var i int
	if _, err := fmt.Sscanf(step, "[%d]", &i); err == nil {
		if n.kind == '[' && i >= 0 && i < len(n.members) {
			return n.members[i]
		}
		return nil
	}
	for i, name := range n.names {
		if name.text == step {
			return n.members[i]
		}
	}
	return nil
}
