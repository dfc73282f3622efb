package jcs

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// number reads a number by the grammar of JSON and appends the canonical form of the
// binary64 nearest to it.
func (p *parser) number(out []byte) ([]byte, error) {
	start := p.at
	p.take('-')
	if !p.take('0') && p.digits() == 0 {
		return nil, p.unexpected("a value")
	}
	if p.take('.') && p.digits() == 0 {
		return nil, p.unexpected("a digit after the point")
	}
	if p.take('e') || p.take('E') {
		if !p.take('+') {
			p.take('-')
		}
		if p.digits() == 0 {
			return nil, p.unexpected("a digit of the exponent")
		}
	}
	text := string(p.data[start:p.at])
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return nil, p.wrong(fmt.Sprintf("the number %.40s", text), "one that a binary64 holds")
	}
	return AppendNumber(out, v), nil
}

func (p *parser) digits() (n int) {
	for p.at < len(p.data) && p.data[p.at] >= '0' && p.data[p.at] <= '9' {
		p.at++
		n++
	}
	return n
}

// AppendNumber appends a finite number as ECMAScript writes it: the fewest digits that
// read back as the same binary64, plain from 1e-6 to below 1e21, with an exponent
// outside, and 0 for minus zero (RFC 8785, 3.2.2.3).
func AppendNumber(out []byte, v float64) []byte {
	if v == 0 {
		return append(out, '0')
	}
	if v < 0 {
		out = append(out, '-')
	}
	text := strconv.FormatFloat(math.Abs(v), 'e', -1, 64)
	mantissa, exponent, _ := strings.Cut(text, "e")
	digits := strings.Replace(mantissa, ".", "", 1)
	// What strconv writes it reads: n is the place of the point after the digits.
	n, _ := strconv.Atoi(exponent)
	n++
	switch {
	case n > 21 || n < -5:
		out = append(out, digits[0])
		if len(digits) > 1 {
			out = append(append(out, '.'), digits[1:]...)
		}
		return fmt.Appendf(out, "e%+d", n-1)
	case n <= 0:
		return append(append(append(out, "0."...), strings.Repeat("0", -n)...), digits...)
	case n >= len(digits):
		return append(append(out, digits...), strings.Repeat("0", n-len(digits))...)
	}
	return append(append(append(out, digits[:n]...), '.'), digits[n:]...)
}
