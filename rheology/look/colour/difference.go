package colour

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// Difference returns the colour difference of CIEDE2000, its weights 1. Source: Sharma, Wu
// and Dalal 2005, whose table 1 is compared in examples/published. Both colours must be
// relative to one white.
func Difference(p, q Lab) (float64, error) {
	for _, c := range []Lab{p, q} {
		const wide = "wider than any surface"
		if err := cmp.Or(honestplate.InRange("Lab.L", c.L, -1, 1000, "", wide),
			honestplate.InRange("Lab.A", c.A, -1000, 1000, "", wide),
			honestplate.InRange("Lab.B", c.B, -1000, 1000, "", wide)); err != nil {
			return 0, err
		}
	}
	const to7 = 25 * 25 * 25 * 25 * 25 * 25 * 25
	pow7 := func(v float64) float64 { c := v * v * v; return c * c * v }
	degrees := func(r float64) float64 { return r * 180 / math.Pi }
	cosine := func(d float64) float64 { return math.Cos(d * math.Pi / 180) }

	mean := pow7((math.Hypot(p.A, p.B) + math.Hypot(q.A, q.B)) / 2)
	g := 0.5 * (1 - math.Sqrt(mean/(mean+to7)))
	polar := func(c Lab) (chroma, hue float64) {
		a := (1 + g) * c.A
		if a == 0 && c.B == 0 {
			return 0, 0
		}
		hue = degrees(math.Atan2(c.B, a))
		if hue < 0 {
			hue += 360
		}
		return math.Hypot(a, c.B), hue
	}
	c1, h1 := polar(p)
	c2, h2 := polar(q)

	dh := h2 - h1
	middle := (h1 + h2) / 2
	switch {
	case c1*c2 == 0:
		dh, middle = 0, h1+h2
	case math.Abs(dh) > 180:
		if h1+h2 < 360 {
			middle += 180
		} else {
			middle -= 180
		}
		dh -= math.Copysign(360, dh)
	}
	dL, dC := q.L-p.L, c2-c1
	dH := 2 * math.Sqrt(c1*c2) * math.Sin(dh/2*math.Pi/180)

	l, c := (p.L+q.L)/2-50, (c1+c2)/2
	t := 1 - 0.17*cosine(middle-30) + 0.24*cosine(2*middle) + 0.32*cosine(3*middle+6) - 0.20*cosine(4*middle-63)
	sl := 1 + 0.015*l*l/math.Sqrt(20+l*l)
	sc, sh := 1+0.045*c, 1+0.015*c*t
	turn := 30 * math.Exp(-(middle-275)/25*((middle-275)/25))
	c7 := pow7(c)
	rt := -2 * math.Sqrt(c7/(c7+to7)) * math.Sin(2*turn*math.Pi/180)
	x, y, z := dL/sl, dC/sc, dH/sh
	return math.Sqrt(max(0, x*x+y*y+z*z+rt*y*z)), nil
}
