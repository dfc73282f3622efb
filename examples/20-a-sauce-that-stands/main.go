// Command 20-a-sauce-that-stands redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"
	"strings"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/rheology/pour"
)

var chapter = notebook.Chapter{
	Title: "A sauce that stands",
	Line:  "Ketchup, mustard, mayonnaise: why they stay in the bottle or gush, from a rheometer's file to the pour, and how a dollop lies.",
	Figures: []notebook.Figure{
		{
			Name:    "flow-curve",
			Caption: "The file's points and two fits. With a yield stress the curve levels off towards rest; a power law falls on and would have the sauce run under any weight.",
			Draw:    drawCurve,
		},
		{
			Name:    "dollop",
			Caption: "20 g of the house's ketchup on a plate, by the water that was stirred in: how deep it lies on average, with its 95 % band.",
			Draw:    drawDollop,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// export is a rheometer's file, invented.
const export = `Meas. pts.;Shear rate;Shear stress;Viscosity;Temperature
;[1/s];[Pa];[Pa.s];[degC]
1;0,1;31,9;319;20,0
2;0,316;34,6;109,5;20,0
3;1;38,5;38,5;20,1
4;3,16;43,6;13,8;20,1
5;10;51,8;5,18;20,0
6;31,6;62,2;1,968;20,0
7;100;79,3;0,793;20,1
8;316;102;0,3228;20,2
`

// house is the sauce of that file.
func house() (rheology.Custom, error) {
	points, err := flow.ReadPoints(strings.NewReader(export))
	if err != nil {
		return rheology.Custom{}, err
	}
	fit, err := flow.Fit(flow.HerschelBulkley{}, points)
	return rheology.Custom{Name: "ketchup of the house", Flow: fit.Model, FlowC: 20, KgPerM3: 1130}, err
}

// dollop is how 20 g of a sauce lie on a plate, pushed out by whatever moves them.
func dollop(l rheology.Liquid) (pour.Puddle, error) {
	neck, err := pour.Spout{Diameter: 0.020, Length: 0.030}.ForRate(l, 20, 5e-6)
	if err != nil {
		return pour.Puddle{}, err
	}
	poured, err := neck.Pour(l, 20, 20)
	if err != nil {
		return pour.Puddle{}, err
	}
	return poured.Settled(60)
}

func drawCurve() ([]byte, error) {
	points, err := flow.ReadPoints(strings.NewReader(export))
	if err != nil {
		return nil, err
	}
	p := figure.New("", "shear rate, 1/s", "stress, Pa")
	figure.LogX(p)
	figure.LogY(p)
	for i, m := range []flow.Model{flow.HerschelBulkley{}, flow.PowerLaw{}} {
		fit, err := flow.Fit(m, points)
		if err != nil {
			return nil, err
		}
		var at, stress []float64
		for rate := 0.01; rate <= 1000; rate *= 1.1 {
			at, stress = append(at, rate), append(stress, fit.Model.Stress(rate))
		}
		if err := figure.Line(p, i, m.String(), figure.XY(at, stress)); err != nil {
			return nil, err
		}
	}
	var at, stress []float64
	for _, q := range points {
		at, stress = append(at, q.ShearRate), append(stress, q.Stress)
	}
	if err := figure.Points(p, 2, "measured", figure.XY(at, stress)); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0.01, 1000, 10, 300
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawDollop() ([]byte, error) {
	sauce, err := house()
	if err != nil {
		return nil, err
	}
	var at, likely, low, high []float64
	for water := 0.5; water <= 60; water += 0.5 {
		thinned, err := rheology.Blend(rheology.Part{Liquid: sauce, Grams: 100 - water}, rheology.Part{Liquid: rheology.Water{}, Grams: water})
		if err != nil {
			return nil, err
		}
		lies, err := dollop(thinned)
		if err != nil {
			return nil, err
		}
		// The depth goes with one over the square of the radius.
		r := lies.Radius
		at, likely = append(at, water), append(likely, 1000*lies.Depth)
		low, high = append(low, 1000*lies.Depth*r.Likely*r.Likely/(r.High*r.High)), append(high, 1000*lies.Depth*r.Likely*r.Likely/(r.Low*r.Low))
	}
	p := figure.New("", "water stirred in, %", "mean depth of the dollop, mm")
	if err := figure.Band(p, 0, "", at, low, high); err != nil {
		return nil, err
	}
	if err := figure.Line(p, 0, "20 g of ketchup", figure.XY(at, likely)); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 60, 0, 8
	return figure.SVG(p, figure.Width, figure.Height)
}
