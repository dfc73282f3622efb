// Command 03-flow-cup redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/viscometer"
	"example.org/honestplate/testdata"
	"gonum.org/v1/plot/plotter"
)

var chapter = notebook.Chapter{
	Title: "Testing and correcting a batch with a flow cup",
	Line:  "Forty seconds with a cup and a stop-watch say more about a batch than any table, and what to add follows from them.",
	Figures: []notebook.Figure{
		{
			Name:    "correction",
			Caption: "Viscosity at 6 degC by the share of cream: what the table says, and what is left of its band after one cup of this batch.",
			Draw:    drawCorrection,
		},
		{
			Name:    "cups-called-4",
			Caption: "Four cups that are all called 4, with two calibration points of a cup maker. The band of a cup, 2.2 %, is about as wide as its line.",
			Draw:    drawCups,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// batch is the chapter's first mix, before the cup.
func batch() (rheology.Batch, error) {
	return rheology.Recipe{
		Thin:       rheology.Dairy{FatPercent: 3.5},
		Thick:      rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}.For(0.012)
}

func drawCorrection() ([]byte, error) {
	first, err := batch()
	if err != nil {
		return nil, err
	}
	cup, err := viscometer.CupNamed("ISO 3")
	if err != nil {
		return nil, err
	}
	var table, after series
	for cream := 0.0; cream <= 500; cream += 10 {
		mix, err := rheology.Blend(
			rheology.Part{Liquid: first.Recipe.Thin, Grams: 500 - cream},
			rheology.Part{Liquid: first.Recipe.Thick, Grams: cream})
		if err != nil {
			return nil, err
		}
		v, err := mix.Viscosity(6)
		if err != nil {
			return nil, err
		}
		table.add(cream/5, v)
	}
	// The curve after the cup: ask the measured batch for one thickness after the
	// other and see what it would take.
	var measured float64
	for wanted := 0.0035; wanted <= 0.0165; wanted += 0.0005 {
		first.TargetPaS = wanted
		fix, err := cup.Timed(33 * time.Second).Correct(first)
		if err != nil {
			return nil, err
		}
		measured = fix.MeasuredPaS
		after.add(100*fix.Batch.ThickGrams/fix.TotalGrams, fix.Predicted)
	}
	p := figure.New("", "cream in the batch, % by mass", "viscosity at 6 degC, mPa s")
	figure.LogY(p)
	for _, err := range []error{
		figure.Band(p, 0, "95 % band of the table", table.x, table.low, table.high),
		figure.Band(p, 1, "95 % band after the cup", after.x, after.low, after.high),
		figure.Line(p, 0, "likely, by the table", figure.XY(table.x, table.likely)),
		figure.Line(p, 1, "likely, after the cup", figure.XY(after.x, after.likely)),
		figure.Points(p, 0, "the cup's answer", figure.XY([]float64{first.ThickGrams / 5}, []float64{1e3 * measured})),
	} {
		if err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 100, 2, 200
	return figure.SVG(p, figure.Width, figure.Height)
}

// A series is an estimate along x, in mPa s.
type series struct{ x, likely, low, high []float64 }

func (s *series) add(x float64, pas honestplate.Estimate) {
	s.x = append(s.x, x)
	s.likely, s.low, s.high = append(s.likely, 1e3*pas.Likely), append(s.low, 1e3*pas.Low), append(s.high, 1e3*pas.High)
}

func drawCups() ([]byte, error) {
	table, err := testdata.Load("cup_calibration")
	if err != nil {
		return nil, err
	}
	p := figure.New("", "time, s", "kinematic viscosity, mm2/s")
	figure.LogY(p)
	var known plotter.XYs
	for i, c := range []struct {
		cup    string
		name   string
		family string // in the table; empty: not there
	}{
		{"Zahn 4", "Zahn 4", "Zahn"},
		{"DIN 4", "DIN 53211, 4 mm", ""},
		{"Ford 4", "Ford 4", "Ford"},
		{"ISO 4", "ISO 2431, 4 mm", ""},
	} {
		cup, err := viscometer.CupNamed(c.cup)
		if err != nil {
			return nil, err
		}
		low, high, err := cup.Range()
		if err != nil {
			return nil, err
		}
		line := plotter.XYs{}
		for nu := low; nu < high; nu *= 1.02 {
			t, err := cup.Time(nu)
			if err != nil {
				return nil, err
			}
			line = append(line, plotter.XY{X: t.Seconds(), Y: 1e6 * nu})
		}
		if err := figure.Line(p, i, c.name, line); err != nil {
			return nil, err
		}
		for _, row := range table.Rows {
			if row.Text("cup") != c.family || row.Text("number") != "4" {
				continue
			}
			t, err := row.Float("time_s")
			if err != nil {
				return nil, err
			}
			nu, err := row.Float("viscosity_mm2_per_s")
			if err != nil {
				return nil, err
			}
			known = append(known, plotter.XY{X: t, Y: nu})
		}
	}
	if err := figure.Points(p, 0, "calibration", known); err != nil {
		return nil, err
	}
	p.Legend.Top, p.Legend.YOffs = false, -p.Legend.YOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 160, 20, 2000
	return figure.SVG(p, figure.Width, figure.Height)
}
