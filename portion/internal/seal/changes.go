package seal

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// missing stands for a member that is not there.
type missing struct{}

// differences appends the places at which two decoded values differ, in order.
func differences(out []Change, at string, a, b any) []Change {
	switch a := a.(type) {
	case map[string]any:
		if b, ok := b.(map[string]any); ok {
			names := maps.Clone(a)
			maps.Copy(names, b)
			for _, name := range slices.Sorted(maps.Keys(names)) {
				out = differences(out, strings.TrimPrefix(at+"."+name, "."), member(a, name), member(b, name))
			}
			return out
		}
	case []any:
		if b, ok := b.([]any); ok {
			for i := range max(len(a), len(b)) {
				out = differences(out, fmt.Sprintf("%s[%d]", at, i), element(a, i), element(b, i))
			}
			return out
		}
	default:
		switch b.(type) {
		case map[string]any, []any:
		default:
			if a == b {
				return out
			}
		}
	}
	_, noA := a.(missing)
	_, noB := b.(missing)
	return append(out, Change{at, !noA, !noB})
}

func member(m map[string]any, name string) any {
	if v, ok := m[name]; ok {
		return v
	}
	return missing{}
}

func element(list []any, i int) any {
	if i < len(list) {
		return list[i]
	}
	return missing{}
}
