package portion

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// An outlook is what Heroes says of units that are not taken yet.
type outlook struct {
	Heroes
	rates, weights []float64 // of a rate that is uncertain, where batches matter
}

func (h Heroes) outlook() outlook {
	o := outlook{Heroes: h}
	switch {
	case h.Correlation == 0:
	case h.SuccessRate > 0:
		o.rates, o.weights = []float64{h.SuccessRate}, []float64{1}
	default:
		// By quantiles of a normal variable z the rate is smooth, and sums over even
		// steps of z are as good as integrals: to 1e-7 in the tests.
		a, b := h.beta()
		for k := -32; k <= 32; k++ {
			z := float64(k) / 4
			below := math.Erfc(math.Abs(z)/math.Sqrt2) / 2
			p := 1 - mathext.InvRegIncBeta(b, a, below)
			if z < 0 {
				p = mathext.InvRegIncBeta(a, b, below)
			}
			o.rates, o.weights = append(o.rates, p), append(o.weights, math.Exp(-z*z/2))
		}
	}
	return o
}

// chance returns the probability of Wanted fit units among n, after what was seen.
func (o outlook) chance(n int, seen []bool) float64 {
	good := 0
	for _, g := range seen {
		if g {
			good++
		}
	}
	need, left, bad := o.Wanted-good, n-len(seen), len(seen)-good
	switch {
	case need <= 0:
		return 1
	case left < need:
		return 0
	case o.Correlation > 0:
		return o.fromBatches(need, left, seen)
	case o.SuccessRate > 0:
		return mathext.RegIncBeta(float64(need), float64(left-need+1), o.SuccessRate)
	}
	a, b := o.beta()
	return atLeast(need, fewest(a+float64(good), b+float64(bad), left, need))
}

// fromBatches averages over the rates that are left after what was seen.
func (o outlook) fromBatches(need, left int, seen []bool) float64 {
	size := o.Batch
	if size == 0 {
		size = len(seen) + left
	}
	sum, whole := 0.0, 0.0
	for i, p := range o.rates {
		if p >= 1 || p <= 0 { // sure either way: batches make no difference
			whole += o.weights[i]
			sum += o.weights[i] * math.Floor(p)
			continue
		}
		a, b := p*(1/o.Correlation-1), (1-p)*(1/o.Correlation-1)
		// What was seen weighs the rate, batch by batch; the last one may go on.
		likely, good, bad := 0.0, 0.0, 0.0
		for k, g := range seen {
			if k > 0 && k%size == 0 {
				likely += mathext.Lbeta(a+good, b+bad) - mathext.Lbeta(a, b)
				good, bad = 0, 0
			}
			if g {
				good++
			} else {
				bad++
			}
		}
		likely += mathext.Lbeta(a+good, b+bad) - mathext.Lbeta(a, b)
		weight := o.weights[i] * math.Exp(likely)
		whole += weight
		started := int(good + bad)
		rest := min((size-started)%size, left)
		few := fewest(a+good, b+bad, rest, need)
		few = convolve(few, power(fewest(a, b, size, need), (left-rest)/size))
		few = convolve(few, fewest(a, b, (left-rest)%size, need))
		sum += weight * atLeast(need, few)
	}
	return sum / whole
}

// fewest returns the chances of 0..need-1 fit units among n with a beta-distributed
// rate, each from the one before by the ratio of neighbours, in logarithms so that
// none underflows.
func fewest(a, b float64, n, need int) []float64 {
	out, trials := make([]float64, need), float64(n)
	logChance := mathext.Lbeta(a, b+trials) - mathext.Lbeta(a, b)
	for i := range min(need, n+1) {
		out[i] = math.Exp(logChance)
		k := float64(i)
		logChance += math.Log((trials - k) / (k + 1) * (a + k) / (b + (trials - k - 1))) // so grouped, a tiny b stays
	}
	return out
}

// atLeast returns 1 less the chances of too few.
func atLeast(need int, few []float64) float64 {
	sum := 0.0
	for _, p := range few[:need] {
		sum += p
	}
	return min(max(0, 1-sum), 1)
}

// convolve returns the chances of the sum of two numbers, as far as either goes.
func convolve(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i, p := range a {
		if p == 0 {
			continue
		}
		for j, q := range b[:len(a)-i] {
			out[i+j] += float64(p * q)
		}
	}
	return out
}

// power returns the chances of the sum of n numbers of one kind.
func power(a []float64, n int) []float64 {
	out := make([]float64, len(a))
	out[0] = 1
	for ; n > 0; n /= 2 {
		if n%2 == 1 {
			out = convolve(out, a)
		}
		a = convolve(a, a)
	}
	return out
}
