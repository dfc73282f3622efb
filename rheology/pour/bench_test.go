package pour_test

import (
	"testing"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// A pour, its stream and its splash: a liquid of given figures, cream that thins under
// shear, a blend, a sauce with a yield stress; with the head kept and falling.
func BenchmarkPourStreamSplash(b *testing.B) {
	blend, err := rheology.Blend(
		rheology.Part{Liquid: rheology.Dairy{FatPercent: 3.5}, Grams: 300},
		rheology.Part{Liquid: rheology.Dairy{FatPercent: 36}, Grams: 200})
	if err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct {
		name    string
		liquid  rheology.Liquid
		surface float64
	}{
		{"given", cream, 0},
		{"given, falling head", cream, 0.01},
		{"cream", rheology.Dairy{FatPercent: 30}, 0},
		{"cream, falling head", rheology.Dairy{FatPercent: 30}, 0.01},
		{"blend", blend, 0},
		{"blend, falling head", blend, 0.01},
		{"custard", rheology.Food("custard"), 0},
	} {
		b.Run(c.name, func(b *testing.B) {
			spout := pour.Spout{Diameter: 0.010, Length: 0.03, Head: 0.08, SurfaceArea: c.surface}
			b.ReportAllocs()
			for b.Loop() {
				p, err := spout.Pour(c.liquid, 6, 200)
				if err != nil {
					b.Fatal(err)
				}
				s, err := p.Stream(0.25)
				if err != nil {
					b.Fatal(err)
				}
				if _, err := s.Splash(pour.Target{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
