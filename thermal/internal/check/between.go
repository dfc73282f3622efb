package check

import "example.org/honestplate"

// Between is the estimate of these limits.
func Between(low, likely, high float64) honestplate.Estimate {
	return honestplate.Estimate{Low: low, Likely: likely, High: high}
}
