// Command 08-cold-glass redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/thermal"
)

var chapter = notebook.Chapter{
	Title: "The clock of a cold glass",
	Line:  "Fog in seconds, beads in minutes, runs after most of an hour or never: when each comes, how long it stays, when to swap.",
	Figures: []notebook.Figure{
		{
			Name:    "dew",
			Caption: "Dew on a glass in a room of 23 degC and 50 %, likely courses, and the 95 % band of the chilled glass with ice. The flat bands are the amounts that may count as each look: estimates, no source.",
			Draw:    drawDew,
		},
		{
			Name:    "humidity",
			Caption: "When an iced glass fogs and beads, by the humidity of the room, with 95 % bands. A band that reaches the top holds \"never\".",
			Draw:    drawHumidity,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// about prints a window as coarsely as its band deserves.
func about(w honestplate.Window) string {
	if !w.MayHappen() {
		return "never"
	}
	if w.Likely == w.Earliest && w.Likely == w.Latest {
		return rounded(w.Likely)
	}
	if w.Likely.Never {
		return fmt.Sprintf("never, or from %s", rounded(w.Earliest))
	}
	return fmt.Sprintf("%s (%s to %s)", rounded(w.Likely), rounded(w.Earliest), rounded(w.Latest))
}

func rounded(m honestplate.Moment) string {
	d := m.After
	switch {
	case m.Never:
		return "never"
	case d < 2*time.Minute:
		return fmt.Sprintf("%d s", 5*max(1, (d+2500*time.Millisecond)/(5*time.Second)))
	case d < 100*time.Minute:
		return fmt.Sprintf("%.0f min", d.Minutes())
	}
	return fmt.Sprintf("%.1f h", d.Hours())
}

func iced() thermal.Glass {
	return thermal.Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 120, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
}

func drawDew() ([]byte, error) {
	p := figure.New("", "time since filling, min", "dew, g/m2")
	figure.LogY(p)
	const least = 0.05 // g/m2, the foot of the axis
	stages := thermal.DefaultStages()
	for _, s := range []honestplate.Estimate{stages.Haze, stages.Beads, stages.Runs} {
		if err := figure.Band(p, 3, "", []float64{0, 120}, []float64{s.Low, s.Low}, []float64{s.High, s.High}); err != nil {
			return nil, err
		}
	}
	room := thermal.Air{TempC: 23, RH: 0.50, Speed: 0.15}
	known, err := iced().Clock(room)
	if err != nil {
		return nil, err
	}
	var times []time.Duration
	for t := time.Minute; t <= 2*time.Hour; t += max(time.Minute, t/12) {
		times = append(times, t)
	}
	course, err := known.Kept.Course("dew_g_m2", times...)
	if err != nil {
		return nil, err
	}
	var x, low, high []float64
	for i, e := range course {
		x, low, high = append(x, times[i].Minutes()), append(low, max(e.Low, least)), append(high, max(e.High, least))
	}
	if err := figure.Band(p, 0, "95 % band of the first", x, low, high); err != nil {
		return nil, err
	}
	chilled := thermal.Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 300, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
	warm := iced()
	warm.WallC = honestplate.Some(23)
	for i, g := range []struct {
		name  string
		glass thermal.Glass
	}{{"chilled glass, ice", iced()}, {"warm glass, ice", warm}, {"chilled glass, no ice", chilled}} {
		clock, err := g.glass.Likely(room)
		if err != nil {
			return nil, err
		}
		var at, dew []float64
		for _, s := range clock.Series {
			if s.Time > 2*time.Hour {
				break
			}
			if s.DewGM2 >= least {
				at, dew = append(at, s.Time.Minutes()), append(dew, s.DewGM2)
			} else if len(at) > 0 {
				// Dry again: draw down to the axis and end.
				at, dew = append(at, s.Time.Minutes()), append(dew, least)
				break
			}
		}
		if err := figure.Line(p, i, g.name, figure.XY(at, dew)); err != nil {
			return nil, err
		}
	}
	for i, name := range []string{"haze", "beads", "runs"} {
		if err := figure.Note(p, []float64{106, 106, 4}[i], []float64{0.28, 20, 160}[i], name); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 120, least, 3000
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawHumidity() ([]byte, error) {
	p := figure.New("", "relative humidity, %", "time since filling, min")
	figure.LogY(p)
	const top = 240.0
	minutes := func(m honestplate.Moment) float64 {
		if m.Never {
			return top
		}
		return m.After.Minutes()
	}
	names := []string{"beads", "haze"}
	type course struct{ at, likely, low, high, known []float64 }
	var looks [2]course
	for percent := 35.0; percent <= 80; percent += 2.5 {
		clock, err := iced().Clock(thermal.Air{TempC: 23, RH: percent / 100, Speed: 0.15})
		if err != nil {
			return nil, err
		}
		for i, w := range []honestplate.Window{clock.Beads.Window, clock.Haze.Window} {
			if !w.MayHappen() {
				continue
			}
			c := &looks[i]
			c.at = append(c.at, percent)
			c.low, c.high = append(c.low, minutes(w.Earliest)), append(c.high, minutes(w.Latest))
			if !w.Likely.Never {
				c.known, c.likely = append(c.known, percent), append(c.likely, w.Likely.After.Minutes())
			}
		}
	}
	for i, c := range looks {
		if err := figure.Band(p, i, "", c.at, c.low, c.high); err != nil {
			return nil, err
		}
	}
	for i, c := range looks {
		if err := figure.Line(p, i, names[i], figure.XY(c.known, c.likely)); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 35, 80, 0.02, top
	return figure.SVG(p, figure.Width, figure.Height)
}
