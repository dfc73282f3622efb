package look

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
	"example.org/honestplate/rheology/look/layer"
)

// A Scene is how a liquid lies before the lens.
type Scene struct {
	// Depth of the liquid in m, 0..10; left out, a pool without end, whose ground nothing
	// shows of.
	Depth honestplate.Optional `json:"depth_m,omitzero"`
	// Ground lies under the liquid, in contact with it: what it reflects within the
	// liquid. The zero value is black.
	Ground Ground `json:"ground"`
	// Light is the lamp; left out it is daylight, D65.
	Light colour.Light `json:"light,omitzero"`
	// Diffuse is light from all sides, as from a soft box; false is a beam.
	Diffuse bool `json:"diffuse"`
	// IncidenceDegrees is the angle of the beam from square on, 0..85.
	IncidenceDegrees float64 `json:"incidence_degrees"`
	// Glass is a clear plate or wall between the liquid and the lens.
	Glass bool `json:"glass"`
}

// glassIndex is that of ordinary glass.
const glassIndex = 1.52

// check wants a scene that can be.
func (s Scene) check() error {
	_, light := s.Light.White()
	return cmp.Or(honestplate.InRange("Depth", s.Depth.Or(0), 0, 10, "m", "a set; left out, it is a pool without end"),
		s.Ground.check("Ground"), light,
		honestplate.InRange("IncidenceDegrees", s.IncidenceDegrees, 0, 85, "degrees", "square on to grazing"))
}

// solve works out one wavelength: what a layer of the liquid returns over a ground, with
// scattering multiplied by scale.
func (s *Scene) solve(o *Optics, i int, scale float64, absorption *spectrum) (layer.Solved, error) {
	scattering := o.scattering[i] * scale
	out := scattering + absorption[i]
	slab := layer.Slab{Index: o.index}
	if s.Glass {
		slab.Glass = glassIndex
	}
	if depth := s.Depth.Or(math.Inf(1)); out > 0 && depth > 0 {
		slab.Albedo = min(scattering/out, 1)
		slab.Depth = out * depth
		if scattering > 0 {
			slab.Asymmetry = o.forward[i] / o.scattering[i]
		}
	}
	return slab.Solve(math.Cos(s.IncidenceDegrees * math.Pi / 180))
}

// spectra returns what comes back at every wavelength over each ground, worked out at each
// step-th sample and by straight lines between.
func (s *Scene) spectra(o *Optics, step int, scale float64, absorption *spectrum, grounds ...Ground) ([]colour.Spectrum, error) {
	out := make([]colour.Spectrum, len(grounds))
	for i := 0; i < colour.Samples; i += step {
		solved, err := s.solve(o, i, scale, absorption)
		if err != nil {
			return nil, err
		}
		for g, ground := range grounds {
			f, err := solved.Over(ground.at(colour.Wavelength(i)))
			if err != nil {
				return nil, err
			}
			r := &out[g]
			r[i] = min(f.BeamReflected, 1)
			if s.Diffuse {
				r[i] = min(f.DiffuseReflected, 1)
			}
			for j := 1; i > 0 && j < step; j++ {
				x := float64(j) / float64(step)
				r[i-j] = float64(x*r[i-step]) + float64((1-x)*r[i])
			}
		}
	}
	return out, nil
}
