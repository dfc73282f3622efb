package colour

import (
	"cmp"
	_ "embed"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"example.org/honestplate"
)

// A Light is a standard illuminant of the CIE.
type Light int

// The lights. D65 is first, so that a light left out is daylight.
const (
	D65   Light = iota // average daylight, 6500 K
	D50                // warm daylight, 5000 K, of prints and of viewing booths
	A                  // tungsten, 2856 K
	LEDB1              // blue-pumped LED, about 2730 K
	LEDB3              // blue-pumped LED, about 4100 K
	LEDB5              // blue-pumped LED, about 6600 K
	LEDV2              // violet-pumped LED, about 4070 K
)

var lightNames = [...]string{"D65", "D50", "A", "LED-B1", "LED-B3", "LED-B5", "LED-V2"}

// String returns the light's name, such as "LED-B3".
func (l Light) String() string {
	if l < 0 || int(l) >= len(lightNames) {
		return fmt.Sprintf("Light(%d)", int(l))
	}
	return lightNames[l]
}

// MarshalText writes the name, and refuses a light that is not one of the constants.
func (l Light) MarshalText() ([]byte, error) {
	if err := l.check("Light"); err != nil {
		return nil, err
	}
	return []byte(l.String()), nil
}

// UnmarshalText reads a name.
func (l *Light) UnmarshalText(b []byte) error {
	for i, name := range lightNames {
		if name == string(b) {
			*l = Light(i)
			return nil
		}
	}
	return &honestplate.InputError{Field: "Light", Got: strconv.Quote(string(b)),
		Want: "one of " + strings.Join(lightNames[:], ", ")}
}

// check wants one of the constants.
func (l Light) check(field string) error {
	if l < 0 || int(l) >= len(lightNames) {
		return &honestplate.InputError{Field: field, Got: l.String(), Want: "one of the lights of package colour"}
	}
	return nil
}

// cie.csv holds the colour matching functions of 1931 and the lights' power, a line a
// wavelength: colour-science/colour, its datasets of the CIE (read).
//
//go:embed cie.csv
var cieTable string

// weights of a light turn reflectance into XYZ: their y sums to 100.
type weights struct{ x, y, z Spectrum }

var lights = sync.OnceValue(func() *[len(lightNames)]weights {
	out := new([len(lightNames)]weights)
	columns := [...]int{D65: 6, D50: 5, A: 4, LEDB1: 7, LEDB3: 8, LEDB5: 9, LEDV2: 10}
	rows := strings.Split(strings.TrimSpace(cieTable), "\n")[1:]
	for i, row := range rows {
		var v [11]float64
		for j, field := range strings.Split(row, ",") {
			v[j], _ = strconv.ParseFloat(field, 64) // a test reads every figure again
		}
		for l := range out {
			power := v[columns[l]]
			out[l].x[i], out[l].y[i], out[l].z[i] = power*v[1], power*v[2], power*v[3]
		}
	}
	for l := range out {
		sum := 0.0
		for _, y := range out[l].y {
			sum += y
		}
		for i := range Samples {
			out[l].x[i] *= 100 / sum
			out[l].y[i] *= 100 / sum
			out[l].z[i] *= 100 / sum
		}
	}
	return out
})

// See returns what a surface of the reflectance given looks like under the light.
func (l Light) See(s *Spectrum) (XYZ, error) {
	if err := cmp.Or(l.check("Light"), s.check("Spectrum")); err != nil {
		return XYZ{}, err
	}
	w := &lights()[l]
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
