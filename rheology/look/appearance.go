package look

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
)

// An Appearance is what the lens gets of a liquid, its surface reflection included, and
// the white of the light as white.
type Appearance struct {
	Lab       colour.Lab           `json:"lab"`       // likely
	Lightness honestplate.Estimate `json:"lightness"` // L*
	Green     honestplate.Estimate `json:"green"`     // a*, negative is green
	Yellow    honestplate.Estimate `json:"yellow"`    // b*, positive is yellow
	Swatch    colour.Swatch        `json:"swatch"`    // likely, for people who look
	// Together are the colours if scattering is as low and as high as its band allows:
	// the two liquids of a comparison err the same way.
	Together [2]colour.Lab `json:"together"`
}

// seen is a colour, with the white that it is relative to.
type seen struct {
	xyz, white colour.XYZ
	lab        colour.Lab
}

// colour is the likely colour alone.
func (o *Optics) colour(s Scene) (seen, error) {
	if err := cmp.Or(o.check(), s.check()); err != nil {
		return seen{}, err
	}
	return s.see(o, 1, 1, &o.absorption)
}

// see returns the colour, the spectrum worked out at each step-th sample.
func (s *Scene) see(o *Optics, step int, scale float64, absorption *spectrum) (c seen, err error) {
	back, err := s.spectra(o, step, scale, absorption, s.Ground)
	if err != nil {
		return seen{}, err
	}
	var err1, err2 error
	c.white, err1 = s.Light.White()
	c.xyz, err2 = s.Light.See(&back[0])
	c.lab, err = c.xyz.Lab(c.white)
	return c, cmp.Or(err1, err2, err)
}

// bandStep is the step in samples at which bands are worked out: 40 nm.
const bandStep = 8

// Appear returns how the liquid looks, with its band.
//
// The band of L* is what the factor of the scattering moves, and no narrower than what a
// wide pool is known to: 1.5 for whole milk and cream, 4 for skim and low fat. That of b* is
// 3 and what carotene that was not given moves; that of a* is 3. The surface is taken as
// wide and level: a colorimeter looks through a small port past which light leaks, and
// reads milk darker, skim by 13 of L*. Do not compare the two.
func (o *Optics) Appear(s Scene) (Appearance, error) {
	likely, err := o.colour(s)
	if err != nil {
		return Appearance{}, err
	}
	lab := likely.lab
	out := Appearance{Lab: lab}
	if out.Swatch, err = likely.xyz.Swatch(likely.white); err != nil {
		return Appearance{}, err
	}
	middle, err := s.see(o, bandStep, 1, &o.absorption)
	if err != nil {
		return Appearance{}, err
	}
	moved := func(scale float64, absorption *spectrum) (colour.Lab, error) {
		c, err := s.see(o, bandStep, scale, absorption)
		return colour.Lab{L: lab.L + c.lab.L - middle.lab.L, A: lab.A + c.lab.A - middle.lab.A, B: lab.B + c.lab.B - middle.lab.B}, err
	}
	for i, scale := range []float64{1 / o.factor, o.factor} {
		if out.Together[i], err = moved(scale, &o.absorption); err != nil {
			return Appearance{}, err
		}
	}
	least, most := 0.0, 0.0 // of b*, by carotene
	if o.pale != o.yellow {
		pale, err := moved(1, &o.pale)
		yellow, err2 := moved(1, &o.yellow)
		if err := cmp.Or(err, err2); err != nil {
			return Appearance{}, err
		}
		least, most = max(0, lab.B-pale.B), max(0, yellow.B-lab.B)
	}
	low, high := out.Together[0], out.Together[1]
	out.Lightness = honestplate.Estimate{
		Low:    max(0, min(low.L, high.L, lab.L-o.deepL)),
		Likely: lab.L,
		High:   min(100, max(low.L, high.L, lab.L+o.deepL)),
	}
	out.Green = around(lab.A, low.A, high.A, colourBand, colourBand)
	out.Yellow = around(lab.B, low.B, high.B, math.Hypot(colourBand, least), math.Hypot(colourBand, most))
	return out, nil
}

// colourBand is half the band of a* and b* of milk.
const colourBand = 3

// around is a band about v that holds a and b and reaches below and above.
func around(v, a, b, below, above float64) honestplate.Estimate {
	return honestplate.Estimate{Low: min(a, b, v-below), Likely: v, High: max(a, b, v+above)}
}

// A Comparison says how one liquid looks beside another.
type Comparison struct {
	Difference honestplate.Estimate `json:"difference"` // CIEDE2000
	// Eye says how the likely difference is seen: "not seen" below 0.5, "slightly
	// noticeable" to 1.5 (side by side, if one looks for it), "noticeable" to 3 (side by
	// side), "well visible" above (at a glance). 0.5 to 1.5 and 1.5 to 3 are from a study of
	// plant drinks (abstract of pubmed 37424587, read; its formula of difference is not said).
	Eye    string     `json:"eye"`
	First  Appearance `json:"first"`  // of the two, the one asked
	Second Appearance `json:"second"` // the one beside it
}

// Beside returns how a liquid looks beside another in one scene. The band is for
// scattering that is off the same way in both, as it is where one model stands for two
// liquids of one kind; homogenisation that differs and was not given adds to it.
func (o *Optics) Beside(other *Optics, s Scene) (Comparison, error) {
	first, err := o.Appear(s)
	if err != nil {
		return Comparison{}, err
	}
	second, err := other.Appear(s)
	if err != nil {
		return Comparison{}, honestplate.In("other", err)
	}
	out := Comparison{First: first, Second: second}
	d := &out.Difference
	if d.Likely, err = colour.Difference(first.Lab, second.Lab); err != nil {
		return Comparison{}, err
	}
	d.Low, d.High = d.Likely, d.Likely
	for i := range first.Together {
		v, err := colour.Difference(first.Together[i], second.Together[i])
		if err != nil {
			return Comparison{}, err
		}
		d.Low, d.High = min(d.Low, v), max(d.High, v)
	}
	out.Eye = noticed(d.Likely)
	return out, nil
}

// noticed says whether an eye sees a colour difference of CIEDE2000.
func noticed(difference float64) string {
	switch {
	case difference > 3:
		return "well visible"
	case difference > 1.5:
		return "noticeable"
	case difference > 0.5:
		return "slightly noticeable"
	}
	return "not seen"
}
