package colour

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
)

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// A grey is grey under every light, and its lightness is that of its reflectance.
func TestGreyIsGrey(t *testing.T) {
	for _, l := range all {
		white := must[XYZ](t)(l.White())
		if math.Abs(white.Y-100) > 1e-9 {
			t.Errorf("%v: white has Y %g", l, white.Y)
		}
		for _, r := range []float64{0, 0.001, 0.18, 0.9, 1} {
			grey := flat(r)
			lab := must[Lab](t)(must[XYZ](t)(l.See(&grey)).Lab(white))
			want := 116*math.Cbrt(r) - 16
			if r < 0.008856 {
				want = 903.2963 * r
			}
			if math.Abs(lab.L-want) > 1e-4 || math.Hypot(lab.A, lab.B) > 1e-9 {
				t.Errorf("%v, reflectance %g: %+v, want L* %.4f", l, r, lab, want)
			}
			s := must[Swatch](t)(must[XYZ](t)(l.See(&grey)).Swatch(white))
			if !s.Shown || max(s.R, s.G, s.B)-min(s.R, s.G, s.B) > 1 {
				t.Errorf("%v: grey of %g is shown as %s", l, r, s.Hex())
			}
		}
		if s := must[Swatch](t)(white.Swatch(white)); s.Hex() != "#ffffff" {
			t.Errorf("%v: white is shown as %s", l, s.Hex())
		}
		black := XYZ{}
		if s := must[Swatch](t)(black.Swatch(white)); s.Hex() != "#000000" {
			t.Errorf("%v: black is shown as %s", l, s.Hex())
		}
	}
}

// sRGB's definition: the linear step and the power meet, and 18 % grey is 118.
func TestSwatchOfMiddleGrey(t *testing.T) {
	white := must[XYZ](t)(D65.White())
	s := must[Swatch](t)(XYZ{0.18 * white.X, 0.18 * white.Y, 0.18 * white.Z}.Swatch(white))
	if s.Hex() != "#767676" {
		t.Errorf("18 %% grey is %s, want #767676", s.Hex())
	}
	if s := must[Swatch](t)(XYZ{5, 40, 5}.Swatch(white)); s.Shown {
		t.Errorf("a green beyond the screen is called shown: %+v", s)
	}
}

// Take the blue away and it is yellower, warmer light or not.
func TestLessBlueIsYellower(t *testing.T) {
	for _, l := range all {
		white := must[XYZ](t)(l.White())
		last := -1.0
		for _, depth := range []float64{0, 0.1, 0.3, 0.6} {
			s := flat(0.9)
			for i := range s {
				if Wavelength(i) < 500 {
					s[i] -= depth
				}
			}
			lab := must[Lab](t)(must[XYZ](t)(l.See(&s)).Lab(white))
			if lab.B <= last {
				t.Errorf("%v: b* %.2f after %.2f", l, lab.B, last)
			}
			last = lab.B
		}
	}
}

func TestDifferenceIsSymmetricAndZeroAtHome(t *testing.T) {
	colours := []Lab{{50, 2.6, -79}, {92, -2, 8}, {0, 0, 0}, {100, 0, 0}, {30, 40, -40}, {60, -34, 36}}
	for _, p := range colours {
		for _, q := range colours {
			there, back := must[float64](t)(Difference(p, q)), must[float64](t)(Difference(q, p))
			if math.Abs(there-back) > 1e-9 || (p == q) != (there == 0) {
				t.Errorf("%+v to %+v: %g there, %g back", p, q, there, back)
			}
		}
	}
}

// A light that is left out is daylight.
func TestNoLightIsDaylight(t *testing.T) {
	if got, want := must[XYZ](t)(Light("").White()), must[XYZ](t)(D65.White()); got != want {
		t.Errorf("%+v, daylight is %+v", got, want)
	}
}

func TestNonsenseIsRefused(t *testing.T) {
	white := must[XYZ](t)(D65.White())
	nan, inf := math.NaN(), math.Inf(1)
	spectrum := flat(0.5)
	spectrum[40] = nan
	over := flat(1.5)
	for name, call := range map[string]func() error{
		"no number in a spectrum": func() error { _, err := D65.See(&spectrum); return err },
		"more than all":           func() error { _, err := D65.See(&over); return err },
		"no light":                func() error { s := flat(1); _, err := Light("noon").See(&s); return err },
		"no light's white":        func() error { _, err := Light("d65").White(); return err },
		"lab":                     func() error { _, err := XYZ{nan, 1, 1}.Lab(white); return err },
		"lab's white":             func() error { _, err := XYZ{1, 1, 1}.Lab(XYZ{}); return err },
		"negative light":          func() error { _, err := XYZ{-1, 1, 1}.Swatch(white); return err },
		"swatch's white":          func() error { _, err := XYZ{1, 1, 1}.Swatch(XYZ{1, 1, inf}); return err },
		"impossible white":        func() error { _, err := XYZ{1, 1, 1}.Swatch(XYZ{500, 2, 2}); return err },
		"difference":              func() error { _, err := Difference(Lab{nan, 0, 0}, Lab{}); return err },
	} {
		err := call()
		if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

var all = []Light{D65, D50, A, LEDB1, LEDB3, LEDB5, LEDV2}
