package published

import (
	"fmt"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

func freezerMedia(r testdata.Row) ([]Point, error) {
	want, err := r.Float("value")
	if err != nil {
		return nil, err
	}
	for _, m := range []thermal.Medium{thermal.HomeFreezer(), thermal.BlastFreezer(), thermal.PlateFreezer(), thermal.DryIce()} {
		switch {
		case m.Name != r.Text("medium"):
		case r.Text("quantity") == "temp_c":
			return []Point{Same(r.Text("case"), want, m.TempC)}, nil
		default:
			return []Point{{Label: r.Text("case"), Published: want, Predicted: m.H, Low: m.HLow, High: m.HHigh}}, nil
		}
	}
	return nil, fmt.Errorf("unknown medium %q", r.Text("medium"))
}

// plankConstants takes P and R out of the freezing time by making the other's term
// vanish: rho L/(Tf - Ta) is 1e6 s W/(m3 K), a is 0.1 m.
func plankConstants(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "numerator", "denominator")
	if err != nil {
		return nil, err
	}
	size, ok := map[string]thermal.Size{
		"slab": {Height: 0.1}, "cylinder": {Diameter: 0.1, Long: true}, "ball": {Diameter: 0.1},
		"cube": {Height: 0.1, Width: 0.1, Depth: 0.1},
	}[r.Text("shape")]
	if !ok {
		return nil, fmt.Errorf("unknown shape %q", r.Text("shape"))
	}
	f := thermal.Freezing{
		Size: size, Food: thermal.Freezable{FreezeC: 0, Density: 1000, Latent: 2e4, FrozenK: 1e9},
		Medium: thermal.Medium{TempC: -20, H: 10},
	}
	scale := 1e6 * 0.1 / 10
	if r.Text("constant") == "R" {
		f.Food.FrozenK, f.Medium.H = 1, 1e9
		scale = 1e6 * 0.01
	}
	t, err := f.Plank()
	return []Point{NearRel(r.Text("shape")+", "+r.Text("constant"), v[0]/v[1], t.Seconds()/scale, 1e-3)}, err
}

// sucroseEquivalents finds how much sucrose lowers the freezing point of 75 g of
// water as much as 10 g of the sweetener.
func sucroseEquivalents(r testdata.Row) ([]Point, error) {
	want, err := r.Float("equivalent_percent")
	if err != nil {
		return nil, err
	}
	label := r.Text("solute")
	mix := thermal.FrozenMix{OtherSolidsPercent: 15}
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
	temp, err := mix.FreezingPointC()
	if err != nil {
		return nil, err
	}
	a, b := 0.0, 100.0
	for range 50 {
		mid := (a + b) / 2
		d, err := thermal.SucroseDepression(mid)
		if err != nil {
			return nil, err
		}
		if d < -temp {
			a = mid
		} else {
			b = mid
		}
	}
	got := a * 0.75 / 10 * 100
	return []Point{{Label: label, Published: want, Predicted: got, Low: got * low, High: got * high}}, nil
}
