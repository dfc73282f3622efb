package portion

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// A Prior is what is known of a success rate before today's first take: a beta
// distribution with the mean A/(A+B). A - 1 good and B - 1 bad takes are what it is
// worth. The zero value knows nothing: 1 and 1, every rate equally likely.
type Prior struct {
	A float64 `json:"a"` // above 0; both 0 means 1 and 1
	B float64 `json:"b"` // above 0
}

// After returns the prior after a day with so many takes, of which good were fit. Each
// counts weight, 0..1: yesterday's with the same crew, oven and dough perhaps 0.5, last
// year's 0.1, since rates drift. It is a judgement, not a formula. Errors: [honestplate.InputError].
func (p Prior) After(takes, good int, weight float64) (Prior, error) {
	err := cmp.Or(p.check(), checkUnits("Takes", takes, 0))
	switch {
	case err != nil:
		return Prior{}, err
	case good < 0 || good > takes:
		return Prior{}, check.Input("Good", good, "", fmt.Sprintf("0 to the %d Takes", takes))
	case !(weight >= 0 && weight <= 1):
		return Prior{}, check.Input("Weight", weight, "", "0 to 1")
	}
	p = p.orFlat()
	return Prior{p.A + float64(weight*float64(good)), p.B + float64(weight*float64(takes-good))}, nil
}

func (p Prior) orFlat() Prior {
	if p == (Prior{}) {
		return Prior{1, 1}
	}
	return p
}

func (p Prior) check() error {
	if p == (Prior{}) {
		return nil
	}
	const reason = "sharper or flatter than takes can make it"
	return cmp.Or(honestplate.Positive("A", p.A, ""), honestplate.Positive("B", p.B, ""),
		honestplate.InRange("A", p.A, 1e-3, mostUnits, "", reason), honestplate.InRange("B", p.B, 1e-3,
			mostUnits, "", reason))
}
