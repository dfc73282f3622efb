package portion

import (
	"encoding/json"
	"io"
	"math"

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

// ReadSpecification reads one specification, as strictly as [ReadRecord] a record.
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

// Items returns the layers of a build as items of a record, all of them advertised:
// declared as specified, weighed as found, in the state that is declared.
func (s Specification) Items(b Build) ([]RecordItem, error) {
	found, err := s.Check(b)
	if err != nil {
		return nil, err
	}
	least, err := b.Scale.LeastLoad()
	if err != nil {
		return nil, err
	}
	items := make([]RecordItem, len(s.Layers))
	for i, l := range s.Layers {
		f := found.Layers[i]
		items[i] = RecordItem{Item: l.Name, Advertised: true, Declared: l.Declared}
		w := Weighed{Count: f.Pieces, Basis: l.Basis}
		if l.Declared.Grams > 0 {
			w.Grams, w.ErrorGrams = forPeople(f.Found, 2*f.Standard)
			w.LeastGrams = least
		}
		if w.Grams > 0 || w.Count > 0 {
			items[i].Weighed = &w
		}
	}
	return items, nil
}

// forPeople rounds a mass and what it may be wrong by, which is rounded up, to three
// digits of the latter.
func forPeople(grams, wrongBy float64) (float64, float64) {
	places := max(0, 2-int(math.Floor(math.Log10(wrongBy))))
	if wrongBy == 0 || places > 12 {
		return grams, wrongBy
	}
	scale := math.Pow10(places)
	return math.Round(grams*scale) / scale, math.Ceil(wrongBy*scale*(1-1e-12)) / scale
}
