package viscometer_test

import (
	"fmt"
	"log"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/viscometer"
)

// A pour that is not the advertised product: half a kilogram of 12 mPa s at 6 degC.
// Mix what the recipe says, time the cup three times, add what the correction says.
func ExampleCupReading_Correct() {
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

	cup, err := viscometer.CupNamed("ISO 3")
	if err != nil {
		log.Fatal(err)
	}
	test, err := cup.Test(batch)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%v: %v expected, leave it from %.1f to %.1f s\n", cup, test.Time, test.OK.From.Seconds(), test.OK.To.Seconds())

	fix, err := cup.Timed(33*time.Second, 34*time.Second, 33*time.Second).Correct(batch)
	if err != nil {
		log.Fatal(err)
	}
	p = fix.Predicted
	fmt.Printf("33 s, 34 s, 33 s: %.1f mPa s: add %g g of cream, %g g in all: %.1f mPa s (%.1f to %.1f)\n",
		1e3*fix.MeasuredPaS, fix.AddThickGrams, fix.TotalGrams, 1e3*p.Likely, 1e3*p.Low, 1e3*p.High)
	// Output:
	// milk 127 g, cream 373 g: 12.0 mPa s (7.6 to 39.0)
	// ISO 2431, 3 mm: 0:36 (0:30..1:27) expected, leave it from 35.8 to 37.1 s
	// 33 s, 34 s, 33 s: 9.9 mPa s: add 253 g of cream, 753 g in all: 12.0 mPa s (10.4 to 13.8)
}

// One cup of the cream fixes how its globules hold together, and with it every blend: three
// timings at 7 degC of a cream that is thicker than the table's.
func ExampleCupReading_Measure() {
	cup, err := viscometer.CupNamed("ISO 3")
	if err != nil {
		log.Fatal(err)
	}
	table := rheology.Dairy{FatPercent: 30}
	reading := cup.Timed(62*time.Second, 63*time.Second, 62*time.Second)
	reading.TempC = honestplate.Some(7)
	cream, err := reading.Measure(table)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f mPa s at %.0f 1/s\n", 1e3*cream.PaS.Likely, cream.ShearRate)
	for _, l := range []rheology.Liquid{table, cream} {
		mix, err := rheology.Blend(
			rheology.Part{Liquid: rheology.Dairy{FatPercent: 3.5}, Grams: 400},
			rheology.Part{Liquid: l, Grams: 600})
		if err != nil {
			log.Fatal(err)
		}
		v, err := mix.Viscosity(7)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("with %s: %.1f mPa s (%.1f to %.1f)\n", l.Describe().Name, 1e3*v.Likely, 1e3*v.Low, 1e3*v.High)
	}
	// Output:
	// 24.7 mPa s at 475 1/s
	// with cream, 30 % fat: 6.7 mPa s (4.7 to 16.4)
	// with cream, 30 % fat, as measured: 9.4 mPa s (7.6 to 11.6)
}
