package thermal

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
)

// A hold is how a ball of frozen dessert holds its melt and its shape: the melt that
// clings, g/m2, the share of the ball that has run off when its shape is lost, and how
// thick the thin edges and ridges are that a dipper leaves, m. All are engineering
// estimates.
type hold struct {
	cling, slump honestplate.Estimate
	fringe       float64
}

const (
	usualFringe = 2e-3    // m
	mostCling   = 50000.0 // g/m2; this and the next are the limits to what is asked of a mix
	mostSlump   = 0.95
	airyCling   = 5.0 // powers; see held
	airySlump   = 4.0
	airyFringe  = 1.5
)

// holds are those of the structures at an overrun of 60 %.
var holds = [...]hold{
	food.UnknownStructure:      {band(30, 100, 8000), band(0.05, 0.10, 0.7), usualFringe},
	food.NaturalStructure:      {band(30, 60, 180), band(0.05, 0.08, 0.15), usualFringe},
	food.StabilisedStructure:   {band(60, 200, 800), band(0.06, 0.12, 0.25), usualFringe},
	food.DestabilisedStructure: {band(250, 900, 20000), band(0.15, 0.35, 0.9), usualFringe},
}

// held is that at another overrun, by how much more its foam holds. That more air melts
// slower is published as an order only
// (Sofjan and Hartel 2004: 80 % drips faster than 100 and 120; Sakurai 1996: low overrun
// melts quickly; read at second hand); conduction alone says the opposite. The powers are
// those with which the order of the loss of shape and of a dipped scoop's first drip comes
// out right.
func held(s food.Structure, overrunPercent float64) hold {
	airy := func(power float64) float64 { return math.Pow((100+overrunPercent)/160, power) }
	atMost := func(e honestplate.Estimate, by, most float64) honestplate.Estimate {
		return band(min(by*e.Low, most), min(by*e.Likely, most), min(by*e.High, most))
	}
	h := holds[s] // checked
	return hold{atMost(h.cling, airy(airyCling), mostCling), atMost(h.slump, airy(airySlump), mostSlump), h.fringe * airy(airyFringe)}
}
