package figure

import (
	"math"
	"strconv"

	"gonum.org/v1/plot"
)

// Ticks marks round numbers, about seven of them, labelled without needless zeros.
type Ticks struct{}

// Ticks implements plot.Ticker.
func (Ticks) Ticks(low, high float64) []plot.Tick {
	step := math.Pow(10, math.Floor(math.Log10((high-low)/4)))
	for _, k := range []float64{1, 2, 5, 10} {
		if (high-low)/(step*k) <= 7.5 {
			step *= k
			break
		}
	}
	var out []plot.Tick
	for i := math.Ceil(low/step - 1e-9); i*step <= high+step*1e-9; i++ {
		// Rounded to the step, so that 0.3 is not 0.30000000000000004.
		v, _ := strconv.ParseFloat(strconv.FormatFloat(i*step, 'g', 12, 64), 64)
		if v == 0 {
			v = 0 // not -0
		}
		out = append(out, plot.Tick{Value: v, Label: strconv.FormatFloat(v, 'g', -1, 64)})
	}
	return out
}

// LogTicks marks 1, 2 and 5 of each decade with a label and the rest without; over
// more than three decades only the tens are labelled, over more than eight only
// every second one, and so on.
type LogTicks struct{}

// Ticks implements plot.Ticker.
func (LogTicks) Ticks(low, high float64) []plot.Tick {
	decades := math.Log10(high / low)
	wide, every := decades > 3, math.Ceil(decades/8)
	var out []plot.Tick
	for e := math.Floor(math.Log10(low)); e <= math.Ceil(math.Log10(high)); e++ {
		for k := 1.0; k < 10; k++ {
			v, _ := strconv.ParseFloat(strconv.FormatFloat(k*math.Pow(10, e), 'g', 12, 64), 64)
			if v < low*(1-1e-9) || v > high*(1+1e-9) {
				continue
			}
			t := plot.Tick{Value: v}
			if k == 1 && math.Mod(e, every) == 0 || !wide && (k == 2 || k == 5) {
				t.Label = strconv.FormatFloat(v, 'f', -1, 64)
			}
			out = append(out, t)
		}
	}
	return out
}
