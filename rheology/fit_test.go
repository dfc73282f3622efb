package rheology

import (
	"math"
	"math/rand/v2"
	"testing"
)

func curvePoints(m FlowModel, n int, noise float64, seed uint64) []FlowPoint {
	rng := rand.New(rand.NewPCG(seed, 1))
	pts := make([]FlowPoint, n)
	for i := range pts {
		r := math.Pow(10, -1+3*float64(i)/float64(n-1))
		pts[i] = FlowPoint{ShearRate: r, Stress: m.Stress(r) * (1 + noise*rng.NormFloat64())}
	}
	return pts
}

func TestFitFindsTheConstantsOfItsOwnCurve(t *testing.T) {
	models := []struct {
		kind FlowKind
		m    FlowModel
		want []float64
	}{
		{FitNewtonian, Newtonian{0.7}, []float64{0.7}},
		{FitPowerLaw, PowerLaw{19.1, 0.39}, []float64{19.1, 0.39}},
		{FitBingham, Bingham{36.1, 8.7}, []float64{36.1, 8.7}},
		{FitCasson, Casson{9.3, 1.42}, []float64{9.3, 1.42}},
		{FitHerschelBulkley, HerschelBulkley{32, 18.7, 0.27}, []float64{32, 18.7, 0.27}},
		{FitCarreau, Carreau{50, 0.2, 3, 0.4}, []float64{50, 0.2, 3, 0.4}},
	}
	for _, c := range models {
		f, err := FitFlow(c.kind, curvePoints(c.m, 20, 0, 1))
		if err != nil {
			t.Error(err)
			continue
		}
		for i, v := range f.Values {
			if math.Abs(v/c.want[i]-1) > 1e-4 {
				t.Errorf("%s: %s is %.8g, want %.8g", c.kind, f.Names[i], v, c.want[i])
			}
		}
	}
}

func BenchmarkFitFlow(b *testing.B) {
	pts := curvePoints(HerschelBulkley{32, 18.7, 0.27}, 20, 0.02, 7)
	for kind := range flowKinds {
		b.Run(kind.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := FitFlow(kind, pts); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
