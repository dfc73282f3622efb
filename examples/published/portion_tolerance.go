package published

import (
	"fmt"
	"math"

	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

// bounds returns the ends of a range in two columns; an empty upper end is the
// given one.
func bounds(r testdata.Row, from, to string, open float64) (low, high float64, err error) {
	if low, err = r.Float(from); err != nil {
		return 0, 0, err
	}
	if high = open; r.Text(to) != "" {
		high, err = r.Float(to)
	}
	return low, high, err
}

// percentOrGrams returns what a table that gives either a percentage or an amount
// says at a quantity.
func percentOrGrams(r testdata.Row, percent, grams string, quantity float64) (float64, error) {
	if r.Text(percent) != "" {
		p, err := r.Float(percent)
		return p / 100 * quantity, err
	}
	return r.Float(grams)
}

func tolerableNegativeError(r testdata.Row) ([]Point, error) {
	low, high, err := bounds(r, "nominal_above_g", "nominal_to_g", 100_000)
	if err != nil {
		return nil, err
	}
	var points []Point
	for _, q := range []float64{low + 0.01, (low + high) / 2, high} {
		want, err := percentOrGrams(r, "error_percent", "error_g", q)
		if err != nil {
			return nil, err
		}
		got, err := portion.TolerableNegativeError(q)
		if err != nil {
			return nil, err
		}
		// Rounding up adds less than a tenth.
		points = append(points, Point{Label: fmt.Sprintf("%g g", q), Published: want, Predicted: got, Low: got - 0.1, High: got + 1e-9})
	}
	return points, nil
}

var scaleClasses = map[string]portion.Class{"I": portion.ClassI, "II": portion.ClassII, "III": portion.ClassIII, "IIII": portion.ClassIIII}

func scaleErrors(r testdata.Row) ([]Point, error) {
	want, err := r.Float("error_e")
	if err != nil {
		return nil, err
	}
	var points []Point
	for _, name := range []string{"I", "II", "III", "IIII"} {
		column := "class_" + name + "_to_e"
		if r.Text(column) == "" {
			points = append(points, Skip("class "+name, "no upper limit given"))
			continue
		}
		to, err := r.Float(column)
		if err != nil {
			return nil, err
		}
		s := portion.Scale{StepGrams: 0.1, Verified: true, Class: scaleClasses[name]}
		got, err := s.MaxError(to * s.StepGrams)
		if err != nil {
			return nil, err
		}
		points = append(points, NearRel(fmt.Sprintf("class %s, %g e", name, to), want, got/s.StepGrams, 1e-9))
	}
	return points, nil
}

func scaleClass(r testdata.Row) ([]Point, error) {
	e, err := r.Float("e_from_g")
	if err != nil {
		return nil, err
	}
	least, err := r.Float("least_load_e")
	if err != nil {
		return nil, err
	}
	s := portion.Scale{StepGrams: e, Verified: true, Class: scaleClasses[r.Text("class")]}
	got, err := s.LeastLoad()
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("class %s, e = %g g", r.Text("class"), e)
	points := []Point{NearRel(label+", least load", least, got/e, 1e-9)}
	if r.Text("intervals_most") == "" {
		return append(points, Skip(label+", most intervals", "no limit given")), nil
	}
	most, err := r.Float("intervals_most")
	if err != nil {
		return nil, err
	}
	reach := 0.0 // 1 if the class ends where the table says
	if _, inside := s.MaxError(most * e); inside == nil {
		if _, outside := s.MaxError((most + 1) * e); outside != nil {
			reach = most
		}
	}
	return append(points, Same(label+", most intervals", most, reach)), nil
}

// digits returns half a unit of a number's last of n significant digits.
func digits(v float64, n int) float64 {
	return 0.5 * math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-float64(n-1))
}
