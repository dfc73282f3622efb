// Package root is the root finder of the portion tree.
package root

// Split halves low..high, where holds is true from low up to some place and false
// from there on, until no number lies between the two ends or 200 halvings are done,
// and returns them: the last place known to hold, and the first known not to. The
// ends themselves are not asked.
func Split(low, high float64, holds func(float64) bool) (last, first float64) {
	for range 200 {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			break
		}
		if holds(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low, high
}
