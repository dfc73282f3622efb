// Package root finds where functions of one number pass zero, and where a place
// lies in a table of even steps: the one place for both in the tree.
package root

import "math"

// Rising returns where a function passes zero from below in low..high, by bisection
// to the last digit: the end it is nearer to where it does not.
func Rising(f func(float64) float64, low, high float64) float64 {
	return RisingTo(f, low, high, 0)
}

// RisingTo is Rising to a tolerance, where each call is a run of a model.
func RisingTo(f func(float64) float64, low, high, tolerance float64) float64 {
	for range 200 {
		mid := (low + high) / 2
		if mid == low || mid == high || high-low < tolerance {
			break
		}
		if f(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// Newton returns where a rising function with the slope df passes zero in low..high,
// from a start; step may sharpen the plain step f/df. A step that would leave what is
// left of the bracket halves it instead. It ends when a step is below the tolerance.
func Newton(f func(float64) (f, step float64), low, high, start, tolerance float64) float64 {
	x := start
	for range 100 {
		v, step := f(x)
		if v > 0 {
			high = x
		} else {
			low = x
		}
		next := x - step
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-x) < tolerance {
			return next
		}
		x = next
	}
	return x
}

// Cell returns the number of the cell that holds a place counted in steps, of n nodes,
// and how far into it the place lies, 0..1; outside 0..1 beyond the ends.
func Cell(place float64, n int) (int, float64) {
	i := min(max(int(place), 0), n-2)
	return i, place - float64(i)
}

// Cubic returns the value at a share 0..1 of a step of the cubic with the values v0, v1
// and the slopes d0, d1, each by the whole step, at its ends (Hermite).
func Cubic(share, v0, v1, d0, d1 float64) float64 {
	return v0 + share*(d0+share*(3*(v1-v0)-2*d0-d1+share*(d0+d1-2*(v1-v0))))
}
