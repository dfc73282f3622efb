package portion

import (
	"fmt"
	"slices"
	"strings"

	"example.org/honestplate/portion/internal/check"
)

// The words of enumerations: their text is what String prints, for people and on the
// wire; what has no word is refused there.

func nameOf(kind string, k int, names []string) string {
	if k < 0 || k >= len(names) {
		return fmt.Sprintf("%s(%d)", kind, k)
	}
	return names[k]
}

func textOf(kind string, k int, names []string) ([]byte, error) {
	if k < 0 || k >= len(names) {
		return nil, check.Input(kind, k, "", oneOf(names))
	}
	return []byte(names[k]), nil
}

func readName[E ~int](into *E, kind string, text []byte, names []string) error {
	k := slices.Index(names, string(text))
	if k < 0 {
		return check.Input(kind, string(text), "", oneOf(names))
	}
	*into = E(k)
	return nil
}

func oneOf(names []string) string { return "one of: " + strings.Join(names, ", ") }
