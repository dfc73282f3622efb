// Command 02-creamier-pour redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"math"
	"os"
	"strings"
	"time"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/examples/published"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
	"example.org/honestplate/testdata"
	"gonum.org/v1/plot/plotter"
)

var chapter = notebook.Chapter{
	Title: "A creamier pour",
	Line:  "Milk that is not the product may be made thicker with cream: how much cream, how sure, and what the camera sees of it.",
	Figures: []notebook.Figure{
		{
			Name:    "creamier-pour",
			Caption: "Viscosity of milk and cream at 5 degC by fat, with the 95 % band. The points are other people's creams; Bakshi & Smith is shown, not averaged in.",
			Draw:    drawBlend,
		},
		{
			Name:    "blends",
			Caption: "Predicted over printed for blends whose two ends and middle are printed: log-mixing alone, and with its departure. On the line is right.",
			Draw:    drawBlends,
		},
		{
			Name:    "coat",
			Caption: "What stays on the upright side of a bowl after the milk has gone down, 40 mm high, with the 95 % bands.",
			Draw:    drawCoat,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawBlend() ([]byte, error) {
	p := figure.New("", "fat, % by mass", "viscosity at 5 degC, mPa s")
	figure.LogY(p)
	var fat, likely, low, high []float64
	for f := 3.5; f <= 36; f += 0.5 {
		v, err := rheology.Dairy{FatPercent: f}.Viscosity(5)
		if err != nil {
			return nil, err
		}
		fat = append(fat, f)
		likely, low, high = append(likely, 1e3*v.Likely), append(low, 1e3*v.Low), append(high, 1e3*v.High)
	}
	table, err := testdata.Load("dairy_viscosity")
	if err != nil {
		return nil, err
	}
	unknown, err := creams(table, "cream table of unknown origin", 5)
	if err != nil {
		return nil, err
	}
	earle, err := creams(table, "Earle", 3)
	if err != nil {
		return nil, err
	}
	var logged, bakshi []float64
	for _, f := range fat {
		w := (f - 3.5) / 32.5
		logged = append(logged, math.Pow(likely[0], 1-w)*math.Pow(likely[len(likely)-1], w))
		bakshi = append(bakshi, math.Exp(-8.9+0.1*f+2721.5/278.15))
	}
	for _, err := range []error{
		figure.Band(p, 0, "95 % band", fat, low, high),
		figure.Line(p, 0, "the law", figure.XY(fat, likely)),
		figure.Line(p, 2, "log-mixing alone", figure.XY(fat, logged)),
		figure.Line(p, 3, "Bakshi & Smith 1984", figure.XY(fat[:54], bakshi[:54])),
		figure.Line(p, 1, "wanted, 10 mPa s", figure.XY([]float64{3.5, 36}, []float64{10, 10})),
		figure.Points(p, 1, "table of unknown origin, 5 degC", unknown),
		figure.Points(p, 2, "Earle, 3 degC, from memory", earle),
	} {
		if err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 40, 1, 300
	return figure.SVG(p, figure.Width, figure.Height)
}

// drawBlends shows how both rules do on the blends of the table dairy_blends.
func drawBlends() ([]byte, error) {
	table, err := testdata.Load("dairy_blends")
	if err != nil {
		return nil, err
	}
	p := figure.New("", "fat of the blend, % by mass", "predicted / printed")
	for i, r := range []struct {
		name string
		rule rheology.Rule
	}{{"with its departure", rheology.Rule{}}, {"log-mixing alone", rheology.Rule{NoDeparture: true}}} {
		var cold, hot plotter.XYs
		for _, row := range table.Rows {
			c, err := published.DairyBlend(row)
			if err != nil {
				return nil, err
			}
			mix, err := c.Mix(r.rule)
			if err != nil {
				return nil, err
			}
			v, err := mix.Viscosity(c.TempC)
			if err != nil {
				return nil, err
			}
			// Side by side: several blends have one fat.
			pt := plotter.XY{X: c.FatPercent + 0.6*float64(i), Y: v.Likely / c.PaS}
			if c.TempC < 40 {
				cold = append(cold, pt)
			} else {
				hot = append(hot, pt)
			}
		}
		if err := figure.Points(p, 2*i, r.name+", 3 to 16 degC", cold); err != nil {
			return nil, err
		}
		if err := figure.Points(p, 2*i+1, r.name+", 40 to 80 degC", hot); err != nil {
			return nil, err
		}
	}
	if err := figure.Line(p, 0, "", figure.XY([]float64{15, 50}, []float64{1, 1})); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 15, 50, 0.5, 2
	return figure.SVG(p, figure.Width, figure.Height)
}

// creams are the creams of known fat, up to 36 %, of one source at one temperature.
func creams(table *testdata.Table, source string, tempC float64) (plotter.XYs, error) {
	var pts plotter.XYs
	for _, row := range table.Rows {
		if row.Text("fat_percent") == "" || !strings.HasPrefix(row.Text("source"), source) {
			continue
		}
		var v [3]float64
		for i, column := range []string{"fat_percent", "temp_c", "viscosity_mpa_s"} {
			var err error
			if v[i], err = row.Float(column); err != nil {
				return nil, err
			}
		}
		if v[1] == tempC && v[0] <= 36 {
			pts = append(pts, figure.XY(v[:1], v[2:])...)
		}
	}
	return pts, nil
}

func drawCoat() ([]byte, error) {
	p := figure.New("", "time, s", "coat, mm")
	milk, blend, err := pourings()
	if err != nil {
		return nil, err
	}
	for i, l := range []struct {
		name   string
		liquid rheology.Liquid
	}{{"milk", milk}, {"the blend", blend}} {
		var at, likely, low, high []float64
		for s := 1.0; s <= 30; s += 0.5 {
			coat, err := pour.Wall{Height: 0.04}.Drain(l.liquid, 5, time.Duration(s*float64(time.Second)))
			if err != nil {
				return nil, err
			}
			at = append(at, s)
			likely, low, high = append(likely, 1e3*coat.Mean.Likely), append(low, 1e3*coat.Mean.Low), append(high, 1e3*coat.Mean.High)
		}
		if err := figure.Band(p, i, "", at, low, high); err != nil {
			return nil, err
		}
		if err := figure.Line(p, i, l.name, figure.XY(at, likely)); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 30, 0, 0.2
	return figure.SVG(p, figure.Width, figure.Height)
}

// pourings are the milk as it comes and the chapter's blend.
func pourings() (milk, blend rheology.Liquid, err error) {
	recipe := rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 800, StepGrams: 5, TempC: 5,
	}
	batch, err := recipe.For(0.010)
	if err != nil {
		return nil, nil, err
	}
	mix, err := batch.Mix()
	return recipe.Thin, mix, err
}
