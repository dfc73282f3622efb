package food

import (
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/heat"
)

func FuzzDrinkAndIce(f *testing.F) {
	f.Add(250.0, 11.0, 5.0, 20.0, -10.0, 5.0)
	f.Add(0.1, 65.0, 0.0, 100.0, 0.0, -2.0)
	f.Fuzz(func(t *testing.T, grams, brix, alcohol, drinkC, iceC, targetC float64) {
		d := Drink{Brix: brix, AlcoholPercent: alcohol}
		testkit.Answers(t,
			func() (any, error) { return d.FreezesC() },
			func() (any, error) { return IceFor(grams, d, drinkC, iceC, targetC) },
			func() (any, error) { return Overrun(grams, brix) })
	})
}

// A soft food that passes gives a curve that the solver takes.
func FuzzSoftFood(f *testing.F) {
	f.Add(0.2, 1000.0, 2000.0, 5e4, 20.0, 30.0, 25.0, 28.0, 0.5)
	f.Add(1e9, 1e5, 1e6, 0.0, -40.0, -39.0, -40.0, 80.0, 1.0)
	f.Fuzz(func(t *testing.T, k, density, c, latent, from, to, soft, run, activity float64) {
		s := SoftFood{Material: heat.Material{Conductivity: k, Density: density, SpecificHeat: c}, Latent: latent, MeltsFromC: from, MeltsToC: to,
			SoftC: honestplate.Exactly(soft), RunC: honestplate.Exactly(run), Activity: activity}
		testkit.Answers(t, func() (any, error) { return s.Curve() })
	})
}

func FuzzStructure(f *testing.F) {
	f.Add(0, "stabilised")
	f.Add(9, "")
	f.Fuzz(func(t *testing.T, structure int, word string) {
		var read Structure
		testkit.Answers(t,
			func() (any, error) { return Structure(structure).MarshalText() },
			func() (any, error) { return Structure(structure).String(), nil },
			func() (any, error) { return read.String(), read.UnmarshalText([]byte(word)) })
	})
}
