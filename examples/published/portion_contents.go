package published

import (
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/testdata"
)

func quid(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "ingoing_g", "finished_g", "percent", "tolerance")
	if err != nil {
		return nil, err
	}
	if v[2] == 26 {
		return []Point{Skip(r.Text("example"), "printed a point low so that the column sums to 100")}, nil
	}
	got, err := portion.Quid([]portion.Ingredient{{Grams: v[0]}}, v[1])
	if err != nil {
		return nil, err
	}
	return []Point{Near(r.Text("example"), v[2], got[0].Percent, v[3])}, nil
}

func boundedAllocation(r testdata.Row) ([]Point, error) {
	lists := map[string][]float64{}
	for _, c := range []string{"weights", "minima", "maxima", "total", "allocation", "tolerance"} {
		v, err := r.Floats(c)
		if err != nil {
			return nil, err
		}
		lists[c] = v
	}
	claims := make([]apportion.Claim, len(lists["weights"]))
	for i := range claims {
		claims[i] = apportion.Claim{Weight: lists["weights"][i], Min: int64(lists["minima"][i]), Max: int64(lists["maxima"][i])}
	}
	total := int64(lists["total"][0])
	if r.Text("example") == "integer" {
		got, err := apportion.LargestRemainder.Apportion(total, claims)
		if err != nil {
			return nil, err
		}
		return sameAll("integer", lists["allocation"], got)
	}
	got, err := apportion.Ideal(total, claims)
	if err != nil {
		return nil, err
	}
	var points []Point
	for i, want := range lists["allocation"] {
		points = append(points, Near("real", want, got[i], lists["tolerance"][0]))
	}
	return points, nil
}
