package rheology

import (
	"math"
	"math/rand/v2"
	"testing"
)

// An independent way to the optimum: it is where all liquids but two stand at
// a limit. Trying every such corner is slow and simple.
func cornerOptimum(b bounded, target float64, cost []float64) float64 {
	n := len(b.ln)
	best := math.Inf(1)
	for i := range n {
		for j := range n {
			if i == j {
				continue
			}
			for corner := range 1 << n {
				rest, want, c := float64(b.steps), target*float64(b.steps), 0.0
				for k := range n {
					if k == i || k == j {
						continue
					}
					x := float64(b.min[k])
					if corner>>k&1 == 1 {
						x = float64(b.max[k])
					}
					rest -= x
					want -= x * b.ln[k]
					c += cost[k] * x
				}
				// x_i + x_j = rest, x_i l_i + x_j l_j = want
				if b.ln[i] == b.ln[j] {
					continue
				}
				xj := (want - rest*b.ln[i]) / (b.ln[j] - b.ln[i])
				xi := rest - xj
				const slack = 1e-6
				if xi < float64(b.min[i])-slack || xi > float64(b.max[i])+slack || xj < float64(b.min[j])-slack || xj > float64(b.max[j])+slack {
					continue
				}
				best = min(best, c+cost[i]*xi+cost[j]*xj)
			}
		}
	}
	return best
}

func TestTheProgramFindsTheBestCorner(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for range 2000 {
		n := 2 + rng.IntN(4)
		b := bounded{steps: 100 + rng.IntN(900)}
		var cost []float64
		for range n {
			low := 0
			if rng.IntN(3) == 0 {
				low = rng.IntN(b.steps / n)
			}
			high := b.steps
			if rng.IntN(2) == 0 {
				high = low + rng.IntN(b.steps)
			}
			b.ln = append(b.ln, math.Log(0.001)+6*rng.Float64())
			b.min, b.max = append(b.min, low), append(b.max, high)
			cost = append(cost, float64(rng.IntN(20)))
		}
		var least, most int
		for i := range n {
			least, most = least+b.min[i], most+b.max[i]
		}
		if least > b.steps || most < b.steps {
			continue
		}
		low, high := b.lnOf(b.extreme(false)), b.lnOf(b.extreme(true))
		target := low + (high-low)*rng.Float64()
		if rng.IntN(10) == 0 {
			target = low
		}
		got, err := b.optimum(target, cost)
		if err != nil {
			t.Fatalf("%+v for %v in %v..%v: %v", b, target, low, high, err)
		}
		var sum, ln, c float64
		for i, x := range got {
			sum += x
			ln += x * b.ln[i]
			c += cost[i] * x
		}
		want := cornerOptimum(b, target, cost)
		if math.Abs(sum-float64(b.steps)) > 1e-6 || math.Abs(ln/sum-target) > 1e-7 || math.Abs(c-want) > 1e-4*(1+want) {
			t.Fatalf("%+v for %v: %v, sum %v, ln %v, cost %v, want %v", b, target, got, sum, ln/sum, c, want)
		}
		steps := b.round(got, target)
		total := 0
		for i, k := range steps {
			total += k
			if k < b.min[i] || k > b.max[i] {
				t.Fatalf("%+v: %v leaves a limit", b, steps)
			}
		}
		// A step moved between two liquids changes ln by their difference over the
		// batch; half of the widest is the most that rounding need cost.
		if off := math.Abs(b.lnOf(steps) - target); total != b.steps || off > 6.0/float64(b.steps) {
			t.Fatalf("%+v: %v, sum %v, off %v", b, steps, total, off)
		}
	}
}

func TestTheProgramOfManyLiquidsIsSolved(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 16))
	for range 300 {
		n := 6 + rng.IntN(maxParts-5)
		b := bounded{steps: 10 + rng.IntN(100000)}
		var cost []float64
		for range n {
			low, high := 0, b.steps
			if rng.IntN(4) == 0 {
				low = rng.IntN(1 + b.steps/n)
			}
			if rng.IntN(2) == 0 {
				high = low + rng.IntN(1+b.steps/3)
			}
			// Liquids often alike, which is where a simplex may stall.
			b.ln = append(b.ln, math.Log(0.001)+float64(rng.IntN(8)))
			b.min, b.max = append(b.min, low), append(b.max, high)
			cost = append(cost, float64(rng.IntN(4)))
		}
		most := 0
		for _, m := range b.max {
			most += m
		}
		if most < b.steps {
			continue
		}
		thin, thick := b.extreme(false), b.extreme(true)
		low, high := b.lnOf(thin), b.lnOf(thick)
		for _, share := range []float64{0, rng.Float64(), 1} {
			target := low + share*(high-low)
			got, err := b.optimum(target, cost)
			if err != nil {
				t.Fatalf("%+v for %v in %v..%v: %v", b, target, low, high, err)
			}
			steps, total := b.round(got, target), 0
			for i, k := range steps {
				total += k
				if k < b.min[i] || k > b.max[i] {
					t.Fatalf("%+v: %v leaves a limit", b, steps)
				}
			}
			if off := math.Abs(b.lnOf(steps) - target); total != b.steps || off > 8/float64(b.steps)+1e-8 {
				t.Fatalf("%+v for %v: %v, sum %v, off %v", b, target, steps, total, off)
			}
		}
	}
}
