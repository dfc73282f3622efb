package portion

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// million returns a million zones of random weight, the load of the speed bar: a
// sharing takes no more than three times BenchmarkSortMillion of the same run.
func million() ([]Zone, []float64) {
	rng := rand.New(rand.NewPCG(42, 1))
	zones, values := make([]Zone, 1_000_000), make([]float64, 1_000_000)
	for i := range zones {
		values[i] = rng.Float64()
		zones[i].Weight = values[i]
	}
	return zones, values
}

func BenchmarkSortMillion(b *testing.B) {
	_, values := million()
	work := make([]float64, len(values))
	b.ReportAllocs()
	for b.Loop() {
		copy(work, values)
		slices.Sort(work)
	}
}

func BenchmarkShareMillion(b *testing.B) {
	zones, _ := million()
	equal, bounded := slices.Clone(zones), slices.Clone(zones)
	for i := range zones {
		equal[i].Weight = 1
		bounded[i].MinGrams = float64(i % 7)
		bounded[i].MaxGrams = float64(8 + i%13)
	}
	d := Declaration{Grams: 7_000_001, StepGrams: 1}
	for name, z := range map[string][]Zone{"random": zones, "equal": equal, "bounded": bounded} {
		for _, m := range allMethods[:6] {
			b.Run(name+"/"+m.String(), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := d.ShareBy(m, z); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
