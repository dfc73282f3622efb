package colour

import (
	"math"
	"testing"
)

func FuzzColour(f *testing.F) {
	f.Add(20.0, 12.0, 5.0, 95.0, 100.0, 108.0)
	f.Add(0.0, 0.0, 0.0, 109.8, 100.0, 35.6)
	f.Fuzz(func(t *testing.T, x, y, z, wx, wy, wz float64) {
		c, white := XYZ{x, y, z}, XYZ{wx, wy, wz}
		finite := func(what string, v ...float64) {
			for _, v := range v {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s of %+v under %+v: %v", what, c, white, v)
				}
			}
		}
		lab, err := c.Lab(white)
		if err == nil {
			finite("Lab", lab.L, lab.A, lab.B)
			if d, err := Difference(lab, Lab{L: wx, A: wy, B: wz}); err == nil {
				finite("difference", d)
			}
		}
		if s, err := c.Swatch(white); err == nil && len(s.Hex()) != 7 {
			t.Errorf("%+v", s)
		}
	})
}

// A reflectance seen under a light has a colour that a screen can try.
func FuzzLight(f *testing.F) {
	f.Add("LED-B3", 0.9, 0.1, 40)
	f.Add("", 1.0, 0.0, 80)
	f.Fuzz(func(t *testing.T, light string, low, high float64, step int) {
		var s Spectrum
		for i := range s {
			s[i] = low
			if i > step {
				s[i] = high
			}
		}
		xyz, err := Light(light).See(&s)
		white, err2 := Light(light).White()
		if err != nil || err2 != nil {
			return
		}
		lab, err := xyz.Lab(white)
		if err != nil || !(lab.L >= 0 && lab.L <= 100+1e-9) {
			t.Errorf("%v of %g and %g: %+v, %v", Light(light), low, high, lab, err)
		}
		if _, err := xyz.Swatch(white); err != nil {
			t.Error(err)
		}
	})
}
