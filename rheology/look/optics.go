package look

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
)

// A spectrum is a quantity at the wavelengths of a colour.Spectrum.
type spectrum [colour.Samples]float64

// Optics is what light meets in a liquid, over the visible: made by [Milk.Optics] or
// [Mix], and asked how it looks, how it hides, what it is at one wavelength. It is worked
// out once and used often.
type Optics struct {
	scattering spectrum // 1/m
	forward    spectrum // scattering times asymmetry, 1/m
	absorption spectrum // 1/m
	// pale and yellow are the least and the most absorption that what was left out
	// allows.
	pale, yellow spectrum
	index        float64
	factor       float64 // scattering is known to x/ this, 95 %
	deepL        float64 // half band of L* of a wide deep pool
}

// MarshalJSON refuses: send the [Milk], and work it out there.
func (o Optics) MarshalJSON() ([]byte, error) {
	return nil, &honestplate.InputError{Field: "Optics", Got: "a worked out spectrum",
		Want: "its Milk on the wire"}
}

// Coefficients of a liquid at one wavelength.
type Coefficients struct {
	Scattering float64 `json:"scattering_per_m"` // 1/m
	Asymmetry  float64 `json:"asymmetry"`        // mean cosine of the angle
	// ReducedScattering is scattering times (1 - asymmetry), 1/m. Its band reaches from a
	// factor of 1.2 for milk whose homogenisation is given to 2 for cream.
	ReducedScattering honestplate.Estimate `json:"reduced_scattering_per_m"`
	Absorption        float64              `json:"absorption_per_m"` // 1/m
}

// At returns the coefficients at a wavelength in nm, 380..780, between the samples by
// straight lines.
func (o *Optics) At(nm float64) (Coefficients, error) {
	if err := cmp.Or(o.check(), honestplate.InRange("nm", nm, 380, 780, "nm", "the tables of the CIE")); err != nil {
		return Coefficients{}, err
	}
	x := (nm - 380) / 5
	i := min(int(x), colour.Samples-2)
	f := x - float64(i)
	between := func(s *spectrum) float64 { return float64((1-f)*s[i]) + float64(f*s[i+1]) }
	c := Coefficients{Scattering: between(&o.scattering), Absorption: between(&o.absorption)}
	if forward := between(&o.forward); c.Scattering > 0 {
		c.Asymmetry = forward / c.Scattering
		c.ReducedScattering = honestplate.Factor(c.Scattering-forward, o.factor)
	}
	return c, nil
}

// check wants optics that were made, not the zero value.
func (o *Optics) check() error {
	if o == nil || o.index == 0 {
		return &honestplate.InputError{Field: "Optics", Got: "empty",
			Want: "what Milk.Optics or Mix returned"}
	}
	return nil
}

// A Part is one liquid of a mixture.
type Part struct {
	Optics Optics  // of the liquid
	Volume float64 // in any unit, the same for all parts; 0 or more
}

// Mix returns the optics of liquids stirred together: what each scatters and absorbs,
// by its share of the volume. Globules keep the size that they had.
func Mix(parts ...Part) (Optics, error) {
	total := 0.0
	for i, p := range parts {
		place := fmt.Sprintf("parts[%d]", i)
		if err := cmp.Or(honestplate.InRange(place+".Volume", p.Volume, 0, 1e12, "", "what can be measured out"), honestplate.In(place, p.Optics.check())); err != nil {
			return Optics{}, err
		}
		total += p.Volume
	}
	if total == 0 {
		return Optics{}, &honestplate.InputError{Field: "parts", Got: "no volume at all",
			Want: "at least one part with a volume"}
	}
	var out Optics
	var weight, factor float64
	for _, p := range parts {
		share := p.Volume / total
		if share == 0 {
			continue
		}
		for i := range colour.Samples {
			out.scattering[i] += float64(share * p.Optics.scattering[i])
			out.forward[i] += float64(share * p.Optics.forward[i])
			out.absorption[i] += float64(share * p.Optics.absorption[i])
			out.pale[i] += float64(share * p.Optics.pale[i])
			out.yellow[i] += float64(share * p.Optics.yellow[i])
		}
		out.index += float64(share * p.Optics.index)
		// What scatters most decides how well the whole is known.
		w := share * (p.Optics.scattering[green] - p.Optics.forward[green] + 1)
		weight += w
		factor += w * math.Log(p.Optics.factor)
		out.deepL += w * p.Optics.deepL
	}
	out.factor = math.Exp(factor / weight)
	out.deepL /= weight
	return out, nil
}

// green is the sample at 550 nm.
const green = 34
