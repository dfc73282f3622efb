package rheology

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// optimum returns the amounts, in steps but not yet whole, of least cost with
// ln viscosity target, which must be within reach. It is the linear program of
// Program in standard form (all unknowns 0 or more, all conditions equations):
//
//	x_i        amount above the least, of the liquids with any freedom
//	s_i        x_i + s_i = room of the liquid
//	t1, t2     sum x_i d_i + t1 = D + tol,  t1 + t2 = 2 tol
//
// in fractions of the batch, d_i the logarithm of the viscosity between 0 for
// the thinnest and 1 for the thickest. The tolerance on the viscosity, far below
// what a step does, keeps the solver from calling a target at the edge infeasible.
func (b bounded) optimum(target float64, cost []float64) ([]float64, error) {
	const tol = 1e-9
	n := float64(b.steps)
	out := make([]float64, len(b.ln))
	lowest, highest := slices.Min(b.ln), slices.Max(b.ln)
	ratio := highest - lowest
	if ratio == 0 {
		ratio = 1
	}
	scale := func(ln float64) float64 { return (ln - lowest) / ratio }
	var free []int
	rest, want := 1.0, scale(target)
	for i := range b.ln {
		out[i] = float64(b.min[i])
		rest -= out[i] / n
		want -= out[i] / n * scale(b.ln[i])
		if b.max[i] > b.min[i] {
			free = append(free, i)
		}
	}
	if rest*n < 0.5 || len(free) == 0 {
		return out, nil // the least amounts are the batch
	}
	if len(free) == 1 {
		out[free[0]] += math.Round(rest * n)
		return out, nil
	}
	k := len(free)
	rows, columns := k+3, 2*k+2
	a := mat.NewDense(rows, columns, nil)
	right := make([]float64, rows)
	c := make([]float64, columns)
	dearest := slices.Max(cost)
	if dearest == 0 {
		dearest = 1
	}
	for j, i := range free {
		c[j] = cost[i] / dearest
		a.Set(0, j, 1)
		a.Set(1, j, scale(b.ln[i]))
		a.Set(3+j, j, 1)
		a.Set(3+j, k+j, 1)
		right[3+j] = float64(b.max[i]-b.min[i]) / n
	}
	right[0] = rest
	a.Set(1, 2*k, 1)
	right[1] = want + tol
	a.Set(2, 2*k, 1)
	a.Set(2, 2*k+1, 1)
	right[2] = 2 * tol
	_, x, err := lp.Simplex(c, a, right, 1e-10, nil)
	if err != nil {
		return nil, fmt.Errorf("rheology: the blend program was not solved: %w", err)
	}
	for j, i := range free {
		out[i] += x[j] * n
	}
	return out, nil
}

// round returns whole steps with the exact sum. An optimum of the program has at
// most two liquids between their limits, so that at most two amounts are broken,
// and of the ways to round them the one nearest to the target is taken.
func (b bounded) round(exact []float64, target float64) []int {
	steps := make([]int, len(exact))
	left := b.steps
	var broken []int
	for i, x := range exact {
		whole := math.Floor(x + 1e-6)
		steps[i] = min(max(int(whole), b.min[i]), b.max[i])
		left -= steps[i]
		if steps[i] < b.max[i] {
			broken = append(broken, i)
		}
	}
	// First to those with most broken off.
	slices.SortStableFunc(broken, func(i, j int) int {
		return cmp.Compare(exact[j]-float64(steps[j]), exact[i]-float64(steps[i]))
	})
	for len(broken) > 0 && left > 0 {
		for _, i := range broken {
			if left > 0 && steps[i] < b.max[i] {
				steps[i]++
				left--
			}
		}
	}
	for i := 0; left < 0 && i < len(steps); i++ {
		take := min(-left, steps[i]-b.min[i])
		steps[i] -= take
		left += take
	}
	return b.nearer(steps, exact, target)
}

// nearer tries to move one step between the liquids that the optimum leaves between
// their limits, as long as that brings the viscosity nearer to the target.
func (b bounded) nearer(steps []int, exact []float64, target float64) []int {
	var between []int
	for i, x := range exact {
		if x > float64(b.min[i])+1e-6 && x < float64(b.max[i])-1e-6 {
			between = append(between, i)
		}
	}
	off := math.Abs(b.lnOf(steps) - target)
	for improved := true; improved; {
		improved = false
		for _, i := range between {
			for _, j := range between {
				if i == j || steps[i] == b.min[i] || steps[j] == b.max[j] {
					continue
				}
				moved := off
				steps[i]--
				steps[j]++
				if moved = math.Abs(b.lnOf(steps) - target); moved < off-1e-12 {
					off, improved = moved, true
					continue
				}
				steps[i]++
				steps[j]--
			}
		}
	}
	return steps
}
