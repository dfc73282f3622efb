package published

import (
	"fmt"

	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

// numbers returns the fields of several columns.
func numbers(r testdata.Row, columns ...string) ([]float64, error) {
	out := make([]float64, len(columns))
	for i, c := range columns {
		v, err := r.Float(c)
		if err != nil {
			return nil, err
		}
		out[i] = v
	}
	return out, nil
}

func successRun(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "all_good", "confidence", "lowest_rate")
	if err != nil {
		return nil, err
	}
	got, err := portion.Heroes{Takes: int(v[0]), Good: int(v[0]), Confidence: v[1]}.LowestRate()
	return []Point{Near(fmt.Sprintf("%g good, %g", v[0], v[1]), v[2], got, 0.5e-6)}, err
}

func trialsForSuccesses(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "successes", "success_rate", "confidence", "trials")
	if err != nil {
		return nil, err
	}
	got, err := portion.Heroes{Wanted: int(v[0]), SuccessRate: v[1], Confidence: v[2]}.Units()
	return []Point{Same(fmt.Sprintf("k %g, p %g, C %g", v[0], v[1], v[2]), v[3], float64(got))}, err
}

func chanceOfFive(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "trials", "successes", "success_rate", "probability")
	if err != nil {
		return nil, err
	}
	got, err := portion.Heroes{Wanted: int(v[1]), SuccessRate: v[2]}.Chance(int(v[0]))
	return []Point{Near(fmt.Sprintf("n %g", v[0]), v[3], got, digits(v[3], 5))}, err
}
