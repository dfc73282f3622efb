package light

import (
	"testing"

	"example.org/honestplate/testdata/testkit"
)

func FuzzWords(f *testing.F) {
	f.Add(0, "LED", "PAR")
	f.Add(-1, "", "candle")
	f.Fuzz(func(t *testing.T, n int, source, head string) {
		var s Source
		var h Head
		testkit.Answers(t,
			func() (any, error) { return Source(n).MarshalText() }, func() (any, error) { return Head(n).MarshalText() },
			func() (any, error) { return s.String(), s.UnmarshalText([]byte(source)) },
			func() (any, error) { return h.String(), h.UnmarshalText([]byte(head)) })
	})
}

// Three lamps of any kind: what is absorbed is a band in order, and adds up.
func FuzzAbsorbed(f *testing.F) {
	f.Add(0.65, 0.15, 5000.0, 650.0, 1.4, 2)
	f.Add(1.0, 0.0, 0.0, 1e5, 0.05, 0)
	f.Fuzz(func(t *testing.T, tungsten, led, lux, watts, distance float64, head int) {
		a := Absorptance{Tungsten: tungsten, LED: led}
		key, fill, metered := Lamp{Watts: watts, Distance: distance, Head: Head(head)}, Lamp{Source: LED, Watts: watts, Distance: distance}, Lamp{Source: LED, Lux: lux}
		testkit.Answers(t,
			func() (any, error) { return a.Absorbed(key, fill, metered) }, func() (any, error) { return a.Absorbed(key, key) },
			func() (any, error) { return key.Illuminance() })
	})
}
