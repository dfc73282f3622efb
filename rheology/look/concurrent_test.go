package look

import (
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
	"example.org/honestplate/testdata/serial"
)

// Many goroutines share liquids and tables, and get what one gets.
func TestConcurrentUse(t *testing.T) {
	milk, cream := optics(t, Milk{FatPercent: 3.5}), optics(t, Milk{FatPercent: 36})
	scene := Scene{Depth: honestplate.Some(0.001), Ground: Flake, Light: colour.A, IncidenceDegrees: 33}
	calls := serial.Calls{
		"Milk.Optics":        func() any { return serial.All(Milk{FatPercent: 1.5}.Optics()) },
		"Milk.Globules":      func() any { return serial.All(Milk{FatPercent: 1.5}.Globules()) },
		"Mix":                func() any { return serial.All(Mix(Part{milk, 4}, Part{cream, 1})) },
		"Optics.At":          func() any { return serial.All(milk.At(600)) },
		"Optics.Appear":      func() any { return serial.All(milk.Appear(scene)) },
		"Optics.Beside":      func() any { return serial.All(cream.Beside(&milk, scene)) },
		"Optics.Contrast":    func() any { return serial.All(milk.Contrast(scene, 0.001, Black, White)) },
		"Optics.Hides":       func() any { return serial.All(milk.Hides(scene, Chocolate, White, Hidden)) },
		"Optics.MarshalJSON": func() any { return serial.All(milk.MarshalJSON()) },
		"Of":                 func() any { return serial.All(Of(recipe.Thin)) },
		"CreamFor":           func() any { return serial.All(CreamFor(recipe, 0.01, 0.95)) },
	}
	calls.Compare(t)
	calls.Complete(t, "concurrent_test.go")
}
