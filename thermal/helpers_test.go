package thermal

import (
	"math"
	"time"

	"example.org/honestplate"
)

// neverAt sorts after every time.
const neverAt = time.Duration(math.MaxInt64)

// at is a moment as a duration, to be compared: never comes last.
func at(m honestplate.Moment) time.Duration {
	if m.Never {
		return neverAt
	}
	return m.After
}
