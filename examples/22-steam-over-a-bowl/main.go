// Command 22-steam-over-a-bowl redraws this chapter: its page and its figure.
package main

import (
	"fmt"
	"os"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/thermal"
	"gonum.org/v1/plot"
)

var chapter = notebook.Chapter{
	Title: "Steam over a bowl",
	Line:  "Steam is seen for minutes, not for as long as the soup is hot; the bowl, the room and the background decide for how many.",
	Figures: []notebook.Figure{{
		Name:    "steam",
		Caption: "The most droplets that the steam over a bowl of soup carries, likely course in three rooms, from a bowl as hot as the soup and from one off the shelf; of the second line with the 95 % band of its surface. Above the grey area it is seen by anybody, below it by nobody: an estimate, no source.",
		Draw:    drawSteam,
	}},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// soup is the bowl of this chapter, from the shelf.
func soup() thermal.HotDish {
	return thermal.HotDish{Grams: 300, Diameter: 0.13, VesselGrams: 400, StartC: 85}
}

// warmed is the same in a bowl as hot as the soup.
func warmed() thermal.HotDish {
	d := soup()
	d.VesselC = honestplate.Some(d.StartC)
	return d
}

func drawSteam() ([]byte, error) {
	p := figure.New("", "time since it was poured, min", "droplets, g/m3")
	const last = 25.0
	if err := figure.Band(p, 3, "seen or not: by the background", []float64{0, last}, []float64{0.3, 0.3}, []float64{2, 2}); err != nil {
		return nil, err
	}
	for i, c := range []struct {
		name string
		dish thermal.HotDish
		room thermal.Air
	}{
		{"15 degC, warmed bowl", warmed(), thermal.Air{TempC: 15, RH: 0.6}},
		{"22 degC, warmed bowl", warmed(), thermal.Air{TempC: 22, RH: 0.4}},
		{"22 degC, bowl off the shelf", soup(), thermal.Air{TempC: 22, RH: 0.4}},
		{"28 degC, bowl off the shelf", soup(), thermal.Air{TempC: 28, RH: 0.3}},
	} {
		c.dish.LimitC = honestplate.Some(30) // for a long course
		k, err := c.dish.Likely(c.room)
		if err != nil {
			return nil, err
		}
		if i == 1 {
			if err := drawBand(p, i, c.dish, c.room, last); err != nil {
				return nil, err
			}
		}
		var x, y []float64
		for _, s := range k.Series {
			if s.Time.Minutes() > last {
				break
			}
			steam, err := c.room.SteamGM3(s.SurfaceC, 1)
			if err != nil {
				return nil, err
			}
			x, y = append(x, s.Time.Minutes()), append(y, steam)
		}
		if err := figure.Line(p, i, c.name, figure.XY(x, y)); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, 0, 9
	return figure.SVG(p, figure.Width, figure.Height)
}

// drawBand draws what the steam carries while the surface goes through its 95 % band.
func drawBand(p *plot.Plot, i int, dish thermal.HotDish, room thermal.Air, last float64) error {
	k, err := dish.Clock(room)
	if err != nil {
		return err
	}
	var x, low, high []float64
	var times []time.Duration
	for t := 0.5; t <= last; t += 0.5 {
		x, times = append(x, t), append(times, time.Duration(t*float64(time.Minute)))
	}
	course, err := k.Kept.Course("surface_c", times...)
	if err != nil {
		return err
	}
	for _, e := range course {
		a, err := room.SteamGM3(e.Low, 1)
		if err != nil {
			return err
		}
		b, err := room.SteamGM3(e.High, 1)
		if err != nil {
			return err
		}
		low, high = append(low, a), append(high, b)
	}
	return figure.Band(p, i, "its 95 % band", x, low, high)
}
