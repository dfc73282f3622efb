package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strconv"
	"strings"
	"unicode"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// maxBriefBytes bounds a brief: a shooting day fits in a few kilobytes, and what
// is larger is not a brief.
const maxBriefBytes = 1 << 20

// A FieldError names the field of the brief that is wrong and what is wanted.
type FieldError struct {
	Field string // path, such as dishes[2].scoop.diameter_mm
	Err   error
}

func (e *FieldError) Error() string { return e.Field + ": " + e.Err.Error() }

func (e *FieldError) Unwrap() error { return e.Err }

func fieldErrorf(field, format string, args ...any) error {
	return &FieldError{field, fmt.Errorf(format, args...)}
}

// decode reads one JSON value into v, which points to a struct. An unknown field,
// one given twice, one of the wrong type, a required one that is missing and a
// number outside the limits of its field are each refused by name.
//
// A field is required unless its json tag says omitzero. Every number carries its
// limits in a tag: range:"low,high".
func decode(r io.Reader, v any) error {
	raw, err := io.ReadAll(io.LimitReader(r, maxBriefBytes+1))
	if err != nil {
		return err
	}
	if len(raw) > maxBriefBytes {
		return fmt.Errorf("the brief is longer than %d bytes", maxBriefBytes)
	}
	raw = bytes.TrimPrefix(raw, []byte("\uFEFF")) // some editors begin UTF-8 with it
	if err := json.Unmarshal(raw, v, json.RejectUnknownMembers(true)); err != nil {
		return inWords(err)
	}
	var given any
	if err := json.Unmarshal(raw, &given); err != nil {
		return inWords(err)
	}
	return complete("", reflect.ValueOf(v).Elem(), given)
}

// inWords turns a decoder's error into one that names the field in the brief's
// own terms.
func inWords(err error) error {
	var semantic *json.SemanticError
	if errors.As(err, &semantic) {
		field := fieldPath(semantic.JSONPointer)
		switch {
		case errors.Is(err, json.ErrUnknownName):
			return fieldErrorf(field, "unknown field")
		case errors.Is(err, strconv.ErrRange):
			return fieldErrorf(field, "the number is too large")
		case field == "" && semantic.GoType != nil:
			return fmt.Errorf("the brief is %s, want an object: a { and its fields", jsonInWords(semantic.JSONKind))
		case semantic.GoType != nil:
			return fieldErrorf(field, "is %s, want %s", jsonInWords(semantic.JSONKind), kindInWords(semantic.GoType))
		}
		return &FieldError{field, err}
	}
	var syntactic *jsontext.SyntacticError
	if errors.As(err, &syntactic) {
		if errors.Is(err, jsontext.ErrDuplicateName) {
			return fieldErrorf(fieldPath(syntactic.JSONPointer), "given twice")
		}
		return fmt.Errorf("the brief is not JSON at byte %d: %w", syntactic.ByteOffset, syntactic.Err)
	}
	return fmt.Errorf("the brief is not JSON: %w", err)
}

func jsonInWords(k jsontext.Kind) string {
	switch k {
	case '{':
		return "an object"
	case '[':
		return "a list"
	case '"':
		return "a text"
	case '0':
		return "a number"
	case 't', 'f':
		return "true or false"
	default:
		return "null"
	}
}

func kindInWords(t reflect.Type) string {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch t.Kind() {
	case reflect.Float64:
		return "a number"
	case reflect.Int:
		return "a whole number"
	case reflect.Bool:
		return "true or false"
	case reflect.String:
		return "a text"
	case reflect.Slice:
		return "a list"
	default:
		return "an object"
	}
}

// fieldPath writes a JSON pointer the way a brief's author reads it. A name that no
// field could have is quoted and cut: it may hold anything, at any length.
func fieldPath(p jsontext.Pointer) string {
	path := ""
	for token := range p.Tokens() {
		if _, err := strconv.Atoi(token); err == nil {
			path += "[" + token + "]"
		} else {
			path = join(path, plainName(token))
		}
	}
	return path
}

func plainName(name string) string {
	const most = 40
	odd := func(r rune) bool {
		return r != '_' && (r > unicode.MaxASCII || !unicode.IsLetter(r) && !unicode.IsDigit(r))
	}
	if name != "" && len(name) <= most && !strings.ContainsFunc(name, odd) {
		return name
	}
	if runes := []rune(name); len(runes) > most {
		name = string(runes[:most]) + "..."
	}
	return strconv.QuoteToASCII(name)
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// complete checks presence and limits of v, given as the plain JSON value.
func complete(path string, v reflect.Value, given any) error {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return nil
		}
		return complete(path, v.Elem(), given)
	case reflect.Slice:
		items, _ := given.([]any)
		for i := range v.Len() {
			if items[i] == nil {
				return fieldErrorf(fmt.Sprintf("%s[%d]", path, i), "missing")
			}
			if err := complete(fmt.Sprintf("%s[%d]", path, i), v.Index(i), items[i]); err != nil {
				return err
			}
		}
		return nil
	case reflect.Struct:
	default:
		return nil
	}
	fields, _ := given.(map[string]any)
	for i := range v.NumField() {
		sf := v.Type().Field(i)
		name, options, _ := strings.Cut(sf.Tag.Get("json"), ",")
		field := join(path, name)
		value, present := fields[name]
		if value == nil {
			if !strings.Contains(options, "omitzero") {
				return fieldErrorf(field, "missing")
			}
			if present {
				return fieldErrorf(field, "is null: leave it out instead")
			}
			continue
		}
		if err := inLimits(field, sf, v.Field(i)); err != nil {
			return err
		}
		if err := complete(field, v.Field(i), value); err != nil {
			return err
		}
	}
	return nil
}

// inLimits checks a number against its range tag, a text and a list for being
// empty or long.
func inLimits(field string, sf reflect.StructField, v reflect.Value) error {
	var x float64
	switch v.Kind() {
	case reflect.Float64:
		x = v.Float()
	case reflect.Int:
		x = float64(v.Int())
	case reflect.String:
		if n := len(v.String()); n == 0 || n > 500 {
			return fieldErrorf(field, "has %d bytes, want 1..500", n)
		}
		if i := strings.IndexFunc(v.String(), unprintable); i >= 0 {
			return fieldErrorf(field, "has a control character at byte %d", i)
		}
		return nil
	case reflect.Slice:
		if n := v.Len(); n == 0 || n > 200 {
			return fieldErrorf(field, "has %d entries, want 1..200", n)
		}
		return nil
	default:
		return nil
	}
	low, high := limits(sf)
	if x < low || x > high {
		return fieldErrorf(field, "is %g, outside %g..%g", x, low, high)
	}
	return nil
}

// unprintable says of a character that it steers a terminal or turns the text around
// it, or that no XML may hold it.
func unprintable(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control) || r == 0xFFFE || r == 0xFFFF
}

// limits reads a range tag; a number without one is an error of the program,
// which a test catches.
func limits(sf reflect.StructField) (low, high float64) {
	l, h, ok := strings.Cut(sf.Tag.Get("range"), ",")
	low, err1 := strconv.ParseFloat(l, 64)
	high, err2 := strconv.ParseFloat(h, 64)
	if !ok || err1 != nil || err2 != nil {
		panic("callsheet: field " + sf.Name + " has no range tag")
	}
	return low, high
}
