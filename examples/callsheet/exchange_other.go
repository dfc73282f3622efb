//go:build !linux

package main

import (
	"errors"
	"os"
)

// exchange swaps two folders in one step, which this system does not offer.
func exchange(a, b string) error { return errors.ErrUnsupported }

// locked does not lock: the standard library has no locks on this system, and another run
// may be at work.
func locked(parent string, interrupt <-chan os.Signal) (unlock func(), alone bool, err error) {
	return func() {}, false, nil
}
