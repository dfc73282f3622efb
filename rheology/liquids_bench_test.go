package rheology

import (
	"testing"

	"example.org/honestplate"
)

// Property calls of the liquids: the bar is well under 50 ns for Dairy, since a
// two-part blend has 100, and no allocation anywhere.
func BenchmarkViscosity(b *testing.B) {
	for _, l := range append(Catalogue(), Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Within(0.02, 0.05)}) {
		name := l.Describe().Name
		tempC := min(max(22, l.Describe().LowC), l.Describe().HighC)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := l.Viscosity(tempC); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
