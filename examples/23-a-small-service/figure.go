package main

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
)

// ask posts a question to the service and returns status and answer.
func ask(path, body string) (int, string) {
	r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(body))
	w := httptest.NewRecorder()
	service().ServeHTTP(w, r)
	b, err := io.ReadAll(w.Result().Body)
	if err != nil {
		return 0, err.Error()
	}
	return w.Code, strings.TrimSpace(string(b))
}

// drawBeads asks the service when a glass beads, over the humidity of the room: a bar
// from the earliest to the latest moment, side by side for two drinks.
func drawBeads() ([]byte, error) {
	const top, half = 120.0, 0.8 // the axis's end, min, and half a bar, % of humidity
	p := figure.New("", "humidity of a room at 23 degC, %", "beads, min after filling")
	figure.LogY(p)
	for i, drinkC := range []float64{4, 10} {
		var at, likely []float64
		name := fmt.Sprintf("glass and drink at %g degC", drinkC)
		for percent := 40.0; percent <= 80; percent += 5 {
			w, err := beads(drinkC, percent/100)
			if err != nil {
				return nil, err
			}
			if !w.MayHappen() {
				continue
			}
			x := percent + float64(2*i-1)*1.1*half
			low, high := w.Earliest.After.Minutes(), top
			if !w.Latest.Never {
				high = min(w.Latest.After.Minutes(), top)
			}
			if err := figure.Band(p, i, "", []float64{x - half, x + half}, []float64{low, low}, []float64{high, high}); err != nil {
				return nil, err
			}
			if !w.Likely.Never {
				at, likely = append(at, x), append(likely, w.Likely.After.Minutes())
			}
		}
		if err := figure.Points(p, i, name, figure.XY(at, likely)); err != nil {
			return nil, err
		}
	}
	for _, n := range []struct {
		x, y float64
		text string
	}{{38.2, 80, "at the top:"}, {38.2, 65, "or never"}, {38.2, 8, "no bar: never"}} {
		if err := figure.Note(p, n.x, n.y, n.text); err != nil {
			return nil, err
		}
	}
	p.Legend.Top, p.Legend.Left = false, true
	p.Legend.XOffs, p.Legend.YOffs = -p.Legend.XOffs, -p.Legend.YOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 38, 82, 1, top
	return figure.SVG(p, figure.Width, figure.Height)
}

// beads asks when a glass beads that was filled with a drink as cold as itself.
func beads(drinkC, rh float64) (honestplate.Window, error) {
	status, body := ask("/glass", fmt.Sprintf(`{
		"glass": {"diameter_m": 0.072, "height_m": 0.125, "drink_grams": 260, "drink_c": %g, "wall_c": %[1]g},
		"air": {"temp_c": 23, "rh": %g, "speed_m_s": 0.1}}`, drinkC, rh))
	if status != http.StatusOK {
		return honestplate.Window{}, fmt.Errorf("the service answers %d: %s", status, body)
	}
	var windows map[string]honestplate.Window
	err := json.Unmarshal([]byte(body), &windows)
	return windows["beads"], err
}
