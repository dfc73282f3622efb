package strict

import (
	stdencoding "encoding"
	stdjson "encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"

	"example.org/honestplate"
)

// longestText is how many characters a text may have.
const longestText = 2000

// limits are what the tags of a field say of its value.
type limits struct {
	low, high float64
	given     bool // low and high
	words     []string
	text      bool // it must not be empty
}

func limitsOf(f reflect.StructField) limits {
	var l limits
	if text, ok := f.Tag.Lookup("range"); ok {
		low, high, _ := strings.Cut(text, ",")
		var err1, err2 error
		l.low, err1 = strconv.ParseFloat(low, 64)
		l.high, err2 = strconv.ParseFloat(high, 64)
		if err1 != nil || err2 != nil {
			panic(fmt.Sprintf("strict: range tag %q of %s", text, f.Name))
		}
		l.given = true
	}
	if text := f.Tag.Get("words"); text != "" {
		l.words = strings.Split(text, ",")
	}
	_, optional := jsonName(f)
	l.text = !optional
	return l
}

// jsonName returns the name of a field in a file, and whether it may be left out.
func jsonName(f reflect.StructField) (text string, optional bool) {
	text, options, _ := strings.Cut(f.Tag.Get("json"), ",")
	return text, strings.Contains(options, "omit")
}

func (r *reader) fault(at int, err error) { r.faults = append(r.faults, Fault{r.line(at), err}) }

func (r *reader) input(at int, path, got, want string) {
	if path == "" {
		path = "file"
	}
	r.fault(at, &honestplate.InputError{Field: path, Got: got, Want: want})
}

var (
	jsonReader = reflect.TypeFor[stdjson.Unmarshaler]()
	textReader = reflect.TypeFor[stdencoding.TextUnmarshaler]()
)

// bind puts a node into a value and notes every fault on the way.
func (r *reader) bind(path string, n *node, v reflect.Value, l limits) {
	t := v.Type()
	if t.Kind() == reflect.Pointer {
		if n.kind == 'n' {
			return
		}
		v.Set(reflect.New(t.Elem()))
		v, t = v.Elem(), t.Elem()
	}
	switch {
	case t == instant:
		r.instant(path, n, v)
		return
	case reflect.PointerTo(t).Implements(jsonReader):
		r.readsItself(path, n, v, l)
		return
	case reflect.PointerTo(t).Implements(textReader):
		if text, ok := r.text(path, n); ok {
			if err := v.Addr().Interface().(stdencoding.TextUnmarshaler).UnmarshalText([]byte(text)); err != nil {
				r.fault(n.at, inPlace(path, err))
			}
		}
		return
	}
	switch t.Kind() {
	case reflect.Struct:
		r.object(path, n, v)
	case reflect.Slice:
		r.list(path, n, v, l)
	case reflect.String:
		if text, ok := r.text(path, n); ok {
			if l.words != nil && !slices.Contains(l.words, text) {
				r.input(n.at, path, strconv.Quote(shorten(text)), "one of "+strings.Join(l.words, ", "))
			} else if l.text && strings.TrimSpace(text) == "" {
				r.input(n.at, path, "an empty text", "some words")
			}
			v.SetString(text)
		}
	case reflect.Bool:
		if n.kind != 't' && n.kind != 'f' {
			r.input(n.at, path, kindName(n), "true or false")
			return
		}
		v.SetBool(n.kind == 't')
	case reflect.Float64:
		if x, ok := r.number(path, n, l); ok {
			v.SetFloat(x)
		}
	case reflect.Int:
		if x, ok := r.number(path, n, l); ok {
			if x != math.Trunc(x) || math.Abs(x) > 1<<31-1 {
				r.input(n.at, path, string(n.raw), "a whole number below two thousand million")
				return
			}
			v.SetInt(int64(x))
		}
	default:
		panic(fmt.Sprintf("strict: %s is of kind %s", path, t.Kind()))
	}
}

var instant = reflect.TypeFor[time.Time]()

// instant reads a time with its date and its offset.
func (r *reader) instant(path string, n *node, v reflect.Value) {
	text, ok := r.text(path, n)
	if !ok {
		return
	}
	at, err := time.Parse(time.RFC3339, text)
	if err != nil {
		r.input(n.at, path, strconv.Quote(shorten(text)), "a date, a time and its offset, such as 2026-10-14T11:05:00+02:00")
		return
	}
	v.Set(reflect.ValueOf(at))
}

// readsItself lets a value read its own JSON. A number that it holds keeps the limits
// of its field.
func (r *reader) readsItself(path string, n *node, v reflect.Value, l limits) {
	if l.given && n.kind != 'n' {
		if _, ok := r.number(path, n, l); !ok {
			return
		}
	}
	raw := n.raw
	if n.members != nil || n.kind == '{' || n.kind == '[' {
		raw = r.source(n)
	}
	if err := v.Addr().Interface().(stdjson.Unmarshaler).UnmarshalJSON(raw); err != nil {
		r.fault(n.at, inPlace(path, err))
	}
}

// source is the text of a whole object or list.
func (r *reader) source(n *node) jsontext.Value {
	d := jsontext.NewDecoder(strings.NewReader(string(r.data[n.at:])), jsontext.AllowDuplicateNames(true))
	raw, err := d.ReadValue()
	if err != nil {
		return jsontext.Value("null")
	}
	return raw.Clone()
}

// inPlace puts an error of a value's own reader under the field's path.
func inPlace(path string, err error) error {
	switch err.(type) {
	case *honestplate.InputError, *honestplate.RangeError, *honestplate.RefusedError:
		return honestplate.In(path, err)
	}
	return &honestplate.InputError{Field: path, Got: "not readable: " + shorten(err.Error()), Want: "a value as the schema says"}
}

func (r *reader) object(path string, n *node, v reflect.Value) {
	if n.kind != '{' {
		r.input(n.at, path, kindName(n), "an object { }")
		return
	}
	t := v.Type()
	fields := map[string]int{}
	var known []string
	for i := range t.NumField() {
		if name, _ := jsonName(t.Field(i)); name != "" && name != "-" {
			fields[name] = i
			known = append(known, name)
		}
	}
	seen := map[string]bool{}
	for i, name := range n.names {
		at := join(path, shorten(name.text))
		f, ok := fields[name.text]
		switch {
		case !ok:
			r.input(name.at, at, "not a field here", want(name.text, known))
		case seen[name.text]:
			r.input(name.at, at, "given twice", "it once")
		default:
			r.bind(at, n.members[i], v.Field(f), limitsOf(t.Field(f)))
		}
		seen[name.text] = true
	}
	for _, name := range known {
		if _, optional := jsonName(t.Field(fields[name])); !optional && !seen[name] {
			r.input(n.at, join(path, name), "missing", "it given")
		}
	}
}

func (r *reader) list(path string, n *node, v reflect.Value, l limits) {
	if n.kind != '[' {
		r.input(n.at, path, kindName(n), "a list [ ]")
		return
	}
	if count := float64(len(n.members)); l.given && (count < l.low || count > l.high) {
		r.input(n.at, path, fmt.Sprintf("a list of %g", count), fmt.Sprintf("%g to %g entries", l.low, l.high))
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.members), len(n.members)))
	for i, m := range n.members {
		r.bind(fmt.Sprintf("%s[%d]", path, i), m, v.Index(i), limits{words: l.words, text: true})
	}
}

// text reads a string without control characters.
func (r *reader) text(path string, n *node) (string, bool) {
	if n.kind != '"' {
		r.input(n.at, path, kindName(n), `a text in quotes " "`)
		return "", false
	}
	raw, err := jsontext.AppendUnquote(nil, n.raw)
	text := string(raw)
	switch {
	case err != nil:
		r.input(n.at, path, "a text that cannot be read", "UTF-8")
	case utf8.RuneCountInString(text) > longestText:
		r.input(n.at, path, fmt.Sprintf("a text of %d characters", utf8.RuneCountInString(text)), fmt.Sprintf("at most %d", longestText))
	case honestplate.OneLine(text) != text:
		r.input(n.at, path, strconv.Quote(shorten(text)), "a text without line ends and other control characters")
	default:
		return text, true
	}
	return "", false
}

func (r *reader) number(path string, n *node, l limits) (float64, bool) {
	if n.kind != '0' {
		r.input(n.at, path, kindName(n), "a number, with a point and without quotes")
		return 0, false
	}
	x, err := strconv.ParseFloat(string(n.raw), 64)
	if err != nil {
		r.input(n.at, path, shorten(string(n.raw)), "a number that fits")
		return 0, false
	}
	if l.given && (x < l.low || x > l.high) {
		r.input(n.at, path, shorten(string(n.raw)), plain(l.low)+" to "+plain(l.high))
		return 0, false
	}
	return x, true
}

// plain writes a number as people do.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func kindName(n *node) string {
	switch n.kind {
	case '{':
		return "an object"
	case '[':
		return "a list"
	case '"':
		return "the text " + shorten(string(n.raw))
	case 'n':
		return "null"
	case 't', 'f':
		return string(n.raw)
	}
	return "the number " + shorten(string(n.raw))
}

func shorten(text string) string {
	text = honestplate.OneLine(text)
	if utf8.RuneCountInString(text) <= 60 {
		return text
	}
	return string([]rune(text)[:60]) + "..."
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// want lists the known names, the one most like the wrong one first.
func want(wrong string, known []string) string {
	best, least := "", len(wrong)/2+1
	for _, k := range known {
		if d := distance(shorten(wrong), k); d < least {
			best, least = k, d
		}
	}
	if best != "" {
		return fmt.Sprintf("%s (perhaps that), or one of %s", best, strings.Join(known, ", "))
	}
	return "one of " + strings.Join(known, ", ")
}

// distance is the number of letters to insert, delete or replace (Levenshtein 1966).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		before := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := before
			if a[i] != b[j] {
				change++
			}
			before = row[j+1]
			row[j+1] = min(change, row[j]+1, before+1)
		}
	}
	return row[len(b)]
}
