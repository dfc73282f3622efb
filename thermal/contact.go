package thermal

import (
	"math"

	"example.org/honestplate/thermal/ware"
)

// A restingSurface is the exchange law of what lies on something, or of the foot that
// touches it.
type restingSurface struct {
	air     *fluxTable // nil for the foot
	light   float64    // absorbed, W/m2 of this surface
	share   float64    // of the surface that lies on it
	contact contact
}

func (s *restingSurface) At(surfaceC, seconds float64) (flux, slope float64) {
	if s.air != nil {
		flux, slope = s.air.at(surfaceC)
		flux, slope = (1-s.share)*flux+s.light, (1-s.share)*slope
	}
	if s.share > 0 {
		h, t := s.contact.at(seconds)
		flux += s.share * h * (t - surfaceC)
		slope -= s.share * h
	}
	return flux, slope
}

// A contact is the plate or table as the food feels it: a film of poor contact in
// series with what the material can bring up, and its own warming.
type contact struct {
	film   float64 // W/(m2 K)
	effuse float64 // sqrt(k rho c), W s^0.5/(m2 K); 0 for a cone
	behind float64 // what comes through from the room behind, W/(m2 K)
	startC float64
	roomC  float64
}

const (
	// A glazed stoneware plate: k 1.5 W/(m K), rho c 2.1e6 J/(m3 K) (textbook values
	// for stoneware, from memory), 7 mm thick: once chilled it warms in the room, both
	// faces taking 10 W/(m2 K), with a time constant of rho c d/20 = 735 s.
	plateEffusivity = 1775.0
	plateBehind     = 8.0
	plateWarms      = 735.0
	// Frozen dessert on a plate touches in spots and then through its own melt
	// (engineering estimate, x/:2).
	plateFilm = 300.0
)

func (c *contact) at(seconds float64) (h, tempC float64) {
	tempC = c.startC
	if c.startC != c.roomC {
		tempC = c.roomC + (c.startC-c.roomC)*math.Exp(-seconds/plateWarms)
	}
	return 1 / (1/c.film + 1/(c.behind+c.effuse/math.Sqrt(math.Pi*(seconds+1e-3)))), tempC
}

// under is the contact of a body of the half-width across, m, with the top at roomC
// through a film: heat reaches it straight from below, falling off as the top cools, and
// from all sides, as it flows to a disc on a thick body (4 k/(pi a), steady; Carslaw and
// Jaeger 1959, Conduction of Heat in Solids, section 8.2, from memory). What the top
// brings is that times a factor.
func under(t ware.Tabletop, brings, film, halfWidth, roomC float64) contact {
	m, _, _ := t.Material() // checked; of a rack none
	return contact{film: film, startC: roomC, roomC: roomC, behind: 4 * m.Conductivity / (math.Pi * halfWidth) * brings,
		effuse: math.Sqrt(m.Conductivity*m.Density*m.SpecificHeat) * brings}
}
