package look

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"sync"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
)

// A Drink is one of the liquids of [Drinks], by name. It looks like that sample of its
// kind, for stand-ins and for what stands beside the milk.
type Drink struct {
	Name string `json:"name"` // as Drinks lists it, such as "espresso"
}

// drinks.csv holds reduced scattering, absorption and asymmetry in red, green and blue:
// Jensen, Marschner, Levoy and Hanrahan 2001, "A practical model for subsurface light
// transport" (milk, cream, ketchup), and Narasimhan and others 2006, "Acquiring scattering
// properties of participating media by dilution" (the rest), both as stored in public code
// of a renderer and recomputed from the diluted measurements.
//
//go:embed drinks.csv
var drinkTable string

type drinkRow struct {
	name                   string
	reduced, absorb, sharp [3]float64 // red, green, blue; per mm
}

var drinkRows = sync.OnceValue(func() (out []drinkRow) {
	for _, line := range strings.Split(strings.TrimSpace(drinkTable), "\n")[1:] {
		f := strings.Split(line, ",")
		r := drinkRow{name: f[0]}
		for i := range 3 {
			r.reduced[i], _ = strconv.ParseFloat(f[1+i], 64) // a test reads every figure again
			r.absorb[i], _ = strconv.ParseFloat(f[4+i], 64)
			r.sharp[i] = assumedAsymmetry
			if f[7+i] != "" {
				r.sharp[i], _ = strconv.ParseFloat(f[7+i], 64)
			}
		}
		out = append(out, r)
	}
	return out
})

// assumedAsymmetry stands where none was measured: "g > 0.8" (abstract of Sensors 2023,
// 23, 6853). Thick layers hang on the reduced scattering alone.
const assumedAsymmetry = 0.85

// drinkFactor is to which factor a sample stands for its kind: the two published whole
// milks differ by 1.8.
const drinkFactor = 1.8

// Drinks lists the liquids whose coefficients were measured. Skim, lowfat, regular and
// whole milk and cream are among them; for milk of your own fat use [Milk].
func Drinks() []string {
	rows := drinkRows()
	out := make([]string, len(rows))
	for i, r := range rows {
		out[i] = r.name
	}
	return out
}

// Optics spreads the three measured bands over the visible: they are taken at 610, 545 and
// 465 nm, straight lines of the logarithm between (of the number itself where one is 0),
// level beyond. The absorption of milk was measured to one digit, and the cream scatters
// less in blue than in red, which no spheres do: its blue band is doubtful.
func (d Drink) Optics() (Optics, error) {
	for _, r := range drinkRows() {
		if r.name != d.Name {
			continue
		}
		out := Optics{index: liquidIndex, factor: drinkFactor, deepL: 4}
		for i := range colour.Samples {
			nm := colour.Wavelength(i)
			sharp := between(nm, r.sharp)
			out.scattering[i] = 1000 * between(nm, r.reduced) / (1 - sharp)
			out.forward[i] = out.scattering[i] * sharp
			out.absorption[i] = 1000 * between(nm, r.absorb)
		}
		out.pale, out.yellow = out.absorption, out.absorption
		return out, nil
	}
	return Optics{}, &honestplate.InputError{Field: "Name", Got: strconv.Quote(d.Name),
		Want: "one of look.Drinks()"}
}

// between spreads a figure for red, green and blue over the visible.
func between(nm float64, v [3]float64) float64 {
	const red, green, blue = 610.0, 545.0, 465.0
	a, b, f := v[2], v[1], ramp(nm, blue, green)
	if nm > green {
		a, b, f = v[1], v[0], ramp(nm, green, red)
	}
	if a <= 0 || b <= 0 {
		return float64((1-f)*a) + float64(f*b)
	}
	return math.Exp(float64((1-f)*math.Log(a)) + float64(f*math.Log(b)))
}
