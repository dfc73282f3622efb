package portion

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/honestplate"
)

// maxRecordBytes bounds what a reader takes in.
const maxRecordBytes = 4 << 20

// plainRecord is a Record without its methods, with the schema's name.
type plainRecord struct {
	Schema string `json:"schema"`
	bareRecord
}

type bareRecord Record

// MarshalJSON returns the record in the form that RecordSchema describes, or the
// error of Validate.
func (r Record) MarshalJSON() ([]byte, error) {
	if err := r.Validate(); err != nil {
		return nil, err
	}
	return json.Marshal(plainRecord{RecordSchema, bareRecord(r)})
}

// UnmarshalJSON reads the form that RecordSchema describes, as strictly as
// ReadRecord.
func (r *Record) UnmarshalJSON(data []byte) error {
	got, err := parseRecord(data)
	if err == nil {
		*r = got
	}
	return err
}

// Write writes the record as indented JSON with a final newline. It fails with the
// error of Validate or that of the writer.
func (r Record) Write(w io.Writer) error {
	data, err := r.MarshalJSON()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, data, "", "  "); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err = b.WriteTo(w)
	return err
}

// ReadRecord reads one record, strictly: the schema must be RecordSchema, unknown,
// repeated or differently spelt fields are refused, as are text after the record,
// invalid UTF-8, more than 4 MiB, and whatever Validate refuses. What it returns
// Write writes back with nothing lost. Errors are a
// [honestplate.InputError] whose Field is the path in the file, those of
// [Record.Validate], or the reader's own.
func ReadRecord(from io.Reader) (Record, error) {
	if from == nil {
		return Record{}, wire("", "nil", "a reader")
	}
	data, err := io.ReadAll(io.LimitReader(from, maxRecordBytes+1))
	if err != nil {
		return Record{}, err
	}
	return parseRecord(data)
}

func parseRecord(data []byte) (Record, error) {
	if len(data) > maxRecordBytes {
		return Record{}, wire("", "larger", fmt.Sprintf("at most %d bytes", maxRecordBytes))
	}
	if !utf8.Valid(data) {
		return Record{}, wire("", "in another encoding", "valid UTF-8")
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	if err := exactFields(dec, reflect.TypeFor[plainRecord](), ""); err != nil {
		return Record{}, err
	}
	if _, err := dec.Token(); err != io.EOF {
		return Record{}, wire("", "followed by more", "one record and nothing after it")
	}
	var p plainRecord
	if err := json.Unmarshal(data, &p); err != nil {
		return Record{}, jsonError(err)
	}
	if p.Schema != RecordSchema {
		return Record{}, wire("schema", strconv.Quote(p.Schema), strconv.Quote(RecordSchema))
	}
	r := Record(p.bareRecord)
	if err := r.Validate(); err != nil {
		return Record{}, err
	}
	return r, nil
}

// exactFields walks one JSON value beside the type it will be read into and refuses
// any field that the type does not have under exactly that name, any that comes
// twice, null, which would pass for absent, and values of another kind. No deeper
// nesting than the type's is followed.
func exactFields(dec *json.Decoder, t reflect.Type, at string) error {
	token, err := dec.Token()
	if err != nil {
		return jsonError(err)
	}
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch token {
	case nil:
		return wire(at, "null", "a value or no field at all")
	case json.Delim('['):
		if t.Kind() != reflect.Slice {
			return wire(at, "a list", "no list here")
		}
		for k := 0; dec.More(); k++ {
			if err := exactFields(dec, t.Elem(), fmt.Sprintf("%s[%d]", at, k)); err != nil {
				return err
			}
		}
	case json.Delim('{'):
		if t.Kind() != reflect.Struct {
			return wire(at, "an object", "no object here")
		}
		if err := exactObject(dec, t, at); err != nil {
			return err
		}
	default:
		if want := scalar(token, t); want != "" {
			return wire(at, fmt.Sprint(token), want)
		}
		return nil
	}
	if _, err := dec.Token(); err != nil { // the closing bracket
		return jsonError(err)
	}
	return nil
}

// exactObject is exactFields for the members of an object.
func exactObject(dec *json.Decoder, t reflect.Type, at string) error {
	fields, seen := fieldsOf(t), map[string]bool{}
	for dec.More() {
		key, err := dec.Token()
		if err != nil {
			return jsonError(err)
		}
		k := key.(string) // the decoder returns nothing else here
		where := strings.TrimPrefix(at+"."+k, ".")
		ft, ok := fields[k]
		switch {
		case !ok:
			return wire(where, "unknown", "a field that the schema has")
		case seen[k]:
			return wire(where, "there twice", "the field once")
		}
		seen[k] = true
		if err := exactFields(dec, ft, where); err != nil {
			return err
		}
	}
	return nil
}

// scalar returns what the type wants instead of the token, or nothing.
func scalar(token json.Token, t reflect.Type) string {
	ok, want := false, ""
	switch t.Kind() {
	case reflect.String:
		_, ok = token.(string)
		want = "text"
	case reflect.Bool:
		_, ok = token.(bool)
		want = "true or false"
	case reflect.Float64, reflect.Int:
		n, number := token.(json.Number)
		_, err := strconv.ParseFloat(n.String(), 64)
		want = "a number of ordinary size"
		if t.Kind() == reflect.Int {
			_, err = strconv.Atoi(n.String())
			want = "a whole number"
		}
		ok = number && err == nil
	case reflect.Slice:
		want = "a list"
	default:
		want = "an object"
	}
	if ok {
		return ""
	}
	return want
}

// wire says what is wanted at a place in the file.
func wire(at, got, want string) error {
	return &honestplate.InputError{Field: cmp.Or(at, "file"), Got: got, Want: want}
}

// fieldsOf returns the types of a struct's fields by their JSON names.
func fieldsOf(t reflect.Type) map[string]reflect.Type {
	out := make(map[string]reflect.Type)
	for k := range t.NumField() {
		f := t.Field(k)
		if f.Anonymous {
			for n, ft := range fieldsOf(f.Type) {
				out[n] = ft
			}
			continue
		}
		tag, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		out[tag] = f.Type
	}
	return out
}

// jsonError turns the decoder's errors into the record's.
func jsonError(err error) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return wire("", "cut short", "one whole JSON object")
	}
	return wire("", err.Error(), "JSON")
}
