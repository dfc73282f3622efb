package sets

import "math/bits"

// A table remembers the best value with which the search came to some free pieces. It
// forgets where two meet in one place; that costs work, never the answer.
type table struct {
	entries []entry
	shift   int
}

type entry struct {
	free       uint64
	open       int
	score, off int64
	used       bool
}

// newTable sizes a table for a family.
func newTable(family int) *table {
	b := min(max(bits.Len(uint(family)), 4), 17)
	return &table{make([]entry, 1<<b), 64 - b}
}

// seen reports whether the free pieces were met before with as many sets open and no
// worse a value, and remembers this one otherwise.
func (t *table) seen(free uint64, open int, score, off int64, by *tray) bool {
	e := &t.entries[(free*0x9e3779b97f4a7c15^uint64(open)*0xbf58476d1ce4e5b9)>>t.shift]
	if e.used && e.free == free && e.open == open && !by.better(score, off, e.score, e.off) {
		return true
	}
	*e = entry{free, open, score, off, true}
	return false
}
