package subset

import "slices"

// A solution is a set of positions in an instance with what is known about it.
type solution struct {
	chosen []int
	sum    int64
	score  int64
	bound  int64
	proven bool // no set is better
	first  bool // and no equal set comes earlier
	found  bool
}

// better reports whether a is preferred to b: found, then score, then closeness to
// the target, then stated order.
func (in *instance) better(a, b solution) bool {
	if !a.found || !b.found {
		return a.found
	}
	if a.score != b.score {
		return a.score > b.score
	}
	if da, db := in.off(a.sum), in.off(b.sum); da != db {
		return da < db
	}
	return slices.Compare(a.chosen, b.chosen) < 0
}

// off is the distance of a total from the declared one.
func (in *instance) off(sum int64) int64 {
	d := in.total(sum) - in.target
	return max(d, -d)
}
