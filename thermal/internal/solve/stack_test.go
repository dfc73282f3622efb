package solve

import (
	"math"
	"testing"
)

// plainFlux is convection with a constant coefficient.
func plainFlux(h, airC, surfaceC float64) Flux {
	return Flux{Convection: h * (airC - surfaceC), Slope: -h}
}

// slabStack is half a slab of thickness 2 m L, insulated below.
func slabStack(cells int, length, k, capacity, startC float64) stack {
	var s stack
	d := length / float64(cells)
	for i := range cells {
		s.temp[i], s.heat[i], s.link[i] = startC, capacity*d, k/d
	}
	s.n, s.top, s.surface = cells, 2*k/d, startC
	return s
}

// The exact series of a slab with convection, from the other half of this package, is
// met to 0.5 % of the initial difference by twelve cells.
func TestStackIsTheSeriesOfASlab(t *testing.T) {
	const length, k, capacity, h = 0.02, 0.5, 3.6e6, 25.0 // Bi = 1
	series, err := NewSeries(SlabForm, h*length/k)
	if err != nil {
		t.Fatal(err)
	}
	s := slabStack(maxCells, length, k, capacity, 80)
	seconds := 0.0
	for _, until := range []float64{60, 300, 900, 2400} {
		for seconds < until-1e-9 {
			s.advance(2, plainFlux(h, 20, s.surface))
			seconds += 2
		}
		fo := k / capacity * seconds / (length * length)
		for name, c := range map[string]struct{ x, got float64 }{
			"surface": {1, s.surface}, "mean": {-1, s.stored() / (capacity * length)},
		} {
			theta, err := series.Theta(max(c.x, 0), fo)
			if c.x < 0 {
				theta, err = series.Mean(fo)
			}
			if err != nil {
				t.Fatal(err)
			}
			if got := (c.got - 20) / 60; math.Abs(got-theta) > 0.005 {
				t.Errorf("%s at %g s: %g, series %g", name, seconds, got, theta)
			}
		}
	}
}

// One cell with all resistance at its surface is a lumped body; halving the step
// divides the error by four.
func TestStackIsOfSecondOrderInTheStep(t *testing.T) {
	run := func(steps int) float64 {
		s := stack{n: 1, top: 1e12, surface: 90}
		s.temp[0], s.heat[0] = 90, 10000
		for range steps {
			s.advance(1000/float64(steps), plainFlux(10, 20, s.surface))
		}
		return s.temp[0]
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
	series, err := NewSeries(SlabForm, h*length/k)
	if err != nil {
		t.Fatal(err)
	}
	miss := func(cells int) float64 {
		s := slabStack(cells, length, k, capacity, 80)
		const seconds = 1200
		for range 4800 {
			s.advance(0.25, plainFlux(h, 20, s.surface))
		}
		theta, err := series.Mean(k / capacity * seconds / (length * length))
		if err != nil {
			t.Fatal(err)
		}
		return math.Abs((s.stored()/(capacity*length)-20)/60 - theta)
	}
	if order := math.Log2(miss(3) / miss(6)); order < 1.7 || order > 2.3 {
		t.Errorf("order %g from 3 to 6 cells", order)
	}
}

// A step a thousand times longer than thin cells take must not make them swing.
func TestStackDampsWhatIsFasterThanTheStep(t *testing.T) {
	s := slabStack(4, 0.003, 1, 2.1e6, 2)
	for i := range 5 {
		before := s.surface
		s.advance(3600, plainFlux(10, 23, s.surface))
		if i > 1 && math.Abs(s.surface-23) > math.Abs(before-23)+1e-9 || s.surface > 33 || s.surface < -7 {
			t.Errorf("step %d: %g after %g", i, s.surface, before)
		}
	}
	if math.Abs(s.surface-23) > 0.1 {
		t.Errorf("ends at %g", s.surface)
	}
}

func TestHeldCellKeepsItsTemperatureAndCountsItsHeat(t *testing.T) {
	s := slabStack(4, 0.003, 1, 2.1e6, 0)
	s.held = true
	var first, heat float64
	start := s.stored()
	for range 500 {
		f := s.advance(10, plainFlux(10, 23, s.surface))
		first += 10 * f.first
		heat += 10 * f.heat
	}
	if s.temp[0] != 0 {
		t.Errorf("held at %g", s.temp[0])
	}
	// what came in is in the held cell's account or in the others
	if gap := heat - first - (s.stored() - start); math.Abs(gap) > 1e-9*heat {
		t.Errorf("%g of %g J/m2 missing", gap, heat)
	}
}
