package portion

import (
	"cmp"
	"fmt"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/decimal"
)

// text writes an amount with its tolerances: "9 pieces (-0 +1), 62 g (-1 +2 g)".
func (a Amount) text() string {
	var parts []string
	if a.Count > 0 {
		text := amount(0, a.Count)
		if a.MinusCount > 0 || a.PlusCount > 0 {
			text += fmt.Sprintf(" (-%d +%d)", a.MinusCount, a.PlusCount)
		}
		parts = append(parts, text)
	}
	if a.Grams > 0 {
		text := amount(a.Grams, 0)
		if a.MinusGrams > 0 || a.PlusGrams > 0 {
			text += fmt.Sprintf(" (-%s +%s g)", decimal.Plain(a.MinusGrams), decimal.Plain(a.PlusGrams))
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

func amount(grams float64, count int) string {
	var parts []string
	if count == 1 {
		parts = append(parts, "1 piece")
	} else if count > 0 {
		parts = append(parts, fmt.Sprintf("%d pieces", count))
	}
	if grams > 0 || count == 0 {
		parts = append(parts, decimal.Plain(grams)+" g")
	}
	return strings.Join(parts, ", ")
}

// markdown escapes text for one line of Markdown, without control characters and
// without those that turn the direction of what follows.
func markdown(s string) string {
	var b strings.Builder
	for _, r := range cmp.Or(strings.Join(strings.Fields(honestplate.OneLine(s)), " "), "(empty)") {
		if strings.ContainsRune("\\`*_{}[]<>#|~&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
