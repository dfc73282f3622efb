//go:build !linux

package main

import "errors"

// exchange swaps two folders in one step, which this system does not offer.
func exchange(a, b string) error { return errors.ErrUnsupported }
