package thermal

import (
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/ware"
)

// softFilm is the contact of soft food with what it lies on, W/(m2 K): it touches
// closely, over a foil or a rough spot here and there (engineering estimate, x/:2).
const softFilm = 200.0

// A slabFlank is what a square slab takes beside its top, per square metre of that: at
// its edges from the room, at its foot from the table.
type slabFlank struct {
	edge  fluxTable
	faces []float64 // heights of the cells' faces, m
	round float64   // edge by height and by area of the top, 1/m
	below contact
	half  float64 // of the lowest cell, m2 K/W
	rack  bool
}

func (s *slabFlank) prepare(m *softModel, faces []float64) error {
	p := m.s
	ex, err := heat.Surface{Shape: heat.VerticalPlate, Length: p.Thickness, Activity: p.Food.Activity, ConvectionFactor: m.convection}.In(m.air.moist())
	s.edge.reset(ex)
	s.faces, s.round = faces, 4/p.Across
	s.rack = p.Below == ware.WireRack
	s.below = under(p.Below, m.table, softFilm*m.contact, p.Across/math.Sqrt(math.Pi), m.air.TempC)
	s.half = faces[1] / 2 / (p.Food.Conductivity * m.k)
	return err
}

// at is the law of the solver's flanks.
func (s *slabFlank) at(cell int, tempC, seconds float64) (flux, slope float64) {
	q, dq := s.edge.at(tempC)
	share := s.round * (s.faces[cell+1] - s.faces[cell])
	flux, slope = share*q, share*dq
	switch {
	case cell > 0:
	case s.rack:
		flux, slope = flux+q, slope+dq
	default:
		h, t := s.below.at(seconds)
		h = 1 / (1/h + s.half)
		flux, slope = flux+h*(t-tempC), slope-h
	}
	return flux, slope
}
