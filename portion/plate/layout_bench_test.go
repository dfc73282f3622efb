package plate

import (
	"testing"

	"example.org/honestplate/portion"
)

func BenchmarkLayOverCuts(b *testing.B) {
	d := portion.Declaration{Item: "cheese", Grams: 62, StepGrams: 0.5}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (Strips{Hub: 0.015, Favour: 0.25}).Lay(Round{Diameter: 0.3, Edge: 0.02, Slices: 8}, d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkScatter24(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (Scatter{Count: 24, Diameter: 0.022, Gap: 0.002, CutGap: 0.002}).Place(Round{Diameter: 0.3, Edge: 0.02, Slices: 8}); err != nil {
			b.Fatal(err)
		}
	}
}
