package jcs

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"example.org/honestplate"
)

// mostDepth bounds how deep lists and objects may lie in each other: a record has six.
const mostDepth = 100

// Canonical returns the canonical bytes of one JSON value. What cannot be read is a
// *honestplate.InputError that says where.
func Canonical(data []byte) ([]byte, error) {
	if !utf8.Valid(data) {
		return nil, wrong(0, "bytes that are no UTF-8", "valid UTF-8")
	}
	var whole json.RawMessage
	syntax := json.NewDecoder(bytes.NewReader(data))
	if err := syntax.Decode(&whole); err != nil {
		at := int64(len(data))
		if s, ok := errors.AsType[*json.SyntaxError](err); ok {
			at = s.Offset - 1
		}
		return nil, wrong(at, err.Error(), "one value in JSON")
	}
	at := syntax.InputOffset()
	if len(bytes.Trim(data[at:], " \t\r\n")) > 0 {
		return nil, wrong(at, "more text", "nothing after the value")
	}
	for _, m := range escapes.FindAllSubmatchIndex(data, -1) {
		if m[2] >= 0 {
			return nil, wrong(int64(m[0]), "half a surrogate pair", "both halves, high before low")
		}
	}
	r := reader{json.NewDecoder(bytes.NewReader(data))}
	r.UseNumber()
	return r.value(make([]byte, 0, len(data)), 0)
}

// escapes finds what follows a backslash: two surrogates that make one character, a
// surrogate alone (the submatch), or something else.
var escapes = regexp.MustCompile(`\\(?:u[dD][89abAB]..\\u[dD][c-fC-F]|(u[dD][89a-fA-F])|.)`)

func wrong(at int64, got, want string) error {
	return &honestplate.InputError{Field: fmt.Sprintf("file, byte %d", at+1), Got: got, Want: want}
}

// A reader reads the tokens of what is known to be JSON.
type reader struct{ *json.Decoder }

// value reads one value and appends its canonical form.
func (r reader) value(out []byte, depth int) ([]byte, error) {
	token, err := r.Token()
	switch v := token.(type) {
	case json.Delim:
		if depth >= mostDepth {
			return nil, wrong(r.InputOffset()-1, "one more list or object inside the others", fmt.Sprintf("at most %d", mostDepth))
		}
		if v == '{' {
			return r.object(out, depth+1)
		}
		return r.list(out, depth+1)
	case string:
		return appendText(out, v), nil
	case json.Number:
		f, err := v.Float64()
		if err != nil {
			return nil, wrong(r.InputOffset()-int64(len(v)), fmt.Sprintf("the number %.40s", v), "one that a binary64 holds")
		}
		return AppendNumber(out, f), nil
	case bool:
		return strconv.AppendBool(out, v), nil
	}
	return append(out, "null"...), err
}

func (r reader) list(out []byte, depth int) ([]byte, error) {
	out = append(out, '[')
	for i := 0; r.More(); i++ {
		if i > 0 {
			out = append(out, ',')
		}
		var err error
		if out, err = r.value(out, depth); err != nil {
			return nil, err
		}
	}
	_, err := r.Token() // the end of the list
	return append(out, ']'), err
}

// A member is a name with its value in canonical form.
type member struct {
	name  string
	value []byte
}

func (r reader) object(out []byte, depth int) ([]byte, error) {
	var members []member
	for r.More() {
		name, err := r.Token()
		if err != nil {
			return nil, err
		}
		value, err := r.value(nil, depth)
		if err != nil {
			return nil, err
		}
		members = append(members, member{name.(string), value})
	}
	if _, err := r.Token(); err != nil { // the end of the object
		return nil, err
	}
	// Names are ordered by their UTF-16 code units (RFC 8785, 3.2.3), in which a
	// character beyond U+FFFF comes before U+E000: not the order of UTF-8 bytes.
	slices.SortFunc(members, func(a, b member) int {
		return slices.Compare(utf16.Encode([]rune(a.name)), utf16.Encode([]rune(b.name)))
	})
	out = append(out, '{')
	for i, m := range members {
		if i > 0 {
			if members[i-1].name == m.name {
				return nil, wrong(r.InputOffset()-1, fmt.Sprintf("an object with the name %q twice", m.name), "every name once")
			}
			out = append(out, ',')
		}
		out = append(appendText(out, m.name), ':')
		out = append(out, m.value...)
	}
	return append(out, '}'), nil
}

// AppendNumber appends a finite number as ECMAScript writes it: the fewest digits that
// read back as the same binary64, plain from 1e-6 to below 1e21, with an exponent
// outside, and 0 for minus zero (RFC 8785, 3.2.2.3). encoding/json writes so too, but
// for minus zero.
func AppendNumber(out []byte, v float64) []byte {
	text, _ := json.Marshal(v + 0) // fails for what is no number alone; -0 + 0 is 0
	return append(out, text...)
}

// appendText appends a string in quotes: escaped are only the quote, the backslash
// and what lies below U+0020 (RFC 8785, 3.2.2.2).
func appendText(out []byte, s string) []byte {
	return append(append(append(out, '"'), toEscape.Replace(s)...), '"')
}

var toEscape = func() *strings.Replacer {
	pairs := []string{`"`, `\"`, `\`, `\\`, "\b", `\b`, "\t", `\t`, "\n", `\n`, "\f", `\f`, "\r", `\r`}
	for c := range rune(0x20) { // the first of a pair given twice holds
		pairs = append(pairs, string(c), fmt.Sprintf(`\u%04x`, c))
	}
	return strings.NewReplacer(pairs...)
}()
