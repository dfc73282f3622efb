package thermal

import "math"

// decay returns exp(-v) for v from 0 to negligible, within 1e-15 of itself: the
// series spend their time on it, and this takes half of math.Exp's by splitting
//
//	v = k ln2/64 - r,  exp(-v) = 2^-(k/64) (1 + r + r^2/2 + ... + r^5/120)
//
// with |r| below 0.0055, where the next term is 4e-17.
func decay(v float64) float64 {
	const (
		perStep = 64 / math.Ln2
		high    = 0x1.62e42fefap-7 // ln2/64 to 37 bits, so that k times it is exact
		low     = math.Ln2/64 - high
	)
	k := int(v*perStep + 0.5)
	r := (float64(k)*high - v) + float64(k)*low
	p := 1 + r*(1+r*(1./2+r*(1./6+r*(1./24+r*(1./120)))))
	return p * sixtyFourths[k&63] * math.Float64frombits(uint64(1023-k>>6)<<52)
}

// sixtyFourths are 2^(-j/64).
var sixtyFourths = func() (t [64]float64) {
	for j := range t {
		t[j] = math.Exp2(-float64(j) / 64)
	}
	return t
}()
