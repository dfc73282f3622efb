package sets

import (
	"slices"
	"sort"

	"example.org/honestplate/portion/internal/decimal"
	"example.org/honestplate/portion/internal/subset"
)

// mostSets is a bound on the number of sets, by pieces and by mass.
func (t *tray) mostSets() int {
	if !t.possible() {
		return 0
	}
	return sort.Search(t.Sets, func(k int) bool { return !t.roomFor(k + 1) })
}

// roomFor reports whether m sets have pieces enough, and mass, by extremes: light ones
// for the lower end of all windows together and heavy ones for the upper.
func (t *tray) roomFor(m int) bool {
	var least, most int64
	for g, mass := range t.sorted {
		all := t.Groups[g]
		if all.Count != subset.AnyCount {
			all.Count *= m
		}
		if all.Count > len(mass) {
			return false
		}
		light, heavy := all.Extremes(mass)
		least, most = least+light, most+heavy
	}
	return least <= int64(m)*t.hi && most >= int64(m)*t.lo
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
	bound, _ := x.bound(m, func(int) bool { return true })
	if m == t.bounded {
		bound = min(bound, t.total)
	}
	if len(family) > 0 {
		bound = min(bound, int64(m)*highest(family))
	}
	return bound
}

func highest(family []set) int64 { return slices.MaxFunc(family, byScore).score }
