package published

import (
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"

	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

var portionTakes = []Check{
	{
		Table: "hero_units_with_prior", Package: "portion", Quantity: "units, chance", Unit: "units or 1", Claim: "equal; half the last digit",
		Points: unitsWithPrior,
	},
	{
		Table: "correlated_takes", Package: "portion", Quantity: "chance", Unit: "1", Claim: "half the last printed digit",
		Points: correlatedTakes,
	},
	{
		Table: "batches_of_takes", Package: "portion", Quantity: "chance", Unit: "1", Claim: "half the last printed digit",
		Points: batchesOfTakes,
	},
	{
		Table: "stopping_rule", Package: "portion", Quantity: "value, takes, heroes, chance, when to stop", Unit: "as named", Claim: "half the last printed digit; equal",
		Points: stoppingRule,
	},
	{
		Table: "prior_and_prediction", Package: "portion", Quantity: "rate, chance, number", Unit: "1", Claim: "half the last printed digit",
		Points: priorAndPrediction,
	},
}

func decodeHex(text string) (string, error) {
	b, err := hex.DecodeString(text)
	return string(b), err
}

func unitsWithPrior(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "prior_a", "prior_b", "wanted", "confidence", "units", "chance", "units_rate_known")
	if err != nil {
		return nil, err
	}
	h := portion.Heroes{Prior: portion.Prior{A: v[0], B: v[1]}, Wanted: int(v[2]), Confidence: v[3]}
	label := fmt.Sprintf("%s, %g at %g", r.Text("history"), v[2], v[3])
	units, err := h.Units()
	if err != nil {
		return nil, err
	}
	chance, err := h.Chance(int(v[4]))
	if err != nil {
		return nil, err
	}
	known, err := portion.Heroes{SuccessRate: v[0] / (v[0] + v[1]), Wanted: int(v[2]), Confidence: v[3]}.Units()
	return []Point{Same(label, v[4], float64(units)), Near(label+", chance", v[5], chance, 0.51e-6),
		Same(label+", rate known", v[6], float64(known))}, err
}

func correlatedTakes(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "rate", "correlation", "units", "at_least", "chance")
	if err != nil {
		return nil, err
	}
	got, err := portion.Heroes{SuccessRate: v[0], Correlation: v[1], Wanted: int(v[3])}.Chance(int(v[2]))
	return []Point{Near(fmt.Sprintf("p %g, rho %g, %g of %g", v[0], v[1], v[3], v[2]), v[4], got, 0.51e-6)}, err
}

func batchesOfTakes(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "rate", "correlation", "at_least", "chance")
	if err != nil {
		return nil, err
	}
	sizes, err := r.Floats("batches")
	if err != nil {
		return nil, err
	}
	n := 0.0
	for _, size := range sizes {
		if size != sizes[0] {
			return []Point{Skip(r.Text("batches"), "batches of several sizes")}, nil
		}
		n += size
	}
	got, err := portion.Heroes{SuccessRate: v[0], Correlation: v[1], Batch: int(sizes[0]), Wanted: int(v[2])}.Chance(int(n))
	return []Point{Near(fmt.Sprintf("p %g, rho %g, %g of %s", v[0], v[1], v[2], r.Text("batches")), v[3], got, 0.51e-6)}, err
}

func stoppingRule(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "prior_a", "prior_b", "takes", "wanted", "value", "cost", "optimal_value", "expected_takes", "expected_heroes", "chance")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("beta(%g, %g), %g takes, %g wanted, worth %g, cost %g", v[0], v[1], v[2], v[3], v[4], v[5])
	got, err := portion.Heroes{Prior: portion.Prior{A: v[0], B: v[1]}, Wanted: int(v[3])}.Stop(int(v[2]), v[4], v[5])
	if err != nil {
		return nil, err
	}
	points := []Point{
		Near(label+", value", v[6], got.Value, 0.51e-8), Near(label+", takes", v[7], got.Takes, 0.51e-6),
		Near(label+", heroes", v[8], got.Heroes, 0.51e-6), Near(label+", chance", v[9], got.Chance, 0.51e-6),
	}
	for n, text := range strings.Fields(r.Text("stop")) {
		want := -1
		if text != "-" {
			if want, err = strconv.Atoi(text); err != nil {
				return nil, err
			}
		}
		points = append(points, Same(fmt.Sprintf("%s, stop after %d", label, n), float64(want)+2, float64(got.StopAt[n])+2))
	}
	return points, nil
}

func priorAndPrediction(r testdata.Row) ([]Point, error) {
	quantity, parameters, data := r.Text("quantity"), r.Text("parameters"), r.Text("data")
	label := quantity + ", " + parameters + " " + data
	published, err := strconv.ParseFloat(strings.Fields(r.Text("published"))[0], 64)
	if err != nil {
		return []Point{Skip(label, "several numbers in one field")}, nil
	}
	var h portion.Heroes
	var x, n, at int
	switch {
	case strings.Contains(label, "mixture"):
		return []Point{Skip(label, "a prior here is one beta distribution")}, nil
	case quantity == "posterior P(p > 0.6)":
		// The rate that is reached with the published probability is 0.6.
		if _, err := fmt.Sscanf(data, "%d of %d", &x, &n); err != nil {
			return nil, err
		}
		got, err := portion.Heroes{Prior: portion.Prior{A: 0.6, B: 0.4}, Takes: n, Good: x, Confidence: published}.LowestRate()
		return []Point{Near(label, 0.6, got, 4e-6)}, err // 1e-10 of 1 loses digits
	case strings.HasPrefix(quantity, "predictive probability of success"):
		got, err := predicted(portion.Prior{A: 0.6, B: 0.4}, 16, 23, 40, 0.6, 0.9)
		return []Point{Near(label, published, got, 0.51e-7)}, err
	case strings.HasPrefix(quantity, "stop for "), strings.HasPrefix(quantity, "enough: "), strings.HasPrefix(quantity, "stop: "):
		if _, err := fmt.Sscanf(data, "look %d", &at); err != nil {
			return nil, err
		}
		got, err := bound(quantity, at)
		return []Point{Same(label, published+1, float64(got)+1)}, err
	case strings.HasPrefix(quantity, "beta-binomial P(Y = 2)"):
		h.Prior = portion.Prior{A: 0.2, B: 0.4}
		got, err := exactly(h, 2, 29)
		return []Point{Near(label, published, got, 0.51e-8)}, err
	case quantity == "negative binomial" && strings.Contains(parameters, "strike at trial"):
		k := map[string]int{"first": 1, "third": 3}[strings.Fields(parameters)[0]]
		if _, err := fmt.Sscanf(parameters[strings.Index(parameters, "trial "):], "trial %d, p %g", &n, &h.SuccessRate); err != nil {
			return nil, err
		}
		h.Wanted = k
		by, err := h.Chance(n)
		if err != nil {
			return nil, err
		}
		before, err := h.Chance(n - 1)
		if strings.Contains(parameters, "p 0.25") && k == 3 {
			return []Point{Skip(label, "printed wrong: see the note")}, err
		}
		return []Point{Near(label, published, by-before, 0.0005)}, err
	case quantity == "families of 12, binomial probability":
		if _, err := fmt.Sscanf(parameters, "x = %d", &x); err != nil {
			return nil, err
		}
		counts, children, boys := []int{3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7}, 0, 0
		for k, c := range counts {
			children += 12 * c
			boys += k * c
		}
		h.SuccessRate = float64(boys) / float64(children)
		got, err := exactly(h, x, 12)
		return []Point{Near(label, published, got, 1e-4)}, err
	}
	return []Point{Skip(label, "an estimate or a variance, not a plan")}, nil
}

// exactly returns the chance of just x fit units among n.
func exactly(h portion.Heroes, x, n int) (float64, error) {
	h.Wanted = x + 1
	more, err := h.Chance(n)
	if err != nil || x == 0 {
		return 1 - more, err
	}
	h.Wanted = x
	enough, err := h.Chance(n)
	return enough - more, err
}

// predicted returns the chance that after all takes the rate exceeds least with at
// least the probability sure, given good of so many.
func predicted(prior portion.Prior, good, takes, all int, least, sure float64) (float64, error) {
	for r := 0; r <= all; r++ {
		low, err := portion.Heroes{Prior: prior, Takes: all, Good: r, Confidence: sure}.LowestRate()
		if err != nil {
			return 0, err
		}
		if low < least {
			continue
		}
		if r <= good {
			return 1, nil
		}
		return portion.Heroes{Prior: prior, Takes: takes, Good: good, Wanted: r - good}.Chance(all - takes)
	}
	return 0, nil
}

// bound returns the number of good takes at which a published rule stops.
func bound(rule string, takes int) (int, error) {
	flat, last := portion.Prior{A: 1, B: 1}, -1
	for x := 0; x <= takes; x++ {
		var holds, least bool
		var p float64
		var err error
		switch {
		case strings.HasPrefix(rule, "stop for too few"):
			p, err = predicted(flat, x, takes, 40, 0.2, 0.8)
			holds = p <= 0.10
		case strings.HasPrefix(rule, "stop for enough"):
			p, err = predicted(flat, x, takes, 40, 0.2, 0.8)
			holds, least = p >= 0.90, true
		case strings.HasPrefix(rule, "enough"):
			p, err = portion.Heroes{Takes: takes, Good: x, Confidence: 0.60}.LowestRate()
			holds, least = p >= 0.20, true
		default:
			p, err = portion.Heroes{Takes: takes, Good: x, Confidence: 0.30}.LowestRate()
			holds = p <= 0.15
		}
		if err != nil {
			return 0, err
		}
		if holds && least {
			return x, nil
		}
		if holds {
			last = x
		}
	}
	return last, nil
}
