package record

import (
	"cmp"
	"strings"

	"example.org/honestplate"
)

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
