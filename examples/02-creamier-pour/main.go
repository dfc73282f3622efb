// Command 02-creamier-pour redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"
	"strings"
	"time"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
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
			Caption: "Viscosity of milk and cream at 5 degC by fat, with the 95 % band. The points are other people's creams: the band is wide because they are.",
			Draw:    drawBlend,
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
	for _, err := range []error{
		figure.Band(p, 0, "95 % band", fat, low, high),
		figure.Line(p, 0, "likely", figure.XY(fat, likely)),
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
