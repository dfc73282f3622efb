package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Stock is one of the liquids at hand for a Program.
type Stock struct {
	Liquid     Liquid  // what it is
	MinGrams   float64 // at least this much in the batch
	MaxGrams   float64 // at most this much; 0 is no limit
	CostPerKg  float64 // in any currency, 0 or more
	Advertised bool    // the advertised product: a program that holds it is refused
}

// A Program is a recipe of any number of liquids: the cheapest batch of the wanted
// viscosity, or the one with the least of one liquid, within limits for each. It
// mixes by LogMass, whose logarithm of the viscosity is linear in the mass
// fractions, so that the best batch is the solution of a linear program:
//
//	minimise  sum c_i w_i
//	such that sum w_i = 1,  sum w_i ln eta_i = ln eta,  min_i <= w_i <= max_i
//
// What is said of LogMass holds all the more for liquids of different kinds: mix,
// measure, correct.
type Program struct {
	Stock      []Stock // the liquids at hand, at most 32
	BatchGrams float64 // the total; a whole number of steps
	StepGrams  float64 // the scale's step
	TempC      float64 // at which the viscosity is wanted, degC
}

// A Plan is what a Program says to weigh out.
type Plan struct {
	Grams     []float64            // of each stock in turn; whole steps, their sum the batch
	Cost      float64              // of the batch, in the currency of CostPerKg
	TargetPaS float64              // Pa s
	Predicted honestplate.Estimate // Pa s, of the mix in whole steps
	Mix       Mix                  // the same as a liquid
}

// bounded is a Program with what the arithmetic needs of it.
type bounded struct {
	ln       []float64 // ln viscosity of each stock
	min, max []int     // steps
	steps    int
}

func (p Program) bounded() (bounded, error) {
	var b bounded
	n := len(p.Stock)
	if n == 0 || n > maxParts {
		return b, check.Input("number of liquids", float64(n), "", fmt.Sprintf("1 to %d", maxParts))
	}
	var names []string
	for i, s := range p.Stock {
		if s.Liquid == nil {
			return b, check.Missing(fmt.Sprintf("liquid %d", i+1), "a liquid, not nil")
		}
		if s.Advertised {
			names = append(names, s.Liquid.Describe().Name)
		}
	}
	if names != nil {
		return b, advertised(names...)
	}
	var err error
	if b.steps, err = (Recipe{BatchGrams: p.BatchGrams, StepGrams: p.StepGrams}).steps(); err != nil {
		return b, err
	}
	var least, most int
	for i, s := range p.Stock {
		name := s.Liquid.Describe().Name
		if err := honestplate.NotNegative("cost of "+name, s.CostPerKg, "per kg"); err != nil {
			return b, err
		}
		low, high, err := p.limits(i, b.steps)
		if err != nil {
			return b, err
		}
		ln, _, _, err := lnViscosity(s.Liquid, p.TempC, -1)
		if err != nil {
			return b, err
		}
		b.ln, b.min, b.max = append(b.ln, ln), append(b.min, low), append(b.max, high)
		least, most = least+low, most+high
	}
	if least > b.steps {
		return b, check.Input("sum of the least amounts", gramsOf(least, p.StepGrams), "g", fmt.Sprintf("at most the batch, %.6g g", p.BatchGrams))
	}
	if most < b.steps {
		return b, check.Input("sum of the largest amounts", gramsOf(most, p.StepGrams), "g", fmt.Sprintf("at least the batch, %.6g g", p.BatchGrams))
	}
	return b, nil
}

// limits returns the limits of a stock in whole steps, drawn inwards.
func (p Program) limits(i, steps int) (low, high int, err error) {
	s := p.Stock[i]
	name := s.Liquid.Describe().Name
	if err := honestplate.NotNegative("least amount of "+name, s.MinGrams, "g"); err != nil {
		return 0, 0, err
	}
	if err := honestplate.NotNegative("largest amount of "+name, s.MaxGrams, "g"); err != nil {
		return 0, 0, err
	}
	// A billionth of a step forgives a limit such as 0.3 g on a scale of 0.1 g.
	least := math.Ceil(s.MinGrams/p.StepGrams - 1e-9)
	most := float64(steps)
	if s.MaxGrams > 0 {
		most = min(most, math.Floor(s.MaxGrams/p.StepGrams+1e-9))
	}
	if least > float64(steps) {
		return 0, 0, check.Input("least amount of "+name, s.MinGrams, "g", fmt.Sprintf("at most the batch, %.6g g", p.BatchGrams))
	}
	if least > most {
		return 0, 0, check.Input("least amount of "+name, s.MinGrams, "g", fmt.Sprintf("at most its largest in whole steps, %.6g g", most*p.StepGrams))
	}
	return int(least), int(most), nil
}

// Reach returns the viscosities in Pa s between which the program can choose within
// its limits, to the whole step.
func (p Program) Reach() (low, high honestplate.Estimate, err error) {
	b, err := p.bounded()
	if err != nil {
		return honestplate.Estimate{}, honestplate.Estimate{}, err
	}
	if low, _, err = p.predict(b.extreme(false)); err != nil {
		return honestplate.Estimate{}, honestplate.Estimate{}, err
	}
	high, _, err = p.predict(b.extreme(true))
	return low, high, err
}

// extreme returns the thickest or the thinnest batch: the least of each liquid,
// then as much as allowed in order of thickness.
func (b bounded) extreme(thickest bool) []int {
	out := make([]int, len(b.ln))
	left := b.steps
	for i, m := range b.min {
		out[i] = m
		left -= m
	}
	for left > 0 {
		best := -1
		for i := range out {
			if out[i] < b.max[i] && (best < 0 || b.ln[i] > b.ln[best] == thickest) {
				best = i
			}
		}
		take := min(left, b.max[best]-out[best])
		out[best] += take
		left -= take
	}
	return out
}

// lnOf returns ln viscosity of a batch in steps.
func (b bounded) lnOf(steps []int) float64 {
	var sum float64
	for i, k := range steps {
		sum += float64(k) * b.ln[i]
	}
	return sum / float64(b.steps)
}

func (p Program) predict(steps []int) (honestplate.Estimate, Mix, error) {
	parts := make([]Part, len(steps))
	for i, k := range steps {
		parts[i] = Part{p.Stock[i].Liquid, gramsOf(k, p.StepGrams)}
	}
	m, err := Blend(parts...)
	if err != nil {
		return honestplate.Estimate{}, Mix{}, err
	}
	e, err := m.Viscosity(p.TempC)
	return e, m, err
}

// For returns the cheapest batch of viscosity pas in Pa s: the exact optimum,
// rounded to whole steps so that the sum is exact and the viscosity as near as the
// steps allow. A viscosity out of reach is a RangeError with what can be reached; limits
// that contradict each other or the batch are an InputError; an
// advertised liquid is an AdvertisedError.
func (p Program) For(pas float64) (Plan, error) {
	cost := make([]float64, len(p.Stock))
	for i, s := range p.Stock {
		cost[i] = s.CostPerKg
	}
	return p.solve(pas, cost)
}

// LeastOf returns the batch of viscosity pas in Pa s with the least of stock i,
// counted from 0. Errors are those of For.
func (p Program) LeastOf(i int, pas float64) (Plan, error) {
	if i < 0 || i >= len(p.Stock) {
		return Plan{}, check.Input("number of the liquid to save", float64(i), "", fmt.Sprintf("0 to %d", len(p.Stock)-1))
	}
	cost := make([]float64, len(p.Stock))
	cost[i] = 1
	return p.solve(pas, cost)
}

func (p Program) solve(pas float64, cost []float64) (Plan, error) {
	b, err := p.bounded()
	if err != nil {
		return Plan{}, err
	}
	if err := honestplate.Positive("viscosity wanted", pas, "Pa s"); err != nil {
		return Plan{}, err
	}
	target := math.Log(pas)
	thin, thick := b.extreme(false), b.extreme(true)
	low, high := b.lnOf(thin), b.lnOf(thick)
	if target < low-1e-9 || target > high+1e-9 {
		return Plan{}, check.Outside("viscosity wanted", pas, math.Exp(low), math.Exp(high), "Pa s", fmt.Sprintf("reach of the %d liquids at hand at %.4g degC within their limits", len(p.Stock), p.TempC))
	}
	exact, err := b.optimum(min(max(target, low), high), cost)
	if err != nil {
		return Plan{}, err
	}
	steps := b.round(exact, target)
	plan := Plan{Grams: make([]float64, len(steps)), TargetPaS: pas}
	for i, k := range steps {
		plan.Grams[i] = gramsOf(k, p.StepGrams)
		plan.Cost += p.Stock[i].CostPerKg * plan.Grams[i] / 1000
	}
	plan.Predicted, plan.Mix, err = p.predict(steps)
	return plan, err
}
