package apportion

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"

	"example.org/honestplate/portion/internal/decimal"
)

var allMethods = []Method{LargestRemainder, Jefferson, Webster, Adams, HuntingtonHill, Dean, QuotaMethod}

// randomClaims makes a case that can be shared: weights of several kinds, some
// equal, some zero, with or without bounds.
func randomClaims(rng *rand.Rand, most int) (int64, []Claim) {
	claims := make([]Claim, 1+rng.IntN(most))
	kind, bounds := rng.IntN(4), rng.IntN(3)
	for i := range claims {
		switch kind {
		case 0:
			claims[i].Weight = float64(rng.IntN(6))
		case 1:
			claims[i].Weight = float64(rng.IntN(40)) / 10
		case 2:
			claims[i].Weight = rng.Float64()
		default:
			claims[i].Weight = math.Exp(4 * rng.NormFloat64())
		}
		if bounds > 0 && rng.IntN(2) == 0 {
			claims[i].Min = rng.Int64N(5)
		}
		if bounds > 1 && rng.IntN(2) == 0 {
			claims[i].Max = max(claims[i].Min, 1) + rng.Int64N(8)
		}
	}
	claims[rng.IntN(len(claims))] = Claim{Weight: 1}
	total := rng.Int64N(60)
	for _, c := range claims {
		total += c.Min
	}
	return total, claims
}

// sumsAndBounds checks what every sharing must keep.
func sumsAndBounds(t *testing.T, what string, total int64, claims []Claim, got []int64) {
	t.Helper()
	var sum int64
	for i, g := range got {
		sum += g
		c := claims[i]
		if g < c.Min || c.Max != 0 && g > c.Max || c.Weight == 0 && g != c.Min {
			t.Fatalf("%s: claim %+v gets %d", what, c, g)
		}
	}
	if sum != total {
		t.Fatalf("%s: %d units of %d", what, sum, total)
	}
}

func TestEverySharingIsExactAndKeepsBounds(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 1000 {
		total, claims := randomClaims(rng, 12)
		for _, m := range allMethods {
			got, err := m.Apportion(total, claims)
			if err != nil {
				t.Fatalf("%v, %d units, %+v: %v", m, total, claims, err)
			}
			sumsAndBounds(t, m.String(), total, claims, got)
		}
	}
}

// slow gives out unit by unit, comparing v/d(a) as fractions of whole numbers: the
// definition of the divisor methods, written without any of the code under test.
// Weights have one decimal and stay below 1e5, units below 200: nothing overflows.
func slow(m Method, total int64, claims []Claim) []int64 {
	got := make([]int64, len(claims))
	for i, c := range claims {
		got[i] = c.Min
		total -= c.Min
	}
	priority := func(i int) (num, den int64) { // den 0 is infinite
		v, a := int64(math.Round(10*claims[i].Weight)), got[i]
		switch m {
		case Jefferson:
			return v, a + 1
		case Webster:
			return 2 * v, 2*a + 1
		case Adams:
			return v, a
		case HuntingtonHill:
			return v * v, a * (a + 1)
		default:
			return v * (2*a + 1), 2 * a * (a + 1)
		}
	}
	for ; total > 0; total-- {
		best := -1
		for i, c := range claims {
			if c.Weight == 0 || c.Max != 0 && got[i] >= c.Max {
				continue
			}
			if best < 0 {
				best = i
				continue
			}
			p, q := priority(i)
			r, s := priority(best)
			order := p*s - r*q
			if q == 0 || s == 0 {
				order = s - q // both infinite: a tie
			}
			if order > 0 || order == 0 && c.Weight > claims[best].Weight {
				best = i
			}
		}
		got[best]++
	}
	return got
}

func TestDivisorMethodsMatchTheirDefinition(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 1))
	for range 1000 {
		total, claims := randomClaims(rng, 8)
		for i := range claims { // the reference knows one decimal place
			claims[i].Weight = math.Round(min(claims[i].Weight, 1e5)*10) / 10
		}
		for _, m := range []Method{Jefferson, Webster, Adams, HuntingtonHill, Dean} {
			got, err := m.Apportion(total, claims)
			if err != nil {
				continue // the rounding left no weight above 0
			}
			if diff := cmp.Diff(slow(m, total, claims), got); diff != "" {
				t.Fatalf("%v, %d units, %+v: %s", m, total, claims, diff)
			}
		}
	}
}

func TestLargestRemainderKeepsQuota(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	for range 1000 {
		claims := make([]Claim, 1+rng.IntN(10))
		var sum int64
		for i := range claims {
			w := rng.Int64N(1000) + 1
			sum += w
			claims[i].Weight = float64(w)
		}
		total := rng.Int64N(10_000)
		got, err := LargestRemainder.Apportion(total, claims)
		if err != nil {
			t.Fatal(err)
		}
		cut := int64(-1) // the largest fraction refused
		for i, c := range claims {
			q := int64(c.Weight) * total
			if got[i] == q/sum {
				cut = max(cut, q%sum)
			}
		}
		for i, c := range claims {
			q := int64(c.Weight) * total
			if got[i] != q/sum && (got[i] != q/sum+1 || q%sum < cut || q%sum == 0) {
				t.Fatalf("%d units, %+v: %d gets %d", total, claims, i, got[i])
			}
		}
	}
}

// Between the bounds, shares differ from one common multiple of the weights by
// less than a unit, and no two could change places.
func TestBoundedRemainderIsProportional(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	for range 1000 {
		total, claims := randomClaims(rng, 10)
		got, err := LargestRemainder.Apportion(total, claims)
		if err != nil {
			t.Fatal(err)
		}
		// The multiples k with got-1 < k v < got+1 for every claim strictly inside
		// its bounds; a claim at a bound limits k on one side only.
		low, high := 0.0, math.Inf(1)
		for i, c := range claims {
			if c.Weight == 0 {
				continue
			}
			if got[i] > c.Min {
				low = max(low, (float64(got[i])-1)/c.Weight)
			}
			if c.Max == 0 || got[i] < c.Max {
				high = min(high, (float64(got[i])+1)/c.Weight)
			}
		}
		if low > high*(1+1e-9) {
			t.Fatalf("%d units, %+v: %v is no multiple of the weights (%g..%g)", total, claims, got, low, high)
		}
	}
}

func TestOrderOfClaimsDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	for range 1000 {
		total, claims := randomClaims(rng, 10)
		seen := map[float64]bool{} // equal claims are told apart by their place only
		claims = slices.DeleteFunc(claims, func(c Claim) bool {
			dup := seen[c.Weight]
			seen[c.Weight] = true
			return dup
		})
		order := rng.Perm(len(claims))
		shuffled := make([]Claim, len(claims))
		for i, j := range order {
			shuffled[i] = claims[j]
		}
		for _, m := range allMethods {
			got, err := m.Apportion(total, claims)
			if err != nil {
				continue // without the duplicates the total may not fit
			}
			again, err := m.Apportion(total, shuffled)
			if err != nil {
				t.Fatal(err)
			}
			for i, j := range order {
				if again[i] != got[j] {
					t.Fatalf("%v, %d units: %+v gives %v, shuffled %v gives %v", m, total, claims, got, order, again)
				}
			}
		}
	}
}

func TestDivisorMethodsAreMonotonicInTheTotal(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 1))
	for range 1000 {
		total, claims := randomClaims(rng, 8)
		for _, m := range allMethods[1:] {
			got, err := m.Apportion(total, claims)
			if err != nil {
				t.Fatal(err)
			}
			more, err := m.Apportion(total+1, claims)
			if err != nil {
				continue // the maxima are reached
			}
			for i := range got {
				if more[i] < got[i] {
					t.Fatalf("%v: %+v loses from %d to %d units: %v, %v", m, claims[i], total, total+1, got, more)
				}
			}
		}
	}
}

func TestHeavierClaimsNeverGetLess(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for range 1000 {
		_, claims := randomClaims(rng, 10)
		for i := range claims {
			claims[i].Min, claims[i].Max = 1, 9
		}
		total := rng.Int64N(int64(8*len(claims))) + int64(len(claims))
		for _, m := range allMethods {
			got, err := m.Apportion(total, claims)
			if err != nil {
				continue // zero weights cannot take it
			}
			for i := range got {
				for j := range got {
					if claims[i].Weight > claims[j].Weight && got[i] < got[j] {
						t.Fatalf("%v, %d units, %+v: %v", m, total, claims, got)
					}
				}
			}
		}
	}
}

// Largest remainder gives cheese its point, and then bread 61 7/13 and margarine
// 11 7/13 tie exactly for the last: the larger weight takes it, in whatever unit
// the weights are written.
func TestExactTiesGoToTheLargerWeight(t *testing.T) {
	for _, scale := range []float64{1, 1e-3, 1e-6, 8} {
		got, err := LargestRemainder.Apportion(100, []Claim{{Weight: scale * 80}, {Weight: scale * 15}, {Weight: scale * 35}})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff([]int64{62, 11, 27}, got); diff != "" {
			t.Errorf("scale %v: %s", scale, diff)
		}
	}
	for _, m := range allMethods {
		got, err := m.Apportion(4, []Claim{{Weight: 1}, {Weight: 1}, {Weight: 1}})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff([]int64{2, 1, 1}, got); diff != "" {
			t.Errorf("%v: equal claims, the earlier first: %s", m, diff)
		}
	}
}

func TestImpossibleSharings(t *testing.T) {
	for name, c := range map[string]struct {
		total  int64
		claims []Claim
		kind   error
	}{
		"no claims":             {10, nil, honestplate.ErrInput},
		"negative total":        {-1, []Claim{{Weight: 1}}, honestplate.ErrInput},
		"huge total":            {math.MaxInt64, []Claim{{Weight: 1}}, honestplate.ErrRange},
		"NaN weight":            {10, []Claim{{Weight: math.NaN()}}, honestplate.ErrInput},
		"negative weight":       {10, []Claim{{Weight: -1}}, honestplate.ErrInput},
		"endless weight":        {10, []Claim{{Weight: math.Inf(1)}}, honestplate.ErrInput},
		"no weight":             {10, []Claim{{}, {}}, honestplate.ErrInfeasible},
		"minima above total":    {10, []Claim{{1, 6, 0}, {1, 5, 0}}, honestplate.ErrInfeasible},
		"huge minima":           {10, []Claim{{1, math.MaxInt64, 0}, {1, math.MaxInt64, 0}}, honestplate.ErrInfeasible},
		"maxima below total":    {10, []Claim{{1, 0, 4}, {1, 0, 5}}, honestplate.ErrInfeasible},
		"negative minimum":      {10, []Claim{{1, -1, 0}}, honestplate.ErrInput},
		"maximum below minimum": {10, []Claim{{1, 3, 2}, {1, 0, 0}}, honestplate.ErrInput},
	} {
		for _, m := range allMethods {
			if _, err := m.Apportion(c.total, c.claims); !errors.Is(err, c.kind) {
				t.Errorf("%s, %v: got %v, want %v", name, m, err, c.kind)
			}
		}
	}
	if _, err := LargestRemainder.Apportion(1, []Claim{{Weight: 1e300}, {Weight: 0.3}}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("weights beyond comparison: %v", err)
	}
	if _, err := Method(99).Apportion(1, []Claim{{Weight: 1}}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("unknown method: %v", err)
	}
	if _, err := QuotaMethod.Apportion(decimal.MaxSteps, []Claim{{Weight: 1}}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("long quota method: %v", err)
	}
}

func TestHugeTotalsAndRatiosStayExact(t *testing.T) {
	claims := []Claim{{Weight: 1e300}, {Weight: 1e286}, {Weight: 0}, {Weight: 1e300}, {Weight: 3e299, Min: 2}}
	for _, m := range allMethods[:6] {
		got, err := m.Apportion(decimal.MaxSteps, claims)
		if err != nil {
			t.Fatal(err)
		}
		sumsAndBounds(t, m.String(), decimal.MaxSteps, claims, got)
		if d := got[0] - got[3]; d < 0 || d > 1 {
			t.Errorf("%v: equal claims get %d and %d", m, got[0], got[3])
		}
	}
}

func TestIdealSharesSumToTheTotalWithinBounds(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 11))
	for range 1000 {
		total, claims := randomClaims(rng, 10)
		got, err := Ideal(total, claims)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for i, x := range got {
			sum += x
			if c := claims[i]; x < float64(c.Min)-1e-9 || c.Max != 0 && x > float64(c.Max)+1e-9 {
				t.Fatalf("%+v gets %v", c, x)
			}
		}
		if math.Abs(sum-float64(total)) > 1e-9*float64(total+1) {
			t.Fatalf("%v of %v", sum, total)
		}
	}
}

func TestIdealRefusesAsApportionDoes(t *testing.T) {
	if _, err := Ideal(10, nil); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no claims: %v", err)
	}
	if _, err := Ideal(10, []Claim{{Weight: 1e300}, {Weight: 0.3}}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("ratio: %v", err)
	}
}

// What was promised twice over is told from a mistyped number, with what to take off.
func TestOversharingSaysHowMuchToTakeOff(t *testing.T) {
	_, err := LargestRemainder.Apportion(10, []Claim{{1, 6, 0}, {1, 5, 0}})
	var e *BoundsError
	if !errors.As(err, &e) || e.Least != 11 || e.Total != 10 || e.Field != "Claims" {
		t.Fatalf("got %v", err)
	}
	if want := "honestplate: Claims: the minima sum to 11, and there is 10; take 1 off them"; err.Error() != want {
		t.Errorf("got %q, want %q", err, want)
	}
	_, err = Webster.Apportion(10, []Claim{{1, 0, 4}, {1, 0, 5}})
	if want := "honestplate: Claims: the maxima let 9 be taken of 10; raise them by 1 (weight 0 takes its minimum only)"; err == nil || err.Error() != want {
		t.Errorf("got %v, want %q", err, want)
	}
}

func TestMethodsAreWordsOnTheWire(t *testing.T) {
	for _, m := range allMethods {
		text, err := m.MarshalText()
		var back Method
		if err != nil || back.UnmarshalText(text) != nil || back != m {
			t.Errorf("%v became %q, %v", m, text, err)
		}
	}
	var m Method
	if _, err := Method(99).MarshalText(); err == nil || m.UnmarshalText([]byte("best")) == nil {
		t.Error("a method without a name was written or read")
	}
}
