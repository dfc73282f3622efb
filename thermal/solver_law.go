package thermal

import (
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
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

// stopped is the error of a computation that does not get on at a time, s.
func stopped(t float64, want string) error {
	return &honestplate.InputError{Field: "Heat", Got: fmt.Sprintf("a law that stops the computation after %.6g s", t), Want: want}
}
