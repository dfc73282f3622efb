package rheology_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/honestplate/rheology"
)

// numbers fails if what a call returned without an error holds a NaN or an infinity.
func numbers(t *testing.T, what string, err error, values ...any) {
	t.Helper()
	if err != nil {
		return
	}
	for _, v := range values {
		s := fmt.Sprintf("%+v", v)
		if strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
			t.Fatalf("%s: %s", what, s)
		}
	}
}

// after runs everything that can be asked of a pour.
func after(t *testing.T, p rheology.Pour, drop, film, degrees float64, rough bool, n int, wait int64) {
	t.Helper()
	s, err := p.Stream(drop)
	numbers(t, "stream", err, s)
	if err == nil {
		x, err := s.Splash(rheology.Target{Film: film, Rough: rough})
		numbers(t, "splash", err, x)
		c, err := s.Crown(film)
		numbers(t, "crown", err, c)
		r, err := c.Radius(time.Duration(wait))
		numbers(t, "radius", err, r)
		k, err := s.Coil()
		numbers(t, "coil", err, k)
	}
	m, err := p.Series(n % 20)
	numbers(t, "series", err, m)
	l, err := p.Last()
	numbers(t, "last", err, l)
	c, err := p.Cling(degrees)
	numbers(t, "cling", err, c)
	r, err := p.Rest(degrees)
	numbers(t, "rest", err, r)
	u, err := p.Puddle(time.Duration(wait), degrees)
	numbers(t, "puddle", err, u)
}

func FuzzSpout(f *testing.F) {
	f.Add(0.008, 0.03, 0.06, 0.0, 0.0, 0.0, 0.02, 1000.0, 0.05, 0.0, 1.0, 20.0, 200.0, 0.2, 0.001, 30.0, false, 5, int64(1e9))
	f.Add(0.02, 0.05, 0.1, 0.01, 0.1, 0.6, 2.0, 1300.0, 0.08, 20.0, 0.4, 20.0, 50.0, 1.5, 0.0, 90.0, true, 3, int64(1e12))
	f.Fuzz(func(t *testing.T, d, length, head, surface, wall, cd, eta, rho, sigma, yield, n, tempC, grams, drop, film, degrees float64, rough bool, steps int, wait int64) {
		base := given{eta: eta, rho: rho, sigma: sigma, band: 0.2}
		s := rheology.Spout{Diameter: d, Length: length, Head: head, SurfaceArea: surface, WallArea: wall, Discharge: cd}
		for _, l := range []rheology.Liquid{base, stiff{base, yield}, thinning{base, n}} {
			p, err := s.Pour(l, tempC, grams)
			numbers(t, "pour", err, p.Rate, p.EndRate, p.Duration, p.LeftGrams, p.Viscosity, p.Speed, p.Diameter, p.Reynolds, p.ShearRate)
			if err == nil {
				after(t, p, drop, film, degrees, rough, steps, wait)
			}
		}
		k, err := s.Discharges(grams)
		numbers(t, "discharge", err, k)
	})
}

func FuzzLip(f *testing.F) {
	f.Add(0.03, 0.01, 0.01, 0.0, 0.0, 0.02, 1000.0, 0.05, 0.0, 1.0, 20.0, 200.0, 0.2, 0.001, 30.0, false, 5, int64(1e9))
	f.Add(0.05, 0.03, 0.03, 0.01, 0.1, 2.0, 1300.0, 0.08, 20.0, 0.4, 20.0, 50.0, 1.5, 0.0, 90.0, true, 3, int64(1e12))
	f.Add(0.00375, 8.3e-05, 0.011, 46.0, 0.0, 30.12, 133.3, 6.26, 0.0, -8.4, -106.0, 600.0, 1.2, 8.8, -29.0, false, -83, int64(1e9)) // a stress that falls with the rate
	f.Fuzz(func(t *testing.T, width, length, head, surface, wall, eta, rho, sigma, yield, n, tempC, grams, drop, film, degrees float64, rough bool, steps int, wait int64) {
		base := given{eta: eta, rho: rho, sigma: sigma, band: 0.2}
		s := rheology.Lip{Width: width, Length: length, Head: head, SurfaceArea: surface, WallArea: wall}
		for _, l := range []rheology.Liquid{base, stiff{base, yield}, thinning{base, n}} {
			p, err := s.Pour(l, tempC, grams)
			numbers(t, "pour", err, p.Rate, p.EndRate, p.Duration, p.LeftGrams, p.Viscosity, p.Speed, p.Diameter, p.Reynolds, p.ShearRate)
			if err == nil {
				after(t, p, drop, film, degrees, rough, steps, wait)
			}
		}
	})
}

func FuzzJetsAndDrops(f *testing.F) {
	f.Add(0.005, 1.0, 0.02, 1000.0, 0.05, 0.3, 1.2, 1.8e-5, 6.8e-8)
	f.Add(1e-6, 100.0, 1e6, 3e4, 1e-4, 3.0, 1e-6, 1e-7, 1.0)
	f.Fuzz(func(t *testing.T, d, v, eta, rho, sigma, z, gas, gasEta, path float64) {
		j := rheology.Jet{Diameter: d, Speed: v, Viscosity: eta, Density: rho, SurfaceTension: sigma}
		end, err := j.Fall(z)
		numbers(t, "fall", err, end)
		for _, turbulent := range []bool{false, true} {
			e, err := j.BreakUp(turbulent)
			numbers(t, "break-up", err, e)
			e, err = j.FallingBreakUp(turbulent)
			numbers(t, "falling break-up", err, e)
		}
		x, err := j.WaveGrowth()
		numbers(t, "growth", err, x)
		x, err = rheology.DrippingWeber(d, z, rho, sigma)
		numbers(t, "dripping", err, x)
		x, err = rheology.DropTerminalSpeed(d)
		numbers(t, "terminal", err, x)
		x, err = rheology.DropFromSpout(d, rho, sigma)
		numbers(t, "drop", err, x)
		x, err = rheology.DropWeightFactor(z)
		numbers(t, "factor", err, x)
		x, err = rheology.YarinWeiss(v, z, eta, rho, sigma)
		numbers(t, "train", err, x)
		r := rheology.RibouxGordillo{Air: rheology.Gas{Density: gas, Viscosity: gasEta, MeanFreePath: path}}
		x, y, err := r.Lift(d, v, eta, rho, sigma)
		numbers(t, "lift", err, x, y)
		x, err = r.Threshold(d, v, eta, rho, sigma)
		numbers(t, "threshold", err, x)
		s := rheology.Stream{Drop: z, Diameter: d, Speed: v, Viscosity: eta, Density: rho, SurfaceTension: sigma, Rate: gas, Broken: z > 1}
		for _, film := range []float64{0, z, d / 2} {
			p, err := s.Splash(rheology.Target{Film: film})
			numbers(t, "splash", err, p)
		}
		c, err := s.Crown(d / 3)
		numbers(t, "crown", err, c)
		_, err = s.Coil()
		if err == nil {
			t.Fatal("a made-up stream has no outlet to coil from")
		}
	})
}

func FuzzClosedForms(f *testing.F) {
	f.Add(0.01, 0.001, 0.6, 0.3, 0.1, 1e-3)
	f.Add(1e9, 1e-12, 0.01, 1e6, 0.0, 1e6)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, g float64) {
		call := func(name string, v float64, err error) {
			t.Helper()
			numbers(t, name, err, v)
		}
		v, err := rheology.OrificeTime(a, b, c, d, e)
		call("orifice", v, err)
		v, err = rheology.BowlTime(a, d, b, c)
		call("bowl", v, err)
		v, err = rheology.TubeTime(g, d, b, a, d, e)
		call("tube time", v, err)
		v, err = rheology.TubeFlow(g, a, b, d, c)
		call("tube flow", v, err)
		v, err = rheology.TubeViscosity(g, a, b, d, c)
		call("tube viscosity", v, err)
		v, err = rheology.WeirFlow(a, d, c)
		call("weir", v, err)
		v, err = rheology.NotchFlow(a, d, c)
		call("notch", v, err)
		v, err = rheology.LandauLevich(a, b, c, d)
		call("landau", v, err)
		v, err = rheology.NusseltFilm(a, g, d)
		call("nusselt film", v, err)
		v, err = rheology.NusseltFlow(b, g, d)
		call("nusselt flow", v, err)
		v, err = rheology.ReleasedPuddle(b, g, a)
		call("released", v, err)
		v, err = rheology.FedPuddle(b, g, a)
		call("fed", v, err)
		v, err = rheology.DepositFront(a, d, e, b)
		call("deposit", v, err)
		v, err = rheology.StandingFilm(a, d, e)
		call("standing", v, err)
	})
}

func FuzzWallsAndBubbles(f *testing.F) {
	f.Add(0.1, 30.0, 0.02, 1000.0, 0.05, 20.0, 0.4, 20.0, int64(1e9), 0.001, 1.2, true)
	f.Add(10.0, 90.0, 1e6, 3e4, 1e-4, 0.0, 1.0, 20.0, int64(1e15), 0.05, 0.0, false)
	f.Fuzz(func(t *testing.T, height, degrees, eta, rho, sigma, yield, n, tempC float64, wait int64, d, gas float64, clean bool) {
		base := given{eta: eta, rho: rho, sigma: sigma, band: 0.2}
		for _, l := range []rheology.Liquid{base, stiff{base, yield}, thinning{base, n}} {
			c, err := rheology.Wall{Height: height, Degrees: degrees}.Drain(l, tempC, time.Duration(wait))
			numbers(t, "coat", err, c)
			u, err := rheology.BubbleRise(l, tempC, d)
			numbers(t, "bubble", err, u)
			if err == nil && (u.Low > u.Likely || u.High < u.Likely) {
				t.Fatalf("bubble: %v", u)
			}
			w, err := rheology.BubblesClear(l, tempC, d, height)
			numbers(t, "clear", err, w)
			if err == nil && (w.Earliest.After > w.Likely.After || w.Latest.After < w.Likely.After || math.Signbit(float64(w.Earliest.After))) {
				t.Fatalf("clear: %v", w)
			}
		}
		v, err := rheology.RigidBubble(d, rho, gas, eta)
		numbers(t, "rigid", err, v)
		v, err = rheology.EllipsoidBubble(d, rho, gas, eta, sigma)
		numbers(t, "ellipsoid", err, v)
		v, err = rheology.CleanBubble(d, rho, gas, eta, sigma)
		numbers(t, "clean", err, v)
		v, err = rheology.CapBubble(d, rho, gas)
		numbers(t, "cap", err, v)
		v, err = rheology.StokesBubble(d, eta, rho, clean)
		numbers(t, "stokes", err, v)
	})
}
