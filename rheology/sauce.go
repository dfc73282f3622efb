package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Sauce is a food that flows only when pushed, or thins so much that one
// viscosity says little: typical flow curves, for planning. Makers differ by
// factors, so measure yours (see FitFlow and Own).
type Sauce int

// The sauces. Flow curves: ketchup, mustard and mayonnaise from Steffe 1996,
// appendix (after Higgs & Norrington 1971, Figoni & Shoemaker 1983), from memory;
// chocolates from read sources; yoghurt, custard and chocolate sauce typical, from
// memory.
const (
	Ketchup           Sauce = iota // tomato ketchup, Herschel-Bulkley
	Mustard                        // prepared mustard, power law
	Mayonnaise                     // mayonnaise, power law
	StirredYoghurt                 // yoghurt, stirred, Herschel-Bulkley
	Custard                        // custard sauce, Herschel-Bulkley
	ChocolateSauce                 // chocolate syrup as a topping, Herschel-Bulkley
	MilkChocolate                  // milk chocolate, melted, Casson
	DarkChocolate                  // dark chocolate, melted, Casson
	TemperedChocolate              // milk chocolate, tempered, Bingham
	sauces
)

// sauceRate is the shear rate of Viscosity, 1/s: a spoon, a slow pour, the 40 1/s
// at which the chocolate trade reads its viscosity.
const (
	sauceRate     = 50.0
	sauceLowRate  = 0.1
	sauceHighRate = 1000.0
	sauceBand     = 2.5
)

// A sauceCurve is a flow curve at one temperature: Herschel-Bulkley, or Casson with k the
// plastic viscosity.
type sauceCurve struct{ tempC, yield, k, n float64 }

type sauceData struct {
	name        string
	casson      bool
	curves      []sauceCurve // rising in temperature
	lowC, highC float64
	perC        float64 // change of ln(k) and ln(yield) per degC beyond the curves
	density     float64 // kg/m3
	tension     float64 // N/m
	source      string
}

// Read only.
var sauceTable = [sauces]sauceData{
	Ketchup: {"tomato ketchup", false, []sauceCurve{{25, 32, 18.7, 0.27}, {45, 24, 16, 0.29}, {65, 14, 11.3, 0.31}, {95, 10, 7.4, 0.37}},
		5, 95, -0.012, 1140, 0.050, "Steffe 1996, appendix, from memory"},
	Mustard: {"mustard", false, []sauceCurve{{25, 0, 19.1, 0.39}},
		5, 40, -0.012, 1050, 0.045, "Steffe 1996, appendix, from memory"},
	Mayonnaise: {"mayonnaise", false, []sauceCurve{{25, 0, 6.4, 0.55}, {40, 0, 4.2, 0.60}},
		5, 40, -0.020, 930, 0.035, "Steffe 1996, appendix, from memory"},
	StirredYoghurt: {"stirred yoghurt", false, []sauceCurve{{5, 5, 4, 0.45}},
		2, 25, -0.015, 1035, 0.046, "typical, from memory"},
	Custard: {"custard", false, []sauceCurve{{20, 6, 5, 0.50}},
		4, 60, -0.015, 1070, 0.045, "typical, from memory"},
	ChocolateSauce: {"chocolate sauce", false, []sauceCurve{{20, 2, 12, 0.70}},
		5, 50, -0.040, 1320, 0.055, "typical, from memory; a trade list has 10..25 Pa s"},
	MilkChocolate: {"milk chocolate, melted", true, []sauceCurve{{40, 11.5, 1.63, 1}},
		35, 50, -0.035, 1260, 0.028, "rheometer makers' notes: 9.3 Pa and 1.42 Pa s at 39.9 degC, 14.28 Pa and 1.863 Pa s"},
	DarkChocolate: {"dark chocolate, melted", true, []sauceCurve{{40, 29.02, 6.056, 1}},
		35, 50, -0.035, 1270, 0.028, "rheometer maker's note: 29.02 Pa and 6.056 Pa s"},
	TemperedChocolate: {"milk chocolate, tempered", false, []sauceCurve{{30, 36.1, 8.7, 1}},
		28, 33, -0.035, 1260, 0.028, "J. Rheol. 62(5), 1187, 2018, abstract: Bingham, 36.1 Pa and 8.7 Pa s, 30 % fat"},
}

// Describe says where the flow curve comes from.
func (s Sauce) Describe() Description {
	if s < 0 || s >= sauces {
		return Description{Name: "unknown sauce"}
	}
	d := &sauceTable[s]
	return Description{
		Name: d.name, Source: d.source, LowC: d.lowC, HighC: d.highC, ShearRate: sauceRate,
		Band: "x/: 2.5, between makers and laboratories; typical",
	}
}

func (s Sauce) check(tempC float64) error {
	if s < 0 || s >= sauces {
		return check.Input("kind of sauce", float64(s), "", "one of the named sauces")
	}
	d := &sauceTable[s]
	return honestplate.InRange("temperature", tempC, d.lowC, d.highC, "degC", d.source)
}

// at is the flow curve at a temperature: between two known ones the logarithms of
// yield stress and consistency, and the index, run straight in temperature; beyond
// them the consistency and yield stress change by the sauce's share per degC, an
// engineering estimate.
func (s Sauce) at(tempC float64) sauceCurve {
	d := &sauceTable[s]
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
		return Casson{c.yield, c.k}.Stress(rate)
	}
	return HerschelBulkley{c.yield, c.k, c.n}.Stress(rate)
}

// Flow returns the typical flow curve at a temperature as a FlowModel: Casson for
// melted chocolate, Herschel-Bulkley for the others (with no yield stress it is a power
// law, with index 1 a Bingham liquid).
func (s Sauce) Flow(tempC float64) (FlowModel, error) {
	if err := s.check(tempC); err != nil {
		return nil, err
	}
	c := s.at(tempC)
	if sauceTable[s].casson {
		return Casson{c.yield, c.k}, nil
	}
	return HerschelBulkley{c.yield, c.k, c.n}, nil
}

// YieldStress returns the stress in Pa below which the sauce stands, band x/: 2.5 (x/: 7
// for chocolate: the ring test of Aeschlimann & Beckett 2000 spread that far).
func (s Sauce) YieldStress(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	c := s.at(tempC)
	if sauceTable[s].casson {
		return honestplate.Factor(c.yield, 7), nil
	}
	return honestplate.Factor(c.yield, sauceBand), nil
}

// Viscosity returns the apparent viscosity in Pa s at 50 1/s; see ViscosityAtRate.
func (s Sauce) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return s.ViscosityAtRate(tempC, sauceRate)
}

// ViscosityAtRate returns the apparent viscosity in Pa s, stress over rate, at a
// shear rate of 0.1..1000 1/s (a RangeError outside: no curve was measured there).
// Band x/: 2.5, an engineering estimate of how makers differ: the two read milk
// chocolates differ by 1.4, and laboratories on one chocolate by 2.
func (s Sauce) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	if err := honestplate.InRange("shear rate", shearRate, sauceLowRate, sauceHighRate, "1/s", sauceTable[s].source); err != nil {
		return honestplate.Estimate{}, err
	}
	c := s.at(tempC)
	return honestplate.Factor(c.stress(sauceTable[s].casson, shearRate)/shearRate, sauceBand), nil
}

// Density returns the density in kg/m3, typical, from memory, band +-3 %.
func (s Sauce) Density(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(sauceTable[s].density*(1-4e-4*(tempC-20)), 0.03), nil
}

// SurfaceTension returns the surface tension against air in N/m, typical, from
// memory, band +-20 %: in a sauce that stands, the yield stress decides, not this.
func (s Sauce) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(sauceTable[s].tension, 0.2), nil
}

// A Yielding liquid stands still below a stress in Pa; the zero Estimate says that it
// has no such stress.
type Yielding interface {
	Liquid
	// YieldStress is in Pa.
	YieldStress(tempC float64) (honestplate.Estimate, error)
}
