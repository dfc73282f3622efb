package thermal

import "testing"

// meltingSphere is a ball of ice of 50 mm from -18 degC in air of 25 degC at 15
// W/(m2 K) for half an hour, the melt staying in place and the latent heat spread
// over the last kelvin: the case of the comparison with a general-purpose solver.
func meltingSphere() Body {
	const rho, solid, liquid, latent = 917.0, 2100.0, 4180.0, 333.5e3
	return Body{Radius: 0.025, Cells: 200, Uniform: true, Curve: Curve{
		{-40, -39 * rho * solid, 2.2}, {-1, 0, 2.2}, {0, rho * latent, 0.56}, {25.1, rho*latent + 25.1*rho*liquid, 0.56},
	}}
}

func BenchmarkMeltingSphere(b *testing.B) {
	body := meltingSphere()
	for _, tol := range []struct {
		name string
		v    float64
	}{{"1e-3", 1e-3}, {"1e-4", 1e-4}, {"3e-5", 3e-5}, {"1e-5", 1e-5}, {"3e-6", 3e-6}} {
		b.Run(tol.name, func(b *testing.B) {
			c, err := body.Curve.compile()
			if err != nil {
				b.Fatal(err)
			}
			var e engine
			law := &newtonLaw{15, 25}
			b.ReportAllocs()
			for b.Loop() {
				e.build(SphereForm, 0.025, 200, 0)
				e.begin(c, -18, tol.v, law)
				e.careFrom(1800)
				if err := e.runTo(1800); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(e.steps), "steps")
			b.ReportMetric(float64(e.solves), "solves")
			b.ReportMetric(e.heat/5881.1919-1, "err")
		})
	}
}
