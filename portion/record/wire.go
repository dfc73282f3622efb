package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/jcs"
	"example.org/honestplate/portion/internal/seal"
)

// maxFileBytes bounds what a reader takes in.
const maxFileBytes = 4 << 20

// readStrictly decodes a file of the schema into its wire form. Text that is no JSON,
// comes twice or is no UTF-8 is refused here, fields that nobody asked for in
// acceptRead.
func readStrictly(data []byte, schema string, into any) error {
	if len(data) > maxFileBytes {
		return check.Input("file", "more", "", fmt.Sprintf("at most %d bytes", maxFileBytes))
	}
	canonical, err := jcs.Canonical(data)
	if err != nil {
		return err
	}
	var head struct {
		Schema json.RawMessage `json:"schema"`
	}
	if err := json.Unmarshal(canonical, &head); err != nil || string(head.Schema) != `"`+schema+`"` {
		got := "missing"
		if len(head.Schema) > 0 {
			got = fmt.Sprintf("%.80s", head.Schema)
		}
		return check.Input("schema", got, "", fmt.Sprintf("an object with the schema %q", schema))
	}
	err = json.Unmarshal(canonical, into)
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return &honestplate.InputError{Field: embedded.ReplaceAllString(kind.Field, ""),
			Got: "of another kind: " + kind.Value, Want: "what the schema has there"}
	}
	return err
}

// acceptRead accepts what was read if writing it gives the file back: so that no field
// is lost, invented or read under another name.
func acceptRead[T json.Marshaler](into *T, got T, data []byte) error {
	written, err := canonicalOf(got)
	if err != nil {
		return asWritten(err)
	}
	file, err := jcs.Canonical(data)
	if err != nil {
		return err
	}
	changed, err := seal.Changes(file, written)
	if err != nil {
		return err
	}
	// Who filled in a weight need not know the rule: a verdict that is missing follows.
	changed = slices.DeleteFunc(changed, func(c seal.Change) bool {
		return !c.Earlier && strings.HasSuffix(c.Field, ".verdict")
	})
	if len(changed) > 0 {
		return notAsRead(changed[0])
	}
	*into = got
	return nil
}

// notAsRead says what is wrong with a field that would not be written as it was read.
func notAsRead(c seal.Change) error {
	switch {
	case !c.Later:
		return check.Input(c.Field, "no field of the schema, or says nothing", "",
			"a field spelt as in the schema, and none that is 0, false, null or empty")
	case !c.Earlier:
		return check.Input(c.Field, "missing", "", "what the rest of the file makes of it")
	}
	return check.Input(c.Field, "other than the rest of the file makes it", "", "the value that follows from it")
}

// asWritten names fields as the file does: items[0].stand_in, not Items[0].StandIn.
func asWritten(err error) error {
	return check.Reword(honestplate.Cause(err), func(field string) string {
		return strings.ToLower(wordStart.ReplaceAllString(field, "${1}_$2"))
	})
}

var (
	wordStart = regexp.MustCompile("([a-z])([A-Z])")
	embedded  = regexp.MustCompile(`\b(bare)?[A-Z]\w*\.`) // Go's names for what is embedded
)

// canonicalOf returns the canonical bytes of what marshals itself.
func canonicalOf(v json.Marshaler) ([]byte, error) {
	data, err := v.MarshalJSON()
	if err != nil {
		return nil, err
	}
	return jcs.Canonical(data)
}

// writeIndented writes JSON for people: indented, with the characters escaped that
// turn the direction of text on a screen.
func writeIndented(w io.Writer, v json.Marshaler) error {
	data, err := v.MarshalJSON()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, data, "", "  "); err != nil {
		return err
	}
	var out strings.Builder
	for _, r := range b.String() {
		if unicode.Is(unicode.Bidi_Control, r) {
			fmt.Fprintf(&out, `\u%04x`, r)
		} else {
			out.WriteRune(r)
		}
	}
	_, err = io.WriteString(w, out.String()+"\n")
	return err
}
