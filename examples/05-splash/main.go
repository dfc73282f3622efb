// Command 05-splash redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/law"
	"example.org/honestplate/rheology/pour"
	"gonum.org/v1/plot/plotter"
)

var chapter = notebook.Chapter{
	Title: "Splash or no splash",
	Line:  "How high to hold the jug: the published criteria disagree, so read them all, know what moves them, and pour one test.",
	Figures: []notebook.Figure{
		{
			Name:    "by-height",
			Caption: "Milk over a lip, by the height of the fall. Over the band every dry criterion says droplets, in it they disagree, under it none does.",
			Draw:    drawHeight,
		},
		{
			Name:    "by-thickness",
			Caption: "The speed from which a drop of 3 mm throws droplets, by the viscosity of the liquid. From 5 mPa s on the two dry criteria are carried on by the fifth root of the thickness.",
			Draw:    drawThickness,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawHeight() ([]byte, error) {
	poured, err := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		return nil, err
	}
	var at, lands, low, high, pool []float64
	for cm := 2.0; cm <= 80; cm++ {
		s, err := poured.Stream(cm / 100)
		if err != nil {
			return nil, err
		}
		dry, err := s.Splash(pour.Target{})
		if err != nil {
			return nil, err
		}
		wet, err := s.Splash(pour.Target{Film: 0.010})
		if err != nil {
			return nil, err
		}
		at, lands = append(at, cm), append(lands, s.Speed)
		low, high = append(low, dry.Threshold.Low), append(high, dry.Threshold.High)
		pool = append(pool, wet.Threshold.Likely)
	}
	p := figure.New("", "height of the fall, cm", "speed, m/s")
	if err := figure.Band(p, 1, "dry glazed plate: lowest to highest threshold", at, low, high); err != nil {
		return nil, err
	}
	if err := figure.Line(p, 2, "threshold in 10 mm of milk", figure.XY(at, pool)); err != nil {
		return nil, err
	}
	if err := figure.Line(p, 0, "the milk as it lands", figure.XY(at, lands)); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 80, 0, 5
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	return figure.SVG(p, figure.Width, figure.Height)
}

// drawThickness draws the threshold speed of one drop, of milk's density and surface
// tension, as its viscosity changes.
func drawThickness() ([]byte, error) {
	p := figure.New("", "viscosity, mPa s", "threshold, m/s")
	figure.LogX(p)
	figure.LogY(p)
	for i, c := range []struct {
		criterion string
		film      float64 // m
		name      string
	}{
		{"Vander Wal, Berger and Mozes 2006", 0, "dry, smooth: Vander Wal and others 2006"},
		{"Riboux and Gordillo 2014", 0, "dry, smooth: Riboux and Gordillo 2014"},
		{"Cossali, Coghe and Marengo 1997", 0.001, "in a film of 1 mm: Cossali and others 1997"},
		{"Okawa, Shiraishi and Mori 2006", 0.010, "in a pool: Okawa and others 2006"},
	} {
		var pts plotter.XYs
		for eta := 1e-3; eta < 0.2; eta *= 1.03 {
			drop := pour.Stream{Diameter: 0.003, Speed: 2, Fluid: law.Fluid{Viscosity: eta, Density: 1030, SurfaceTension: 0.047}}
			splash, err := drop.Splash(pour.Target{Film: c.film})
			if err != nil {
				return nil, err
			}
			for _, v := range splash.Verdicts {
				if v.Criterion == c.criterion && v.Applies {
					pts = append(pts, plotter.XY{X: 1000 * eta, Y: v.ThresholdSpeed})
				}
			}
		}
		if err := figure.Line(p, i, c.name, pts); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 1, 200, 0.5, 60
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	return figure.SVG(p, figure.Width, figure.Height)
}
