// Package solve holds the integrators of the tree: an [Engine] for a body that freezes or
// melts, and a [Stack] of layers under one surface.
package solve

import "math"

// never is the time, in seconds, of what does not happen.
var never = math.Inf(1)
