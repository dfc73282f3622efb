package look

import (
	"testing"

	"example.org/honestplate"
)

func benchOptics(b *testing.B, m Milk) {
	for b.Loop() {
		if _, err := m.Optics(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMilkHomogenised(b *testing.B) {
	benchOptics(b, Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(20)})
}

func BenchmarkMilkNotHomogenised(b *testing.B) {
	benchOptics(b, Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(0)})
}

func BenchmarkCreamNotHomogenised(b *testing.B) {
	benchOptics(b, Milk{FatPercent: 36, HomogenisedMPa: honestplate.Some(0)})
}

func benchScene(b *testing.B, call func(*Optics) error) {
	o, err := Milk{FatPercent: 36}.Optics()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if err := call(&o); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkColour(b *testing.B) {
	benchScene(b, func(o *Optics) error { _, err := o.colour(Scene{Depth: honestplate.Some(0.001)}); return err })
}

func BenchmarkAppear(b *testing.B) {
	benchScene(b, func(o *Optics) error { _, err := o.Appear(Scene{Depth: honestplate.Some(0.001)}); return err })
}

func BenchmarkHides(b *testing.B) {
	benchScene(b, func(o *Optics) error { _, err := o.Hides(Scene{}, Black, White, Hidden); return err })
}
