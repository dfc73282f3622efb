package solve

import (
	"fmt"

	"example.org/honestplate"
)

// An exchange is the law of the surface: the heat flux into it, W/m2, and its
// slope by surface temperature, W/(m2 K).
type exchange interface {
	At(surfaceC, seconds float64) (flux, slope float64)
}

// stopped is the error of a computation that does not get on at a time, s.
func stopped(t float64, want string) error {
	return &honestplate.InputError{Field: "Heat", Got: fmt.Sprintf("a law that stops the computation after %.6g s", t), Want: want}
}
