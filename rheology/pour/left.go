package pour

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
)

// filmFactor is the band of the film that stays: the wall's shape, its wetting and
// what runs down while the vessel is held (estimated, no source).
const filmFactor = 1.6

// left computes what stays on the wall and in the bore after volume m3 left in the
// given time. The wall is that of an upright cylinder of the vessel's SurfaceArea, or
// without one of a beaker as tall as it is wide that holds the volume, pi d3/4.
func (p *Pour) left(volume, seconds float64) error {
	o := &p.out
	height := math.Cbrt(4 * volume / math.Pi)
	wall := 1.25 * math.Pi * height * height
	if p.surface > 0 {
		height = p.first - p.last
		wall = 2 * math.Sqrt(math.Pi*p.surface) * height
	}
	// The wall drains slowly, so a liquid that thins is read at rest, not at the
	// rate of the pour.
	film, err := p.fluid(o.eta).DraggedFilm(height / seconds)
	if err != nil {
		return err
	}
	film = max(film, p.yield.Likely/(o.rho*physics.Gravity))
	// No film is thicker than what was poured, spread over the wall.
	kept := min(wall*film, volume)
	if o.bore > 0 {
		kept += math.Pi * o.bore * o.length * min(film, o.bore/4)
	}
	p.LeftGrams = honestplate.Factor(kept*o.rho*1000, filmFactor)
	return nil
}
