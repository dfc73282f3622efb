package record

import (
	"encoding/json"

	"example.org/honestplate/portion/internal/seal"
)

// specificationSchema names the schema of a Specification's JSON and its version: the
// fields of the types in snake_case, strict as a record's.
const specificationSchema = "honestplate/specification/1"

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
	return json.Marshal(wireSpecification{specificationSchema, bareSpecification(s)})
}

// UnmarshalJSON reads what MarshalJSON writes, as strictly as [Read] a record.
func (s *Specification) UnmarshalJSON(data []byte) error {
	var w wireSpecification
	if err := readStrictly(data, specificationSchema, &w); err != nil {
		return err
	}
	return acceptRead(s, Specification(w.bareSpecification), data)
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
