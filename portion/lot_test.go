package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// packs returns n packages of the contents, then the others.
func packs(n int, contents float64, others ...float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = contents
	}
	return append(out, others...)
}

func TestSampleDecidesTheLot(t *testing.T) {
	for name, c := range map[string]struct {
		lot    Lot
		sample []float64
		want   LotDecision
	}{
		"all full":             {Lot{Nominal: 500, Size: 300}, packs(30, 501), Accept},
		"one defective":        {Lot{Nominal: 500, Size: 300}, packs(29, 503, 480), Accept},
		"two defective":        {Lot{Nominal: 500, Size: 300}, packs(28, 505, 480, 480), TakeSecond},
		"three defective":      {Lot{Nominal: 500, Size: 300}, packs(27, 510, 480, 480, 480), Reject},
		"second sample passes": {Lot{Nominal: 500, Size: 300}, packs(56, 505, 480, 480, 480, 480), Accept},
		"second sample fails":  {Lot{Nominal: 500, Size: 300}, packs(55, 505, 480, 480, 480, 480, 480), Reject},
		"one far short":        {Lot{Nominal: 500, Size: 300}, packs(29, 510, 460), Reject},
		"mean short":           {Lot{Nominal: 500, Size: 300}, packs(15, 498, packs(15, 499)...), Reject},
		"destroyed":            {Lot{Nominal: 500, Size: 300, Destructive: true}, packs(20, 501), Accept},
		"every one of a few":   {Lot{Nominal: 500, Size: 3}, []float64{500, 499, 501}, Accept},
		"a few, mean short":    {Lot{Nominal: 500, Size: 3}, []float64{500, 499, 500}, Reject},
		"minimum, all full":    {Lot{System: Minimum, Nominal: 500, Size: 50}, packs(5, 500), Accept},
		"minimum, one short":   {Lot{System: Minimum, Nominal: 500, Size: 50}, packs(5, 510, 499.9), Reject},
		"US, read row, full":   {Lot{System: AverageUS, Nominal: 113, Size: 300}, packs(12, 114), Accept},
		"US, read row, short":  {Lot{System: AverageUS, Nominal: 113, Size: 300}, packs(12, 120, 105), Reject},
		"US, recalled row":     {Lot{System: AverageUS, Nominal: 454, Size: 300}, packs(12, 460, 453), LookUp},
	} {
		v, err := c.lot.Judge(c.sample)
		if err != nil || v.LotDecision != c.want {
			t.Errorf("%s: %+v, %v; want %q", name, v, err, c.want)
		}
	}
}

func TestBadLots(t *testing.T) {
	good := packs(30, 500)
	for name, c := range map[string]struct {
		lot    Lot
		sample []float64
		kind   error
	}{
		"no nominal":    {Lot{Size: 300}, good, ErrInput},
		"no size":       {Lot{Nominal: 500}, good, ErrInput},
		"system":        {Lot{Nominal: 500, Size: 300, System: 9}, good, ErrInput},
		"wrong size":    {Lot{Nominal: 500, Size: 300}, packs(31, 500), ErrInput},
		"empty":         {Lot{Nominal: 500, Size: 300, System: Minimum}, nil, ErrInput},
		"one of many":   {Lot{Nominal: 500, Size: 300, System: Minimum}, packs(1, 500), ErrInput},
		"more than all": {Lot{Nominal: 500, Size: 3, System: Minimum}, good, ErrInput},
		"NaN contents":  {Lot{Nominal: 500, Size: 300}, packs(29, 500, math.NaN()), ErrInput},
		"huge contents": {Lot{Nominal: 500, Size: 300}, packs(29, 500, 1e300), ErrRange},
	} {
		if _, err := c.lot.Judge(c.sample); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := (Lot{System: AverageUS, Nominal: 113, Size: 300}).Plan(); !errors.Is(err, ErrRange) {
		t.Errorf("US plan: %v", err)
	}
	if _, err := (Lot{}).Plan(); !errors.Is(err, ErrInput) {
		t.Errorf("empty plan: %v", err)
	}
	for _, c := range []struct {
		n int
		p float64
	}{{1, 0.9}, {10, 0.5}, {10, 1}, {10, math.NaN()}} {
		if _, err := SampleFactor(c.n, c.p); !errors.Is(err, ErrInput) {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// More in one package never turns a lot from accepted to rejected for its count
// of defectives, and a lot all at nominal is always accepted.
func TestLotsAtNominalPass(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 6))
	for range 10_000 {
		l := Lot{Nominal: 5 + 2000*rng.Float64(), Size: 1 + rng.IntN(5000), Destructive: rng.IntN(2) == 0}
		p, err := l.Plan()
		if err != nil {
			t.Fatal(err)
		}
		v, err := l.Judge(packs(p.First, l.Nominal))
		if err != nil || v.LotDecision != Accept {
			t.Fatalf("%+v: %+v, %v", l, v, err)
		}
		short := packs(p.First, l.Nominal)
		short[0] = 0
		if v, err = l.Judge(short); err != nil || v.LotDecision != Reject {
			t.Fatalf("%+v with an empty package: %+v, %v", l, v, err)
		}
	}
}
