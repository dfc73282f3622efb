package published

import (
	"fmt"

	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/testdata"
)

// methodsByName finds a method by the name a table uses.
var methodsByName = func() map[string]apportion.Method {
	out := map[string]apportion.Method{}
	for m := apportion.LargestRemainder; m <= apportion.QuotaMethod; m++ {
		out[m.String()] = m
	}
	return out
}()

// smallApportionment shares a whole example that stands in one row.
func smallApportionment(r testdata.Row) ([]Point, error) {
	m, ok := methodsByName[r.Text("method")]
	if !ok {
		return nil, fmt.Errorf("unknown method %q", r.Text("method"))
	}
	weights, err := r.Floats("weights")
	if err != nil {
		return nil, err
	}
	want, err := r.Floats("seats")
	if err != nil {
		return nil, err
	}
	total, err := r.Float("seats_total")
	if err != nil {
		return nil, err
	}
	claims := make([]apportion.Claim, len(weights))
	for i, w := range weights {
		claims[i].Weight = w
	}
	got, err := m.Apportion(int64(total), claims)
	if err != nil {
		return nil, err
	}
	return sameAll(fmt.Sprintf("%s, %v", r.Text("example"), m), want, got)
}

// sameAll compares two lists element by element.
func sameAll(label string, want []float64, got []int64) ([]Point, error) {
	if len(want) != len(got) {
		return nil, fmt.Errorf("%s: %d published values, %d computed", label, len(want), len(got))
	}
	points := make([]Point, len(want))
	for i := range want {
		points[i] = Same(fmt.Sprintf("%s, number %d", label, i+1), want[i], float64(got[i]))
	}
	return points, nil
}

// A house is one apportionment over all rows of a table.
type house struct {
	result, weight string // columns
	method         apportion.Method
	seats, least   int64
}

// seats compares one state's row with its share of each house; the house is made
// of the rows of the same census year.
func seats(table string, houses ...house) func(testdata.Row) ([]Point, error) {
	return func(r testdata.Row) ([]Point, error) {
		t, err := testdata.Load(table)
		if err != nil {
			return nil, err
		}
		var points []Point
		for _, h := range houses {
			label := fmt.Sprintf("%s %s, %s", r.Text("state"), r.Text("census_year"), h.result)
			if r.Text(h.result) == "" {
				points = append(points, Skip(label, "no seats printed: the row only completes the house"))
				continue
			}
			want, err := r.Float(h.result)
			if err != nil {
				return nil, err
			}
			var claims []apportion.Claim
			place := -1
			for _, row := range t.Rows {
				if row.Text("census_year") != r.Text("census_year") || row.Text(h.weight) == "" {
					continue
				}
				w, err := row.Float(h.weight)
				if err != nil {
					return nil, err
				}
				if row.Line == r.Line {
					place = len(claims)
				}
				claims = append(claims, apportion.Claim{Weight: w, Min: h.least})
			}
			got, err := h.method.Apportion(h.seats, claims)
			if err != nil {
				return nil, err
			}
			points = append(points, Same(label, want, float64(got[place])))
		}
		return points, nil
	}
}
