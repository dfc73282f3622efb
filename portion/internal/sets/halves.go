package sets

import "math"

// halves parts a union into two permitted sets whose totals are closest to what is wanted,
// of equals the first in stated order; nil if there is no way.
func (t *tray) halves(mask uint64) []uint64 {
	pieces := members(mask)
	var all int64
	for _, i := range pieces {
		all += t.mass[i]
	}
	low, high := max(t.lo, all-t.hi, 0), min(t.hi, all-t.lo)
	if low > high {
		return nil
	}
	r := t.reach(pieces, high)
	best, off := uint64(0), int64(math.MaxInt64)
	for sum := low; sum <= high; sum++ {
		if !r.has(0, r.start, sum) {
			continue
		}
		d := t.off(sum) + t.off(all-sum)
		if d > off {
			continue
		}
		half := maskOf(r.first(sum))
		half = max(half, mask&^half) // the one with the earliest piece
		if d < off || half > best {
			best, off = half, d
		}
	}
	if off == math.MaxInt64 {
		return nil
	}
	return []uint64{best, mask &^ best}
}

// A reach knows which totals the pieces from a position on can add, by how many of the
// position's group are still to choose.
type reach struct {
	t      *tray
	pieces []int
	group  []int // of each position
	words  int
	rows   [][]uint64 // by position and count, one row after the other
	start  int        // to choose of the first group
}

// reach lists the totals up to most that half the pieces of every group make.
func (t *tray) reach(pieces []int, most int64) *reach {
	r := &reach{t: t, pieces: pieces, words: int(most/64) + 1, group: make([]int, len(pieces)+1)}
	for k, i := range pieces {
		r.group[k] = t.groupOf(i)
	}
	n := len(pieces)
	r.group[n] = len(t.Groups)
	widest := 0
	for _, g := range t.Groups {
		widest = max(widest, g.Count)
	}
	slab := make([]uint64, (n+1)*(widest+1)*r.words)
	r.rows = make([][]uint64, n+1)
	for k := range r.rows {
		r.rows[k], slab = slab[:(widest+1)*r.words], slab[(widest+1)*r.words:]
	}
	r.rows[n][0] = 1
	for k := n - 1; k >= 0; k-- {
		w := t.mass[pieces[k]]
		for c := 0; c <= t.Groups[r.group[k]].Count; c++ {
			to := r.row(k, c)
			copy(to, r.after(k, c))
			if c > 0 {
				shiftInto(to, r.after(k, c-1), w)
			}
		}
	}
	t.work += (n + 1) * (widest + 1) * r.words / 8
	if n > 0 {
		r.start = t.Groups[r.group[0]].Count
	}
	return r
}

func (r *reach) row(k, c int) []uint64 { return r.rows[k][c*r.words : (c+1)*r.words] }

// after is the row behind position k with c of its group still to choose: where the group
// ends there, none may be left, and the next group begins.
func (r *reach) after(k, c int) []uint64 {
	if r.group[k+1] == r.group[k] {
		return r.row(k+1, c)
	}
	if c > 0 {
		return nil
	}
	if k+1 == len(r.pieces) {
		return r.row(k+1, 0)
	}
	return r.row(k+1, r.t.Groups[r.group[k+1]].Count)
}

// shiftInto sets the bits of from, moved up, in to.
func shiftInto(to, from []uint64, by int64) {
	words, shift := int(by/64), uint(by%64)
	for i := len(to) - 1; i >= words && from != nil; i-- {
		to[i] |= from[i-words] << shift
		if shift > 0 && i > words {
			to[i] |= from[i-words-1] >> (64 - shift)
		}
	}
}

// has reports whether the pieces from position k on add up to a sum with c to choose.
func (r *reach) has(k, c int, sum int64) bool {
	return has(r.row(k, c), sum)
}

func has(row []uint64, sum int64) bool {
	return row != nil && sum >= 0 && sum < int64(len(row))*64 && row[sum/64]>>(uint(sum)%64)&1 == 1
}

// within reads back a set whose sum is within a window; nil if there is none.
func (r *reach) within(low, high int64) []int {
	for sum := max(low, 0); sum <= high && sum < int64(r.words)*64; sum++ {
		if r.has(0, r.start, sum) {
			return r.first(sum)
		}
	}
	return nil
}

// first reads back the first set in order that makes a sum.
func (r *reach) first(sum int64) (set []int) {
	c := r.start
	for k, i := range r.pieces {
		w := r.t.mass[i]
		if c > 0 && has(r.after(k, c-1), sum-w) {
			set = append(set, i)
			c, sum = c-1, sum-w
		}
		if r.group[k+1] != r.group[k] && k+1 < len(r.pieces) {
			c = r.t.Groups[r.group[k+1]].Count
		}
	}
	return set
}
