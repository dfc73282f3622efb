package colour

import (
	"cmp"
	_ "embed"
	"strconv"
	"strings"
	"sync"

	"example.org/honestplate"
)

// A Light is a standard illuminant of the CIE by its name; the zero value is [D65].
type Light string

// The lights.
const (
	D65   Light = "D65"    // average daylight, 6500 K
	D50   Light = "D50"    // warm daylight, 5000 K, of prints and of viewing booths
	A     Light = "A"      // tungsten, 2856 K
	LEDB1 Light = "LED-B1" // blue-pumped LED, about 2730 K
	LEDB3 Light = "LED-B3" // blue-pumped LED, about 4100 K
	LEDB5 Light = "LED-B5" // blue-pumped LED, about 6600 K
	LEDV2 Light = "LED-V2" // violet-pumped LED, about 4070 K
)

// cie.csv holds the colour matching functions of 1931 and the lights' power, a line a
// wavelength: colour-science/colour, its datasets of the CIE (read).
//
//go:embed cie.csv
var cieTable string

// weights of a light turn reflectance into XYZ: their y sums to 100.
type weights struct{ x, y, z Spectrum }

var lights = sync.OnceValue(func() map[Light]*weights {
	columns := map[Light]int{D65: 6, D50: 5, A: 4, LEDB1: 7, LEDB3: 8, LEDB5: 9, LEDV2: 10}
	out := map[Light]*weights{}
	for l := range columns {
		out[l] = new(weights)
	}
	rows := strings.Split(strings.TrimSpace(cieTable), "\n")[1:]
	for i, row := range rows {
		var v [11]float64
		for j, field := range strings.Split(row, ",") {
			v[j], _ = strconv.ParseFloat(field, 64) // a test reads every figure again
		}
		for l, column := range columns {
			w, power := out[l], v[column]
			w.x[i], w.y[i], w.z[i] = power*v[1], power*v[2], power*v[3]
		}
	}
	for _, w := range out {
		sum := 0.0
		for _, y := range w.y {
			sum += y
		}
		for i := range Samples {
			w.x[i] *= 100 / sum
			w.y[i] *= 100 / sum
			w.z[i] *= 100 / sum
		}
	}
	return out
})

// See returns what a surface of the reflectance given looks like under the light.
func (l Light) See(s *Spectrum) (XYZ, error) {
	w := lights()[cmp.Or(l, D65)]
	if w == nil {
		return XYZ{}, &honestplate.InputError{Field: "Light", Got: strconv.Quote(string(l)),
			Want: "D65, D50, A, LED-B1, LED-B3, LED-B5 or LED-V2"}
	}
	if err := s.check("Spectrum"); err != nil {
		return XYZ{}, err
	}
	var out XYZ
	for i, r := range s {
		out.X += float64(w.x[i] * r)
		out.Y += float64(w.y[i] * r)
		out.Z += float64(w.z[i] * r)
	}
	return out, nil
}

// White returns the colour of a perfect white under the light: Y is 100.
func (l Light) White() (XYZ, error) {
	white := flat(1)
	return l.See(&white)
}
