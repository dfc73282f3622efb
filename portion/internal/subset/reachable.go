package subset

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

// reachable computes the totals that matter: those up to a jump above the target, or
// above the least total where that is higher. Exchanging one piece at a time leads
// from the lightest set to the heaviest in jumps of at most the spread of a group, so the
// nearest total above the target is among them, and so is a permitted one if there
// is any. With keep the layers stay for reading back a set; without, only the answer
// does. It returns nil if that needs more memory than maxReachWords or more work than
// the effort allows.
func (in *instance) reachable(keep bool) *reach {
	r := &reach{in: in, keep: keep, less: make([]int64, len(in.groups)), first: make([]int, len(in.groups))}
	layers, rowsAtOnce, rowsInAll, jump := 0, 1, 1, int64(0)
	for g, sp := range in.groups {
		rows, w := 1, in.w[sp.From:sp.To]
		if sp.Count != AnyCount {
			r.less[g] = slices.Min(w)
			r.base += r.less[g] * int64(sp.Count)
			rows = sp.Count + 1
		}
		jump = max(jump, slices.Max(w)-r.less[g])
		r.first[g] = layers
		layers += sp.To - sp.From + 1
		rowsAtOnce = max(rowsAtOnce, rows)
		rowsInAll += rows * (sp.To - sp.From + 1)
	}
	low, high := in.extremes()
	words := (min(high, max(in.above, low)+jump)-r.base)/64 + 1
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
		last := len(in.groups) - 1
		r.rows = make([][]uint64, r.first[last]+in.groups[last].To-in.groups[last].From+1)
	}
	for g := len(in.groups) - 1; g >= 0; g-- {
		sp := in.groups[g]
		n, counts := sp.To-sp.From, max(sp.Count, 0)
		size := (counts + 1) * r.words
		// The layers from the last to the first, one over the other unless they stay.
		slab := make([]uint64, size)
		if r.keep {
			slab = make([]uint64, (n+1)*size)
			for k := range n + 1 {
				r.rows[r.first[g]+k] = slab[k*size : (k+1)*size]
			}
		}
		layer := slab[len(slab)-size:]
		copy(layer, after)
		for k := n - 1; k >= 0; k-- {
			next := layer
			if r.keep {
				next = r.rows[r.first[g]+k]
			}
			w := in.w[sp.From+k] - r.less[g]
			if sp.Count == AnyCount {
				union(next, layer, layer, w)
				layer = next
				continue
			}
			// Of the k pieces before at most all are chosen, of those from here on too.
			for c := min(counts, n-k); c >= max(counts-k, 0); c-- {
				row := layer[c*r.words : (c+1)*r.words]
				to := next[c*r.words : (c+1)*r.words]
				if c == 0 {
					copy(to, row)
					continue
				}
				union(to, row, layer[(c-1)*r.words:c*r.words], w)
			}
			layer = next
		}
		after = layer[counts*r.words:]
	}
	if !r.keep {
		r.rows = [][]uint64{after}
	}
}

// union sets dst to the bits of a and those of b moved up by shift, all of one
// length; dst may be a or b or both.
func union(dst, a, b []uint64, shift int64) {
	if shift >= int64(len(dst))*64 {
		copy(dst, a)
		return
	}
	words, bits := int(shift/64), uint(shift%64)
	// From the top down, so that what is still to be read is not overwritten. A shift
	// by 64 bits gives 0 where bits is 0.
	for i := len(dst) - 1; i > words; i-- {
		dst[i] = a[i] | b[i-words]<<bits | b[i-words-1]>>(64-bits)
	}
	dst[words] = a[words] | b[0]<<bits
	copy(dst[:words], a)
}

// has reports whether the total can be made.
func (r *reach) has(total int64) bool {
	row := r.rows[0]
	if r.keep && r.in.groups[0].Count > 0 {
		row = row[r.in.groups[0].Count*r.words:]
	}
	return r.bit(row, total-r.base)
}

func (r *reach) bit(row []uint64, k int64) bool {
	return k >= 0 && k < int64(r.words)*64 && row[k/64]>>(uint(k)%64)&1 == 1
}

// nearest returns the reachable totals next to the target: at or below it, and at
// or above it.
func (r *reach) nearest() (below, above int64, hasBelow, hasAbove bool) {
	for t := r.in.below; t >= r.base && !hasBelow; t-- {
		if r.has(t) {
			below, hasBelow = t, true
		}
	}
	for t := max(r.in.above, r.base); t < r.base+int64(r.words)*64 && !hasAbove; t++ {
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
		left := max(sp.Count, 0)
		for i := sp.From; i < sp.To; i++ {
			w := in.w[i] - r.less[g]
			after := r.rows[r.first[g]+i-sp.From+1]
			switch {
			case sp.Count == AnyCount && w <= rest && r.bit(after, rest-w):
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
		w := slices.Sorted(slices.Values(in.w[g.From:g.To]))
		for i, x := range w {
			if g.Count == AnyCount {
				high += x
				continue
			}
			if i < g.Count {
				low += x
			}
			if i >= len(w)-g.Count {
				high += x
			}
		}
	}
	return low, high
}
