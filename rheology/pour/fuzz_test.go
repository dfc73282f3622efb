package pour_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/law"
	"example.org/honestplate/rheology/pour"
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
func after(t *testing.T, p pour.Pour, drop, film, degrees float64, rough bool, n int, wait int64) {
	t.Helper()
	if _, err := json.Marshal(p); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("a worked out pour is written: %v", err)
	}
	s, err := p.Stream(drop)
	numbers(t, "stream", err, s)
	if err == nil {
		x, err := s.Splash(pour.Target{Film: film, Rough: rough})
		numbers(t, "splash", err, x)
		c, err := s.Crown(film)
		numbers(t, "crown", err, c)
		k, err := s.Coil()
		numbers(t, "coil", err, k)
	}
	c, err := p.Dribble(degrees)
	numbers(t, "cling", err, c)
	r, err := p.Settled(degrees)
	numbers(t, "rest", err, r)
	u, err := p.Puddle(time.Duration(wait), degrees)
	numbers(t, "puddle", err, u)
}

func FuzzSpout(f *testing.F) {
	f.Add(0.006, 0.02, 0.05, 0.0, 0.0, 10.0, 1400.0, 0.05, 0.0, 1.0, 20.0, 40.0, 0.3, 0.001, 30.0, false, 5, int64(1e9))  // it coils
	f.Add(0.004, 0.3, 0.0042, 0.0, 0.0, 0.001, 1000.0, 0.07, 0.0, 1.0, 20.0, 1.0, 0.2, 0.001, 30.0, false, 5, int64(1e9)) // it drips
	f.Add(0.008, 0.03, 0.06, 0.0, 0.0, 0.02, 1000.0, 0.05, 0.0, 1.0, 20.0, 200.0, 0.2, 0.001, 30.0, false, 5, int64(1e9))
	f.Add(0.02, 0.05, 0.1, 0.01, 0.6, 2.0, 1300.0, 0.08, 20.0, 0.4, 20.0, 50.0, 1.5, 0.0, 90.0, true, 3, int64(1e12))
	f.Fuzz(func(t *testing.T, d, length, head, surface, cd, eta, rho, sigma, yield, n, tempC, grams, drop, film, degrees float64, rough bool, steps int, wait int64) {
		base := given{eta: eta, rho: rho, sigma: sigma, band: 0.2}
		s := pour.Spout{Diameter: d, Length: length, Head: head, SurfaceArea: surface, Discharge: cd}
		for _, l := range []rheology.Liquid{base, stiff{base, yield}, thinning{base, n}} {
			p, err := s.Pour(l, tempC, grams)
			numbers(t, "pour", err, p.Rate, p.EndRate, p.Duration, p.LeftGrams, p.Viscosity, p.Speed, p.Diameter, p.Reynolds, p.ShearRate)
			if err == nil {
				after(t, p, drop, film, degrees, rough, steps, wait)
			}
		}
	})
}

func FuzzLip(f *testing.F) {
	f.Add(0.03, 0.01, 0.01, 0.0, 0.02, 1000.0, 0.05, 0.0, 1.0, 20.0, 200.0, 0.2, 0.001, 30.0, false, 5, int64(1e9))
	f.Add(0.05, 0.03, 0.03, 0.01, 2.0, 1300.0, 0.08, 20.0, 0.4, 20.0, 50.0, 1.5, 0.0, 90.0, true, 3, int64(1e12))
	f.Add(0.00375, 8.3e-05, 0.011, 46.0, 30.12, 133.3, 6.26, 0.0, -8.4, -106.0, 600.0, 1.2, 8.8, -29.0, false, -83, int64(1e9)) // a stress that falls with the rate
	f.Fuzz(func(t *testing.T, width, length, head, surface, eta, rho, sigma, yield, n, tempC, grams, drop, film, degrees float64, rough bool, steps int, wait int64) {
		base := given{eta: eta, rho: rho, sigma: sigma, band: 0.2}
		s := pour.Lip{Width: width, Length: length, Head: head, SurfaceArea: surface}
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
		j := law.Jet{Diameter: d, Speed: v, Fluid: law.Fluid{Viscosity: eta, Density: rho, SurfaceTension: sigma}}
		end, err := j.Fall(z)
		numbers(t, "fall", err, end)
		for _, turbulent := range []bool{false, true} {
			j.Turbulent = turbulent
			e, err := j.BreakUp()
			numbers(t, "break-up", err, e)
		}
		x, err := j.DrippingWeber(d, z)
		numbers(t, "dripping", err, x)
		x, err = law.TerminalSpeed(d)
		numbers(t, "terminal", err, x)
		x, err = j.PendantDrop(d)
		numbers(t, "drop", err, x)
		x, err = j.DraggedFilm(v)
		numbers(t, "film", err, x)
		l, err := law.Impact{Fluid: j.Fluid, Diameter: d, Speed: v, GasDensity: gas, GasViscosity: gasEta, MeanFreePath: path}.Lift()
		numbers(t, "lift", err, l)
		s := pour.Stream{Drop: z, Diameter: d, Speed: v, Fluid: law.Fluid{Viscosity: eta, Density: rho, SurfaceTension: sigma}, Rate: gas, Broken: z > 1}
		for _, film := range []float64{0, z, d / 2} {
			p, err := s.Splash(pour.Target{Film: film})
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
	f.Add(0.01, 0.001, 1e-3)
	f.Add(1e9, 1e-12, 1e6)
	f.Fuzz(func(t *testing.T, a, b, nu float64) {
		v, err := law.ReleasedPuddle(b, nu, a)
		numbers(t, "released", err, v)
		v, err = law.FedPuddle(b, nu, a)
		numbers(t, "fed", err, v)
	})
}

func FuzzWallsAndBubbles(f *testing.F) {
	f.Add(0.1, 0.02, 1000.0, 0.05, 20.0, 0.4, 20.0, int64(1e9), 0.001, 1.2)
	f.Add(10.0, 1e6, 3e4, 1e-4, 0.0, 1.0, 20.0, int64(1e15), 0.05, 0.0)
	f.Fuzz(func(t *testing.T, height, eta, rho, sigma, yield, n, tempC float64, wait int64, d, gas float64) {
		base := given{eta: eta, rho: rho, sigma: sigma, band: 0.2}
		for _, l := range []rheology.Liquid{base, stiff{base, yield}, thinning{base, n}} {
			c, err := pour.Wall{Height: height}.Drain(l, tempC, time.Duration(wait))
			numbers(t, "coat", err, c)
			u, err := pour.BubbleRise(l, tempC, d)
			numbers(t, "bubble", err, u)
			if err == nil && (u.Low > u.Likely || u.High < u.Likely) {
				t.Fatalf("bubble: %v", u)
			}
			w, err := pour.BubblesClear(l, tempC, d, height)
			numbers(t, "clear", err, w)
			if err == nil && (w.Earliest.After > w.Likely.After || w.Latest.After < w.Likely.After || math.Signbit(float64(w.Earliest.After))) {
				t.Fatalf("clear: %v", w)
			}
		}
		b := law.Bubble{Fluid: law.Fluid{Viscosity: eta, Density: rho, SurfaceTension: sigma}, Diameter: d, Gas: gas}
		v, err := b.Coated()
		numbers(t, "coated", err, v)
		v, err = b.Clean()
		numbers(t, "clean", err, v)
	})
}

// Heads are found or refused, and give what was wished.
func FuzzHeads(f *testing.F) {
	f.Add(0.02, 0.01, 0.02, 1000.0, 0.05, 5.0, 0.5, 20.0, 200.0, 1e-5, 0.001, int64(5e9), false, false)
	f.Add(0.005, 0.1, 20.0, 1400.0, 0.08, 50.0, 0.4, 20.0, 20.0, 1e-7, 0.0, int64(1e12), true, true)
	f.Fuzz(func(t *testing.T, d, length, eta, rho, sigma, yield, n, tempC, grams, rate, film float64, lasts int64, closed, rested bool) {
		base, wish := given{eta: eta, rho: rho, sigma: sigma, band: 0.2}, time.Duration(lasts)
		for _, l := range []rheology.Liquid{base, stiff{base, yield}, thinning{base, n}} {
			spout, lip := pour.Spout{Diameter: d, Length: length, Closed: closed, Rested: rested}, pour.Lip{Width: d, Length: length, Rested: rested}
			s, err := spout.ForDuration(l, tempC, grams, wish)
			numbers(t, "spout for a duration", err, s)
			s, err = spout.ForRate(l, tempC, rate)
			numbers(t, "spout for a rate", err, s)
			j, err := lip.ForRate(l, tempC, rate)
			numbers(t, "lip for a rate", err, j)
			j, err = lip.ForDuration(l, tempC, grams, wish)
			numbers(t, "lip for a duration", err, j)
			j, err = lip.Calibrate(l, tempC, grams, wish)
			numbers(t, "calibrated", err, j)
			if err != nil {
				continue
			}
			p, err := j.Pour(l, tempC, grams)
			if err != nil || math.Abs(p.Duration.Likely.After.Seconds()/wish.Seconds()-1) > 1e-3 && wish > time.Millisecond {
				t.Errorf("%+v pours in %v, wished %v: %v", j, p.Duration, wish, err)
			}
			h, err := p.GreatestFall(pour.Target{Film: film})
			numbers(t, "greatest fall", err, h)
		}
	})
}

// Whatever is read as a stream is written and read again.
func FuzzReadStream(f *testing.F) {
	f.Add(`{"drop_m":0.1,"diameter_m":0.003,"speed_m_per_s":1,"outlet":{"diameter_m":1}}`)
	f.Fuzz(func(t *testing.T, text string) {
		var s pour.Stream
		if json.Unmarshal([]byte(text), &s) != nil {
			return
		}
		b, err := json.Marshal(s)
		if err == nil {
			err = json.Unmarshal(b, &s)
		}
		if err != nil {
			t.Errorf("%s: %v", b, err)
		}
	})
}
