package pour

import (
	"math"
	"testing"
)

// Short tubes against Lichtarowicz, Duggins and Markland 1965, "Discharge
// coefficients for incompressible non-cavitating flow through long orifices", J. Mech.
// Eng. Sci. 7, 210 (formula from memory): 1/Cd = 1/Cu + (20/Re)(1 + 2.25 L/D) - 0.005 L/D
// / (1 + 7.5 (log10 0.00015 Re)^2), Cu = 0.827 - 0.0085 L/D, Re of the ideal speed.
func TestShortTubesDischargeAsLichtarowiczFound(t *testing.T) {
	worst := 0.0
	for _, lod := range []float64{2, 4, 6, 8, 10} {
		for _, ideal := range []float64{100, 200, 500, 1000, 2000, 3000, 5000, 10000, 20000} {
			l := math.Log10(0.00015 * ideal)
			want := 1 / (1/(0.827-0.0085*lod) + 20/ideal*(1+2.25*lod) - 0.005*lod/(1+7.5*l*l))
			got := 1 / math.Sqrt(boreLoss(ideal*want, lod, 0))
			worst = max(worst, math.Abs(got/want-1))
		}
	}
	if worst > 0.08 {
		t.Errorf("worst %.3f, the documentation says 0.08", worst)
	}
	t.Logf("worst %.3f", worst)
}
