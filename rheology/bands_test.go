package rheology_test

import (
	"math"
	"strings"
	"testing"

	"example.org/honestplate/examples/published"
)

// A band must be right: neither too narrow nor wider than the data warrant. Over
// the published points of every liquid with ten or more, 90..99 % lie inside.
func TestBandsHoldNinetyToNinetyNinePerCentOfThePoints(t *testing.T) {
	tables := map[string]bool{
		"dairy_viscosity": true, "dairy_density": true, "sucrose_viscosity": true, "sucrose_density": true,
		"honey_viscosity": true, "oil_viscosity": true, "glycerol_water": true,
	}
	checked := 0
	for _, c := range published.All() {
		if !tables[c.Table] || !c.Banded {
			continue
		}
		r, err := published.Run(c)
		if err != nil {
			t.Fatal(err)
		}
		checked++
		points := r.Compared()
		inside := 0
		for _, p := range points {
			if p.Inside() {
				inside++
			}
		}
		if share := float64(inside) / float64(len(points)); share < 0.90 || share > 0.99 {
			t.Errorf("%s, %s: %d of %d inside, %.1f %%", c.Table, c.Quantity, inside, len(points), 100*share)
		}
	}
	if checked != 8 {
		t.Errorf("%d checks found, want 8", checked)
	}
}

// The counts that the comment of Dairy states.
func TestDairyEvidenceIsAsStated(t *testing.T) {
	for _, c := range published.All() {
		if c.Table != "dairy_viscosity" || c.Package != "rheology" || !c.Banded || c.Quantity != "viscosity" {
			continue
		}
		r, err := published.Run(c)
		if err != nil {
			t.Fatal(err)
		}
		inside := 0
		var creams, sum float64
		for _, p := range r.Compared() {
			if p.Inside() {
				inside++
			}
			// The thick ones below 40 degC are the creams of 15 % and more.
			if strings.HasPrefix(p.Label, "cream") && !strings.Contains(p.Label, "Phipps") && !strings.HasPrefix(p.Label, "cream 10 ") {
				creams++
				sum += math.Log(p.Published / p.Predicted)
			}
		}
		if ratio := math.Exp(sum / creams); creams != 22 || math.Abs(ratio-1.12) > 0.02 {
			t.Errorf("%g cold creams, mean ratio %.2f; the comment says 1.1", creams, ratio)
		}
		if n := len(r.Compared()); n != 63 || inside != 61 {
			t.Errorf("%d of %d inside; the comment says 61 of 63", inside, n)
		}
	}
}
