package jcs

import (
	"fmt"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// text reads the rest of a string, after its opening quote.
func (p *parser) text() (string, error) {
	var s []byte
	for p.at < len(p.data) {
		c := p.data[p.at]
		switch {
		case c == '"':
			p.at++
			return string(s), nil
		case c < 0x20:
			return "", p.wrong(fmt.Sprintf("the control character %q in a text", c), "it escaped")
		case c != '\\':
			s = append(s, c)
			p.at++
			continue
		}
		r, err := p.escape()
		if err != nil {
			return "", err
		}
		s = utf8.AppendRune(s, r)
	}
	return "", p.unexpected("the closing quote of a text")
}

// escape reads a backslash and what follows it; two surrogates make one character.
func (p *parser) escape() (rune, error) {
	p.at++
	if p.at >= len(p.data) {
		return 0, p.unexpected("an escape of JSON")
	}
	switch c := p.data[p.at]; c {
	case '"', '\\', '/':
		p.at++
		return rune(c), nil
	case 'b', 'f', 'n', 'r', 't':
		p.at++
		return map[byte]rune{'b': '\b', 'f': '\f', 'n': '\n', 'r': '\r', 't': '\t'}[c], nil
	case 'u':
		r, err := p.hex()
		if err != nil || !utf16.IsSurrogate(r) {
			return r, err
		}
		if p.at+1 < len(p.data) && p.data[p.at] == '\\' && p.data[p.at+1] == 'u' {
			p.at++
			low, err := p.hex()
			if both := utf16.DecodeRune(r, low); err != nil || both != utf8.RuneError {
				return both, err
			}
		}
		return 0, p.wrong("half a surrogate pair", "both halves, high before low")
	}
	return 0, p.unexpected("an escape of JSON")
}

// hex reads the u of an escape and its four digits.
func (p *parser) hex() (rune, error) {
	p.at++
	if p.at+4 > len(p.data) {
		return 0, p.wrong("a \\u that ends too early", "four hexadecimal digits")
	}
	v, err := strconv.ParseUint(string(p.data[p.at:p.at+4]), 16, 16)
	if err != nil {
		return 0, p.wrong(fmt.Sprintf("\\u%q", p.data[p.at:p.at+4]), "four hexadecimal digits")
	}
	p.at += 4
	return rune(v), nil
}

// appendText appends a string in quotes: escaped are only the quote, the backslash
// and what lies below U+0020 (RFC 8785, 3.2.2.2).
func appendText(out []byte, s string) []byte {
	out = append(out, '"')
	for i := range len(s) {
		switch c := s[i]; {
		case c == '"' || c == '\\':
			out = append(out, '\\', c)
		case c >= 0x20:
			out = append(out, c)
		case c == '\b':
			out = append(out, `\b`...)
		case c == '\t':
			out = append(out, `\t`...)
		case c == '\n':
			out = append(out, `\n`...)
		case c == '\f':
			out = append(out, `\f`...)
		case c == '\r':
			out = append(out, `\r`...)
		default:
			out = fmt.Appendf(out, `\u%04x`, c)
		}
	}
	return append(out, '"')
}

// byUTF16 orders names by their UTF-16 code units (RFC 8785, 3.2.3), in which a
// character beyond U+FFFF comes before U+E000: not the order of UTF-8 bytes.
func byUTF16(a, b string) int {
	for a != "" && b != "" {
		x, n := utf8.DecodeRuneInString(a)
		y, m := utf8.DecodeRuneInString(b)
		if x != y {
			return int(firstUnit(x)) - int(firstUnit(y)) + sameUnit(x, y)
		}
		a, b = a[n:], b[m:]
	}
	return len(a) - len(b)
}

// firstUnit returns the first UTF-16 code unit of a character.
func firstUnit(r rune) rune {
	if high, _ := utf16.EncodeRune(r); high != utf8.RuneError {
		return high
	}
	return r
}

// sameUnit decides between two characters that begin with one code unit.
func sameUnit(x, y rune) int {
	if firstUnit(x) != firstUnit(y) {
		return 0
	}
	return int(x) - int(y)
}
