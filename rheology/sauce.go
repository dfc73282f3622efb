package rheology

import (
	"math"

	"example.org/honestplate/rheology/flow"
)

// sauceRate is the shear rate of Viscosity of what thins, 1/s: a spoon, a slow pour, the 40
// 1/s at which the chocolate trade reads its viscosity. The others end the flow curves.
const (
	sauceRate     = 50.0
	sauceLowRate  = 0.1
	sauceHighRate = 1000.0
)

// A sauceCurve is a flow curve at one temperature: Herschel-Bulkley, or Casson with k the
// plastic viscosity.
type sauceCurve struct{ tempC, yield, k, n float64 }

// sauces are foods that flow only when pushed, or thin so much that one viscosity says
// little. Ketchup, mustard and mayonnaise are from Steffe 1996, appendix (after Higgs &
// Norrington 1971, Figoni & Shoemaker 1983), from memory. There mustard and mayonnaise are
// power laws (19.1 Pa s^n and 0.39; 6.4 and 0.55 at 25 degC, 4.2 and 0.60 at 40), fitted at
// 30 to 1300 1/s, which do not stand. Both have a yield stress: 52 to 78 and 81 to 91 Pa by
// squeezing flow (Campanella & Peleg 1987), of which the middle is taken, for mayonnaise
// less by its share per degC at 40. The constants here meet it at rest and the power law at
// 300 and 1000 1/s; below 100 the two sources part, and what stands is believed. Chocolates are from read sources;
// yoghurt, custard and chocolate sauce typical, from memory.
func sauces() map[Food]*foodData {
	const steffe, typical = "Steffe 1996, appendix, from memory", "typical, from memory"
	sauce := func(lowC, highC, perC, density, tension float64, source string, curves ...sauceCurve) *foodData {
		return &foodData{
			source: source, band: "x/: 2.5, between makers and laboratories; typical",
			lowC: lowC, highC: highC, spread: 2.5, curves: curves, perC: perC,
			density: line{density, -4e-4 * density, 0.03}, tension: line{tension, 0, 0.2},
		}
	}
	chocolate := func(density float64, source string, curve sauceCurve) *foodData {
		d := sauce(35, 50, -0.035, density, 0.028, source, curve)
		d.casson = true
		return d
	}
	const squeezed = "yield stress: Campanella & Peleg 1987, squeezing flow (abstract read, figures from memory); flow: " + steffe
	// stands marks a yield stress that was measured undisturbed, known better than a curve.
	stands := func(d *foodData) *foodData {
		d.undisturbed, d.yieldSpread = true, 2
		return d
	}
	return map[Food]*foodData{
		"tomato ketchup": sauce(2, 95, -0.012, 1140, 0.050, steffe,
			sauceCurve{25, 32, 18.7, 0.27}, sauceCurve{45, 24, 16, 0.29}, sauceCurve{65, 14, 11.3, 0.31}, sauceCurve{95, 10, 7.4, 0.37}),
		"mustard":         stands(sauce(2, 40, -0.012, 1050, 0.045, squeezed, sauceCurve{25, 64, 4.89, 0.550})),
		"mayonnaise":      stands(sauce(2, 40, -0.020, 930, 0.035, squeezed, sauceCurve{25, 86, 0.220, 0.986}, sauceCurve{40, 63.7, 0.307, 0.939})),
		"stirred yoghurt": sauce(2, 25, -0.015, 1035, 0.046, typical, sauceCurve{5, 5, 4, 0.45}),
		"custard":         sauce(2, 60, -0.015, 1070, 0.045, typical, sauceCurve{20, 6, 5, 0.50}),
		"chocolate sauce": sauce(2, 50, -0.040, 1320, 0.055, "typical, from memory; a trade list has 10..25 Pa s", sauceCurve{20, 2, 12, 0.70}),
		"milk chocolate, melted": chocolate(1260, "rheometer makers' notes: 9.3 Pa and 1.42 Pa s at 39.9 degC, 14.28 Pa and 1.863 Pa s",
			sauceCurve{40, 11.5, 1.63, 1}),
		"dark chocolate, melted": chocolate(1270, "rheometer maker's note: 29.02 Pa and 6.056 Pa s", sauceCurve{40, 29.02, 6.056, 1}),
		"milk chocolate, tempered": sauce(28, 33, -0.035, 1260, 0.028, "J. Rheol. 62(5), 1187, 2018, abstract: Bingham, 36.1 Pa and 8.7 Pa s, 30 % fat",
			sauceCurve{30, 36.1, 8.7, 1}),
	}
}

// at is the flow curve at a temperature: between two known ones the logarithms of
// yield stress and consistency, and the index, run straight in temperature; beyond
// them the consistency and yield stress change by the sauce's share per degC, an
// engineering estimate.
func (d *foodData) at(tempC float64) sauceCurve {
	first, last := d.curves[0], d.curves[len(d.curves)-1]
	beyond := func(c sauceCurve) sauceCurve {
		k := math.Exp(d.perC * (tempC - c.tempC))
		return sauceCurve{tempC, c.yield * k, c.k * k, c.n}
	}
	switch {
	case tempC <= first.tempC:
		return beyond(first)
	case tempC >= last.tempC:
		return beyond(last)
	}
	i := 1
	for d.curves[i].tempC < tempC {
		i++
	}
	a, b := d.curves[i-1], d.curves[i]
	w := (tempC - a.tempC) / (b.tempC - a.tempC)
	c := sauceCurve{tempC: tempC, k: a.k * math.Pow(b.k/a.k, w), n: a.n + w*(b.n-a.n)}
	if a.yield > 0 {
		c.yield = a.yield * math.Pow(b.yield/a.yield, w)
	}
	return c
}

func (c sauceCurve) stress(casson bool, rate float64) float64 {
	if casson {
		return flow.Casson{Yield: c.yield, Plastic: c.k}.Stress(rate)
	}
	return flow.HerschelBulkley{Yield: c.yield, K: c.k, N: c.n}.Stress(rate)
}
