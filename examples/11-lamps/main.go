// Command 11-lamps redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"
	"strings"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/light"
)

var chapter = notebook.Chapter{
	Title: "What the lights do",
	Line:  "Four kinds of light, equally bright and more than ten times apart in heat; what moving a lamp back buys, and what it does not.",
	Figures: []notebook.Figure{
		{
			Name:    "distance",
			Caption: "When a scoop from the kitchen freezer goes soft on its lit side, by the distance of a 1000 W tungsten head. The area is the 95 % band. The dotted line is the same scoop with the lamp off.",
			Draw:    drawDistance,
		},
		{
			Name:    "clear-ice",
			Caption: "How much of the light stays as heat in clear ice, by how far it goes through it.",
			Draw:    drawIce,
		},
		{
			Name:    "beams",
			Caption: "Peak intensity of tungsten stage heads per watt: published values as marks, the library's bands as areas. At one beam angle they are up to ten times apart.",
			Draw:    drawBeams,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawDistance() ([]byte, error) {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	scoop := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: -18}
	head := light.Lamp{Watts: 1000, Source: light.Tungsten, BeamDegrees: 50, Head: light.Fresnel, Distance: 1}
	var x, low, mid, high []float64
	for d := 0.75; d <= 3; d += 0.125 {
		lamp, err := head.At(d)
		if err != nil {
			return nil, err
		}
		c, err := scoop.Clock(room, lamp)
		if err != nil {
			return nil, err
		}
		x = append(x, d)
		low, mid, high = append(low, c.Softens.Earliest.After.Minutes()), append(mid, c.Softens.Likely.After.Minutes()), append(high, c.Softens.Latest.After.Minutes())
	}
	off, err := scoop.Likely(room)
	if err != nil {
		return nil, err
	}
	p := figure.New("", "distance of the lamp, m", "lit side goes soft after, min")
	if err := figure.Band(p, 0, "", x, low, high); err != nil {
		return nil, err
	}
	if err := figure.Line(p, 0, "lamp on, likely", figure.XY(x, mid)); err != nil {
		return nil, err
	}
	dark := off.Softens.Likely.After.Minutes()
	if err := figure.Line(p, 2, "lamp off, likely", figure.XY([]float64{0.75, 3}, []float64{dark, dark})); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0.75, 3, 0, 14
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawIce() ([]byte, error) {
	p := figure.New("", "path of the light in clear ice, mm", "absorbed, %")
	for i, c := range []struct {
		source light.Source
		name   string
	}{
		{light.Tungsten, "tungsten"},
		{light.Discharge, "discharge and flash"}, // taken to have the same spectrum
		{light.LED, "LED"},
	} {
		var x, y []float64
		for mm := 0.05; mm <= 60; mm += min(0.5, mm) {
			ice, err := light.ClearIce(mm / 1000)
			if err != nil {
				return nil, err
			}
			share := map[light.Source]float64{light.Tungsten: ice.Tungsten, light.Discharge: ice.Discharge, light.LED: ice.LED}[c.source]
			x, y = append(x, mm), append(y, 100*share)
		}
		if err := figure.Line(p, i, c.name, figure.XY(x, y)); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 60, 0, 100
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawBeams() ([]byte, error) {
	table, err := testdata.Load("stage_lamp_photometrics")
	if err != nil {
		return nil, err
	}
	p := figure.New("", "beam angle, degrees", "peak intensity per watt, cd/W")
	figure.LogY(p)
	heads := []struct {
		prefix, name string
		head         light.Head
		from, to     float64
	}{
		{"Fresnel", "Fresnel", light.Fresnel, 11, 60},
		{"ellipsoidal", "profile", light.Profile, 10, 60},
		{"PAR", "PAR 64", light.PAR, 20, 75},
	}
	for i, h := range heads {
		var x, low, high []float64
		for a := h.from; a <= h.to; a++ {
			lamp := light.Lamp{Watts: 1, BeamDegrees: a, Distance: 1, Head: h.head} // candela are the lux at one metre
			lux, err := lamp.Illuminance()
			if err != nil {
				return nil, err
			}
			x, low, high = append(x, a), append(low, lux.Low), append(high, lux.High)
		}
		if err := figure.Band(p, i, "", x, low, high); err != nil {
			return nil, err
		}
	}
	for i, h := range heads {
		var x, y []float64
		for _, r := range table.Rows {
			if !strings.HasPrefix(r.Text("fixture"), h.prefix) {
				continue
			}
			angle, err := r.Float("beam_angle_deg")
			if err != nil {
				return nil, err
			}
			watts, err := r.Float("lamp_w")
			if err != nil {
				return nil, err
			}
			candela, err := r.Float("peak_candela")
			if err != nil {
				return nil, err
			}
			x, y = append(x, angle), append(y, candela/watts)
		}
		if err := figure.Points(p, i, h.name, figure.XY(x, y)); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 5, 80, 2, 3000
	return figure.SVG(p, figure.Width, figure.Height)
}
