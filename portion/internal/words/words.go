// Package words gives enumerations their words, for people and on the wire.
package words

import (
	"fmt"
	"slices"
	"strings"

	"example.org/honestplate/portion/internal/check"
)

// Of returns the word of k, or kind(k) for what has none.
func Of(kind string, k int, names []string) string {
	if k < 0 || k >= len(names) {
		return fmt.Sprintf("%s(%d)", kind, k)
	}
	return names[k]
}

// Text returns the word of k. Errors: honestplate.InputError for what has none.
func Text(kind string, k int, names []string) ([]byte, error) {
	if k < 0 || k >= len(names) {
		return nil, check.Input(kind, k, "", oneOf(names))
	}
	return []byte(names[k]), nil
}

// Read sets into to what text is the word of. Errors: honestplate.InputError.
func Read[E ~int](into *E, kind string, text []byte, names []string) error {
	k := slices.Index(names, string(text))
	if k < 0 {
		return check.Input(kind, string(text), "", oneOf(names))
	}
	*into = E(k)
	return nil
}

func oneOf(names []string) string { return "one of: " + strings.Join(names, ", ") }
