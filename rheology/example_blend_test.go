package rheology_test

import (
	"fmt"
	"log"
	"os"
	"text/tabwriter"

	"example.org/honestplate"
	"example.org/honestplate/examples/published"
	"example.org/honestplate/rheology"
	"example.org/honestplate/testdata"
)

// Milk and cream at fridge temperature. From fat alone the band is wide; with
// both measured it is that of the departure from log-mixing.
func ExampleBlend() {
	milk, cream := rheology.Dairy{FatPercent: 3.5}, rheology.Dairy{FatPercent: 36}
	show := func(what string, parts ...rheology.Part) {
		m, err := rheology.Blend(parts...)
		if err != nil {
			log.Fatal(err)
		}
		v, err := m.Viscosity(6)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %.1f mPa s (%.1f to %.1f)\n", what, 1e3*v.Likely, 1e3*v.Low, 1e3*v.High)
	}
	show("by fat", rheology.Part{Liquid: milk, Grams: 300}, rheology.Part{Liquid: cream, Grams: 200})
	show("measured",
		rheology.Part{Liquid: rheology.Measured{Liquid: milk, TempC: 6, PaS: honestplate.Within(0.0029, 0.05)}, Grams: 300},
		rheology.Part{Liquid: rheology.Measured{Liquid: cream, TempC: 6, PaS: honestplate.Within(0.021, 0.05)}, Grams: 200})
	// Output:
	// by fat: 5.8 mPa s (4.2 to 12.7)
	// measured: 5.3 mPa s (4.4 to 6.4)
}

// Which rule to trust: each on the milk and cream blends of which both ends and
// the middle are printed. Log-mixing alone is high; the departure that the emulsion law says
// takes a little too much off.
func ExampleCompareRules() {
	table, err := testdata.Load("dairy_blends")
	if err != nil {
		log.Fatal(err)
	}
	var cold, hot []rheology.BlendCase
	for _, row := range table.Rows {
		c, err := published.DairyBlend(row)
		if err != nil {
			log.Fatal(err)
		}
		if c.TempC < 40 {
			cold = append(cold, c)
		} else {
			hot = append(hot, c)
		}
	}
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "predicted/printed\tblends\tmean\tlowest\thighest\tin the band")
	for _, g := range []struct {
		where string
		cases []rheology.BlendCase
	}{{"3..16 degC", cold}, {"40..80 degC", hot}} {
		scores, err := rheology.CompareRules(g.cases)
		if err != nil {
			log.Fatal(err)
		}
		for _, s := range scores {
			fmt.Fprintf(w, "%v, %s\t%d\t%.2f\t%.2f\t%.2f\t%d\n", s.Rule, g.where, s.Blends, s.Mean, s.Lowest, s.Highest, s.Inside)
		}
	}
	w.Flush()
	// Output:
	// predicted/printed                                   blends  mean  lowest  highest  in the band
	// log-mixing by mass with its departure, 3..16 degC   5       0.86  0.63    1.15     4
	// log-mixing alone, 3..16 degC                        5       1.33  1.09    1.51     5
	// log-mixing by mass with its departure, 40..80 degC  6       0.91  0.89    0.95     6
	// log-mixing alone, 40..80 degC                       6       1.06  1.04    1.08     6
}
