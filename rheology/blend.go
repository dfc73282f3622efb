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
	Liquid Liquid  // what it is
	Grams  float64 // how much, g, 0 or more
}

// maxParts is how many different liquids a Mix can hold: it lets the property
// functions work without allocating.
const maxParts = 32

// A Mix is a blend of liquids, itself a Liquid. Make it with Blend or a Rule;
// the zero Mix has no parts, and its methods return an InputError.
type Mix struct {
	rule  law
	kind  liquidKind
	fat   float64 // % by mass; NaN unless every part is milk or cream
	shape float64 // its phippsShape
	parts []share // in one order, whatever order they were given in
}

type share struct {
	liquid Liquid
	w      float64 // mass fraction
	fat    float64 // % by mass; NaN unless milk or cream
	shape  float64 // its phippsShape
}

// Blend mixes parts by log-mixing by mass, the house rule LogMass, which says how
// far it can be trusted. The order of parts does not matter; the same
// liquid given twice is one part, a blend of one liquid is that liquid, and a Mix
// made by the same rule is taken apart into its own parts.
//
// No part, a nil liquid, grams that are negative or not finite, or nothing but
// zeros are an InputError, and so are more than 32 different liquids. That the
// parts go together (oil and water do not) is for the user to know.
func Blend(parts ...Part) (Mix, error) { return blend(LogMass, parts) }

func blend(r Rule, parts []Part) (Mix, error) {
	rule, err := lawOf(r)
	if err != nil {
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
		return Mix{}, check.Input("number of liquids", float64(len(merged)), "", fmt.Sprintf("at most %d", maxParts))
	}
	var total float64
	for _, p := range merged {
		total += p.Grams
	}
	if err := honestplate.Positive("total of the parts", total, "g"); err != nil {
		return Mix{}, err
	}
	m := Mix{rule: rule, parts: make([]share, len(merged))}
	for i, p := range merged {
		kind, fat := dairyOf(p.Liquid)
		m.kind = max(m.kind, kind)
		m.parts[i] = share{p.Liquid, p.Grams / total, fat, phippsShape(fat)}
		m.fat += p.Grams / total * fat
		if rule.kind == emulsionLaw && math.IsNaN(fat) && len(merged) > 1 {
			return Mix{}, check.Input("fat of "+p.Liquid.Describe().Name, fat, "%", "milk or cream in every part, for the emulsion rule")
		}
	}
	m.shape = phippsShape(m.fat)
	return m, nil
}

// flatten checks the parts, leaves out those of no mass, and takes apart a Mix of
// one liquid or of the same rule.
func flatten(rule law, parts []Part) ([]Part, error) {
	if len(parts) == 0 {
		return nil, check.Input("number of parts", 0, "", "at least 1")
	}
	var flat []Part
	for _, p := range parts {
		if p.Liquid == nil {
			return nil, check.Missing("liquid of a part", "a liquid, not nil")
		}
		if err := honestplate.NotNegative("mass of a part", p.Grams, "g"); err != nil {
			return nil, err
		}
		m, ok := p.Liquid.(Mix)
		switch {
		case ok && len(m.parts) == 0:
			return nil, check.Input("number of parts of a mix", 0, "", "at least 1")
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

// Parts returns the parts of the mix as mass fractions of one gram.
func (m Mix) Parts() []Part {
	out := make([]Part, len(m.parts))
	for i, s := range m.parts {
		out[i] = Part{s.liquid, s.w}
	}
	return out
}

// FatPercent returns the fat of a mix in % by mass, if every part is milk or cream.
func (m Mix) FatPercent() (percent float64, known bool) {
	if len(m.parts) == 0 || math.IsNaN(m.fat) {
		return 0, false
	}
	return m.fat, true
}
