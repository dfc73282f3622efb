package thermal

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
)

// band is an estimate in its order.
func band(low, likely, high float64) honestplate.Estimate {
	return check.Between(low, likely, high)
}

// factor is an input of a unit that is known to "times or divided by": 1 and its limits.
func factor(key, name string, low, high float64) study.Input {
	return study.Input{Key: key, Name: name, Band: band(low, 1, high), Factor: true}
}

// around is an input of a unit with a value and how far to both sides it may lie.
func around(key, name string, v, by float64) study.Input {
	return study.Input{Key: key, Name: name, Band: band(v-by, v, v+by)}
}

// judged is a threshold: what this crew calls soft, or beads.
func judged(key, name string, e honestplate.Estimate) study.Input {
	return study.Input{Key: key, Name: name, Shared: study.Crew, Band: e}
}

// within puts limits on an input.
func within(in study.Input, low, high float64) study.Input {
	in.Min, in.Max = low, high
	return in
}

// bound binds an input to a field.
func bound(to *float64, in study.Input) study.Input {
	in.To = to
	return in
}

// ofProduct says that an input is one of the product.
func ofProduct(in study.Input) study.Input {
	in.Shared = study.Product
	return in
}

// ofRoom says that an input is one of the room.
func ofRoom(in study.Input) study.Input {
	in.Shared = study.Room
	return in
}

// where leaves an input its band only where there is something of it.
func where(there bool, in study.Input) study.Input {
	if !there {
		in.Band = honestplate.Exactly(in.Band.Likely)
	}
	return in
}

// some fills in an optional input that was left out.
func some(o honestplate.Optional, or float64) honestplate.Optional { return honestplate.Some(o.Or(or)) }
