package food

import (
	"math"
	"sort"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
)

// An EnthalpyCurve says how a frozen food takes up heat: enthalpy, temperature,
// ice and conductivity, one for another. It is made once, by FrozenMix.Curve, and
// then read quickly; it does not change and may be shared. The zero value answers with
// an [honestplate.InputError].
//
// Enthalpy is in J per kg of mix (air weighs nothing), 0 for the wholly melted mix
// at 0 degC. The range is -90..90 degC; the freezing curve itself is published to
// about -17 degC and carried on below (see SucroseDepression).
type EnthalpyCurve struct {
	low, step, perStep float64 // enthalpy of the first node, spacing, 1/spacing
	nodes              []curveNode
	ice                []float64 // kg per kg of mix at the nodes
	freezeC            float64
	freezeH            float64
	density            float64
}

// curveNode keeps what a solver reads together on one cache line.
type curveNode struct{ tempC, k float64 }

// curvePoint is one point of a curve before it is laid on even steps.
type curvePoint struct{ h, tempC, ice, k float64 }

// ColdestC is the coldest that an [EnthalpyCurve] reaches, degC.
const ColdestC = -90.0

const (
	curveNodes = 1024
	hottest    = 90.0
	curveSpan  = "range of the enthalpy curve"
)

// newCurve lays points in order of rising enthalpy on even steps. The point of
// index freeze falls on a node, so that the corner there, where melting ends, is
// kept sharp. Temperature may stay level (a pure substance melting) but not fall.
func newCurve(points []curvePoint, freeze int, density float64) *EnthalpyCurve {
	first, last := points[0], points[len(points)-1]
	step := (last.h - first.h) / (curveNodes - 2)
	below := math.Round((points[freeze].h - first.h) / step)
	step = (points[freeze].h - first.h) / below
	c := &EnthalpyCurve{
		low: first.h, step: step, perStep: 1 / step,
		nodes:   make([]curveNode, curveNodes),
		ice:     make([]float64, curveNodes),
		freezeC: points[freeze].tempC, freezeH: points[freeze].h,
		density: density,
	}
	j := 0
	for i := range c.nodes {
		h := c.low + float64(i)*step
		if i == int(below) {
			h = c.freezeH
		}
		for j < len(points)-2 && points[j+1].h <= h {
			j++
		}
		a, b := points[j], points[j+1]
		f := (h - a.h) / (b.h - a.h)
		c.nodes[i] = curveNode{a.tempC + f*(b.tempC-a.tempC), a.k + f*(b.k-a.k)}
		c.ice[i] = max(0, a.ice+f*(b.ice-a.ice))
	}
	return c
}

// at returns temperature and conductivity at an enthalpy, for solvers: no check,
// straight on beyond the ends.
func (c *EnthalpyCurve) at(h float64) (tempC, k float64) {
	i, f := c.find(h)
	a, b := &c.nodes[i], &c.nodes[i+1]
	return a.tempC + f*(b.tempC-a.tempC), a.k + f*(b.k-a.k)
}

// temp is at without the conductivity.
func (c *EnthalpyCurve) temp(h float64) float64 {
	i, f := c.find(h)
	return c.nodes[i].tempC + f*(c.nodes[i+1].tempC-c.nodes[i].tempC)
}

// iceAt returns the ice, kg per kg of mix, at an enthalpy; no check.
func (c *EnthalpyCurve) iceAt(h float64) float64 {
	i, f := c.find(h)
	return max(0, c.ice[i]+f*(c.ice[i+1]-c.ice[i]))
}

func (c *EnthalpyCurve) find(h float64) (int, float64) {
	x := (h - c.low) * c.perStep
	i := min(max(int(x), 0), len(c.nodes)-2)
	return i, x - float64(i)
}

// enthalpy is the inverse of temp; at a level stretch, its end of lowest
// enthalpy.
func (c *EnthalpyCurve) enthalpy(tempC float64) float64 {
	i := c.cell(tempC)
	a, b := c.nodes[i].tempC, c.nodes[i+1].tempC
	return c.low + c.step*(float64(i)+(tempC-a)/(b-a))
}

// cell returns the cell that holds tempC, its upper end included.
func (c *EnthalpyCurve) cell(tempC float64) int {
	i := sort.Search(len(c.nodes), func(i int) bool { return c.nodes[i].tempC >= tempC })
	return min(max(i-1, 0), len(c.nodes)-2)
}

// Enthalpy returns the enthalpy, J/kg of mix, at tempC, -90..90 degC, else a
// [honestplate.RangeError].
func (c *EnthalpyCurve) Enthalpy(tempC float64) (float64, error) {
	if err := c.checkTemp(tempC); err != nil {
		return 0, err
	}
	return c.enthalpy(tempC), nil
}

// IceFraction returns the ice, kg per kg of mix, at tempC, -90..90 degC, else a
// [honestplate.RangeError].
func (c *EnthalpyCurve) IceFraction(tempC float64) (float64, error) {
	if err := c.checkTemp(tempC); err != nil {
		return 0, err
	}
	return c.iceAt(c.enthalpy(tempC)), nil
}

// conductivity returns the thermal conductivity, W/(m K), at tempC, -90..90 degC,
// else a [honestplate.RangeError].
func (c *EnthalpyCurve) conductivity(tempC float64) (float64, error) {
	if err := c.checkTemp(tempC); err != nil {
		return 0, err
	}
	_, k := c.at(c.enthalpy(tempC))
	return k, nil
}

func (c *EnthalpyCurve) checkTemp(tempC float64) error {
	if c == nil || len(c.nodes) == 0 {
		return &honestplate.InputError{Field: "EnthalpyCurve", Got: "empty", Want: "one made by FrozenMix.Curve"}
	}
	return honestplate.InRange("TempC", tempC, c.nodes[0].tempC, c.nodes[len(c.nodes)-1].tempC, "degC", curveSpan)
}

// Points thins the curve to points evenly spread in enthalpy, by volume, with
// the corner at the freezing point kept.
func (c *EnthalpyCurve) Points() heat.Curve {
	const frozen = 48
	points := make(heat.Curve, 0, frozen+12)
	add := func(tempC float64) {
		h := c.enthalpy(tempC)
		_, k := c.at(h)
		points = append(points, heat.CurvePoint{TempC: tempC, Enthalpy: h * c.density, Conductivity: k})
	}
	const deep = -40
	for _, t := range []float64{-89, -75, -60, -50} {
		add(t)
	}
	low, high := c.enthalpy(deep), c.freezeH
	last := math.Inf(-1)
	for i := range frozen {
		t := c.temp(low + (high-low)*float64(i)/float64(frozen))
		if t > last+1e-4 {
			add(t)
			last = t
		}
	}
	for _, t := range []float64{c.freezeC, 5, 20, 40, 65, 89} {
		if t == c.freezeC || t > c.freezeC+1 {
			add(t)
		}
	}
	return points
}
