package published

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"sync"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
	"example.org/honestplate/testdata"
)

// Checks of colour.
var lookColour = []Check{
	{
		Table: "cie_observer", Package: "rheology", Quantity: "the observer's functions, as weights of the light", Unit: "",
		Claim: "1e-9 of the table", Points: cieObserver,
	},
	{
		Table: "cie_illuminants", Package: "rheology", Quantity: "the lights' power, as weights of the light", Unit: "",
		Claim: "1e-9 of the table", Points: cieIlluminants,
	},
	{
		Table: "white_points", Package: "rheology", Quantity: "white of a light", Unit: "",
		Claim: "6e-5 of x and y; half the last printed digit of X, Y and Z", Points: whitePoints,
	},
	{
		Table: "lab_examples", Package: "rheology", Quantity: "L*, a*, b*", Unit: "",
		Claim: "1e-7", Points: labExamples,
	},
	{
		Table: "ciede2000", Package: "rheology", Quantity: "colour difference", Unit: "",
		Claim: "half the last printed digit", Points: ciede2000,
	},
}

// weightOf returns what one sample of a spectrum gives under a light: power times each of
// the observer's functions, in units of which all y sum to 100.
func weightOf(l colour.Light, nm float64) (colour.XYZ, error) {
	var s colour.Spectrum
	s[int(math.Round((nm-380)/5))] = 1
	return l.See(&s)
}

func cieObserver(r testdata.Row) ([]Point, error) {
	w, err := weightOf(colour.D65, figure(r, "wavelength_nm"))
	if err != nil {
		return nil, err
	}
	y := figure(r, "y_bar")
	at := r.Text("wavelength_nm") + " nm"
	return []Point{
		NearRel(at+", x over y", figure(r, "x_bar")/y, w.X/w.Y, 1e-9),
		// Where the observer sees no blue, z is 0 on both sides.
		Near(at+", z over y", figure(r, "z_bar")/y, w.Z/w.Y, 1e-9*(1+w.Z/w.Y)),
	}, nil
}

// powerSums are the sums of power times y over the table, by column.
var powerSums = sync.OnceValues(func() (map[string]float64, error) {
	power, err := testdata.Load("cie_illuminants")
	if err != nil {
		return nil, err
	}
	observer, err := testdata.Load("cie_observer")
	if err != nil {
		return nil, err
	}
	out := map[string]float64{}
	for i, r := range power.Rows {
		for _, c := range power.Columns[1:] {
			out[c] += figure(r, c) * figure(observer.Rows[i], "y_bar")
			out[c+" y "+r.Text("wavelength_nm")] = figure(observer.Rows[i], "y_bar")
		}
	}
	return out, nil
})

func cieIlluminants(r testdata.Row) ([]Point, error) {
	sums, err := powerSums()
	if err != nil {
		return nil, err
	}
	nm := r.Text("wavelength_nm")
	var out []Point
	for _, l := range []colour.Light{
		colour.D65, colour.D50, colour.A, colour.LEDB1, colour.LEDB3, colour.LEDB5, colour.LEDV2,
	} {
		w, err := weightOf(l, figure(r, "wavelength_nm"))
		if err != nil {
			return nil, err
		}
		column := strings.ReplaceAll(string(l), "-", "_")
		want := 100 * figure(r, column) / sums[column]
		got := w.Y / sums[column+" y "+nm]
		out = append(out, Near(fmt.Sprintf("%v at %s nm", l, nm), want, got, 1e-9*(got+1e-6)))
	}
	for _, c := range []string{"LED_B4", "FL2", "FL11", "xenon_arc_cinema", "phosphor_LED_YAG"} {
		out = append(out, Skip(c+" at "+nm+" nm", "not offered: no white point of it was published, or it is no light of a set"))
	}
	return out, nil
}

func whitePoints(r testdata.Row) ([]Point, error) {
	name := r.Text("illuminant")
	w, err := colour.Light(name).White()
	if in := new(honestplate.InputError); errors.As(err, &in) && in.Field == "Light" {
		return []Point{Skip(name, "not offered: no white point of it was published")}, nil
	}
	if err != nil {
		return nil, err
	}
	sum := w.X + w.Y + w.Z
	return []Point{
		Near(name+", x", figure(r, "x"), w.X/sum, 6e-5), Near(name+", y", figure(r, "y"), w.Y/sum, 6e-5),
		Near(name+", X", figure(r, "X"), w.X, 6e-5), Near(name+", Z", figure(r, "Z"), w.Z, 6e-5),
	}, nil
}

func labExamples(r testdata.Row) ([]Point, error) {
	x, y := figure(r, "white_x"), figure(r, "white_y")
	white := colour.XYZ{X: 100 * x / y, Y: 100, Z: 100 * (1 - x - y) / y}
	lab, err := colour.XYZ{X: figure(r, "X"), Y: figure(r, "Y"), Z: figure(r, "Z")}.Lab(white)
	at := fmt.Sprintf("%s %s %s under %s", r.Text("X"), r.Text("Y"), r.Text("Z"), r.Text("white_x"))
	return []Point{
		Near(at+", L*", figure(r, "L"), lab.L, 1e-7), Near(at+", a*", figure(r, "a"), lab.A, 1e-7), Near(at+", b*", figure(r, "b"), lab.B, 1e-7),
	}, err
}

func ciede2000(r testdata.Row) ([]Point, error) {
	p := colour.Lab{L: figure(r, "L1"), A: figure(r, "a1"), B: figure(r, "b1")}
	q := colour.Lab{L: figure(r, "L2"), A: figure(r, "a2"), B: figure(r, "b2")}
	got, err := colour.Difference(p, q)
	return []Point{Near(fmt.Sprintf("%v to %v", p, q), figure(r, "difference"), got, 0.51e-4)}, err
}
