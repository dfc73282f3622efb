package published

import (
	"math"

	"example.org/honestplate/testdata"
)

// classes divides the rows of a table into sets that are judged apart, so that a lean
// at one end does not hide behind the other.
var classes = map[string]func(testdata.Row) string{
	"dairy_viscosity":   byFat,
	"dairy_more":        byFat,
	"dairy_density":     byFat,
	"sucrose_viscosity": brixByTemperature,
	"honey_viscosity":   byWater,
	"honey_more":        byWater,
	"glycerol_water":    byGlycerol,
	"ice_on_surfaces":   func(r testdata.Row) string { return r.Text("surface") },
}

// ClassOf returns the class of a row; most tables have one class only, "".
func ClassOf(table string, r testdata.Row) string {
	if f, ok := classes[table]; ok {
		return f(r)
	}
	return ""
}

// ranks orders the classes of a table as their limits do.
var ranks = func() map[string]int {
	var names []string
	names = append(names, fatClasses...)
	names = append(names, waterClasses...)
	names = append(names, glycerolClasses...)
	for _, b := range brixClasses {
		for _, t := range brixTemperatures {
			names = append(names, b+", "+t)
		}
	}
	out := map[string]int{}
	for i, n := range names {
		out[n] = i
	}
	return out
}()

var (
	fatClasses       = []string{"fat below 5 %", "fat 5 to 12 %", "fat 12 to 25 %", "fat from 25 %"}
	waterClasses     = []string{"water below 16 %", "water 16 to 18 %", "water from 18 %"}
	glycerolClasses  = []string{"below 40 %", "40 to 70 %", "from 70 %"}
	brixClasses      = []string{"below 30 Brix", "30 to 50 Brix", "from 50 Brix"}
	brixTemperatures = []string{"below 20 degC", "20 to 45 degC", "from 45 degC"}
)

// in names the first of the limits that v is below, or the last class.
func in(v float64, limits []float64, names []string) string {
	for i, l := range limits {
		if v < l {
			return names[i]
		}
	}
	return names[len(limits)]
}

// value reads a field that may be empty, as the usual value.
func value(r testdata.Row, column string, usual float64) float64 {
	if v, err := r.Float(column); err == nil && !math.IsNaN(v) {
		return v
	}
	return usual
}

func byFat(r testdata.Row) string {
	return in(value(r, "fat_percent", 3.5), []float64{5, 12, 25}, fatClasses)
}

func brixByTemperature(r testdata.Row) string {
	return in(value(r, "sucrose_percent", 0), []float64{30, 50}, brixClasses) + ", " +
		in(value(r, "temp_c", 20), []float64{20, 45}, brixTemperatures)
}

func byWater(r testdata.Row) string {
	return in(value(r, "moisture_percent", 17), []float64{16, 18}, waterClasses)
}

func byGlycerol(r testdata.Row) string {
	return in(value(r, "glycerol_percent", 0), []float64{40, 70}, glycerolClasses)
}
