package solve

import (
	"math"
	"testing"

	"example.org/honestplate/thermal/internal/root"
)

// plainFlux is convection with a constant coefficient, and its slope.
func plainFlux(h, airC, surfaceC float64) (flux, slope float64) { return h * (airC - surfaceC), -h }

// slabSeries is the exact share of the difference left in a slab, at its surface and on
// average: sum 2 sin z/(z + sin z cos z) exp(-z^2 Fo) cos z, z tan z = Bi (Carslaw &
// Jaeger, Conduction of Heat in Solids, from memory).
func slabSeries(bi, fo float64) (surface, mean float64) {
	for n := range 40 {
		z := root.Rising(func(z float64) float64 { return z*math.Sin(z)*sign(n) - bi*math.Cos(z)*sign(n) }, math.Pi*float64(n), math.Pi*(float64(n)+0.5))
		a := 2 * math.Sin(z) / (z + math.Sin(z)*math.Cos(z)) * math.Exp(-z*z*fo)
		surface += a * math.Cos(z)
		mean += a * math.Sin(z) / z
	}
	return surface, mean
}

func sign(n int) float64 { return float64(1 - 2*(n%2)) }

// slabStack is half a slab of thickness 2 m L, insulated below.
func slabStack(cells int, length, k, capacity, startC float64) Stack {
	var s Stack
	d := length / float64(cells)
	for i := range cells {
		s.TempC[i], s.Heat[i], s.Link[i] = startC, capacity*d, k/d
	}
	s.Cells, s.Top, s.Surface = cells, 2*k/d, startC
	return s
}

// The exact series of a slab with convection is
// met to 0.5 % of the initial difference by twelve cells.
func TestStackIsTheSeriesOfASlab(t *testing.T) {
	const length, k, capacity, h = 0.02, 0.5, 3.6e6, 25.0 // Bi = 1
	s := slabStack(maxCells, length, k, capacity, 80)
	seconds := 0.0
	for _, until := range []float64{60, 300, 900, 2400} {
		for seconds < until-1e-9 {
			step(&s, 2, h, 20, s.Surface)
			seconds += 2
		}
		fo := k / capacity * seconds / (length * length)
		surface, mean := slabSeries(h*length/k, fo)
		for name, c := range map[string]struct{ got, want float64 }{
			"surface": {s.Surface, surface}, "mean": {s.Stored() / (capacity * length), mean},
		} {
			if got := (c.got - 20) / 60; math.Abs(got-c.want) > 0.005 {
				t.Errorf("%s at %g s: %g, series %g", name, seconds, got, c.want)
			}
		}
	}
}

// One cell with all resistance at its surface is a lumped body; halving the step
// divides the error by four.
func TestStackIsOfSecondOrderInTheStep(t *testing.T) {
	run := func(steps int) float64 {
		s := Stack{Cells: 1, Top: 1e12, Surface: 90}
		s.TempC[0], s.Heat[0] = 90, 10000
		for range steps {
			step(&s, 1000/float64(steps), 10, 20, s.Surface)
		}
		return s.TempC[0]
	}
	exact := 20 + 70*math.Exp(-1)
	last := math.Abs(run(10) - exact)
	for _, steps := range []int{20, 40, 80} {
		err := math.Abs(run(steps) - exact)
		if order := math.Log2(last / err); order < 1.9 || order > 2.1 {
			t.Errorf("%d steps: error %g, order %g", steps, err, order)
		}
		last = err
	}
}

// Cells are of second order in their size.
func TestStackIsOfSecondOrderInTheCells(t *testing.T) {
	const length, k, capacity, h = 0.02, 0.5, 3.6e6, 25.0
	miss := func(cells int) float64 {
		s := slabStack(cells, length, k, capacity, 80)
		const seconds = 1200
		for range 4800 {
			step(&s, 0.25, h, 20, s.Surface)
		}
		_, theta := slabSeries(h*length/k, k/capacity*seconds/(length*length))
		return math.Abs((s.Stored()/(capacity*length)-20)/60 - theta)
	}
	if order := math.Log2(miss(3) / miss(6)); order < 1.7 || order > 2.3 {
		t.Errorf("order %g from 3 to 6 cells", order)
	}
}

// A step a thousand times longer than thin cells take must not make them swing.
func TestStackDampsWhatIsFasterThanTheStep(t *testing.T) {
	s := slabStack(4, 0.003, 1, 2.1e6, 2)
	for i := range 5 {
		before := s.Surface
		step(&s, 3600, 10, 23, s.Surface)
		if i > 1 && math.Abs(s.Surface-23) > math.Abs(before-23)+1e-9 || s.Surface > 33 || s.Surface < -7 {
			t.Errorf("step %d: %g after %g", i, s.Surface, before)
		}
	}
	if math.Abs(s.Surface-23) > 0.1 {
		t.Errorf("ends at %g", s.Surface)
	}
}

// step advances the stack under convection.
func step(s *Stack, dt, h, airC, surfaceC float64) Flow {
	flux, slope := plainFlux(h, airC, surfaceC)
	return s.Advance(dt, flux, slope)
}
