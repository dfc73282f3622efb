package main

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/heat"
)

// A job is done by both sides. The name ties the figures together.
type job struct {
	name string
	call func(i int) (float64, error)
}

var jobs = []job{
	{"dew point", dewPoint},
	{"wet bulb", wetBulb},
	{"melting sphere, 200 shells, 30 min", meltingSphere},
	{"recipe, two viscosities given", plainRecipe},
	{"recipe, milk and cream as measured", recipe},
	{"recipe, the liquids evaluated before", prepared},
	{"milk over the visible, homogenised", milkSpectrum(20)},
	{"milk over the visible, not homogenised", milkSpectrum(0)},
	{"12 of 60, closest sum", picks(0)},
	{"12 of 60, best looks within 2 g", picks(1)},
	{"12 of 60, best looks at the exact sum", picks(2)},
	{publishedTrays, setsOf(publishedTrays)},
	{drawnTrays, setsOf(drawnTrays)},
	{learned, learns()},
}

// rooms is the grid of rooms that both sides walk through.
func room(i int) thermal.Air {
	return thermal.Air{TempC: 15 + float64(i%16), RH: 0.30 + 0.01*float64(i%50)}
}

func dewPoint(i int) (float64, error) { return room(i).DewPointC() }

func wetBulb(i int) (float64, error) {
	a := room(i)
	return heat.MoistAir{TempC: a.TempC, RH: a.RH}.WetBulbC()
}

// meltingSphere: ice of 50 mm from -18 degC in air of 25 degC at 15 W/(m2 K), the
// latent heat over the last kelvin, melt staying in place. The answer is the melted
// share of the volume.
func meltingSphere(int) (float64, error) {
	const rho, solid, liquid, latent = 917.0, 2100.0, 4180.0, 333.5e3
	body := heat.Body{Radius: 0.025, Cells: 200, Uniform: true, Curve: heat.Curve{
		{TempC: -40, Enthalpy: -39 * rho * solid, Conductivity: 2.2}, {TempC: -1, Enthalpy: 0, Conductivity: 2.2},
		{TempC: 0, Enthalpy: rho * latent, Conductivity: 0.56}, {TempC: 25.1, Enthalpy: rho*latent + 25.1*rho*liquid, Conductivity: 0.56},
	}}
	states, err := body.Run(-18, 0, func(surfaceC float64, _ time.Duration) float64 { return 15 * (25 - surfaceC) }, 30*time.Minute)
	if err != nil {
		return 0, err
	}
	return states[0].PastShare, nil
}

// recipe finds what to weigh out of two liquids of measured viscosity, in steps of
// 0.1 g to a kilogram, for a wanted viscosity, and the viscosity of that batch with
// its band. The curve is bent, so that a root finder is what one would use. Milk and
// cream bring their law, and are moved to one shear rate; the peer is given the numbers.
func recipe(i int) (float64, error) {
	batch, err := pour.For(wanted(i))
	return batch.ThickGrams / 1000, err
}

// plainRecipe is the same of liquids of which nothing is known but the viscosity.
func plainRecipe(i int) (float64, error) {
	batch, err := numbers.For(wanted(i))
	return batch.ThickGrams / 1000, err
}

// prepared is recipe for many viscosities from the same two liquids.
func prepared(i int) (float64, error) {
	batch, err := ready.For(wanted(i))
	return batch.ThickGrams / 1000, err
}

var ready = func() rheology.Prepared {
	p, err := pour.Prepare()
	if err != nil {
		panic(err) // the inputs are constants
	}
	return p
}()

func wanted(i int) float64 { return 0.01 + 0.05*float64(i%997)/997 }

var pour = rheology.Recipe{
	Thin:       rheology.Measured{Liquid: rheology.Dairy{FatPercent: 3.5}, TempC: 6, PaS: honestplate.Exactly(0.0026)},
	Thick:      rheology.Measured{Liquid: rheology.Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Exactly(0.09)},
	BatchGrams: 1000, StepGrams: 0.1, TempC: 6, Rule: rheology.Rule{D: -1.1},
}

var numbers = rheology.Recipe{
	Thin:       rheology.Custom{Name: "thin", Flow: flow.Newtonian{PaS: 0.0026}, FlowC: 6, KgPerM3: 1030},
	Thick:      rheology.Custom{Name: "thick", Flow: flow.Newtonian{PaS: 0.09}, FlowC: 6, KgPerM3: 1000},
	BatchGrams: 1000, StepGrams: 0.1, TempC: 6, Rule: rheology.Rule{D: -1.1},
}

// An instance is a tray of pieces: weights in steps of 0.1 g, whole scores.
type instance struct {
	Weights []int `json:"weights"`
	Scores  []int `json:"scores"`
}

const (
	pieces, chosen = 60, 12
	targetSteps    = 2160
)

func instances() []instance {
	out := make([]instance, 10)
	for k := range out {
		r := rand.New(rand.NewPCG(uint64(k), 1))
		for range pieces {
			out[k].Weights = append(out[k].Weights, max(80, int(math.Round(180+30*r.NormFloat64()))))
			out[k].Scores = append(out[k].Scores, r.IntN(101))
		}
	}
	return out
}

func writeInstances(path string) error {
	lesson, err := given()
	if err != nil {
		return err
	}
	data, err := json.Marshal(map[string]any{"lesson": lesson, "count": chosen, "target": targetSteps, "tolerance": 20, "instances": instances(), "trays": trays()})
	if err != nil {
		return err
	}
	return os.WriteFile(path, append(data, '\n'), 0o644)
}

// picks returns the job of one kind: one instance a call. Its answer is summed over
// the ten instances: the distances of the sums, in steps, or the scores.
func picks(kind int) func(int) (float64, error) {
	var all []portion.Pick
	for _, in := range instances() {
		p := portion.Pick{Count: chosen, Grams: targetSteps / 10.0, StepGrams: 0.1}
		for k, w := range in.Weights {
			piece := portion.Piece{Grams: float64(w) / 10}
			if kind > 0 {
				piece.Score = float64(in.Scores[k])
			}
			p.Pieces = append(p.Pieces, piece)
		}
		switch kind {
		case 0:
			p.Tolerance, p.Closest = p.Grams, true
		case 1:
			p.Tolerance = 2
		}
		all = append(all, p)
	}
	solve := func(p portion.Pick) (float64, error) {
		best, err := p.Best()
		if err != nil {
			return 0, err
		}
		if !best.Optimal {
			return 0, fmt.Errorf("not proven best")
		}
		if kind == 0 {
			return math.Round(math.Abs(best.Over) * 10), nil
		}
		return best.Score, nil
	}
	total, known := 0.0, false
	return func(i int) (float64, error) {
		if !known {
			for _, p := range all {
				v, err := solve(p)
				if err != nil {
					return 0, err
				}
				total += v
			}
			known = true
		}
		_, err := solve(all[i%len(all)])
		return total, err
	}
}
