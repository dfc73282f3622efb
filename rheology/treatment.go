package rheology

import (
	"fmt"

	"example.org/honestplate"
)

// A Treatment is what was done to a milk or cream beside heating it. It moves cold cream
// more than fat does; the carton's list of ingredients and its small print tell.
type Treatment string

// The treatments. Of the creams published with their fat none states its own, so that
// the steps between them are read from a handful of creams: see [Dairy].
const (
	// notStated, the zero Treatment, takes the value of plain cream, with a band whose upper end
	// reaches Bakshi & Smith 1984, as homogenised cream does.
	notStated Treatment = ""
	// PlainCream was not homogenised and holds no thickener.
	PlainCream Treatment = "plain"
	// Homogenised cream has its globules torn small and clustered, 2 to 4 times thicker
	// cold at 20 to 30 % fat; milk hardly changes.
	Homogenised Treatment = "homogenised"
	// Thickened cream holds a thickener or stabiliser (carrageenan, starch, gellan), as
	// most long-life cream does. It follows no law of fat: measure it, see [Measured].
	Thickened Treatment = "thickened"
)

func (t Treatment) check() error {
	switch t {
	case notStated, PlainCream, Homogenised:
		return nil
	case Thickened:
		return &honestplate.InputError{
			Field: "Treatment", Got: "thickened cream, whose thickener sets the viscosity and not its fat",
			Want: "a cup time or a rheometer's value of it (Measured)",
		}
	}
	return &honestplate.InputError{
		Field: "Treatment", Got: fmt.Sprintf("%q", honestplate.OneLine(string(t))),
		Want: "nothing, plain, homogenised or thickened",
	}
}
