// Package root finds roots of functions of one number: the one place of the tree that
// iterates towards one. Nothing in it allocates.
package root

import "math"

// Bisect returns where f changes its sign between low and high, to within tol of x or to
// the last digit. That it does change there is for the caller to know: otherwise the
// answer is an end. An error of f ends the search.
func Bisect(f func(x float64) (float64, error), low, high, tol float64) (float64, error) {
	at, err := f(low)
	if err != nil || at == 0 {
		return low, err
	}
	for high-low > tol {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		v, err := f(mid)
		if err != nil {
			return 0, err
		}
		if v < 0 == (at < 0) {
			low = mid
		} else {
			high = mid
		}
	}
	return low + (high-low)/2, nil
}

// A Search looks for the root of a rising function.
type Search struct {
	Low, High float64 // the bracket; an end that is not known is infinite
	Start     float64 // a first guess in the bracket
	Slope     float64 // a guess at the slope, above 0
	Tol       float64 // of the function: the last step squares what is left
}

// Rise returns where f, which rises, passes 0: by secants kept in the bracket, and by
// halving it, or stepping out where it has no end, when they leave it.
func (s Search) Rise(f func(x float64) (float64, error)) (float64, error) {
	x, slope := s.Start, s.Slope
	low, high := s.Low, s.High
	var px, py float64
	for step := range 200 {
		y, err := f(x)
		if err != nil {
			return 0, err
		}
		if step > 0 {
			slope = (y - py) / (x - px)
		}
		next := x - y/slope
		inside := slope > 0 && next > low && next < high
		if math.Abs(y) < s.Tol {
			if inside {
				x = next
			}
			break
		}
		if y > 0 {
			high = x
		} else {
			low = x
		}
		if !(slope > 0) || !(next > low) || !(next < high) {
			switch {
			case math.IsInf(low, -1):
				next = high - 2 - 2*min(math.Abs(y), 50)
			case math.IsInf(high, 1):
				next = low + 2 + 2*min(math.Abs(y), 50)
			default:
				next = low + (high-low)/2
			}
		}
		if math.Abs(next-x) < 1e-14*(1+math.Abs(x)) {
			break
		}
		px, py, x = x, y, next
	}
	return x, nil
}

// Settle returns the positive x that follows from itself, x = f(x), near a first guess: f
// falls with x, or rises more slowly than it.
func Settle(x float64, f func(x float64) (float64, error)) (float64, error) {
	ln, err := Search{
		Low: math.Inf(-1), High: math.Inf(1), Start: math.Log(x), Slope: 1.5, Tol: 1e-6,
	}.Rise(func(ln float64) (float64, error) {
		y, err := f(math.Exp(ln))
		return ln - math.Log(y), err
	})
	if err != nil {
		return 0, err
	}
	return math.Exp(ln), nil
}
