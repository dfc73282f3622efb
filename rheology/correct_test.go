package rheology_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

func TestABatchAsWantedNeedsNothing(t *testing.T) {
	b, err := kitchen(500, 1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	c, err := Correct(b, b.TargetPaS)
	if err != nil || c.AddThinGrams != 0 || c.AddThickGrams != 0 || c.TotalGrams != 500 {
		t.Errorf("%+v, %v", c, err)
	}
	if math.Abs(c.Predicted.Likely/b.TargetPaS-1) > 1e-9 {
		t.Errorf("predicted %v, measured %v", c.Predicted, b.TargetPaS)
	}
}

func TestACorrectionReplacesTheModelAndAddsTheLeast(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range 200 {
		b, err := kitchen(500, 0.5).For(0.004 + 0.012*rng.Float64())
		if err != nil {
			t.Fatal(err)
		}
		measured := b.TargetPaS * math.Exp(0.3*(2*rng.Float64()-1))
		c, err := Correct(b, measured)
		if err != nil {
			t.Fatalf("%v for %v: %v", measured, b.TargetPaS, err)
		}
		if measured > b.TargetPaS && c.AddThickGrams > 0 || measured < b.TargetPaS && c.AddThinGrams > 0 {
			t.Errorf("measured %v, wanted %v: %+v", measured, b.TargetPaS, c)
		}
		if got := c.Batch.ThinGrams + c.Batch.ThickGrams; got != c.TotalGrams || c.TotalGrams != 500+c.AddThinGrams+c.AddThickGrams {
			t.Errorf("total %v, %v", got, c.TotalGrams)
		}
		off := math.Abs(math.Log(c.Predicted.Likely / b.TargetPaS))
		if off > 0.01 {
			t.Errorf("after correction %v, wanted %v", c.Predicted, b.TargetPaS)
		}
		if c.Predicted.High/c.Predicted.Low > b.Predicted.High/b.Predicted.Low {
			t.Errorf("the band after measuring, %v, is wider than before, %v", c.Predicted, b.Predicted)
		}
	}
}

func TestACorrectionFindsTheCreamThatWasReallyThere(t *testing.T) {
	// The real cream is half as thick as the table says; log-mixing with it is the truth.
	milk, table := Dairy{FatPercent: 3.5}, Dairy{FatPercent: 36}
	v, _ := table.Viscosity(6)
	cream := Measured{Liquid: table, TempC: 6, PaS: honestplate.Exactly(v.Likely / 2)}
	b, err := kitchen(500, 0.1).For(0.008)
	if err != nil {
		t.Fatal(err)
	}
	for range 4 {
		m, err := Blend(Part{milk, b.ThinGrams}, Part{cream, b.ThickGrams})
		if err != nil {
			t.Fatal(err)
		}
		now, _ := m.Viscosity(6)
		c, err := Correct(b, now.Likely)
		if err != nil {
			t.Fatal(err)
		}
		b = c.Batch
	}
	m, _ := Blend(Part{milk, b.ThinGrams}, Part{cream, b.ThickGrams})
	now, _ := m.Viscosity(6)
	if math.Abs(now.Likely/0.008-1) > 0.005 {
		t.Errorf("after four rounds %v, wanted 0.008", now.Likely)
	}
}

// A correction repeated with its own prediction adds nothing.
func TestACorrectionConverges(t *testing.T) {
	for _, r := range []Recipe{
		kitchen(900, 1), kitchen(710, 5),
		{Thin: Water{}, Thick: Honey{}, BatchGrams: 710, StepGrams: 1, TempC: 20},
		{Thin: Water{}, Thick: Sucrose{Brix: 65}, BatchGrams: 300, StepGrams: 5, TempC: 20},
		{Thin: Dairy{FatPercent: 3.5}, Thick: Syrup{Of: "maple"}, BatchGrams: 400, StepGrams: 1, TempC: 6},
	} {
		low, high, err := r.Reach()
		if err != nil {
			t.Fatal(err)
		}
		for w := 0.1; w < 0.95; w += 0.05 {
			b, err := r.For(low.Likely * math.Pow(high.Likely/low.Likely, w))
			if err != nil {
				t.Fatal(err)
			}
			for _, off := range []float64{0.5, 0.8, 0.97, 1.02, 1.3, 2} {
				c, err := Correct(b, b.Predicted.Likely*off)
				if errors.Is(err, honestplate.ErrRange) {
					continue
				}
				if err != nil {
					t.Fatal(err)
				}
				again, err := Correct(c.Batch, c.Predicted.Likely)
				if err != nil || !again.LeaveIt {
					t.Errorf("%v, %.3g off: added %g and %g g, then %g and %g, %v", r.Thick.Describe().Name, off,
						c.AddThinGrams, c.AddThickGrams, again.AddThinGrams, again.AddThickGrams, err)
				}
			}
		}
	}
}

func TestACorrectionOutOfReachSaysWhatCanBeReached(t *testing.T) {
	b, err := kitchen(500, 1).For(0.02)
	if err != nil {
		t.Fatal(err)
	}
	var r *honestplate.RangeError
	if _, err := Correct(b, 0.0001); !errors.As(err, &r) || r.Value != b.TargetPaS {
		t.Errorf("%v", err)
	}
	b.ThinGrams, b.ThickGrams = 0, 500
	if _, err := Correct(b, 0.015); !errors.As(err, &r) || r.High > 0.0150001 {
		t.Errorf("pure cream, too thin: %v", err)
	}
}

func TestMeasuredEndsMoveTheWholeCurve(t *testing.T) {
	one := Measured{Liquid: Dairy{FatPercent: 3.5}, TempC: 6, PaS: honestplate.Exactly(0.01)}
	r := Recipe{Thin: one, Thick: Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Exactly(0.01)}, BatchGrams: 100, StepGrams: 1, TempC: 6}
	b, err := r.For(0.01)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Correct(b, 0.02); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("two equal liquids: %v", err)
	}
}

func TestACorrectionThatMakesNoSenseIsRefused(t *testing.T) {
	good, err := kitchen(500, 1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	for _, pas := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := Correct(good, pas); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%v: %v", pas, err)
		}
		if _, err := good.Chill(pas, 2, 20); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("chill from %v: %v", pas, err)
		}
	}
	for name, change := range map[string]func(*Batch){
		"empty":         func(b *Batch) { b.ThinGrams, b.ThickGrams = 0, 0 },
		"broken step":   func(b *Batch) { b.ThinGrams += 0.5 },
		"broken step 2": func(b *Batch) { b.ThickGrams += 0.5 },
		"negative":      func(b *Batch) { b.ThickGrams = -1 },
		"no target":     func(b *Batch) { b.TargetPaS = 0 },
		"no liquid":     func(b *Batch) { b.Recipe.Thick = nil },
	} {
		b := good
		change(&b)
		if _, err := Correct(b, 0.01); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestServeAtIsTheInverseOfViscosity(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		l := Dairy{FatPercent: 40 * rng.Float64()}
		tempC := 1 + 78*rng.Float64()
		v, _ := l.Viscosity(tempC)
		got, err := ServeAt(l, v.Likely, 0, 80)
		if err != nil || math.Abs(got-tempC) > 1e-3 {
			t.Fatalf("%v at %v: %v, %v", l, tempC, got, err)
		}
	}
}

func TestServeAtSaysWhatTheLiquidCanReach(t *testing.T) {
	milk := Dairy{FatPercent: 3.5}
	cold, _ := milk.Viscosity(4)
	warm, _ := milk.Viscosity(20)
	var r *honestplate.RangeError
	for _, pas := range []float64{1, 1e-6} {
		if _, err := ServeAt(milk, pas, 4, 20); !errors.As(err, &r) || r.Low != warm.Likely || r.High != cold.Likely {
			t.Errorf("%v: %v", pas, err)
		}
	}
	for _, at := range []float64{4, 20} {
		v, _ := milk.Viscosity(at)
		if got, err := ServeAt(milk, v.Likely, 4, 20); err != nil || got != at {
			t.Errorf("at the end %v: %v, %v", at, got, err)
		}
	}
	if _, err := ServeAt(milk, 0.002, -5, 20); !errors.As(err, &r) || r.Value != -5 {
		t.Errorf("below the liquid's range: %v", err)
	}
	if _, err := ServeAt(milk, 0.002, 5, 99); !errors.As(err, &r) || r.Value != 99 {
		t.Errorf("above the liquid's range: %v", err)
	}
	for _, bad := range [][3]float64{{0, 4, 20}, {0.002, 20, 4}, {0.002, math.NaN(), 4}, {0.002, 4, math.Inf(1)}} {
		if _, err := ServeAt(milk, bad[0], bad[1], bad[2]); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%v: %v", bad, err)
		}
	}
	if _, err := ServeAt(nil, 0.002, 4, 20); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("nil: %v", err)
	}
}

func TestChillingABatchBringsItToItsTarget(t *testing.T) {
	b, err := kitchen(500, 1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	at, err := b.Chill(0.95*b.Predicted.Likely, 0, 6)
	if err != nil {
		t.Fatal(err)
	}
	if at >= 6 || at < 2 {
		t.Errorf("5 %% too thin at 6 degC: chill to %v", at)
	}
}

// If the errors are as the bands say, the band after a correction must hold the
// truth in 90..99 % of the cases: not more often either.
func TestTheBandAfterACorrectionIsRight(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	const sigmas = 1.96
	for name, r := range map[string]Recipe{
		"by fat": kitchen(500, 0.1),
		"measured": {
			Thin:       Measured{Liquid: Dairy{FatPercent: 3.5}, TempC: 6, PaS: honestplate.Factor(0.003, 1.05)},
			Thick:      Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Factor(0.03, 1.2)},
			BatchGrams: 500, StepGrams: 0.1, TempC: 6,
		},
	} {
		low, high, err := r.Reach()
		if err != nil {
			t.Fatal(err)
		}
		lnThin, lnThick := math.Log(low.Likely), math.Log(high.Likely)
		ratio := lnThick - lnThin
		n, inside := 0, 0
		for range 2000 {
			b, err := r.For(low.Likely * math.Exp(ratio*(0.2+0.5*rng.Float64())))
			if err != nil {
				t.Fatal(err)
			}
			thin := rng.NormFloat64() / sigmas * math.Log(low.High/low.Low) / 2
			thick := rng.NormFloat64() / sigmas * math.Log(high.High/high.Low) / 2
			share := 1.0
			if name == "by fat" {
				share = 0.6
			}
			step := 1 + share*rng.NormFloat64()/sigmas
			truth := func(b Batch) float64 {
				w := b.ThickGrams / (b.ThinGrams + b.ThickGrams)
				d, err := b.Departure()
				if err != nil {
					t.Fatal(err)
				}
				// The thick one's error is its k, which the emulsion law carries to the blend.
				k := EmulsionShape(3.5+32.5*w, 6) / EmulsionShape(36, 6)
				return math.Exp((1-w)*(lnThin+thin) + w*lnThick + k*thick + step*d.E)
			}
			c, err := Correct(b, truth(b))
			if errors.Is(err, honestplate.ErrRange) {
				continue // the true cream is too thin, or the true milk too thick
			}
			if err != nil {
				t.Fatal(err)
			}
			n++
			// A relative slack for batches that need next to nothing: their band is 0.
			if v := truth(c.Batch); c.Predicted.Low*(1-1e-9) <= v && v <= c.Predicted.High*(1+1e-9) {
				inside++
			}
		}
		if share := float64(inside) / float64(n); n < 1000 || share < 0.9 || share > 0.99 {
			t.Errorf("%s: %d of %d inside, %.3f", name, inside, n, share)
		}
	}
}

// A batch that measures what is expected once the rule's known lean is taken out blames neither
// liquid: what it becomes follows from the two as they are, the lean taken out again.
func TestACorrectionStartsWithoutTheKnownLean(t *testing.T) {
	thin := Measured{Liquid: Food("olive oil"), TempC: 20, PaS: honestplate.Factor(0.01, 1.3)}
	thick := Measured{Liquid: Food("sunflower oil"), TempC: 20, PaS: honestplate.Factor(0.1, 1.3)}
	expected := func(w float64) float64 {
		return 0.01 * math.Pow(10, w) * math.Exp(-0.85*w*(1-w)*math.Ln10)
	}
	b := Batch{
		Recipe:    Recipe{Thin: thin, Thick: thick, BatchGrams: 1000, StepGrams: 1, TempC: 20},
		ThinGrams: 700, ThickGrams: 300, TargetPaS: 0.03,
	}
	c, err := Correct(b, expected(0.3))
	if err != nil || c.AddThickGrams == 0 {
		t.Fatalf("%+v, %v", c, err)
	}
	if want := expected(c.Batch.ThickGrams / c.TotalGrams); math.Abs(c.Predicted.Likely/want-1) > 1e-9 {
		t.Errorf("predicted %v, want %g", c.Predicted, want)
	}
}
