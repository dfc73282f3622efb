package light

import (
	"math"
)

// known is the factor to which the irradiance of a lamp is known, with 95 %.
func (l Lamp) known() float64 {
	switch {
	case l.Lux > 0:
		return 1.35
	case l.BeamShare > 0:
		return 1.5
	case l.Head < OpenFace || l.Head > PAR:
		return 1
	}
	_, f := l.Head.share()
	return f
}

// A kin are lamps that are wrong together: all that one light meter measured, all heads
// of one kind that burn the same source.
type kin struct {
	measured, shared bool
	source           Source
	head             Head
}

func (l Lamp) kin() kin {
	if l.Lux > 0 {
		return kin{measured: true}
	}
	return kin{shared: l.BeamShare > 0, source: l.Source, head: l.Head}
}

// Known returns the factors between which the true light that is absorbed lies with
// 95 %, lamp by lamp: each counts by what of its light is absorbed (of all of it, where
// nothing absorbs), those of one kin err together and the others by themselves. 1 and 1
// without lamps.
func (a Absorptance) Known(lamps ...Lamp) (low, high float64, err error) {
	if _, err := a.Absorbed(lamps...); err != nil {
		return 0, 0, err
	}
	spread := lightSpread(lamps, func(l Lamp) float64 {
		absorbed, _ := a.Absorbed(l) // checked
		return absorbed
	})
	if math.IsNaN(spread) {
		spread = lightSpread(lamps, func(l Lamp) float64 {
			e, _ := l.Irradiance()
			return e.Likely
		})
	}
	if math.IsNaN(spread) {
		return 1, 1, nil
	}
	return math.Exp(-spread), math.Exp(spread), nil
}

// lightSpread is the logarithm of the factor of lamps of these weights: to first order
// that of a sum of independent parts. NaN where there is no weight.
func lightSpread(lamps []Lamp, weight func(Lamp) float64) float64 {
	all := 0.0
	var kins []kin
	var parts []float64
next:
	for _, l := range lamps {
		w := weight(l)
		all += w
		part := float64(w * math.Log(l.known()))
		for i, k := range kins {
			if k == l.kin() {
				parts[i] += part
				continue next
			}
		}
		kins, parts = append(kins, l.kin()), append(parts, part)
	}
	squares := 0.0
	for _, p := range parts {
		squares += float64(p / all * p / all)
	}
	return math.Sqrt(squares)
}
