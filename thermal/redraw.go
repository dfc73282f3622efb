package thermal

import "example.org/honestplate"

// redraw draws the runs from what is now known.
func (k *kept[M]) redraw() error {
	return &honestplate.InputError{Field: "Seen", Got: "too much at once", Want: "observations that leave 200 runs"}
}
