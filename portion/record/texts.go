package record

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/seal"
)

// textAt refuses what JSON cannot carry unchanged, and nothing where something is
// needed.
func textAt(field, s string, needed bool) error {
	if !utf8.ValidString(s) {
		return check.Input(field, "text that is no UTF-8", "", "valid UTF-8")
	}
	if needed && strings.TrimSpace(s) == "" {
		return check.Input(field, "empty", "", "some text")
	}
	return nil
}

func dayAt(field, s string) error {
	if s == "" {
		return nil
	}
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		return dayError(field, s)
	}
	return nil
}

func dayError(field, s string) error {
	return check.Input(field, fmt.Sprintf("%q", s), "", "a day as YYYY-MM-DD")
}

func sumAt(field, s string, needed bool) error {
	if s == "" && !needed || seal.IsSum(s) {
		return nil
	}
	return check.Input(field, fmt.Sprintf("%q", s), "", "a SHA-256 in 64 lower-case hexadecimal digits")
}
