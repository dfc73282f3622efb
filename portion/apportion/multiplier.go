package apportion

import "math"

// multipliers returns two multipliers: the rounded shares sum to at most the total at
// the first and to at least the total at the second, and few units, or only near
// ties, lie between.
func (p parties) multipliers(m Method) (low, high float64) {
	sum := float64(p.weightSum)
	n := int64(len(p.weight))
	near := 64 + n/4 // as many units are ranked in a moment
	// Where rounding starts from: Jefferson loses half a unit a party, Adams
	// gains it, the others neither.
	shift := 0.0
	switch m {
	case Jefferson:
		shift = 0.5
	case Adams:
		shift = -0.5
	}
	guess := max(float64(p.total)+shift*float64(n), 0.5*float64(p.total)) / sum
	low, high = 0, math.Inf(1)
	lowTotal, highTotal := int64(0), int64(math.MaxInt64)
	for i := 0; ; i++ {
		t := p.roundedTotal(m, guess)
		if t <= p.total {
			low, lowTotal = guess, t
		}
		if t >= p.total {
			high, highTotal = guess, t
		}
		gap := highTotal - lowTotal
		if gap <= near || i >= 12 && gap <= 2*n+64 {
			return low, high
		}
		// Newton's step, aimed past the total so that it closes the other side,
		// every other time; otherwise, and where it leaves the bracket, halving.
		miss := float64(p.total - t)
		aim := guess + (miss+math.Copysign(float64(near)/4, miss))/sum
		if math.IsInf(high, 1) {
			guess = max(aim, 2*guess)
			continue
		}
		if guess = aim; i%2 == 1 || !(guess > low && guess < high) {
			guess = low + (high-low)/2
		}
		if guess == low || guess == high {
			return low, high // adjacent numbers: what lies between are ties, or nearly
		}
	}
}

// rounded returns every party's k v, rounded by a divisor method within bounds.
func (p parties) rounded(m Method, k float64) []int64 {
	out := make([]int64, len(p.weight))
	for i, w := range p.weight {
		out[i] = min(max(m.round(k*float64(w)), p.low[i]), p.high[i])
	}
	return out
}

// roundedTotal returns the sum of rounded.
func (p parties) roundedTotal(m Method, k float64) (sum int64) {
	for i, w := range p.weight {
		sum += min(max(m.round(k*float64(w)), p.low[i]), p.high[i])
	}
	return sum
}
