// Command 04-syrup redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/rheology"
	"example.org/honestplate/testdata"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
)

var chapter = notebook.Chapter{
	Title: "Syrup warm and cold",
	Line:  "An advertised syrup may not be thinned or thickened. Its temperature may be chosen, and that is plenty.",
	Figures: []notebook.Figure{
		{
			Name:    "maple",
			Caption: "Maple syrup by temperature, with its 95 % band. It is computed as a sugar syrup of its strength; the points are one of 65 % that was measured.",
			Draw:    drawMaple,
		},
		{
			Name:    "honey",
			Caption: "Honey by temperature and moisture, with 95 % bands. The points are honeys of 14.7 to 19.4 % moisture, and one whose moisture is not printed.",
			Draw:    drawHoney,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawMaple() ([]byte, error) {
	p := figure.New("", "temperature, degC", "viscosity, Pa s")
	figure.LogY(p)
	if err := curve(p, 0, "maple syrup, 66.9 % solids", rheology.Syrup{Of: "maple"}, 5, 60); err != nil {
		return nil, err
	}
	if err := curve(p, 1, "sugar syrup, 65 %", rheology.Sucrose{Brix: 65}, 5, 60); err != nil {
		return nil, err
	}
	points, err := load("sucrose_viscosity", "viscosity_mpa_s", 1e-3, func(r testdata.Row) bool {
		return r.Text("sucrose_percent") == "65"
	})
	if err != nil {
		return nil, err
	}
	if err := figure.Points(p, 0, "handbook, sugar syrup, 65 %", points); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 65, 0.01, 2
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawHoney() ([]byte, error) {
	p := figure.New("", "temperature, degC", "viscosity, Pa s")
	figure.LogY(p)
	for i, moisture := range []float64{14.7, 18} {
		name := fmt.Sprintf("honey, %g %% moisture", moisture)
		if err := curve(p, i, name, rheology.Honey{MoisturePercent: moisture}, 5, 70); err != nil {
			return nil, err
		}
	}
	for i, s := range []struct{ known, name string }{{"read", "published, read"}, {"memory", "published, from memory"}} {
		points, err := load("honey_viscosity", "viscosity_pa_s", 1, func(r testdata.Row) bool { return r.Known() == s.known })
		if err != nil {
			return nil, err
		}
		if err := figure.Points(p, 2*i, s.name, points); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 75, 0.05, 2000
	return figure.SVG(p, figure.Width, figure.Height)
}

// curve draws a liquid's viscosity with its band.
func curve(p *plot.Plot, i int, name string, l rheology.Liquid, lowC, highC float64) error {
	var at, likely, low, high []float64
	for t := lowC; t <= highC; t++ {
		v, err := l.Viscosity(t)
		if err != nil {
			return err
		}
		at = append(at, t)
		likely, low, high = append(likely, v.Likely), append(low, v.Low), append(high, v.High)
	}
	if err := figure.Band(p, i, "", at, low, high); err != nil {
		return err
	}
	return figure.Line(p, i, name, figure.XY(at, likely))
}

// load returns the viscosities in Pa s of the chosen rows of a table.
func load(name, column string, pas float64, chosen func(testdata.Row) bool) (plotter.XYs, error) {
	table, err := testdata.Load(name)
	if err != nil {
		return nil, err
	}
	var pts plotter.XYs
	for _, row := range table.Rows {
		if !chosen(row) {
			continue
		}
		t, err := row.Float("temp_c")
		if err != nil {
			return nil, err
		}
		v, err := row.Float(column)
		if err != nil {
			return nil, err
		}
		pts = append(pts, plotter.XY{X: t, Y: v * pas})
	}
	return pts, nil
}
