package sets

import (
	"math"
	"slices"
)

// Where sets are too many to list, the pieces used at all come in order of score, union by
// union, and each union is parted exactly: set by set, and the last two by the totals that
// its halves can make, one bit a total.

// byParting finds the best m sets, and reports whether the search came to its end: then
// they are the best and of equals the first, or there are none.
func (t *tray) byParting(m, effort int) (packing, int64, bool) {
	x, best, until := t.newPrice(m), packing{}, t.work+effort
	done, bound := t.unionsOf(x, t.all(), m, effort, func(bound int64) bool {
		return !best.found || bound >= best.score
	}, func(mask uint64) bool {
		var score int64
		for _, i := range members(mask) {
			score += t.Scores[i]
		}
		if best.found && score < best.score {
			return true
		}
		masks, ok := t.parted(mask, m, until)
		if masks == nil {
			return ok
		}
		p := packing{found: true, score: score}
		for _, one := range masks {
			p.sets = append(p.sets, t.setOf(one))
			p.off += p.sets[len(p.sets)-1].off
		}
		if !best.found || t.better(p.score, p.off, best.score, best.off) ||
			p.score == best.score && p.off == best.off && slices.CompareFunc(p.sets, best.sets, stated) < 0 {
			best = p
		}
		return ok
	})
	if done && best.found {
		bound = best.score
	}
	return best, bound, done
}

// setOf is the set of some pieces.
func (t *tray) setOf(mask uint64) set {
	score, off := t.valueOf(members(mask))
	return set{mask, score, off}
}

// parted parts a union into m permitted sets whose totals are closest to what is wanted,
// of equals the first in stated order; nil if there is no way. ok is unset where the work
// ran out.
func (t *tray) parted(mask uint64, m, until int) (sets []uint64, ok bool) {
	d := &parting{t: t, until: until}
	// The distances can be no less than the union's own, and rise from there.
	for limit := d.least(t.massOf(members(mask)), m); limit < math.MaxInt64; limit = d.next {
		d.limit, d.next = limit, math.MaxInt64
		if d.part(mask, m, 0) {
			return d.sets, true
		}
		if t.work > until {
			return nil, false
		}
	}
	return nil, true
}

// spared looks for m permitted sets, one after the other, whatever pieces they leave over,
// and reports whether the search came to its end.
func (t *tray) spared(m, effort int) (packing, bool) {
	d := &parting{t: t, until: t.work + effort, limit: math.MaxInt64, spare: true}
	if !d.part(t.all(), m, 0) {
		return packing{}, t.work <= d.until
	}
	var found []set
	for _, one := range d.sets {
		found = append(found, t.setOf(one))
	}
	return packed(found), true
}

// all is the set of all pieces.
func (t *tray) all() uint64 { return ^uint64(0) << (maxBits - len(t.mass)) }

// A parting is a union being parted within a limit of distances.
type parting struct {
	t           *tray
	sets        []uint64
	limit, next int64 // next is the least distance beyond the limit that was met
	until       int
	spare       bool // pieces may be left over
}

// least is how far the totals of m sets are off at the least.
func (d *parting) least(sum int64, m int) int64 {
	off := int64(m)*(d.t.base-d.t.Target) + sum*d.t.divisor
	return max(off, -off)
}

// within notes a distance beyond the limit, and reports whether it is not.
func (d *parting) within(off int64) bool {
	if off > d.limit {
		d.next = min(d.next, off)
	}
	return off <= d.limit
}

// part parts what is left into m sets, off by so much already.
func (d *parting) part(mask uint64, m int, off int64) bool {
	sum := d.t.massOf(members(mask))
	switch {
	case d.spare:
	case sum < int64(m)*d.t.lo || sum > int64(m)*d.t.hi || !d.within(off+d.least(sum, m)):
		return false
	case m == 1:
		d.sets = append(d.sets, mask)
		return true
	case m == 2:
		halves := d.t.halves(mask)
		if halves == nil || !d.within(off+d.t.setOf(halves[0]).off+d.t.setOf(halves[1]).off) {
			return false
		}
		d.sets = append(d.sets, halves...)
		return true
	}
	// A set with the earliest piece, in stated order; or any set.
	most := min(d.t.hi, sum)
	r := d.t.reach(members(mask), d.t.widest(), most)
	if m > 1 {
		return d.choose(r, mask, 0, 0, 0, r.Groups[0].Count, 0, m, off)
	}
	one := r.within(d.t.lo, most)
	if one != nil {
		d.sets = append(d.sets, maskOf(one))
	}
	return one != nil
}

// choose takes or leaves the piece at position k of a union's pieces, with c more of group
// g and so much mass; it goes on only where a permitted set is reached.
func (d *parting) choose(r reach, mask, one uint64, g, k, c int, sum int64, m int, off int64) bool {
	if d.t.work++; d.t.work > d.until {
		return false
	}
	for ; k == r.Groups[g].To && g+1 < len(r.Groups); c = r.Groups[g].Count {
		g++
	}
	if k == len(r.pieces) {
		own := d.t.off(sum)
		n := len(d.sets)
		d.sets = append(d.sets, one)
		if d.part(mask&^one, m-1, off+own) {
			return true
		}
		d.sets = d.sets[:n]
		return false
	}
	low, high, heavier := d.t.lo-sum, d.t.hi-sum, d.t.mass[r.pieces[k]]
	if c > 0 && r.Behind(g, k, c-1, low-heavier, high-heavier) &&
		d.choose(r, mask, one|bit(r.pieces[k]), g, k+1, c-1, sum+heavier, m, off) {
		return true
	}
	// Without the earliest piece of all it would be a later set.
	return (k > 0 || d.spare) && r.Behind(g, k, c, low, high) && d.choose(r, mask, one, g, k+1, c, sum, m, off)
}
