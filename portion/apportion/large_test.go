package apportion

import (
	"math/rand/v2"
	"testing"

	"example.org/honestplate/portion/internal/decimal"
)

// Large sharings are right if no unit given ranks behind one refused.
func TestLargeSharingsAreInOrder(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 14))
	for c := range 60 {
		n := 1000 + rng.IntN(2000)
		claims := make([]Claim, n)
		for i := range claims {
			switch c % 3 {
			case 0:
				claims[i].Weight = rng.Float64()
			case 1:
				claims[i].Weight = float64(1 + rng.IntN(4))
			default:
				claims[i].Weight = 1
			}
			if c%2 == 0 {
				claims[i].Min, claims[i].Max = rng.Int64N(3), 3+rng.Int64N(20)
			}
		}
		total := int64(3*n) + rng.Int64N(int64(n))
		if c%2 == 1 && c%5 == 0 {
			total = decimal.MaxSteps - rng.Int64N(1000) // where float64 no longer tells quotients apart
		}
		for _, m := range allMethods[1:6] {
			got, err := m.Apportion(total, claims)
			if err != nil {
				t.Fatal(err)
			}
			sumsAndBounds(t, m.String(), total, claims, got)
			p, err := newParties(total, claims)
			if err != nil {
				t.Fatal(err)
			}
			var last, next unit
			last.party, next.party = -1, -1
			for i, a := range got {
				least := p.low[i]
				if m.firstFree() {
					least = max(least, 1)
				}
				if a > least {
					if u := p.unit(m, i, a-1); last.party < 0 || last.before(u) {
						last = u
					}
				}
				if a < p.high[i] {
					if u := p.unit(m, i, a); next.party < 0 || u.before(next) {
						next = u
					}
				}
			}
			if last.party >= 0 && next.party >= 0 && next.before(last) {
				t.Fatalf("%v: the next unit of %d ranks before the last of %d", m, next.party, last.party)
			}
		}
	}
}
