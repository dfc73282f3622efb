package pour_test

import (
	"testing"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// What comes after the pour: one call each.
func BenchmarkAfterThePour(b *testing.B) {
	var syrup65 rheology.Liquid = rheology.Sucrose{Brix: 65}
	p, err := pour.Spout{Diameter: 0.010, Length: 0.03, Head: 0.08}.Pour(syrup65, 20, 200)
	if err != nil {
		b.Fatal(err)
	}
	s, err := p.Stream(0.25)
	if err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct {
		name string
		call func() error
	}{
		{"stream", func() error { _, err := p.Stream(0.25); return err }},
		{"splash on a dry plate", func() error { _, err := s.Splash(pour.Target{}); return err }},
		{"splash on a film", func() error { _, err := s.Splash(pour.Target{Film: 0.002}); return err }},
		{"crown", func() error { _, err := s.Crown(0.001); return err }},
		{"coil", func() error { _, err := s.Coil(); return err }},
		{"cling", func() error { _, err := p.Dribble(30); return err }},
		{"puddle", func() error { _, err := p.Puddle(10*time.Second, 40); return err }},
		{"drain", func() error { _, err := pour.Wall{Height: 0.1}.Drain(syrup65, 20, time.Minute); return err }},
		{"bubbles", func() error { _, err := pour.BubblesClear(syrup65, 20, 0.0005, 0.1); return err }},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := c.call(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
