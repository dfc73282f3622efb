package rheology_test

import (
	"math"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

// A bent curve between two measured liquids, as a tray of test pours asks for it.
func measuredRecipe() Recipe {
	return Recipe{
		Thin:       Measured{Liquid: Dairy{FatPercent: 3.5}, TempC: 6, PaS: honestplate.Exactly(0.0026)},
		Thick:      Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Exactly(0.09)},
		BatchGrams: 1000, StepGrams: 0.1, TempC: 6, Rule: Interaction{D: -1.1},
	}
}

// The bar is 5 us for 1 kg in steps of 0.1 g.
func BenchmarkRecipe(b *testing.B) {
	r := kitchen(1000, 0.1)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.For(0.012); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRecipeMeasured(b *testing.B) {
	r := measuredRecipe()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.For(0.012); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPrepared(b *testing.B) {
	p, err := measuredRecipe().Prepare()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.For(0.012); err != nil {
			b.Fatal(err)
		}
	}
}

var floor float64 // keeps what the floors work out

// What a prepared recipe cannot do without: one logarithm in, the root of a
// quadratic, and three exponentials of it out.
func BenchmarkPreparedFloor(b *testing.B) {
	for b.Loop() {
		l := math.Sqrt(-math.Log(0.012))
		floor = math.Exp(-l) + math.Exp(-l-0.1) + math.Exp(-l+0.1)
	}
}

// The floor of a blend of two milks and creams: an Arrhenius term, and the
// exponentials of value and band that wait for it.
func BenchmarkTwoPartDairyViscosityFloor(b *testing.B) {
	tempC := 6.0
	for b.Loop() {
		l := 2721.5 / (tempC + 273.15)
		floor = math.Exp(l-13) + math.Exp(l-13.4) + math.Exp(l-12.6)
	}
}

// The floor of milk or cream: a cube root, and the exponentials that wait for it.
func BenchmarkDairyViscosityFloor(b *testing.B) {
	for b.Loop() {
		l := math.Cbrt(0.36)
		floor = math.Exp(-l) + math.Exp(-l-0.4) + math.Exp(0.4-l)
	}
}
