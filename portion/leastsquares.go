package portion

import "math"

// Limits of least-squares sharing, within which float64 tells units apart.
const (
	mostWishUnits = 1_000_000_000
	leastFirmness = 1e-3
	mostFirmness  = 1e3
)

// A Wish is an amount that someone would like a zone to have.
type Wish struct {
	Name     string  // of the zone, for people
	Grams    float64 // wanted, g, 0..1e9; the wishes need not sum to what is declared
	Firmness float64 // weight of the square of what it misses, 1e-3..1e3; 0 means 1
	MinGrams float64 // at least this much, g; between steps, the next step up
	MaxGrams float64 // at most this much, g; 0 means no maximum; between steps, the next step down
}

// ShareNear spreads the declared mass in whole steps so that the shares come as
// near the wishes as they can in least squares, within bounds:
//
//	minimise the sum of Firmness (share - Grams)^2, shares summing to the declared mass
//
// over whole steps, not a rounded solution. The ideal is clamp(Grams + k/Firmness)
// with one k for all: unlike Share, what is too much or too little is spread
// equally, not in proportion. Ties go to the larger wish, then to the earlier; they
// are told apart to rounding error.
//
// Errors: those of Validate; InputError for wishes or bounds that make no sense or
// cannot be met; RangeError beyond the limits of Wish or 1e9 steps.
//
// Source: Ibaraki and Katoh, Resource Allocation Problems, 1988, chapter 4: units
// with the least increase of cost are an optimum of a sum of convex costs (from
// memory).
func (d Declaration) ShareNear(wishes []Wish) (Shares, error) {
	if err := d.Validate(); err != nil {
		return Shares{}, err
	}
	if d.Grams == 0 {
		return Shares{}, &InputError{"declared mass (Grams)", 0, "g", "above 0 to share by wishes in grams"}
	}
	step := d.step()
	total, err := steps("Grams", d.Grams, step)
	if err != nil {
		return Shares{}, err
	}
	if total > mostWishUnits {
		return Shares{}, &RangeError{"declared mass in steps", float64(total), 0, mostWishUnits, "steps", "limit of this package for wishes"}
	}
	q := quadratic{total: total}
	zones, claims := make([]Zone, len(wishes)), make([]Claim, len(wishes))
	for i, w := range wishes {
		zones[i] = Zone{Name: w.Name, Weight: 1, MinGrams: w.MinGrams, MaxGrams: w.MaxGrams}
		if err := within(zoneField(i, zones[i], "Grams"), w.Grams, 0, mostGrams, "g", "limit of this package"); err != nil {
			return Shares{}, err
		}
		f := w.Firmness
		if f == 0 {
			f = 1
		}
		if err := within(zoneField(i, zones[i], "Firmness"), f, leastFirmness, mostFirmness, "", "limit of this package"); err != nil {
			return Shares{}, err
		}
		target := w.Grams / step.times(1)
		if err := within(zoneField(i, zones[i], "Grams")+" in steps", target, 0, mostWishUnits, "steps", "limit of this package for wishes"); err != nil {
			return Shares{}, err
		}
		claims[i].Weight = 1
		if err := gramBounds(i, zones[i], step, &claims[i]); err != nil {
			return Shares{}, err
		}
		q.add(target, f, claims[i])
	}
	if err := checkClaims(total, claims, gramWords(zones, step)); err != nil {
		return Shares{}, err
	}
	s := Shares{d, make([]Portion, len(wishes))}
	for i, n := range q.solve() {
		s.Portions[i] = Portion{Name: wishes[i].Name, Steps: n, Grams: step.times(n)}
	}
	return s, nil
}

// Ideal returns the amounts that Apportion by LargestRemainder rounds where bounds
// bite: k v within Min and Max with one k for all, summing to the total as real
// numbers. Errors as Apportion.
func Ideal(total int64, claims []Claim) ([]float64, error) {
	if err := checkClaims(total, claims, claimWords()); err != nil {
		return nil, err
	}
	p, err := newParties(total, claims)
	if err != nil {
		return nil, err
	}
	held, units, weightSum := p.hold()
	out := make([]float64, len(claims))
	for i, w := range p.weight {
		if out[i] = float64(p.low[i]); !held[i] {
			out[i] = float64(w) / float64(weightSum) * float64(units)
		}
	}
	return out, nil
}

// A quadratic is a least-squares sharing in whole units.
type quadratic struct {
	total          int64
	target, weight []float64
	low, high      []int64
}

func (q *quadratic) add(target, weight float64, c Claim) {
	q.target, q.weight = append(q.target, target), append(q.weight, weight)
	high := q.total
	if c.Max != 0 {
		high = min(high, c.Max)
	}
	if c.Weight == 0 { // not one step fits
		high = c.Min
	}
	q.low, q.high = append(q.low, c.Min), append(q.high, high)
}

// increase returns by how much the unit after a raises the cost:
// w ((a+1-t)^2 - (a-t)^2).
func (q *quadratic) increase(i int, a int64) float64 {
	return q.weight[i] * (2*(float64(a)-q.target[i]) + 1)
}

// below returns how many units of i have an increase below k, within bounds.
func (q *quadratic) below(i int, k float64) int64 {
	n := math.Ceil(q.target[i] + k/(2*q.weight[i]) - 0.5)
	return int64(min(max(n, float64(q.low[i])), float64(q.high[i])))
}

// solve gives the units out by least increase: all below some k, found by halving,
// and those at k by rank.
func (q *quadratic) solve() []int64 {
	n := len(q.target)
	low, high := math.Inf(1), math.Inf(-1)
	for i := range n {
		low = min(low, q.increase(i, 0)-q.weight[i])
		high = max(high, q.increase(i, q.total)+q.weight[i])
	}
	sum := func(k float64) (s int64) {
		for i := range n {
			s += q.below(i, k)
		}
		return s
	}
	less, more := sum(low), sum(high)
	for more-less > int64(n)+64 {
		k := low + (high-low)/2
		if k <= low || k >= high {
			break
		}
		if s := sum(k); s <= q.total {
			low, less = k, s
		} else {
			high, more = k, s
		}
	}
	got := make([]int64, n)
	left := q.total
	var between []wishUnit
	for i := range n {
		got[i] = q.below(i, low)
		left -= got[i]
		for a := got[i]; a < q.below(i, high); a++ {
			between = append(between, wishUnit{q.increase(i, a), q.target[i], i})
		}
	}
	selectTop(between, int(left), wishUnit.before)
	for _, u := range between[:left] {
		got[u.zone]++
	}
	return got
}

// A wishUnit is one more unit for a zone, and what it costs.
type wishUnit struct {
	increase, target float64
	zone             int
}

func (u wishUnit) before(v wishUnit) bool {
	if u.increase != v.increase {
		return u.increase < v.increase
	}
	if u.target != v.target {
		return u.target > v.target
	}
	return u.zone < v.zone
}
