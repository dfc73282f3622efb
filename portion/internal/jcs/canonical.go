package jcs

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/honestplate"
)

// mostDepth bounds how deep lists and objects may lie in each other: a record has six.
const mostDepth = 100

// Canonical returns the canonical bytes of one JSON value. What cannot be read is a
// *honestplate.InputError that says where.
func Canonical(data []byte) ([]byte, error) {
	p := parser{data: data}
	if !utf8.Valid(data) {
		return nil, p.wrong("bytes that are no UTF-8", "valid UTF-8")
	}
	out, err := p.value(make([]byte, 0, len(data)), 0)
	if err != nil {
		return nil, err
	}
	if p.space(); p.at < len(p.data) {
		return nil, p.wrong("more text", "nothing after the value")
	}
	return out, nil
}

type parser struct {
	data []byte
	at   int
}

func (p *parser) wrong(got, want string) error {
	return &honestplate.InputError{Field: fmt.Sprintf("file, byte %d", p.at+1), Got: got, Want: want}
}

// unexpected says what stands where something else is wanted.
func (p *parser) unexpected(want string) error {
	if p.at >= len(p.data) {
		return p.wrong(io.ErrUnexpectedEOF.Error(), want)
	}
	r, _ := utf8.DecodeRune(p.data[p.at:])
	return p.wrong(fmt.Sprintf("%q", r), want)
}

func (p *parser) space() {
	for p.at < len(p.data) && strings.IndexByte(" \t\r\n", p.data[p.at]) >= 0 {
		p.at++
	}
}

// take consumes the byte c if it comes next.
func (p *parser) take(c byte) bool {
	if p.at < len(p.data) && p.data[p.at] == c {
		p.at++
		return true
	}
	return false
}

// value reads one value and appends its canonical form.
func (p *parser) value(out []byte, depth int) ([]byte, error) {
	if depth > mostDepth {
		return nil, p.wrong("one more list or object inside the others", fmt.Sprintf("at most %d", mostDepth))
	}
	p.space()
	switch {
	case p.take('{'):
		return p.object(out, depth)
	case p.take('['):
		return p.list(out, depth)
	case p.take('"'):
		s, err := p.text()
		return appendText(out, s), err
	}
	for _, word := range []string{"true", "false", "null"} {
		if strings.HasPrefix(string(p.data[p.at:min(p.at+5, len(p.data))]), word) {
			p.at += len(word)
			return append(out, word...), nil
		}
	}
	return p.number(out)
}

func (p *parser) list(out []byte, depth int) ([]byte, error) {
	out = append(out, '[')
	if p.space(); p.take(']') {
		return append(out, ']'), nil
	}
	for {
		var err error
		if out, err = p.value(out, depth+1); err != nil {
			return nil, err
		}
		switch p.space(); {
		case p.take(','):
			out = append(out, ',')
		case p.take(']'):
			return append(out, ']'), nil
		default:
			return nil, p.unexpected("a comma or the end of the list")
		}
	}
}

// A member is a name with its value in canonical form.
type member struct {
	name  string
	value []byte
}

func (p *parser) object(out []byte, depth int) ([]byte, error) {
	var members []member
	if p.space(); !p.take('}') {
		for more := true; more; {
			m, err := p.member(depth)
			if err != nil {
				return nil, err
			}
			members = append(members, m)
			switch p.space(); {
			case p.take(','):
			case p.take('}'):
				more = false
			default:
				return nil, p.unexpected("a comma or the end of the object")
			}
		}
	}
	slices.SortFunc(members, func(a, b member) int { return byUTF16(a.name, b.name) })
	out = append(out, '{')
	for i, m := range members {
		if i > 0 {
			if members[i-1].name == m.name {
				return nil, p.wrong(fmt.Sprintf("an object with the name %q twice", m.name), "every name once")
			}
			out = append(out, ',')
		}
		out = append(appendText(out, m.name), ':')
		out = append(out, m.value...)
	}
	return append(out, '}'), nil
}

func (p *parser) member(depth int) (m member, err error) {
	if p.space(); !p.take('"') {
		return m, p.unexpected("a name in quotes")
	}
	if m.name, err = p.text(); err != nil {
		return m, err
	}
	if p.space(); !p.take(':') {
		return m, p.unexpected("a colon after the name")
	}
	m.value, err = p.value(nil, depth+1)
	return m, err
}
