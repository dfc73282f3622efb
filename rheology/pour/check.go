package pour

import (
	"fmt"

	"example.org/honestplate"
)

// maxBore is the widest outlet, m: a bucket.
const maxBore = 1.0

// contact checks an angle of wetting.
func contact(degrees, low float64) error {
	return honestplate.InRange("ContactDegrees", degrees, low, 180, "degrees", "from a film to a bead")
}

// held says what holds a liquid in its outlet and from which head on it moves.
func held(cause string, head, need float64) error {
	return &honestplate.RefusedError{
		Field: "Head", Kind: honestplate.ErrNoFlow,
		Reason: fmt.Sprintf("the liquid's %s holds it under %.3g mm", cause, head*1000),
		Advice: fmt.Sprintf("it moves from %.4g mm on: tilt further, fill higher or take a wider mouth", need*1000),
	}
}
