package thermal

import (
	"fmt"
	"math"
	"time"
)

// An exchange is the law of the surface: the heat flux into it, W/m2, and its
// slope by surface temperature, W/(m2 K).
type exchange interface {
	at(surfaceC, seconds float64) (flux, slope float64)
}

// funcExchange takes the slope of a user's law by a central difference.
type funcExchange func(surfaceC float64, at time.Duration) float64

func (f funcExchange) at(surfaceC, seconds float64) (float64, float64) {
	const d = 1e-3
	t := time.Duration(math.Round(seconds * 1e9))
	return f(surfaceC, t), (f(surfaceC+d, t) - f(surfaceC-d, t)) / (2 * d)
}

// A SolverError says that a computation did not come to an end, and why.
type SolverError struct {
	Reason string        // in words
	At     time.Duration // time reached in the computation
}

// Error says when the computation stopped and why, in one line.
func (e *SolverError) Error() string {
	return fmt.Sprintf("thermal: computation stopped at %v: %s", e.At, e.Reason)
}
