package strict

import (
	stdencoding "encoding"
	stdjson "encoding/json"
	"reflect"
)

// Schema returns the JSON Schema (draft 2020-12) of what [Read] takes for a type. A
// type that reads itself gives its own by a method JSONSchema() map[string]any, or
// counts as a text where it reads text, and as anything otherwise.
func Schema(t reflect.Type, title string) ([]byte, error) {
	s := schemaOf(t, limits{})
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = title
	b, err := stdjson.MarshalIndent(s, "", "  ")
	return append(b, '\n'), err
}

type describer interface{ JSONSchema() map[string]any }

func schemaOf(t reflect.Type, l limits) map[string]any {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if d, ok := reflect.New(t).Interface().(describer); ok {
		return d.JSONSchema()
	}
	_, text := reflect.New(t).Interface().(stdencoding.TextUnmarshaler)
	_, json := reflect.New(t).Interface().(stdjson.Unmarshaler)
	s := map[string]any{}
	number := func(kind string) {
		s["type"] = kind
		if l.given {
			s["minimum"], s["maximum"] = l.low, l.high
		}
	}
	switch {
	case t.Name() == "Optional":
		number("number")
	case json:
	case text:
		s["type"] = "string"
	case t.Kind() == reflect.Struct:
		properties, required := map[string]any{}, []string{}
		for i := range t.NumField() {
			f := t.Field(i)
			name, optional := jsonName(f)
			if name == "" || name == "-" {
				continue
			}
			p := schemaOf(f.Type, limitsOf(f))
			if doc := f.Tag.Get("doc"); doc != "" {
				p["description"] = doc
			}
			properties[name] = p
			if !optional {
				required = append(required, name)
			}
		}
		s["type"], s["properties"], s["additionalProperties"] = "object", properties, false
		if len(required) > 0 {
			s["required"] = required
		}
	case t.Kind() == reflect.Slice:
		s["type"], s["items"] = "array", schemaOf(t.Elem(), limits{words: l.words, text: true})
		if l.given {
			s["minItems"], s["maxItems"] = l.low, l.high
		}
	case t.Kind() == reflect.String:
		s["type"], s["maxLength"] = "string", longestText
		switch {
		case l.words != nil:
			s["enum"] = l.words
		case l.text:
			s["minLength"] = 1
		}
	case t.Kind() == reflect.Bool:
		s["type"] = "boolean"
	case t.Kind() == reflect.Int:
		number("integer")
	default:
		number("number")
	}
	return s
}
