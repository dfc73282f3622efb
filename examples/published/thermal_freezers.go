package published

import (
	"fmt"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
)

func freezerMedia(r testdata.Row) ([]Point, error) {
	want, err := r.Float("value")
	if err != nil {
		return nil, err
	}
	for _, m := range []cold.Medium{cold.Freezers().Home, cold.Freezers().Blast, cold.Freezers().Plate, cold.Freezers().DryIce} {
		switch {
		case m.Name != r.Text("medium"):
		case r.Text("quantity") == "temp_c":
			return []Point{Same(r.Text("case"), want, m.TempC)}, nil
		default:
			return []Point{{Label: r.Text("case"), Published: want, Predicted: m.H.Likely, Low: m.H.Low, High: m.H.High}}, nil
		}
	}
	return nil, fmt.Errorf("unknown medium %q", r.Text("medium"))
}

// sucroseEquivalents finds how much sucrose lowers the freezing point of 75 g of
// water as much as 10 g of the sweetener.
func sucroseEquivalents(r testdata.Row) ([]Point, error) {
	want, err := r.Float("equivalent_percent")
	if err != nil {
		return nil, err
	}
	label := r.Text("solute")
	mix := food.FrozenMix{OtherSolidsPercent: 15}
	low, high := 0.99, 1.01
	switch label {
	case "dextrose", "fructose", "galactose", "allulose invert sugar honey":
		mix.MonosaccharidePercent = 10
	case "sucrose", "maltose", "trehalose":
		mix.SucrosePercent = 10
	case "glucose powder 40/42 DE", "glucose syrup 42 DE 25 % water", "glucose syrup 42 DE older page":
		mix.GlucoseSyrupPercent = 10
		low, high = 0.99, 1.3/0.8 // what SyrupFactor is for
	case "lactose":
		return []Point{Skip(label, "counted inside milk solids and whey")}, nil
	default:
		return []Point{Skip(label, "not an ingredient of FrozenMix, unless through SyrupFactor")}, nil
	}
	temp, err := mix.FrozenAtC(0)
	if err != nil {
		return nil, err
	}
	a, b := 3.0, 100.0
	for range 50 {
		mid := (a + b) / 2
		d, err := food.FrozenMix{SucrosePercent: 100 * mid / (100 + mid)}.FrozenAtC(0)
		if err != nil {
			return nil, err
		}
		if d > temp {
			a = mid
		} else {
			b = mid
		}
	}
	got := a * 0.75 / 10 * 100
	return []Point{{Label: label, Published: want, Predicted: got, Low: got * low, High: got * high}}, nil
}
