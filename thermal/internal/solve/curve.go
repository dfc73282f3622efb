package solve

import (
	"math"
	"sort"

	"example.org/honestplate"
)

// A Point is one point of a material's curve: degC, J/m3, W/(m K).
type Point struct{ TempC, Enthalpy, Conductivity float64 }

// compiled is a material's curve made ready: straight pieces of enthalpy against the
// Kirchhoff potential u, the integral of k dT. On piece j, h = base + slope u and
// T = temp[j] + (u-u[j])/k[j].
type Compiled struct {
	temp, u, h []float64
	k          []float64 // one fewer
	piece      []line    // one fewer
	given      []Point   // the points before they were divided
}

// A line is a piece of a compiled curve: what the solver reads together.
type line struct {
	slope, base float64
	low, high   float64 // potentials at its ends; the first and last reach to infinity
	perSlope    float64 // 1/slope
}

// kStep is the relative change of conductivity over which it is taken constant.
const kStep = 0.06

// Load fills the pieces with a curve, straight between points of rising temperature and
// enthalpy, whose enthalpies and conductivities are multiplied by factors. It keeps the
// slices for the next.
func Load[P ~struct{ TempC, Enthalpy, Conductivity float64 }](m *Compiled, curve []P, heat, conductivity float64) {
	c := m.given[:0]
	for _, p := range curve {
		q := Point(p)
		c = append(c, Point{q.TempC, q.Enthalpy * heat, q.Conductivity * conductivity})
	}
	m.temp, m.u, m.h = m.temp[:0], m.u[:0], m.h[:0]
	m.k, m.piece = m.k[:0], m.piece[:0]
	m.given = c
	u := 0.0
	m.temp, m.u, m.h = append(m.temp, c[0].TempC), append(m.u, 0), append(m.h, c[0].Enthalpy)
	for i := 1; i < len(c); i++ {
		a, b := c[i-1], c[i]
		ratio := math.Abs(math.Log(b.Conductivity / a.Conductivity))
		n := int(ratio/kStep) + 1
		for j := 1; j <= n; j++ {
			s, mid := float64(j)/float64(n), (float64(j)-0.5)/float64(n)
			t := a.TempC + s*(b.TempC-a.TempC)
			h := a.Enthalpy + s*(b.Enthalpy-a.Enthalpy)
			k := a.Conductivity + mid*(b.Conductivity-a.Conductivity)
			last := len(m.temp) - 1
			du := k * (t - m.temp[last])
			slope := (h - m.h[last]) / du
			m.k = append(m.k, k)
			m.piece = append(m.piece, line{slope, m.h[last] - slope*u, u, u + du, 1 / slope})
			u += du
			m.temp, m.u, m.h = append(m.temp, t), append(m.u, u), append(m.h, h)
		}
	}
	m.piece[0].low = math.Inf(-1)
	m.piece[len(m.piece)-1].high = math.Inf(1)
}

func (m *Compiled) last() int { return len(m.k) - 1 }

func (m *Compiled) Holds(field string, tempC float64) error {
	return honestplate.InRange(field, tempC, m.temp[0], m.temp[len(m.temp)-1], "degC", "the material's curve")
}

// find returns the piece that holds v among the ascending knots, the end
// pieces reaching on outwards.
func (m *Compiled) find(knots []float64, v float64) int {
	j := sort.SearchFloat64s(knots, v) - 1
	return min(max(j, 0), m.last())
}

// walk returns the piece that holds v among the knots, from one near it.
func (m *Compiled) walk(knots []float64, j int, v float64) int {
	for last := m.last(); j < last && v > knots[j+1]; {
		j++
	}
	for j > 0 && v < knots[j] {
		j--
	}
	return j
}

func (m *Compiled) walkU(j int, u float64) int { return m.walk(m.u, j, u) }
func (m *Compiled) walkH(j int, h float64) int { return m.walk(m.h, j, h) }

func (m *Compiled) PotentialAt(tempC float64) float64 {
	j := m.find(m.temp, tempC)
	return m.u[j] + m.k[j]*(tempC-m.temp[j])
}

func (m *Compiled) EnthalpyAt(tempC float64) float64 {
	j := m.find(m.temp, tempC)
	return m.h[j] + m.piece[j].slope*m.k[j]*(tempC-m.temp[j])
}

func (m *Compiled) TempOfEnthalpy(h float64) float64 {
	j := m.find(m.h, h)
	return m.tempOn(j, (h-m.piece[j].base)*m.piece[j].perSlope)
}

func (m *Compiled) tempOn(j int, u float64) float64 { return m.temp[j] + (u-m.u[j])/m.k[j] }

// below returns the enthalpy of the last given point below a temperature.
func (m *Compiled) below(tempC float64) float64 {
	i := sort.Search(len(m.given), func(i int) bool { return m.given[i].TempC >= tempC })
	return m.given[max(i-1, 0)].Enthalpy
}
