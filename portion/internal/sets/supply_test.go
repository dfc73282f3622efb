package sets

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate/portion/internal/subset"
)

func supply(k, count int, tolerance int64, mean, chance float64) Supply {
	target := int64(180 * count)
	return Supply{Mean: mean, SD: 12, Sets: k, Chance: chance, Most: 3*k*count + 20, Trays: 256, Effort: 100_000,
		Want: subset.Problem{Low: target - tolerance, High: target + tolerance, Target: target, Groups: []subset.Group{{Count: count}}}}
}

// The simulated need agrees with trays drawn at random, the plain way: with that many
// pieces the sets exist about as often as it says.
func TestSupplyAgreesWithPlainDraws(t *testing.T) {
	for _, s := range []Supply{supply(1, 9, 0, 180, 0.9), supply(3, 4, 1, 180, 0.95), supply(2, 5, 0, 184, 0.8)} {
		n := s.Need()
		if !n.Reached {
			t.Fatal(n)
		}
		r := rand.New(rand.NewPCG(11, 12))
		held, draws := 0, 1000
		if testing.Short() {
			draws = 200
		}
		for range draws {
			var masses []int64
			for range n.Likely {
				masses = append(masses, int64(math.Round(s.Mean+s.SD*r.NormFloat64())))
			}
			if s.exist(masses) {
				held++
			}
		}
		low, high := wilson(float64(held)/float64(draws), float64(draws))
		if high < n.ShareLow || low > n.ShareHigh {
			t.Errorf("%+v: plain draws held the sets in %d of %d", n, held, draws)
		}
		if n.Low > n.Likely || n.Likely > n.High {
			t.Errorf("%+v is not in order", n)
		}
	}
}

// More sets, a higher chance and pieces that fit less need more pieces; pieces already
// weighed spare some.
func TestSupplyOrders(t *testing.T) {
	need := func(s Supply) int {
		return s.Need().Likely
	}
	base := need(supply(2, 4, 0, 180, 0.9))
	if more := need(supply(3, 4, 0, 180, 0.9)); more <= base {
		t.Errorf("three sets need %d, two %d", more, base)
	}
	if more := need(supply(2, 4, 0, 180, 0.99)); more < base {
		t.Errorf("a chance of 99 %% needs %d, 90 %% %d", more, base)
	}
	if more := need(supply(2, 4, 0, 190, 0.9)); more <= base {
		t.Errorf("pieces 1 g too heavy need %d, right ones %d", more, base)
	}
	have := supply(2, 4, 0, 180, 0.9)
	have.Have = []int64{175, 185, 170, 190}
	if rest := need(have); rest >= base {
		t.Errorf("with four weighed %d more are needed, %d from none", rest, base)
	}
}

// Pieces that can never weigh it are told, not waited for.
func TestSupplyOutOfReach(t *testing.T) {
	s := supply(3, 4, 1, 300, 0.9)
	n := s.Need()
	if n.Reached || n.Share != 0 || n.Likely != s.Most+1 {
		t.Errorf("%+v: 4 pieces of 30 g do not weigh 72 g", n)
	}
}

// Half of 20: 0.299 to 0.701, by hand from the formula.
func TestWilson(t *testing.T) {
	low, high := wilson(0.5, 20)
	if math.Abs(low-0.2993) > 5e-5 || math.Abs(high-0.7007) > 5e-5 {
		t.Errorf("%g..%g", low, high)
	}
}
