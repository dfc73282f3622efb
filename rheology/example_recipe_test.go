package rheology_test

import (
	"errors"
	"fmt"
	"log"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// A pour that is not the advertised product: half a kilogram of 12 mPa s at 6 degC.
// Mix what the recipe says, measure (package viscometer has the cups), add what the
// correction says.
func ExampleRecipe() {
	batch, err := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}.For(0.012)
	if err != nil {
		log.Fatal(err)
	}
	p := batch.Predicted
	fmt.Printf("milk %g g, cream %g g: %.1f mPa s (%.1f to %.1f)\n", batch.ThinGrams, batch.ThickGrams, 1e3*p.Likely, 1e3*p.Low, 1e3*p.High)

	fix, err := batch.Correct(honestplate.Exactly(0.0099), 0)
	if err != nil {
		log.Fatal(err)
	}
	p = fix.Predicted
	fmt.Printf("9.9 mPa s: add %g g of cream, %g g in all: %.1f mPa s (%.1f to %.1f)\n",
		fix.AddThickGrams, fix.TotalGrams, 1e3*p.Likely, 1e3*p.Low, 1e3*p.High)
	// Output:
	// milk 127 g, cream 373 g: 12.0 mPa s (7.6 to 39.0)
	// 9.9 mPa s: add 262 g of cream, 762 g in all: 12.0 mPa s (11.5 to 12.5)
}

// A list of thicknesses from the same two liquids, which are evaluated once.
func ExampleRecipe_Prepare() {
	ready, err := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}.Prepare()
	if err != nil {
		log.Fatal(err)
	}
	for _, pas := range []float64{0.008, 0.012, 0.016} {
		batch, err := ready.For(pas)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%.0f mPa s: milk %g g, cream %g g\n", 1e3*pas, batch.ThinGrams, batch.ThickGrams)
	}
	// Output:
	// 8 mPa s: milk 218 g, cream 282 g
	// 12 mPa s: milk 127 g, cream 373 g
	// 16 mPa s: milk 71 g, cream 429 g
}

// What a slip does to the batch.
func ExampleBatch_Sensitivity() {
	batch, err := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}.For(0.012)
	if err != nil {
		log.Fatal(err)
	}
	s, err := batch.Sensitivity()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("1 g of cream for milk %+.2f %%\n", 100*s.OneGram)
	fmt.Printf("1 degC warmer %+.1f %%\n", 100*s.Warmer)
	fmt.Printf("cream with 1 %% more fat %+.1f %%\n", 100*s.OneFatPercent)
	fmt.Printf("chilling by 1 degC does as much as %.1f g\n", s.GramsADegree)
	// Output:
	// 1 g of cream for milk +0.48 %
	// 1 degC warmer -3.0 %
	// cream with 1 % more fat +5.7 %
	// chilling by 1 degC does as much as 6.4 g
}

// The advertised product is not thickened. Its temperature may be chosen.
func ExampleServeAt() {
	shake := rheology.Dairy{FatPercent: 20}
	_, err := rheology.Recipe{
		Thin: shake, Thick: rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 6, Advertised: true,
	}.For(0.015)
	fmt.Println(errors.Is(err, honestplate.ErrAdvertised))

	at, err := rheology.ServeAt(shake, 0.0070, 2, 12)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("7.0 mPa s at %.1f degC\n", at)
	_, err = rheology.ServeAt(shake, 0.030, 2, 12)
	fmt.Println(err)
	// Output:
	// true
	// 7.0 mPa s at 6.6 degC
	// honestplate: PaS is 0.03 Pa s, outside 0.00593608..0.00811553 Pa s (reach of cream, 20 % fat between 2 and 12 degC)
}

// A batch a little thin: chill it instead of thickening it.
func ExampleBatch_Chill() {
	batch, err := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 8,
	}.For(0.012)
	if err != nil {
		log.Fatal(err)
	}
	at, err := batch.Chill(0.0105, 2, 8)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("10.5 mPa s at 8 degC is 12 mPa s at %.1f degC\n", at)
	// Output:
	// 10.5 mPa s at 8 degC is 12 mPa s at 3.7 degC
}
