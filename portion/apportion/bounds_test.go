package apportion

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/honestplate"
)

// Raising one weight never lowers that share, with minima and maxima too: 100,000 random
// pairs.
func TestRaisingAWeightNeverLowersItsShare(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 1))
	pairs, bounded := 100_000, 0
	if testing.Short() {
		pairs = 10_000
	}
	for k := 0; k < pairs; {
		total, claims := randomClaims(rng, 8)
		before, err := LargestRemainder.Apportion(total, claims)
		if err != nil {
			continue
		}
		i := rng.IntN(len(claims))
		raised := slices.Clone(claims)
		raised[i].Weight += []float64{0.1, 1, 5, raised[i].Weight, 100}[rng.IntN(5)]
		after, err := LargestRemainder.Apportion(total, raised)
		if err != nil {
			t.Fatal(err)
		}
		k++
		if after[i] < before[i] {
			t.Fatalf("%d over %+v: claim %d gets %d, and %d of weight %g", total, claims, i, before[i], after[i], raised[i].Weight)
		}
		for j, c := range claims {
			if (c.Min > 0 && before[j] == c.Min) || (c.Max > 0 && before[j] == c.Max) {
				bounded++
				break
			}
		}
	}
	if bounded < pairs/4 {
		t.Errorf("bounds held in only %d of %d cases", bounded, pairs)
	}
}

// Every share is within one unit of its ideal, with bounds too.
func TestSharesAreWithinOneUnitOfTheirIdeal(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 2))
	for range 20_000 {
		total, claims := randomClaims(rng, 20)
		got, err := LargestRemainder.Apportion(total, claims)
		if err != nil {
			continue
		}
		ideal, err := Ideal(total, claims)
		if err != nil {
			t.Fatal(err)
		}
		for i, x := range ideal {
			if math.Abs(float64(got[i])-x) >= 1 {
				t.Fatalf("%d over %+v: claim %d gets %d, its ideal is %g", total, claims, i, got[i], x)
			}
		}
	}
}

// What a zone at its maximum leaves goes to the others by weight, not a unit to each; a
// share does not jump as a weight grows.
func TestWhatBoundsLeaveGoesByWeight(t *testing.T) {
	small := []Claim{{50, 0, 40}, {40, 0, 0}}
	for range 20 {
		small = append(small, Claim{Weight: 0.5})
	}
	got, err := LargestRemainder.Apportion(100, small)
	if err != nil || got[0] != 40 || got[1] != 48 {
		t.Errorf("%v, %v: want 40 and 48", got, err)
	}
	for weight, want := range map[float64][]int64{10: {5, 0, 1}, 15: {5, 0, 1}} {
		got, err := LargestRemainder.Apportion(6, []Claim{{weight, 0, 0}, {1, 0, 4}, {10, 0, 1}})
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("weight %g: %v, %v, want %v", weight, got, err, want)
		}
	}
}

// Vinton does not rescale, and says so where that cannot come out.
func TestVintonRefusesWhatItWouldHaveToRescale(t *testing.T) {
	claims := []Claim{{97, 0, 0}, {1, 2, 0}, {1, 2, 0}, {1, 2, 0}}
	if got, err := Vinton.Apportion(10, claims); !errors.Is(err, honestplate.ErrInfeasible) {
		t.Errorf("%v, %v: three minima of 2 take 6 of 10, the quota of 97 %% is 9", got, err)
	}
	if _, err := LargestRemainder.Apportion(10, claims); err != nil {
		t.Error(err)
	}
	if got, err := Vinton.Apportion(5, []Claim{{0, 5, 0}}); err != nil || got[0] != 5 {
		t.Error(got, err)
	}
}

// A tie of decimals stays where it is when all weights are multiplied, dust and all.
func TestTiesSurviveScaledWeights(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 3))
	base := [][]Claim{{{Weight: 0.3}, {Weight: 0.8}, {Weight: 27.1}}}
	for range 500 {
		var claims []Claim
		for range 2 + rng.IntN(5) {
			claims = append(claims, Claim{Weight: float64(1+rng.IntN(300)) / 10})
		}
		base = append(base, claims)
	}
	for _, claims := range base {
		total := 1 + rng.Int64N(2000)
		for _, m := range []Method{LargestRemainder, Jefferson, Webster, Adams, HuntingtonHill, Dean} {
			want, err := m.Apportion(total, claims)
			if err != nil {
				t.Fatal(err)
			}
			for _, factor := range []float64{3, 0.7, 1e-3, 1.1, 1e6} {
				scaled := slices.Clone(claims)
				for i := range scaled {
					scaled[i].Weight *= factor
				}
				got, err := m.Apportion(total, scaled)
				if err != nil || !slices.Equal(got, want) {
					t.Fatalf("%v of %d over %v: %v, and %v %v for weights times %g", m, total, claims, want, got, err, factor)
				}
			}
		}
	}
	got, err := Jefferson.Apportion(1972, base[0])
	if err != nil || !slices.Equal(got, []int64{20, 55, 1897}) {
		t.Errorf("%v, %v", got, err)
	}
}
