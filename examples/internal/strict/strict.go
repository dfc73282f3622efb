// Package strict reads a JSON file that a person wrote, and says everything that is
// wrong with it at once, by line and field.
//
// A type says in tags what it takes:
//
//   - json:"name" names a field; it is required unless the tag says omitzero.
//   - range:"low,high" limits a number, or the length of a list.
//   - words:"one,two" lists what a string may be.
//   - doc:"..." says what the field means, for [Schema].
//
// A type that reads itself (encoding.TextUnmarshaler, json.Unmarshaler) does so.
package strict

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.org/honestplate"
)

// MostBytes is the longest file that is read.
const MostBytes = 1 << 20

// mostFaults is how many faults are listed; the rest is counted.
const mostFaults = 50

// A Fault is one thing wrong with a file.
type Fault struct {
	Line int   // counted from 1
	Err  error // of the root's vocabulary, its Field the path in the file
}

// Error gives the line and the error.
func (f Fault) Error() string {
	return fmt.Sprintf("line %d: %s", f.Line, strings.TrimPrefix(f.Err.Error(), "honestplate: "))
}

// Unwrap returns the error without the line.
func (f Fault) Unwrap() error { return f.Err }

// Faults are all that is wrong with a file, in the order of its lines.
type Faults []Fault

// Error gives one fault a line, the first fifty of them.
func (f Faults) Error() string {
	var b strings.Builder
	for i, fault := range f {
		if i == mostFaults {
			fmt.Fprintf(&b, "\nand %d more", len(f)-i)
			break
		}
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(fault.Error())
	}
	return b.String()
}

// Unwrap returns the faults one by one.
func (f Faults) Unwrap() []error {
	out := make([]error, len(f))
	for i, fault := range f {
		out[i] = fault
	}
	return out
}

// Read reads data into the struct that into points to. The error is Faults. A byte
// order mark is passed over, and lines may end as Windows ends them. Where the file
// is not JSON only that fault is told.
func Read(data []byte, into any) error {
	r := &reader{data: data}
	if err := encoding(data); err != nil {
		return Faults{{1, err}}
	}
	r.data = bytes.TrimPrefix(data, []byte("\ufeff"))
	root, err := r.parse()
	if err != nil {
		return Faults{{r.line(err.at), &honestplate.InputError{Field: "file", Got: "not JSON here: " + err.text, Want: "JSON: look for a comma, a quote or a bracket here or on the line before"}}}
	}
	r.bind("", root, reflect.ValueOf(into).Elem(), limits{})
	if len(r.faults) == 0 {
		return nil
	}
	slices.SortStableFunc(r.faults, func(a, b Fault) int { return a.Line - b.Line })
	return r.faults
}

// encoding refuses what is no UTF-8 text of a sensible length, with a sentence.
func encoding(data []byte) error {
	wrong := func(got, want string) error {
		return &honestplate.InputError{Field: "file", Got: got, Want: want}
	}
	switch {
	case len(data) > MostBytes:
		return wrong("too long", fmt.Sprintf("at most %d bytes", MostBytes))
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}), bytes.HasPrefix(data, []byte{0xfe, 0xff}),
		len(data) > 1 && (data[0] == 0 || data[1] == 0):
		return wrong("UTF-16", "UTF-8: save it again with that encoding")
	case len(bytes.TrimSpace(data)) == 0:
		return wrong("empty", "a JSON object")
	}
	return nil
}

// In puts the faults of a value that lies at a place of a file, found after reading,
// into the form of [Faults]: the line is that of the longest part of the error's field
// that the file has.
func In(data []byte, errs ...error) error {
	r := &reader{data: bytes.TrimPrefix(data, []byte("\ufeff"))}
	root, bad := r.parse()
	var out Faults
	for _, err := range errs {
		if err == nil {
			continue
		}
		line := 1
		if bad == nil {
			line = r.line(root.find(field(err)).at)
		}
		out = append(out, Fault{line, err})
	}
	if len(out) == 0 {
		return nil
	}
	slices.SortStableFunc(out, func(a, b Fault) int { return a.Line - b.Line })
	return out
}

// field is the field that an error of the root's vocabulary names.
func field(err error) string {
	var input *honestplate.InputError
	var outside *honestplate.RangeError
	var refused *honestplate.RefusedError
	switch {
	case errors.As(err, &input):
		return input.Field
	case errors.As(err, &outside):
		return outside.Field
	case errors.As(err, &refused):
		return refused.Field
	}
	return ""
}
