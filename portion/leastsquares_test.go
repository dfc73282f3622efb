package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func randomWishes(rng *rand.Rand, most int) (Declaration, []Wish) {
	wishes := make([]Wish, 1+rng.IntN(most))
	steps := rng.IntN(12)
	for i := range wishes {
		wishes[i] = Wish{Grams: float64(rng.IntN(60)) / 10, Firmness: []float64{0, 1, 2, 0.3}[rng.IntN(4)]}
		if rng.IntN(3) == 0 {
			n := rng.IntN(3)
			wishes[i].MinGrams = float64(n) / 2
			steps += n
		}
		if rng.IntN(3) == 0 {
			wishes[i].MaxGrams = wishes[i].MinGrams + 0.5 + float64(rng.IntN(4))/2
		}
	}
	wishes[0].MaxGrams = 0
	return Declaration{Grams: float64(steps+1) / 2, StepGrams: 0.5}, wishes
}

// misses is what ShareNear makes least: the weighted squares.
func misses(wishes []Wish, grams func(int) float64) (sum float64) {
	for i, w := range wishes {
		f := w.Firmness
		if f == 0 {
			f = 1
		}
		sum += f * (grams(i) - w.Grams) * (grams(i) - w.Grams)
	}
	return sum
}

func TestWishesAreMetAsNearAsCanBe(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 11))
	for range 10_000 {
		d, wishes := randomWishes(rng, 4)
		s, err := d.ShareNear(wishes)
		if err != nil {
			t.Fatalf("%+v, %+v: %v", d, wishes, err)
		}
		total, err := d.Steps()
		if err != nil {
			t.Fatal(err)
		}
		if s.TotalSteps() != total {
			t.Fatalf("%d of %d steps", s.TotalSteps(), total)
		}
		for i, p := range s.Portions {
			if w := wishes[i]; p.Grams < w.MinGrams || w.MaxGrams > 0 && p.Grams > w.MaxGrams {
				t.Fatalf("%+v gets %v g", w, p.Grams)
			}
		}
		got := misses(wishes, func(i int) float64 { return s.Portions[i].Grams })
		best := math.Inf(1)
		cells := make([]float64, len(wishes))
		var fill func(i int, left int64)
		fill = func(i int, left int64) {
			if i == len(wishes) {
				if left == 0 {
					best = min(best, misses(wishes, func(i int) float64 { return cells[i] }))
				}
				return
			}
			for n := range left + 1 {
				g := float64(n) / 2
				if w := wishes[i]; g >= w.MinGrams && (w.MaxGrams == 0 || g <= w.MaxGrams) {
					cells[i] = g
					fill(i+1, left-n)
				}
			}
		}
		fill(0, total)
		if got > best+1e-9 {
			t.Fatalf("%+v, %+v: %+v misses %v, the best %v", d, wishes, s.Portions, got, best)
		}
	}
}

func TestWishesInAnyOrder(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 11))
	for range 10_000 {
		d, wishes := randomWishes(rng, 6)
		for i := range wishes {
			wishes[i].Grams = 6 * rng.Float64() // no ties
		}
		want, err := d.ShareNear(wishes)
		if err != nil {
			t.Fatal(err)
		}
		slices.Reverse(wishes)
		got, err := d.ShareNear(wishes)
		if err != nil {
			t.Fatal(err)
		}
		slices.Reverse(got.Portions)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatal(diff)
		}
	}
}

// Where wishes sum to what is declared and are whole steps, they are granted; where
// they are a gram short, all gain alike.
func TestWishesThatFitAreGranted(t *testing.T) {
	wishes := []Wish{{Name: "front", Grams: 30}, {Name: "middle", Grams: 20}, {Name: "back", Grams: 12}}
	for grams, want := range map[float64][]float64{62: {30, 20, 12}, 63.5: {30.5, 20.5, 12.5}, 62.5: {30.5, 20, 12}} {
		s, err := Declaration{Grams: grams, StepGrams: 0.5}.ShareNear(wishes)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range s.Portions {
			if p.Grams != want[i] {
				t.Errorf("%v g: %s gets %v g, want %v", grams, p.Name, p.Grams, want[i])
			}
		}
	}
}

func TestFirmnessOverFiveMagnitudes(t *testing.T) {
	d := Declaration{Grams: 100_000, StepGrams: 0.1}
	s, err := d.ShareNear([]Wish{{Grams: 1e8, Firmness: 1e3}, {Grams: 0, Firmness: 1e-3}, {Grams: 1e8, Firmness: 1e3}})
	if err != nil || s.TotalSteps() != 1_000_000 {
		t.Errorf("%+v, %v", s, err)
	}
}

func TestBadWishes(t *testing.T) {
	d := Declaration{Grams: 10, StepGrams: 0.5}
	for name, c := range map[string]struct {
		err  error
		kind error
	}{
		"declaration":    {failure(Declaration{}.ShareNear([]Wish{{Grams: 1}})), ErrInput},
		"count only":     {failure(Declaration{Count: 1}.ShareNear([]Wish{{Grams: 1}})), ErrInput},
		"too many steps": {failure(Declaration{Grams: 1e6, StepGrams: 1e-4}.ShareNear([]Wish{{Grams: 1}})), ErrRange},
		"huge wish":      {failure(Declaration{Grams: 1, StepGrams: 1e-3}.ShareNear([]Wish{{Grams: 1e8}})), ErrRange},
		"no wishes":      {failure(d.ShareNear(nil)), ErrInput},
		"NaN":            {failure(d.ShareNear([]Wish{{Grams: math.NaN()}})), ErrInput},
		"negative":       {failure(d.ShareNear([]Wish{{Grams: -1}})), ErrRange},
		"firmness":       {failure(d.ShareNear([]Wish{{Grams: 1, Firmness: 1e9}})), ErrRange},
		"bound":          {failure(d.ShareNear([]Wish{{Grams: 1, MinGrams: math.NaN()}})), ErrInput},
		"maximum":        {failure(d.ShareNear([]Wish{{Grams: 1, MaxGrams: math.Inf(1)}})), ErrInput},
		"minima":         {failure(d.ShareNear([]Wish{{Grams: 1, MinGrams: 6}, {MinGrams: 6}})), ErrInput},
		"maxima":         {failure(d.ShareNear([]Wish{{Grams: 1, MaxGrams: 6}, {MaxGrams: 0.4}})), ErrInput},
		"crossed":        {failure(d.ShareNear([]Wish{{Grams: 1, MinGrams: 6, MaxGrams: 5}})), ErrInput},
		"no step fits":   {failure(d.ShareNear([]Wish{{Grams: 1, MinGrams: 5.1, MaxGrams: 5.3}})), ErrInput},
		"ideal":          {failure(Ideal(10, nil)), ErrInput},
		"ideal, ratio":   {failure(Ideal(10, []Claim{{Weight: 1e300}, {Weight: 0.3}})), ErrRange},
	} {
		if !errors.Is(c.err, c.kind) {
			t.Errorf("%s: %v", name, c.err)
		}
	}
}

func TestIdealSharesSumToTheTotalWithinBounds(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 11))
	for range 10_000 {
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
