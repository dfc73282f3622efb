package sets

import (
	"math"
	"slices"

	"example.org/honestplate/portion/internal/decimal"
)

// mostSets is a bound on the number of sets, by pieces and by mass.
func (t *tray) mostSets() int {
	able := 0
	for _, c := range t.classes {
		if c.possible() {
			able += len(c.wants)
		}
	}
	if len(t.classes) > 1 {
		return able
	}
	heavy := make([][]int64, len(t.Groups))
	for g, sp := range t.Groups {
		heavy[g] = slices.Sorted(slices.Values(t.mass[sp.From:sp.To]))
	}
	return 1 + lastTrue(able-1, func(k int) bool { return t.roomFor(k+1, heavy) })
}

// lastTrue returns the last of 0..n-1... for which ok holds, where it holds from 0 up to
// some number and not beyond; -1 where never.
func lastTrue(n int, ok func(int) bool) int {
	low, high := -1, n+1
	for high-low > 1 {
		mid := low + (high-low)/2
		if ok(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// roomFor reports whether m alike sets have pieces enough, and mass, by extremes: light
// ones for the lower end of all windows together and heavy ones for the upper.
func (t *tray) roomFor(m int, sorted [][]int64) bool {
	c := &t.classes[0]
	var least, most int64
	for g, mass := range sorted {
		count := c.want.Counts[g]
		if count == Any {
			for _, w := range mass {
				most += w
			}
			continue
		}
		if count*m > len(mass) {
			return false
		}
		for _, w := range mass[:count*m] {
			least += w
		}
		for _, w := range mass[len(mass)-count*m:] {
			most += w
		}
	}
	return least <= int64(m)*c.hi && most >= int64(m)*c.lo
}

// boundOf bounds the goal of m sets by the price alone.
func (t *tray) boundOf(x *price, m int) int64 {
	bound := t.scoreBound(x, nil, m)
	if t.Goal == Least {
		return decimal.FloorDiv(bound, int64(m))
	}
	return bound
}

// scoreBound is what m sets can score at the most.
func (t *tray) scoreBound(x *price, family []set, m int) int64 {
	bound, _ := x.bound(m, t.needs(m), func(int) bool { return true })
	if len(family) > 0 {
		bound = min(bound, int64(m)*t.highest(family))
	}
	return bound
}

func (t *tray) highest(family []set) int64 {
	high := int64(math.MinInt64)
	for _, s := range family {
		high = max(high, s.score)
	}
	return high
}
