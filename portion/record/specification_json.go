package record

import (
	"encoding/json"
	"io"

	"example.org/honestplate/portion/internal/seal"
)

// SpecificationSchema names the schema of a Specification's JSON and its version: the
// fields of the types in snake_case, strict as a record's.
const SpecificationSchema = "honestplate/specification/1"

type wireSpecification struct {
	Schema string `json:"schema"`
	bareSpecification
}

type bareSpecification Specification

// MarshalJSON returns the specification with its schema, or the error of Validate.
func (s Specification) MarshalJSON() ([]byte, error) {
	if err := s.Validate(); err != nil {
		return nil, err
	}
	return json.Marshal(wireSpecification{SpecificationSchema, bareSpecification(s)})
}

// UnmarshalJSON reads what MarshalJSON writes, as strictly as ReadSpecification.
func (s *Specification) UnmarshalJSON(data []byte) error {
	var w wireSpecification
	if err := readStrictly(data, SpecificationSchema, &w); err != nil {
		return err
	}
	return acceptRead(s, Specification(w.bareSpecification), data)
}

// Write writes the specification as indented JSON with a final newline. Errors: those
// of Validate or of the writer.
func (s Specification) Write(w io.Writer) error { return writeIndented(w, s) }

// ReadSpecification reads one specification, as strictly as [Read] a record.
func ReadSpecification(from io.Reader) (Specification, error) {
	var s Specification
	err := readFile(from, &s)
	return s, err
}

// Ref returns what a record holds of the specification: its name, its sign-off and the
// SHA-256 of its canonical bytes. Errors: those of Validate.
func (s Specification) Ref() (SpecificationRef, error) {
	b, err := canonicalOf(s)
	if err != nil {
		return SpecificationRef{}, err
	}
	return SpecificationRef{s.Product, s.Version, seal.Sum(b), s.Signed.Name, s.ValidUntil}, nil
}
