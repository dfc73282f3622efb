package rheology

import (
	"cmp"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Part is an amount of a liquid in a blend.
type Part struct {
	Liquid Liquid  `json:"liquid"` // what it is
	Grams  float64 `json:"grams"`  // how much, g, 0 or more
}

// maxParts is how many different liquids a Mix can hold: it lets the property
// functions work without allocating.
const maxParts = 32

// A Mix is a blend of liquids, itself a Liquid. Make it with [Blend] or
// [Rule.Blend]; the zero Mix has no parts, and its methods return an InputError.
type Mix struct {
	rule  Rule
	kind  liquidKind
	fat   float64 // % by mass; NaN unless every part is milk or cream
	rate  float64 // shear rate of Viscosity, 1/s; negative if no part thins
	parts []share // in one order, whatever order they were given in
}

type share struct {
	liquid Liquid
	w      float64 // mass fraction
}

// Blend mixes parts by the house rule, log-mixing by mass with its departure,
//
//	ln eta = sum w_i ln eta_i + E
//
// of which [Rule] says where E comes from. All parts are mixed at one shear rate, the largest
// at which the viscosity of one of them is stated. The order of parts does not matter; the same
// liquid given twice is one part, a blend of one liquid is that liquid, and a Mix
// made by the same rule is taken apart into its own parts.
//
// No part, a nil liquid, grams that are negative or not finite, or nothing but
// zeros are an InputError, and so are more than 32 different liquids. That the
// parts go together (oil and water do not) is for the user to know.
func Blend(parts ...Part) (Mix, error) { return Rule{}.Blend(parts...) }

// Blend mixes parts by the rule: see [Blend].
func (rule Rule) Blend(parts ...Part) (Mix, error) {
	if err := rule.check(); err != nil {
		return Mix{}, err
	}
	flat, err := flatten(rule, parts)
	if err != nil {
		return Mix{}, err
	}
	slices.SortFunc(flat, comparePart)
	merged := flat[:0]
	for _, p := range flat {
		i := slices.IndexFunc(merged, func(q Part) bool { return same(p.Liquid, q.Liquid) })
		if i >= 0 {
			merged[i].Grams += p.Grams
		} else {
			merged = append(merged, p)
		}
	}
	slices.SortFunc(merged, comparePart)
	if len(merged) > maxParts {
		return Mix{}, check.Input("Parts", float64(len(merged)), "different liquids", fmt.Sprintf("at most %d", maxParts))
	}
	var total float64
	for _, p := range merged {
		total += p.Grams
	}
	if err := honestplate.Positive("Parts", total, "g"); err != nil {
		return Mix{}, err
	}
	if math.Abs(total-1) < 1e-12 {
		total = 1 // fractions as they come from the wire: to divide would move their last digit
	}
	m := Mix{rule: rule, parts: make([]share, len(merged))}
	for i, p := range merged {
		var n nature
		n.read(p.Liquid)
		m.kind = max(m.kind, n.kind)
		m.parts[i] = share{p.Liquid, p.Grams / total}
		m.fat += p.Grams / total * n.fat
		m.rate = n.commonRate(m.rate, p.Liquid)
	}
	m.rate = cmp.Or(m.rate, -1) // no part thins
	return m, nil
}

// flatten checks the parts, leaves out those of no mass, and takes apart a Mix of
// one liquid or of the same rule.
func flatten(rule Rule, parts []Part) ([]Part, error) {
	if len(parts) == 0 {
		return nil, check.Missing("Parts", "at least one liquid with its grams")
	}
	var flat []Part
	for i, p := range parts {
		field := fmt.Sprintf("Parts[%d]", i)
		if check.IsNil(p.Liquid) {
			return nil, check.Missing(field+".Liquid", "a liquid")
		}
		if err := honestplate.NotNegative(field+".Grams", p.Grams, "g"); err != nil {
			return nil, err
		}
		m, ok := p.Liquid.(Mix)
		switch {
		case ok && len(m.parts) == 0:
			return nil, honestplate.In(field, m.empty())
		case p.Grams == 0:
		case ok && (len(m.parts) == 1 || m.rule == rule):
			for _, s := range m.parts {
				flat = append(flat, Part{s.liquid, p.Grams * s.w})
			}
		default:
			flat = append(flat, p)
		}
	}
	return flat, nil
}

// comparePart gives parts one order, by mass and then by what the liquid is, so
// that sums come out the same to the last bit whatever order they were given in.
func comparePart(a, b Part) int {
	if c := cmp.Compare(a.Grams, b.Grams); c != 0 {
		return c
	}
	return strings.Compare(fmt.Sprintf("%T%#v", a.Liquid, a.Liquid), fmt.Sprintf("%T%#v", b.Liquid, b.Liquid))
}

// same reports whether two liquids are known to be one.
func same(a, b Liquid) bool {
	return reflect.ValueOf(a).Comparable() && reflect.ValueOf(b).Comparable() && a == b
}
