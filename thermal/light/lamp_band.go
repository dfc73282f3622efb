package light

import (
	"fmt"
	"math"
	"slices"

	"example.org/honestplate"
)

// known is the factor to which the irradiance of a lamp is known, with 95 %.
func (l Lamp) known() float64 {
	if l.Lux > 0 {
		return 1.35
	}
	_, factor := l.Head.share()
	return factor
}

// kin stands for the lamps that are wrong together: all that one light meter measured, all
// heads of one kind that burn the same source.
func (l Lamp) kin() Lamp {
	if l.Lux > 0 {
		return Lamp{Lux: 1}
	}
	return Lamp{Source: l.Source, Head: l.Head}
}

// Absorbed returns the W/m2 that a thing of this absorptance takes from the lamps
// together, where their light falls square on. Its band goes lamp by lamp: each counts by
// what of its light is absorbed, those of one kind err together and the others by
// themselves, which to first order adds squares.
func (a Absorptance) Absorbed(lamps ...Lamp) (honestplate.Estimate, error) {
	all := 0.0
	var kins []Lamp
	var parts []float64
	for i, l := range lamps {
		w, err := a.absorbed(l)
		if err != nil {
			return honestplate.Estimate{}, honestplate.In(fmt.Sprintf("Lamps[%d]", i), err)
		}
		k := slices.Index(kins, l.kin())
		if k < 0 {
			k, kins, parts = len(kins), append(kins, l.kin()), append(parts, 0)
		}
		all += w
		parts[k] += float64(w * math.Log(l.known()))
	}
	if all == 0 {
		return honestplate.Estimate{}, nil
	}
	squares := 0.0
	for _, p := range parts {
		squares += float64(p / all * p / all)
	}
	return honestplate.Factor(all, math.Exp(math.Sqrt(squares))), nil
}

// absorbed is what is taken from one lamp.
func (a Absorptance) absorbed(l Lamp) (float64, error) {
	parts, err := l.parts()
	if err != nil {
		return 0, err
	}
	sum := 0.0
	for _, p := range parts {
		if p.irradiance == 0 {
			continue
		}
		share, err := a.of(p.source)
		if err != nil {
			return 0, err
		}
		sum += share * p.irradiance
	}
	return sum, nil
}
