// Package top finds the first few elements of a list in an order.
package top

import (
	"math/bits"
	"slices"
)

// Select moves the k first elements in the order before to the front of s, in
// no particular order, in time proportional to len(s). before must be a strict
// order in which no two elements are equal.
func Select[T any](s []T, k int, before func(a, b T) bool) {
	// Quickselect with the median of three as pivot. The inputs that make it
	// quadratic are stopped by the limit and sorted instead.
	for limit := 2 * bits.Len(uint(len(s))); k > 0 && k < len(s); limit-- {
		if limit == 0 || len(s) < 16 {
			slices.SortFunc(s, func(a, b T) int {
				if before(a, b) {
					return -1
				}
				return 1
			})
			return
		}
		pivot := medianOfThree(s[0], s[len(s)/2], s[len(s)-1], before)
		i, j := 0, len(s)-1
		for i <= j {
			for before(s[i], pivot) {
				i++
			}
			for before(pivot, s[j]) {
				j--
			}
			if i <= j {
				s[i], s[j] = s[j], s[i]
				i++
				j--
			}
		}
		switch {
		case k <= j+1:
			s = s[:j+1]
		case k >= i:
			s = s[i:]
			k -= i
		default:
			return
		}
	}
}

func medianOfThree[T any](a, b, c T, before func(a, b T) bool) T {
	if before(b, a) {
		a, b = b, a
	}
	if before(c, b) {
		b = c
		if before(b, a) {
			b = a
		}
	}
	return b
}
