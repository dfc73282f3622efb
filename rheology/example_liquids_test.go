package rheology_test

import (
	"errors"
	"fmt"
	"os"
	"text/tabwriter"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
)

// What a milk and a cream do when chilled: the band of cold cream is wide, and says
// so.
func ExampleDairy() {
	for _, fat := range []float64{3.5, 12, 36} {
		for _, tempC := range []float64{5, 60} {
			e, err := rheology.Dairy{FatPercent: fat}.Viscosity(tempC)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%4g %% fat, %2g degC: %5.2f mPa s, 95 %% band %.2f to %.2f\n", fat, tempC, e.Likely*1e3, e.Low*1e3, e.High*1e3)
		}
	}
	// Output:
	// 3.5 % fat,  5 degC:  3.14 mPa s, 95 % band 2.77 to 3.58
	//  3.5 % fat, 60 degC:  0.80 mPa s, 95 % band 0.73 to 0.93
	//   12 % fat,  5 degC:  4.67 mPa s, 95 % band 3.61 to 8.37
	//   12 % fat, 60 degC:  1.08 mPa s, 95 % band 0.96 to 1.52
	//   36 % fat,  5 degC: 24.94 mPa s, 95 % band 14.45 to 92.23
	//   36 % fat, 60 degC:  3.82 mPa s, 95 % band 3.16 to 8.00
}

// Cold cream thins as it is poured; how much is an estimate, and the band shows it.
func ExampleDairy_ViscosityAtRate() {
	cream := rheology.Dairy{FatPercent: 40}
	for _, rate := range []float64{5, 100, 500} {
		e, err := cream.ViscosityAtRate(5, rate)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3g 1/s: %.0f mPa s (%.0f to %.0f)\n", rate, e.Likely*1e3, e.Low*1e3, e.High*1e3)
	}
	// Output:
	// 5 1/s: 57 mPa s (21 to 306)
	// 100 1/s: 38 mPa s (21 to 138)
	// 500 1/s: 31 mPa s (14 to 138)
}

// A cup time or a rheometer turns a factor into per cents, and the table then only
// says how it changes with temperature.
func ExampleMeasured() {
	cream := rheology.Measured{Liquid: rheology.Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Within(0.021, 0.05)}
	for _, tempC := range []float64{4, 6, 12} {
		e, err := cream.Viscosity(tempC)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2g degC: %.1f mPa s (%.1f to %.1f)\n", tempC, e.Likely*1e3, e.Low*1e3, e.High*1e3)
	}
	// Output:
	// 4 degC: 22.3 mPa s (21.2 to 23.4)
	//  6 degC: 21.0 mPa s (20.0 to 22.1)
	// 12 degC: 17.6 mPa s (16.6 to 18.6)
}

// Outside its range a liquid says which value left whose limits.
func ExampleRangeError() {
	_, err := rheology.Honey{MoisturePercent: 17}.Viscosity(1)
	fmt.Println(errors.Is(err, honestplate.ErrRange))
	fmt.Println(err)
	// Output:
	// true
	// honestplate: TempC is 1 degC, outside 2..70 degC (Juszczak & Fortuna 2006, J. Food Eng. 75, Rheology of selected Polish honeys (abstract))
}

// What there is to pour, each with its own range of temperature.
func ExampleCatalogue() {
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	for _, l := range rheology.Catalogue() {
		d := l.Describe()
		tempC := min(max(20, d.LowC), d.HighC)
		e, err := l.Viscosity(tempC)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Fprintf(w, "%s\t%g..%g degC\t%.3g Pa s at %g degC\n", d.Name, d.LowC, d.HighC, e.Likely, tempC)
	}
	w.Flush()
	// Output:
	// water                           -20..110 degC  0.001 Pa s at 20 degC
	// skim milk, 0.1 % fat            0..80 degC     0.00178 Pa s at 20 degC
	// milk, 1.5 % fat                 0..80 degC     0.00185 Pa s at 20 degC
	// milk, 3.5 % fat                 0..80 degC     0.00198 Pa s at 20 degC
	// half-cream, 12 % fat            0..80 degC     0.00296 Pa s at 20 degC
	// cream, 30 % fat                 0..80 degC     0.00956 Pa s at 20 degC
	// cream, 36 % fat                 0..80 degC     0.0164 Pa s at 20 degC
	// sugar syrup, 50 Brix            0..80 degC     0.0155 Pa s at 20 degC
	// sugar syrup, 65 Brix            0..80 degC     0.145 Pa s at 20 degC
	// maple syrup, 66.9 Brix          0..60 degC     0.219 Pa s at 20 degC
	// invert syrup, 80 % solids       2..70 degC     4.15 Pa s at 20 degC
	// glucose syrup, 80 % solids      2..70 degC     201 Pa s at 20 degC
	// honey, 17 % moisture            2..70 degC     13.5 Pa s at 20 degC
	// glycerol-water, 50 % glycerol   0..100 degC    0.006 Pa s at 20 degC
	// glycerol-water, 85 % glycerol   0..100 degC    0.111 Pa s at 20 degC
	// glycerol-water, 100 % glycerol  0..100 degC    1.41 Pa s at 20 degC
	// chocolate sauce                 2..50 degC     3.75 Pa s at 20 degC
	// corn oil                        2..90 degC     0.0678 Pa s at 20 degC
	// cottonseed oil                  5..90 degC     0.0669 Pa s at 20 degC
	// custard                         2..60 degC     0.827 Pa s at 20 degC
	// dark chocolate, melted          35..50 degC    12.4 Pa s at 35 degC
	// evaporated milk                 2..50 degC     0.03 Pa s at 20 degC
	// mayonnaise                      2..40 degC     2.13 Pa s at 20 degC
	// milk chocolate, melted          35..50 degC    3.67 Pa s at 35 degC
	// milk chocolate, tempered        28..33 degC    10.1 Pa s at 28 degC
	// mustard                         2..40 degC     2.25 Pa s at 20 degC
	// olive oil                       5..90 degC     0.0803 Pa s at 20 degC
	// peanut oil                      5..90 degC     0.0782 Pa s at 20 degC
	// rapeseed oil                    2..90 degC     0.0782 Pa s at 20 degC
	// rice bran oil                   5..90 degC     0.083 Pa s at 20 degC
	// safflower oil                   2..90 degC     0.0623 Pa s at 20 degC
	// soya oil                        2..90 degC     0.0657 Pa s at 20 degC
	// stirred yoghurt                 2..25 degC     0.451 Pa s at 20 degC
	// sunflower oil                   2..90 degC     0.0648 Pa s at 20 degC
	// sweetened condensed milk        2..50 degC     4.4 Pa s at 20 degC
	// tomato ketchup                  2..95 degC     1.82 Pa s at 20 degC
	// walnut oil                      2..90 degC     0.0617 Pa s at 20 degC
}

// Chilling thickens a syrup more than the same step of warming thins it.
func ExampleSyrup_maple() {
	for _, tempC := range []float64{5, 15, 25} {
		e, err := rheology.Syrup{Of: "maple"}.Viscosity(tempC)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2g degC: %.2f Pa s\n", tempC, e.Likely)
	}
	// Output:
	// 5 degC: 0.80 Pa s
	// 15 degC: 0.32 Pa s
	// 25 degC: 0.15 Pa s
}

// Honey by its moisture, from a cool store and from the kitchen.
func ExampleHoney() {
	for _, moisture := range []float64{16, 18} {
		for _, tempC := range []float64{12, 25} {
			e, err := rheology.Honey{MoisturePercent: moisture}.Viscosity(tempC)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%g %% moisture, %g degC: %.3g Pa s (%.2g to %.2g)\n", moisture, tempC, e.Likely, e.Low, e.High)
		}
	}
	// Output:
	// 16 % moisture, 12 degC: 72.4 Pa s (40 to 1.3e+02)
	// 16 % moisture, 25 degC: 11.2 Pa s (6.2 to 20)
	// 18 % moisture, 12 degC: 25.2 Pa s (14 to 45)
	// 18 % moisture, 25 degC: 4.78 Pa s (2.7 to 8.6)
}

// A sauce of your own from its flow curve at one temperature.
func ExampleCustom() {
	house := rheology.Custom{Name: "house gravy", Flow: flow.HerschelBulkley{Yield: 3, K: 2, N: 0.5}, FlowC: 60, KgPerM3: 1050}
	e, err := house.ViscosityAtRate(65, 10)
	fmt.Printf("65 degC: %.2f Pa s (%.2f to %.2f), %v\n", e.Likely, e.Low, e.High, err)
	_, err = house.Viscosity(20)
	fmt.Println(err)
	// Output:
	// 65 degC: 0.84 Pa s (0.71 to 1.00), <nil>
	// honestplate: TempC is 20 degC, outside 50..70 degC (your flow curve)
}
