package mie

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
)

// A Class is the spheres of one size of a suspension.
type Class struct {
	Radius float64 `json:"radius_m"` // m, above 0
	Share  float64 `json:"share"`    // of the volume of all spheres, 0..1
}

// LogNormal returns the size classes of spheres whose volume is spread log-normally over
// the radius: mean radius in m (of the volume), coefficient of variation cv, nothing above
// the radius largest. The classes stand at equal steps of an eighth of the
// deviation, four deviations to each side.
//
// Range: mean 1 nm..100 um, cv 0.01..2, largest above the mean.
func LogNormal(mean, cv, largest float64) ([]Class, error) {
	const tried = "the sizes that milk and its like have"
	if err := cmp.Or(
		honestplate.InRange("mean", mean, 1e-9, 1e-4, "m", tried),
		honestplate.InRange("cv", cv, 0.01, 2, "", tried),
		honestplate.InRange("largest", largest, mean, 1e-3, "m", "the mean, and what a liquid carries"),
	); err != nil {
		return nil, err
	}
	deviation := math.Sqrt(math.Log1p(cv * cv))
	middle := math.Log(mean) - deviation*deviation/2
	return normalClasses(middle, deviation, func(t float64) (radius, weight float64) {
		if t > largest {
			return 0, 0
		}
		return t, 1
	}), nil
}

// LogNormalBelow is LogNormal for radii r that stay below largest: r/(largest - r), whose
// value at the mean radius is the mean, is spread log-normally with the standard deviation
// sd. Casein micelles are described so (Frisvad, Christensen and Jensen 2007), as volume
// per radius.
func LogNormalBelow(mean, sd, largest float64) ([]Class, error) {
	const tried = "the sizes that milk and its like have"
	if err := cmp.Or(
		honestplate.InRange("mean", mean, 1e-9, 1e-4, "m", tried),
		honestplate.InRange("sd", sd, 0.01, 5, "", tried),
		honestplate.InRange("largest", largest, 1.01*mean, 100*mean, "m", "a limit that the sizes feel"),
	); err != nil {
		return nil, err
	}
	m := mean / (largest - mean)
	variance := math.Log1p(sd * sd / (m * m))
	return normalClasses(math.Log(m)-variance/2, math.Sqrt(variance), func(t float64) (radius, weight float64) {
		return largest * t / (1 + t), 1 / ((1 + t) * (1 + t))
	}), nil
}

// normalClasses samples exp of a normal distribution at even steps, through a map from
// the sample to a radius and a further weight; a weight of 0 leaves the class out.
func normalClasses(middle, deviation float64, to func(t float64) (radius, weight float64)) []Class {
	const reach, perDeviation = 4, 8
	classes := make([]Class, 0, 2*reach*perDeviation+1)
	total := 0.0
	for i := -reach * perDeviation; i <= reach*perDeviation; i++ {
		z := float64(i) / perDeviation
		r, w := to(math.Exp(middle + float64(deviation*z)))
		if w *= math.Exp(-z * z / 2); w > 0 {
			classes = append(classes, Class{r, w})
			total += w
		}
	}
	for i := range classes {
		classes[i].Share /= total
	}
	return classes
}

// checkClasses wants radii of a suspension and shares that sum to 1.
func checkClasses(classes []Class) error {
	if len(classes) == 0 {
		return &honestplate.InputError{Field: "Classes", Got: "empty", Want: "at least one size class"}
	}
	total := 0.0
	for i, c := range classes {
		if err := cmp.Or(
			honestplate.InRange("Radius", c.Radius, 1e-10, 1e-3, "m", "what a liquid carries"),
			honestplate.InRange("Share", c.Share, 0, 1, "", "a share of the volume"),
		); err != nil {
			return honestplate.In(fmt.Sprintf("Classes[%d]", i), err)
		}
		total += c.Share
	}
	if math.Abs(total-1) > 1e-6 {
		return &honestplate.InputError{Field: "Classes", Got: fmt.Sprintf("shares of %.6g in all", total),
			Want: "shares that sum to 1"}
	}
	return nil
}
