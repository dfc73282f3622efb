package rheology_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

// ln(viscosity) is convex in fat at every temperature and for every treatment: globules
// that crowd each other never help less for being more.
func TestDairyIsConvexInFat(t *testing.T) {
	for _, treatment := range []Treatment{"", PlainCream, Homogenised} {
		for tempC := 0.0; tempC <= 80; tempC += 2.5 {
			at := func(fat float64) float64 {
				return math.Log(likely(t, Dairy{FatPercent: fat, Treatment: treatment}, tempC))
			}
			for fat := 0.25; fat <= 49.75; fat += 0.25 {
				if c := at(fat-0.25) + at(fat+0.25) - 2*at(fat); c < -1e-12 {
					t.Fatalf("%q at %g degC, %g %%: %g", treatment, tempC, fat, c)
				}
			}
		}
	}
}

// Between 30 and 40 degC nothing falls faster than what was measured: the chart's 50 % cream
// falls 0.043 a degC from 15.6 to 32.2 degC, and from its 55 mPa s there to Phipps' formula
// at 40 degC, 12.7 at that fat, by 0.19.
func TestDairyHasNoCliffWhereTheFatMelts(t *testing.T) {
	for _, c := range []struct{ fat, steepest float64 }{{10, 0.033}, {30, 0.051}, {50, 0.085}} {
		for tempC := 20.0; tempC < 45; tempC += 0.5 {
			d := Dairy{FatPercent: c.fat}
			if fall := 2 * math.Log(likely(t, d, tempC)/likely(t, d, tempC+0.5)); fall > c.steepest {
				t.Errorf("%g %% at %g degC falls %.3f a degC", c.fat, tempC, fall)
			}
		}
	}
}

// A treatment that is stated moves value and band, and only so far as creams show it.
func TestTreatmentMovesColdCream(t *testing.T) {
	at := func(fat, tempC float64, of Treatment) honestplate.Estimate {
		e, err := Dairy{FatPercent: fat, Treatment: of}.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		return e
	}
	for _, fat := range []float64{12, 20, 30} {
		open, plain, torn := at(fat, 5, ""), at(fat, 5, PlainCream), at(fat, 5, Homogenised)
		if plain.Likely != open.Likely || plain.High >= open.High || plain.Low != open.Low {
			t.Errorf("%g %%: plain %v, not stated %v", fat, plain, open)
		}
		if torn.Likely < 1.3*plain.Likely {
			t.Errorf("%g %%: homogenised %v, plain %v", fat, torn, plain)
		}
		if b := 1e-3 * math.Exp(-8.9+0.1*fat+2721.5/278.15); !open.Contains(b) || plain.Contains(b) && fat > 15 {
			t.Errorf("%g %%: Bakshi & Smith 1984 has %g: not stated %v, plain %v", fat, b, open, plain)
		}
	}
	// Milk hardly changes: sources differ even in the sign.
	if a, b := at(3.5, 5, PlainCream).Likely, at(3.5, 5, Homogenised).Likely; math.Abs(b/a-1) > 0.05 {
		t.Errorf("milk: plain %g, homogenised %g", a, b)
	}
	// The one homogenised cream with a temperature and a rate: 50 % solids, fat about 45 %
	// by difference, 20 degC, 0.5 1/s: 513 mPa s (paper on full-cream milk powder, read).
	e, err := Dairy{FatPercent: 45, Treatment: Homogenised}.ViscosityAtRate(20, 0.5)
	if err != nil || !e.Contains(0.513) {
		t.Errorf("homogenised cream of 45 %%: %v, %v, printed 513 mPa s", e, err)
	}
	thick := Dairy{FatPercent: 30, Treatment: Thickened}
	if _, err := thick.Viscosity(5); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("thickened cream obeys no law of fat: %v", err)
	}
	m := Measured{Liquid: thick, TempC: 5, PaS: honestplate.Factor(0.2, 1.05)}
	if warm := likely(t, m, 15); warm >= 0.2 || warm < 0.08 {
		t.Errorf("measured thickened cream at 15 degC: %g", warm)
	}
	if _, err := (Dairy{FatPercent: 3, Treatment: "boiled"}).Viscosity(5); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("an unknown treatment: %v", err)
	}
}

// One cup reading of the cream narrows what is made with it, and finds the curve: where the
// cream is really homogenised, the blend comes out as homogenised cream does.
func TestOneReadingFixesTheWholeFatCurve(t *testing.T) {
	for _, treatment := range []Treatment{PlainCream, Homogenised} {
		truth := Dairy{FatPercent: 30, Treatment: treatment}
		v := likely(t, truth, 5)
		m := Measured{Liquid: Dairy{FatPercent: 30}, TempC: 5, PaS: honestplate.Factor(v, 1.02)}
		for _, cream := range []float64{0.3, 0.5, 0.7} {
			blend := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 1 - cream}, Part{m, cream})
			want := likely(t, Dairy{FatPercent: 3.5 + 26.5*cream, Treatment: treatment}, 5)
			got, err := blend.Viscosity(5)
			if err != nil || math.Abs(got.Likely/want-1) > 0.06 || !got.Contains(want) {
				t.Errorf("%s, %g of cream: %v, %v, want %g", treatment, cream, got, err, want)
			}
			open, _ := Dairy{FatPercent: 3.5 + 26.5*cream}.Viscosity(5)
			if got.High/got.Low > 0.8*open.High/open.Low {
				t.Errorf("%s, %g of cream: %v is hardly narrower than %v", treatment, cream, got, open)
			}
		}
		// And warm: homogenised cream stays the thicker one.
		if got, want := likely(t, m, 30), likely(t, Dairy{FatPercent: 30, Treatment: treatment}, 30); math.Abs(got/want-1) > 0.05 {
			t.Errorf("%s at 30 degC: %g, want %g", treatment, got, want)
		}
	}
}

// The first correction of a batch of real homogenised cream leads to where the next finds
// nothing more to do than a tenth.
func TestACorrectionGoesByTheFatCurve(t *testing.T) {
	r := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 30}, BatchGrams: 900, StepGrams: 1, TempC: 7}
	b, err := r.For(0.009)
	if err != nil {
		t.Fatal(err)
	}
	real := func(b Batch) float64 {
		fat := (3.5*b.ThinGrams + 30*b.ThickGrams) / (b.ThinGrams + b.ThickGrams)
		return likely(t, Dairy{FatPercent: fat, Treatment: Homogenised}, 7)
	}
	c, err := Correct(b, real(b))
	if err != nil || c.AddThinGrams == 0 {
		t.Fatalf("%+v, %v", c, err)
	}
	if off := math.Abs(math.Log(real(c.Batch) / 0.009)); off > 0.1 {
		t.Errorf("after one correction %.4g Pa s, wanted 0.009", real(c.Batch))
	}
}

// A batch measured as a whole and blended on is milk and cream still.
func TestAMeasuredBatchBlendsByItsFat(t *testing.T) {
	batch := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 1}, Part{Dairy{FatPercent: 36}, 1})
	whole := Measured{Liquid: batch, TempC: 5, PaS: honestplate.Exactly(likely(t, batch, 5))}
	m := mustBlend(t, Rule{}, Part{whole, 1}, Part{Dairy{FatPercent: 36}, 1})
	if got, want := likely(t, m, 5), likely(t, Dairy{FatPercent: (19.75 + 36) / 2}, 5); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("%g, want %g", got, want)
	}
}
