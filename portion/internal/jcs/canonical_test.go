package jcs_test

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/jcs"
	"example.org/honestplate/testdata"
)

func load(t *testing.T, table string) []testdata.Row {
	t.Helper()
	read, err := testdata.Load(table)
	if err != nil {
		t.Fatal(err)
	}
	return read.Rows
}

func unhex(t *testing.T, text string) []byte {
	t.Helper()
	b, err := hex.DecodeString(text)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func bits(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseUint(text, 16, 64)
	if err != nil {
		t.Fatal(err)
	}
	return math.Float64frombits(v)
}

// RFC 8785, appendix B, and published and worked-out numbers; the two that are no
// number cannot be written in JSON at all.
func TestPublishedNumbers(t *testing.T) {
	for _, r := range load(t, "jcs_numbers") {
		v, want := bits(t, r.Text("ieee754_hex")), r.Text("text")
		if want == "" {
			if _, err := json.Marshal(v); err == nil {
				t.Errorf("%s: accepted", r.Text("ieee754_hex"))
			}
			continue
		}
		if got := string(jcs.AppendNumber(nil, v)); got != want {
			t.Errorf("%s: %s, want %s", r.Text("ieee754_hex"), got, want)
		}
		if got, err := jcs.Canonical([]byte(want)); err != nil || string(got) != want {
			t.Errorf("%s read back: %s, %v", want, got, err)
		}
	}
}

// The published file of a hundred million numbers is made by a rule; its first lines
// have published sums.
func TestPublishedNumberFile(t *testing.T) {
	edges := load(t, "jcs_number_generator")
	sums := load(t, "jcs_number_file_sums")
	most := 100_000
	if testing.Short() {
		most = 10_000
	}
	file, size := sha256.New(), 0
	var block [sha256.Size]byte
	var left []byte
	for n := range most {
		var v float64
		switch {
		case n < len(edges):
			v = bits(t, edges[n].Text("ieee754_hex"))
		case n < len(edges)+2000:
			v = math.Float64frombits(0x0010000000000000 + uint64(n-len(edges)))
		default:
			for v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
				if len(left) == 0 {
					block = sha256.Sum256(block[:])
					left = block[:]
				}
				v, left = math.Float64frombits(binary.LittleEndian.Uint64(left)), left[8:]
			}
		}
		line := jcs.AppendNumber(fmt.Appendf(nil, "%x,", math.Float64bits(v)), v)
		file.Write(append(line, '\n'))
		size += len(line) + 1
		for _, r := range sums {
			if r.Text("lines") != strconv.Itoa(n+1) {
				continue
			}
			if got := hex.EncodeToString(file.Sum(nil)); got != r.Text("sha256") || strconv.Itoa(size) != r.Text("bytes") {
				t.Errorf("%d lines: %d bytes, %s, want %s, %s", n+1, size, got, r.Text("bytes"), r.Text("sha256"))
			}
		}
	}
}

func TestPublishedDocuments(t *testing.T) {
	for _, r := range load(t, "jcs_documents") {
		want := unhex(t, r.Text("canonical_utf8_hex"))
		got, err := jcs.Canonical(unhex(t, r.Text("input_utf8_hex")))
		if err != nil || string(got) != string(want) {
			t.Errorf("%s: %s, %v, want %s", r.Text("document"), got, err, want)
		}
		if sum := fmt.Sprintf("%x", sha256.Sum256(got)); sum != r.Text("sha256") {
			t.Errorf("%s: sum %s", r.Text("document"), sum)
		}
		if again, err := jcs.Canonical(got); err != nil || string(again) != string(got) {
			t.Errorf("%s: canonical bytes change on a second pass", r.Text("document"))
		}
	}
}

func TestPublishedRefusals(t *testing.T) {
	for _, r := range load(t, "jcs_refusals") {
		got, err := jcs.Canonical(unhex(t, r.Text("input_utf8_hex")))
		if refused := errors.Is(err, honestplate.ErrInput); refused != (r.Text("action") == "refuse") {
			t.Errorf("%s: %q, %v", r.Text("case"), got, err)
		}
	}
	if got, _ := jcs.Canonical([]byte("[9007199254740993]")); string(got) != "[9007199254740992]" {
		t.Errorf("digits beyond a binary64: %s", got)
	}
}

func TestFurtherRefusals(t *testing.T) {
	for in, want := range map[string]string{
		``:                              "byte 1 is EOF, want one value in JSON",
		`{`:                             "byte 2 is unexpected EOF",
		`{"a"`:                          "unexpected EOF",
		`{"a":1`:                        "unexpected EOF",
		`{"a":1,}`:                      "byte 8 is invalid character '}' looking for beginning of object key string",
		`[1 2]`:                         "byte 4 is invalid character '2' after array element",
		`"abc`:                          "unexpected EOF",
		"\"a\nb\"":                      "in string literal",
		`"\x"`:                          "in string escape code",
		`"\`:                            "unexpected EOF",
		`"\u12`:                         "unexpected EOF",
		`"\u12x4"`:                      "hexadecimal character escape",
		`"\ud83d\u0041"`:                "byte 2 is half a surrogate pair, want both halves",
		`"\\\udC00"`:                    "byte 4 is half a surrogate pair",
		`"\ud83d\u00"`:                  "hexadecimal character escape",
		`-`:                             "unexpected EOF",
		`1.`:                            "unexpected EOF",
		`1e`:                            "unexpected EOF",
		`[] []`:                         "byte 3 is more text, want nothing after the value",
		`tru`:                           "unexpected EOF",
		`[1, -1e400]`:                   "byte 5 is the number -1e400, want one that a binary64 holds",
		`{"a":{"b":1,"b":2}}`:           "every name once",
		strings.Repeat("[", 100) + "]]": "unexpected EOF",
		strings.Repeat("[", 101) + strings.Repeat("]", 101): "byte 101 is one more list or object inside the others, want at most 100",
	} {
		if _, err := jcs.Canonical([]byte(in)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.20s: %v, want %s", in, err, want)
		}
	}
}

// Whatever is accepted is a fixed point, means what encoding/json reads in the input,
// and is accepted there.
func FuzzCanonical(f *testing.F) {
	for _, seed := range []string{`{"b":1,"a":[true,null,"\u20ac\ud83d\ude00"]}`, `[1e21,-0,5e-324,0.000001]`, `{"\ufb33":1,"😀":2}`, `"`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, in []byte) {
		out, err := jcs.Canonical(in)
		if err != nil {
			if !errors.Is(err, honestplate.ErrInput) {
				t.Fatalf("%T", err)
			}
			return
		}
		again, err := jcs.Canonical(out)
		if err != nil || string(again) != string(out) {
			t.Fatalf("%q is no fixed point: %q, %v", out, again, err)
		}
		var a, b any
		if err := json.Unmarshal(in, &a); err != nil {
			t.Fatalf("%q: %v", in, err)
		}
		if err := json.Unmarshal(out, &b); err != nil {
			t.Fatalf("%q: %v", out, err)
		}
		if x, y := fmt.Sprintf("%#v", a), fmt.Sprintf("%#v", b); strings.ReplaceAll(x, "-0", "0") != strings.ReplaceAll(y, "-0", "0") {
			t.Fatalf("%s became %s", x, y)
		}
	})
}
