package record

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
)

// A Basis says in which state a mass is meant: 113 g of patty is usually the raw mass
// (common practice, no source), and a plate is weighed cooked.
type Basis string

// The bases. The empty one is: as it is served, nothing to convert.
const (
	Raw    Basis = "raw"
	Cooked Basis = "cooked"
)

// A Specification is a product as its maker's technician signs it: what lies on what,
// how much of it, within which tolerance, until when. [Specification.Check] holds a
// build against it, [Specification.BeforeWeighing] says whether a scale could.
type Specification struct {
	Product string `json:"product"` // what is sold under it; not empty
	Version string `json:"version"` // as its maker counts; not empty
	// Layers are the components in build order, 1 to 1000; names come once.
	Layers []Layer `json:"layers"`
	// Total is how far the whole may be from the sum of the declared layers, g. 0 and 0
	// leave it to the layers: their tolerances summed.
	TotalMinusGrams float64 `json:"total_minus_grams,omitzero"`
	TotalPlusGrams  float64 `json:"total_plus_grams,omitzero"`
	Ratios          []Ratio `json:"ratios,omitzero"` // of layers to each other, where they are signed off
	// Guard is the guard band of the verdicts, as in [portion.Limits].
	Guard  honestplate.Optional `json:"guard,omitzero"`
	Signed Signature            `json:"signed,omitzero"` // who signed it off; Name empty until then
	// ValidUntil is its last day, YYYY-MM-DD; empty for no end.
	ValidUntil string `json:"valid_until,omitzero"`
}

// A Layer is one component of a build.
type Layer struct {
	Name     string         `json:"name"`           // such as "patty"; not empty
	Declared portion.Amount `json:"declared"`       // a mass with its tolerance, a count with its own, or both
	Basis    Basis          `json:"basis,omitzero"` // the state that is declared
	// Yield is the cooked mass for 1 g of raw, with its 95 % band, where the layer is
	// declared in one state and weighed in the other. Measure it: published yields are
	// for other kitchens.
	Yield honestplate.Estimate `json:"yield,omitzero"`
}

// A Ratio bounds the mass of one layer over that of another, both as declared.
type Ratio struct {
	Layer string  `json:"layer"` // the name of the one
	To    string  `json:"to"`    // the name of the other
	Least float64 `json:"least"` // above 0
	Most  float64 `json:"most"`  // at least Least
}

const mostLayers = 1000

// Validate returns nil for a specification that can be checked, kept and hashed.
// Otherwise: [honestplate.InputError], [honestplate.RangeError] with the field.
func (s Specification) Validate() error {
	if err := cmp.Or(textAt("Product", s.Product, true), textAt("Version", s.Version, true)); err != nil {
		return err
	}
	if len(s.Layers) == 0 || len(s.Layers) > mostLayers {
		return check.Input("Layers", len(s.Layers), "", fmt.Sprintf("1 to %d of them", mostLayers))
	}
	at := make(map[string]int, len(s.Layers))
	for i, l := range s.Layers {
		place := fmt.Sprintf("Layers[%d]", i)
		if err := l.validate(); err != nil {
			return honestplate.In(place, err)
		}
		if _, twice := at[l.Name]; twice {
			return check.Input(place+".Name", fmt.Sprintf("%q a second time", l.Name), "",
				"a name of its own for every layer")
		}
		at[l.Name] = i
	}
	for i, r := range s.Ratios {
		if err := r.validate(s.Layers, at); err != nil {
			return honestplate.In(fmt.Sprintf("Ratios[%d]", i), err)
		}
	}
	err := cmp.Or(honestplate.NotNegative("TotalMinusGrams", s.TotalMinusGrams, "g"),
		honestplate.NotNegative("TotalPlusGrams", s.TotalPlusGrams, "g"),
		portion.Limits{Guard: s.Guard}.Validate(), dayAt("ValidUntil", s.ValidUntil))
	if err != nil || s.Signed == (Signature{}) {
		return err
	}
	return honestplate.In("Signed", s.Signed.validate())
}

func (l Layer) validate() error {
	if err := textAt("Name", l.Name, true); err != nil {
		return err
	}
	if err := l.Declared.Validate(); err != nil {
		return honestplate.In("Declared", err)
	}
	if l.Basis != "" && l.Basis != Raw && l.Basis != Cooked {
		return check.Input("Basis", fmt.Sprintf("%q", l.Basis), "", "raw, cooked or nothing")
	}
	if l.Yield == (honestplate.Estimate{}) {
		return nil
	}
	if l.Basis == "" {
		return check.Input("Yield", l.Yield.String(), "", "none without a Basis: raw or cooked")
	}
	return cmp.Or(l.Yield.Check("Yield"), honestplate.Positive("Yield.Low", l.Yield.Low, ""),
		honestplate.InRange("Yield.High", l.Yield.High, 0, 10, "",
			"grams cooked for a gram raw: rice takes up three times its mass, nothing ten"))
}

func (r Ratio) validate(layers []Layer, at map[string]int) error {
	for _, n := range []struct{ field, name string }{{"Layer", r.Layer}, {"To", r.To}} {
		i, known := at[n.name]
		if !known || layers[i].Declared.Grams == 0 {
			return check.Input(n.field, fmt.Sprintf("%q", n.name), "", "the name of a layer that declares a mass")
		}
	}
	if r.Layer == r.To {
		return check.Input("To", fmt.Sprintf("%q", r.To), "", "another layer")
	}
	return cmp.Or(honestplate.Positive("Least", r.Least, ""), honestplate.InRange("Most", r.Most, r.Least,
		math.MaxFloat64, "", "the Least of the ratio"))
}

// InForce returns nil if the specification is signed and holds on the day, written
// YYYY-MM-DD; else an [honestplate.InputError] that says what is wrong with the sign-off.
func (s Specification) InForce(day string) error {
	if err := s.Validate(); err != nil {
		return err
	}
	if _, err := time.Parse(time.DateOnly, day); err != nil {
		return dayError("Day", day)
	}
	switch {
	case s.Signed.Name == "" || s.Signed.Date == "":
		return check.Input("Signed", "without a name or a date", "", "the technician who signed it off, and when")
	case day < s.Signed.Date:
		return check.Input("Signed.Date", s.Signed.Date, "", "a day not after "+day)
	case s.ValidUntil != "" && day > s.ValidUntil:
		return check.Input("ValidUntil", s.ValidUntil, "", "a day not before "+day+": ask for the version in force")
	}
	return nil
}
