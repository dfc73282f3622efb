package apportion

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// million returns a million claims of random weight, the load of the speed bar: a
// sharing takes no more than three times BenchmarkSortMillion of the same run.
func million() ([]Claim, []float64) {
	rng := rand.New(rand.NewPCG(42, 1))
	claims, values := make([]Claim, 1_000_000), make([]float64, 1_000_000)
	for i := range claims {
		values[i] = rng.Float64()
		claims[i].Weight = values[i]
	}
	return claims, values
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
	claims, _ := million()
	equal, bounded := slices.Clone(claims), slices.Clone(claims)
	for i := range claims {
		equal[i].Weight = 1
		bounded[i].Min = int64(i % 7)
		bounded[i].Max = int64(8 + i%13)
	}
	for name, z := range map[string][]Claim{"random": claims, "equal": equal, "bounded": bounded} {
		for _, m := range allMethods[:6] {
			b.Run(name+"/"+m.String(), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := m.Apportion(7_000_001, z); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
