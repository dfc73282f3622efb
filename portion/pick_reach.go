package portion

import "slices"

// Which totals can be reached is a question of bits: one bit a total, one row a
// count, a whole word of totals at a time.

// maxReachWords bounds the memory of a reach, 8 bytes a word.
const maxReachWords = 1 << 23

// A reach knows the totals that the pieces of an instance can make with its counts.
// Masses are taken less the lightest of their group where the count is fixed, which
// shortens the rows.
type reach struct {
	in    *instance
	less  []int64    // by group: the lightest piece, 0 where the count is free
	base  int64      // what every total is short of
	words int        // of a row
	rows  [][]uint64 // by position (or one layer only), count+1 rows each
	first []int      // by group: the index in rows of its first layer
	keep  bool
}

// reachable computes the totals up to the given one. With keep the layers stay for
// reading back a set; without, only the answer does. It returns nil if that needs
// more memory than maxReachWords or more work than the effort allows.
func (in *instance) reachable(top int64, keep bool) *reach {
	r := &reach{in: in, keep: keep, less: make([]int64, len(in.groups)), first: make([]int, len(in.groups))}
	layers, rowsAtOnce, rowsInAll := 1, 1, 1
	for g, sp := range in.groups {
		rows := 1
		if sp.count != anyCount {
			r.less[g] = slices.Min(in.w[sp.from:sp.to])
			r.base += r.less[g] * int64(sp.count)
			rows = sp.count + 1
		}
		r.first[g] = layers - 1
		layers += sp.to - sp.from + 1
		rowsAtOnce = max(rowsAtOnce, rows)
		rowsInAll += rows * (sp.to - sp.from + 1)
	}
	if top < r.base {
		top = r.base
	}
	words := (top-r.base)/64 + 1
	work := words * int64(rowsInAll)
	memory := words * int64(2*rowsAtOnce)
	if keep {
		memory = work
	}
	if words > maxReachWords || memory > maxReachWords || work/4 > int64(in.effort) {
		return nil
	}
	in.work += int(work / 4)
	r.words = int(words)
	r.fill()
	return r
}

// fill works from the last group to the first: the layer of a position holds, by
// count still to choose, what the pieces from it on can add.
func (r *reach) fill() {
	in := r.in
	after := make([]uint64, r.words)
	after[0] = 1 // after the last group nothing is added
	if r.keep {
		r.rows = make([][]uint64, r.first[len(in.groups)-1]+in.groups[len(in.groups)-1].to-in.groups[len(in.groups)-1].from+1)
	}
	for g := len(in.groups) - 1; g >= 0; g-- {
		sp := in.groups[g]
		counts := max(sp.count, 0)
		layer := make([]uint64, (counts+1)*r.words)
		copy(layer, after)
		if r.keep {
			r.rows[r.first[g]+sp.to-sp.from] = slices.Clone(layer)
		}
		for i := sp.to - 1; i >= sp.from; i-- {
			w := in.w[i] - r.less[g]
			if sp.count == anyCount {
				orShifted(layer, layer, w)
			}
			for c := counts; c >= 1; c-- {
				orShifted(layer[c*r.words:(c+1)*r.words], layer[(c-1)*r.words:c*r.words], w)
			}
			if r.keep {
				r.rows[r.first[g]+i-sp.from] = slices.Clone(layer)
			}
		}
		copy(after, layer[counts*r.words:])
	}
	if !r.keep {
		r.rows = [][]uint64{after}
		return
	}
}

// orShifted sets the bits of src, moved up by shift, in dst; dst may be src.
func orShifted(dst, src []uint64, shift int64) {
	if shift >= int64(len(dst))*64 {
		return
	}
	words, bits := int(shift/64), uint(shift%64)
	if bits == 0 {
		for i := len(dst) - 1; i >= words; i-- {
			dst[i] |= src[i-words]
		}
		return
	}
	for i := len(dst) - 1; i > words; i-- {
		dst[i] |= src[i-words]<<bits | src[i-words-1]>>(64-bits)
	}
	dst[words] |= src[0] << bits
}

// has reports whether the total can be made.
func (r *reach) has(total int64) bool {
	row := r.rows[0]
	if r.keep && r.in.groups[0].count > 0 {
		row = row[r.in.groups[0].count*r.words:]
	}
	return r.bit(row, total-r.base)
}

func (r *reach) bit(row []uint64, k int64) bool {
	return k >= 0 && k < int64(r.words)*64 && row[k/64]>>(uint(k)%64)&1 == 1
}

// nearest returns the reachable totals next to the target: at or below it, and at
// or above it.
func (r *reach) nearest(target int64) (below, above int64, hasBelow, hasAbove bool) {
	for t := target; t >= r.base && !hasBelow; t-- {
		if r.has(t) {
			below, hasBelow = t, true
		}
	}
	for t := max(target, r.base); t < r.base+int64(r.words)*64 && !hasAbove; t++ {
		if r.has(t) {
			above, hasAbove = t, true
		}
	}
	return below, above, hasBelow, hasAbove
}

// set reads back the first set in stated order that makes the total; it needs keep.
func (r *reach) set(total int64) []int {
	in := r.in
	var out []int
	rest := total - r.base
	for g, sp := range in.groups {
		left := max(sp.count, 0)
		for i := sp.from; i < sp.to; i++ {
			w := in.w[i] - r.less[g]
			after := r.rows[r.first[g]+i-sp.from+1]
			switch {
			case sp.count == anyCount && w <= rest && r.bit(after, rest-w):
			case left > 0 && w <= rest && r.bit(after[(left-1)*r.words:left*r.words], rest-w):
				left--
			default:
				continue
			}
			out = append(out, i)
			rest -= w
		}
	}
	return out
}

// extremes returns the least and the greatest total that the counts allow.
func (in *instance) extremes() (low, high int64) {
	for _, g := range in.groups {
		w := slices.Sorted(slices.Values(in.w[g.from:g.to]))
		for i, x := range w {
			if g.count == anyCount {
				high += x
				continue
			}
			if i < g.count {
				low += x
			}
			if i >= len(w)-g.count {
				high += x
			}
		}
	}
	return low, high
}

// enough is a total up to which all sums must be known to find the reachable ones
// on both sides of the target: exchanging one piece at a time leads from the
// lightest set to the heaviest in jumps of at most the heaviest piece.
func (in *instance) enough() int64 {
	return max(in.hi, in.target+slices.Max(in.w))
}
