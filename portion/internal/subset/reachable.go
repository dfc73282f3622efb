package subset

import "slices"

// maxReachWords bounds the memory of a list of totals, 8 bytes a word.
const maxReachWords = 1 << 23

// A Reach knows the totals that pieces can make with the counts of their groups: one bit
// a total, one row a count, a whole word of totals at a time.
type Reach struct {
	Groups []Group
	masses []int64
	words  int        // of a row
	rows   [][]uint64 // the layer behind position i of group g is i+g+1, count+1 rows each
	keep   bool       // the layers stay; else only the last row does
}

// NewReach lists the totals that fit so many words. With keep a set can be read back;
// without, the list only says which totals there are.
func NewReach(masses []int64, groups []Group, words int, keep bool) *Reach {
	r := &Reach{Groups: groups, masses: masses, words: words, keep: keep}
	r.fill()
	return r
}

// fill works from the last group to the first: the layer of a position holds, by
// count still to choose, what the pieces from it on can add.
func (r *Reach) fill() {
	after := make([]uint64, r.words)
	after[0] = 1 // after the last group nothing is added
	if r.keep {
		r.rows = make([][]uint64, len(r.masses)+len(r.Groups))
	}
	for g := len(r.Groups) - 1; g >= 0; g-- {
		sp := r.Groups[g]
		n, counts := sp.To-sp.From, max(sp.Count, 0)
		size := (counts + 1) * r.words
		// The layers from the last to the first, one over the other unless they stay.
		slab := make([]uint64, size)
		if r.keep {
			slab = make([]uint64, (n+1)*size)
			for k := range n + 1 {
				r.rows[sp.From+g+k] = slab[k*size : (k+1)*size]
			}
		}
		layer := slab[len(slab)-size:]
		copy(layer, after)
		for k := n - 1; k >= 0; k-- {
			next := layer
			if r.keep {
				next = r.rows[sp.From+g+k]
			}
			w := r.masses[sp.From+k]
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

// Has reports whether the total can be made.
func (r *Reach) Has(total int64) bool {
	row := r.rows[0]
	return bit(row[len(row)-r.words:], total)
}

func bit(row []uint64, k int64) bool {
	return k >= 0 && k < int64(len(row))*64 && row[k/64]>>(uint(k)%64)&1 == 1
}

// Behind reports whether the pieces behind position i of group g can add a total of
// low..high, with count of the group still to choose; it needs keep.
func (r *Reach) Behind(g, i, count int, low, high int64) bool {
	row := r.rows[i+g+1][count*r.words : (count+1)*r.words]
	low, high = max(low, 0), min(high, int64(r.words)*64-1)
	for k := low; k <= high; k = (k/64 + 1) * 64 {
		bits := row[k/64] >> (uint(k) % 64)
		if last := high - k; last < 63 {
			bits &= 1<<(last+1) - 1
		}
		if bits != 0 {
			return true
		}
	}
	return false
}

// Set reads back the positions of the first set in stated order that makes the total; it
// needs keep.
func (r *Reach) Set(total int64) []int {
	var out []int
	for g, sp := range r.Groups {
		left := max(sp.Count, 0)
		for i := sp.From; i < sp.To; i++ {
			behind, rest := left-1, total-r.masses[i]
			if sp.Count == AnyCount {
				behind = 0
			}
			if behind >= 0 && r.Behind(g, i, behind, rest, rest) {
				out, left, total = append(out, i), behind, rest
			}
		}
	}
	return out
}

// reachable computes the totals that matter: those up to a jump above the target, or
// above the least total where that is higher. Exchanging one piece at a time leads
// from the lightest set to the heaviest in jumps of at most the spread of a group, so the
// nearest total above the target is among them, and so is a permitted one if there
// is any. It returns nil if that needs more memory than maxReachWords or more work than
// the effort allows.
func (in *instance) reachable(keep bool) *Reach {
	rowsAtOnce, rowsInAll := 1, 1
	for _, sp := range in.groups {
		rows := max(sp.Count, 0) + 1
		rowsAtOnce = max(rowsAtOnce, rows)
		rowsInAll += rows * (sp.To - sp.From + 1)
	}
	low, high := in.extremes()
	words := min(high, max(in.above, low)+slices.Max(in.w))/64 + 1
	work := words * int64(rowsInAll)
	memory := words * int64(2*rowsAtOnce)
	if keep {
		memory = work
	}
	if words > maxReachWords || memory > maxReachWords || work/4 > int64(in.effort) {
		return nil
	}
	in.work += int(work / 4)
	return NewReach(in.w, in.groups, int(words), keep)
}

// nearest returns the reachable totals of low..high next to the target: at or below it,
// and at or above it.
func (in *instance) nearest(r *Reach, low, high int64) (below, above int64, hasBelow, hasAbove bool) {
	low, high = max(low, 0), min(high, int64(r.words)*64-1)
	below, above = min(in.below, high), max(in.above, low)
	for ; below >= low && !r.Has(below); below-- {
	}
	for ; above <= high && !r.Has(above); above++ {
	}
	return below, above, below >= low, above <= high
}

// closestOf returns the reachable permitted totals that are closest to the target:
// none, one, or two at equal distance.
func (in *instance) closestOf(r *Reach) []int64 {
	low, high, hasLow, hasHigh := in.nearest(r, in.lo, in.hi)
	switch {
	case !hasLow && !hasHigh:
		return nil
	case !hasLow || hasHigh && in.off(high) < in.off(low):
		return []int64{high}
	case !hasHigh || low == high || in.off(low) < in.off(high):
		return []int64{low}
	}
	return []int64{low, high}
}

// extremes returns the least and the greatest total that the counts allow.
func (in *instance) extremes() (low, high int64) {
	for _, g := range in.groups {
		least, most := g.Extremes(slices.Sorted(slices.Values(in.w[g.From:g.To])))
		low, high = low+least, high+most
	}
	return low, high
}
