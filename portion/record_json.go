package portion

import (
	"encoding/json"
	"fmt"
	"io"
)

// wireRecord is a Record without its methods, with the schema's name and the verdicts.
type wireRecord struct {
	Schema string `json:"schema"`
	bareRecord
	Items []wireItem `json:"items"`
}

type bareRecord Record

type wireItem struct {
	RecordItem
	Verdict Verdict `json:"verdict,omitzero"`
}

// MarshalJSON returns the record in the form that RecordSchema describes, or the
// error of Validate.
func (r Record) MarshalJSON() ([]byte, error) {
	if err := r.Validate(); err != nil {
		return nil, err
	}
	w := wireRecord{RecordSchema, bareRecord(r), make([]wireItem, len(r.Items))}
	for k, i := range r.Items {
		f, err := i.Verdict()
		if err != nil {
			return nil, in(fmt.Sprintf("Items[%d]", k), err)
		}
		w.Items[k] = wireItem{i, f.Verdict}
	}
	return json.Marshal(w)
}

// UnmarshalJSON reads the form that RecordSchema describes, as strictly as
// ReadRecord.
func (r *Record) UnmarshalJSON(data []byte) error {
	var w wireRecord
	if err := readStrictly(data, RecordSchema, &w); err != nil {
		return err
	}
	got := Record(w.bareRecord)
	got.Items = make([]RecordItem, len(w.Items))
	for k, i := range w.Items {
		got.Items[k] = i.RecordItem
	}
	return acceptRead(r, got, data)
}

// Write writes the record as indented JSON with a final newline; bidirectional
// controls in it are escaped. It fails with the error of Validate or of the writer.
func (r Record) Write(w io.Writer) error { return writeIndented(w, r) }

// ReadRecord reads one record, strictly: the schema must be RecordSchema; unknown,
// repeated or differently spelt fields, values that mean nothing (null, 0, false, an
// empty list), a verdict other than what the numbers say, text after the record,
// invalid UTF-8, more than 4 MiB and whatever Validate refuses are refused. What it
// returns Write writes back with nothing lost, and the canonical bytes of the file are
// [Record.Canonical]. Errors are InputError, or the reader's own.
func ReadRecord(from io.Reader) (Record, error) {
	var r Record
	err := readFile(from, &r)
	return r, err
}
