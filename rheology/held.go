package rheology

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A HeldError says what holds a liquid in its outlet and which head would move it. It
// unwraps to a RefusedError: errors.Is(err, honestplate.ErrNoFlow) holds.
type HeldError struct {
	Cause    string  // "yield stress" or "surface tension"
	Head     float64 // as given, m
	NeedHead float64 // the least head that moves the liquid, m
}

// Error names what holds the liquid and the head that would move it.
func (e *HeldError) Error() string { return e.Unwrap().Error() }

// Unwrap returns the RefusedError.
func (e *HeldError) Unwrap() error {
	return &honestplate.RefusedError{
		Field: "Head", Kind: honestplate.ErrNoFlow,
		Reason: fmt.Sprintf("the liquid's %s holds it under %.3g mm", e.Cause, e.Head*1000),
		Advice: fmt.Sprintf("it moves from %.3g mm on: tilt further, fill higher or take a wider mouth", e.NeedHead*1000),
	}
}

func held(cause string, head, need float64) error { return &HeldError{cause, head, need} }

// noFlow is the error for the zero value of what a Pour method makes.
func noFlow(field string) error {
	return check.Missing(field, "the result of Spout.Pour, Lip.Pour or Pour.Stream, not a zero value")
}
