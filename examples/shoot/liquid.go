package shoot

import (
	"encoding/json"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// A Liquid is one of the library's, as it writes it: {"kind":"dairy","fat_percent":3.5}.
type Liquid struct{ rheology.Liquid }

// UnmarshalJSON reads any liquid by its kind; see [rheology.ReadLiquid].
func (l *Liquid) UnmarshalJSON(b []byte) (err error) {
	if len(b) == 0 || b[0] != '{' {
		return &honestplate.InputError{Got: "no object", Want: `a liquid with its kind, such as {"kind": "dairy", "fat_percent": 3.5}`}
	}
	l.Liquid, err = rheology.ReadLiquid(b)
	return err
}

// JSONSchema describes the liquid by its kind; what each kind has is in the manual of
// rheology.ReadLiquid.
func (Liquid) JSONSchema() map[string]any {
	return map[string]any{"type": "object", "required": []string{"kind"}, "properties": map[string]any{
		"kind": map[string]any{"type": "string", "enum": []string{"water", "dairy", "sucrose", "syrup", "honey", "glycerol", "food", "custom", "measured", "mix"}},
	}}
}

// MarshalJSON writes a liquid as [rheology.ReadLiquid] reads it.
// A food is a name alone and writes itself as one; here its kind stands beside it.
func (l Liquid) MarshalJSON() ([]byte, error) {
	if food, ok := l.Liquid.(rheology.Food); ok {
		return json.Marshal(map[string]string{"kind": "food", "food": string(food)})
	}
	return json.Marshal(l.Liquid)
}
