package record

import (
	"encoding/json"
	"io"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
)

// wireRecord is a Record without its methods, with the schema's name.
type wireRecord struct {
	Schema string `json:"schema"`
	bareRecord
}

type bareRecord Record

// MarshalJSON returns the record in the form that Schema describes, or the
// error of Validate.
func (r Record) MarshalJSON() ([]byte, error) {
	if err := r.Validate(); err != nil {
		return nil, err
	}
	return json.Marshal(wireRecord{Schema, bareRecord(r)})
}

// UnmarshalJSON reads the form that Schema describes, as strictly as
// Read.
func (r *Record) UnmarshalJSON(data []byte) error {
	var w wireRecord
	if err := readStrictly(data, Schema, &w); err != nil {
		return err
	}
	return acceptRead(r, Record(w.bareRecord), data)
}

type bareItem Item

// MarshalJSON returns the item with its verdict, or the error of [Item.Verdict].
func (i Item) MarshalJSON() ([]byte, error) {
	f, err := i.Verdict()
	if err != nil {
		return nil, err
	}
	return json.Marshal(struct {
		bareItem
		Verdict portion.Verdict `json:"verdict,omitzero"`
	}{bareItem(i), f.Verdict})
}

// UnmarshalJSON reads what MarshalJSON writes, but for the verdict: it follows from the
// numbers, and the reader of a record compares the two.
func (i *Item) UnmarshalJSON(data []byte) error {
	return json.Unmarshal(data, (*bareItem)(i))
}

// Write writes the record as indented JSON with a final newline; bidirectional
// controls in it are escaped. It fails with the error of Validate or of the writer.
func (r Record) Write(w io.Writer) error { return writeIndented(w, r) }

// Read reads one record, strictly: the schema must be Schema; unknown,
// repeated or differently spelt fields, values that mean nothing (null, 0, false, an
// empty list), a verdict other than what the numbers say, text after the record,
// invalid UTF-8, more than 4 MiB and whatever Validate refuses are refused. What it
// returns Write writes back with nothing lost, and the canonical bytes of the file are
// what [Record.Sign] signs; only a verdict may be missing, since it follows. Errors are
// [honestplate.InputError], or the reader's own.
func Read(from io.Reader) (Record, error) {
	if from == nil {
		return Record{}, check.Input("From", "nil", "", "a reader")
	}
	data, err := io.ReadAll(io.LimitReader(from, maxFileBytes+1))
	if err != nil {
		return Record{}, err
	}
	var r Record
	err = r.UnmarshalJSON(data)
	return r, err
}
