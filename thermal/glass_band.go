package thermal

import "time"

// The inputs whose uncertainty the band spans.
const (
	glassTemp = iota
	glassRH
	glassSpeed
	glassConvection
	glassInside
	glassEnds
	glassDrink
	glassLight
	glassHaze
	glassOpaque
	glassBeads
	glassRuns
	glassInputs
)

// sample runs once with the uncertain inputs at x.
func (g Glass) sample(a Air, light float64, x []float64, at []time.Duration) error {
	a.TempC, a.RH, a.Speed = x[glassTemp], x[glassRH], x[glassSpeed]
	g.InsideH, g.EndsH, g.DrinkC = x[glassInside], x[glassEnds], x[glassDrink]
	g.Stages.Haze.Likely, g.Stages.Opaque.Likely = x[glassHaze], x[glassOpaque]
	g.Stages.Beads.Likely, g.Stages.Runs.Likely = x[glassBeads], x[glassRuns]
	r, err := g.start(a, light*x[glassLight])
	if err != nil {
		return err
	}
	r.out.factor *= x[glassConvection]
	r.wet.factor *= x[glassConvection]
	if err := r.run(); err != nil {
		return err
	}
	copy(at, r.at[:])
	return nil
}

// intakeUncertain is how well the ways of the heat into the drink are known.
func (g Glass) intakeUncertain() (inside, ends Uncertain) {
	low, high := g.InsideH/3, g.InsideH*10/3
	if g.DrinkGrams == 0 {
		low, high = g.InsideH/2, g.InsideH*2
	}
	inside = Uncertain{Name: "heat transfer inside", Likely: g.InsideH, Low: low, High: high, Scale: true}
	ends = Uncertain{Name: "drink's surface and base", Likely: g.EndsH, Low: g.EndsH / 1.5, High: g.EndsH * 1.5, Scale: true}
	return inside, ends
}

func (g Glass) uncertain(a Air, lamps []Lamp) []Uncertain {
	in := make([]Uncertain, glassInputs)
	in[glassTemp], in[glassRH], in[glassSpeed], in[glassConvection] = roomUncertain(a)
	in[glassInside], in[glassEnds] = g.intakeUncertain()
	in[glassDrink] = Uncertain{Name: "drink temperature", Likely: g.DrinkC, Low: g.DrinkC - 1, High: g.DrinkC + 1, Min: 0, Max: 100}
	lightLow, lightHigh := LightBand(lamps...)
	in[glassLight] = Uncertain{Name: "light", Likely: 1, Low: lightLow, High: lightHigh, Scale: true}
	for i, s := range g.Stages.list() {
		u := s.uncertain("what counts as " + stageNames[i])
		u.Scale = true
		in[glassHaze+i] = u
	}
	return in
}
