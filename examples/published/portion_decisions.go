package published

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
	"example.org/honestplate/testdata"
)

var portionDecisions = []Check{
	{
		Table: "conformity_examples", Package: "portion", Quantity: "verdict, probability of conformity", Unit: "as the row says", Claim: "half the last printed digit",
		Points: conformity,
	},
	{
		Table: "guard_bands", Package: "portion", Quantity: "risk at the acceptance limit", Unit: "%", Claim: "half the last printed digit; published bounds as bounds",
		Points: guardBands,
	},
	{
		Table: "layer_decisions", Package: "portion", Quantity: "verdict, probability, capability", Unit: "1", Claim: "equal; half the last digit",
		Points: layerDecisions,
	},
	{
		Table: "cumulative_weighings", Package: "portion", Quantity: "standard uncertainty", Unit: "g", Claim: "half the last printed digit",
		Points: cumulativeWeighings,
	},
	{
		Table: "sha256_vectors", Package: "portion", Quantity: "SHA-256 of a file, 1 where it is the published one", Unit: "1", Claim: "equal",
		Points: fileSums,
	},
	{
		Table: "picture_actions", Package: "portion", Quantity: "action, 1 where a record takes it", Unit: "1", Claim: "equal",
		Points: pictureActions,
	},
	{
		Table: "picture_source_terms", Package: "portion", Quantity: "term, 1 where a record takes it, 2 where it says that a model had a part", Unit: "1", Claim: "equal",
		Points: pictureTerms,
	},
}

// verdict makes a number of a verdict, so that it is a point like others.
func verdict(v portion.Verdict) float64 {
	return map[portion.Verdict]float64{portion.Differs: 1, portion.CannotTell: 2, portion.Agrees: 3}[v]
}

// openLimits reads the limits of a row; an empty field is no limit.
func openLimits(r testdata.Row) (portion.Limits, error) {
	var l portion.Limits
	for column, limit := range map[string]*honestplate.Optional{"low": &l.Low, "high": &l.High} {
		if r.Text(column) == "" {
			continue
		}
		v, err := r.Float(column)
		if err != nil {
			return l, err
		}
		*limit = honestplate.Some(v)
	}
	return l, nil
}

func conformity(r testdata.Row) ([]Point, error) {
	label := r.Text("example") + ": " + r.Text("quantity")
	l, err := openLimits(r)
	if err != nil {
		return nil, err
	}
	probability := func(value, u float64) float64 {
		d, _ := l.Decide(value, u) // 0 where it refuses: outside every band
		return d.Probability
	}
	switch example := r.Text("example"); {
	case example == "JCGM106 table 1":
		z, err := r.Float("published")
		if err != nil {
			return nil, err
		}
		var p float64
		if _, err := fmt.Sscanf(r.Text("quantity"), "least z for conformance probability %g,", &p); err != nil {
			return nil, err
		}
		l = portion.Limits{Low: honestplate.Some(0)}
		low, high := 0.0, 10.0
		for range 60 {
			if m := (low + high) / 2; probability(m, 1) < p {
				low = m
			} else {
				high = m
			}
		}
		return []Point{Near(label, z, low, 0.005)}, nil
	case strings.HasPrefix(example, "JCGM106 7"), example == "specific risk":
		v, err := numbers(r, "estimate", "standard")
		if err != nil {
			return nil, err
		}
		text := r.Text("published")
		if i := strings.Index(text, "pc = "); i >= 0 {
			text = text[i+len("pc = "):]
		}
		want, err := strconv.ParseFloat(strings.Fields(text)[0], 64)
		if err != nil {
			return nil, err
		}
		if example == "specific risk" {
			return []Point{Near(label, want, 1-probability(v[0], v[1]), 0.5e-5)}, nil
		}
		return []Point{Near(label, want, probability(v[0], v[1]), 0.005)}, nil
	case strings.HasPrefix(example, "JCGM106 8"):
		v := 100.0
		for probability(v, 0.02*v) > 0.001 {
			v++
		}
		return []Point{Same(label, 107, v)}, nil
	case strings.HasPrefix(example, "JCGM106 9") && r.Text("quantity") == "process share inside the limits":
		return []Point{Near(label, 0.90, probability(1500, 0.12), 0.005)}, nil
	case strings.HasPrefix(example, "three outcomes"), strings.HasPrefix(example, "length gauge"):
		v, err := numbers(r, "estimate", "standard")
		if err != nil {
			return nil, err
		}
		d, err := l.Decide(v[0], v[1])
		outcome, _, _ := strings.Cut(r.Text("outcome"), " (")
		return []Point{Same(label+" "+r.Text("estimate"), verdict(portion.Verdict(outcome)), verdict(d.Verdict))}, err
	case strings.HasPrefix(example, "10 with limits"):
		var w, low, high float64
		if _, err := fmt.Sscanf(r.Text("quantity"), "acceptance limits with w = %g U", &w); err != nil {
			return nil, err
		}
		if _, err := fmt.Sscanf(r.Text("published"), "%g to %g", &low, &high); err != nil {
			return nil, err
		}
		l.Guard = honestplate.Some(w)
		accept, err := l.Accept(0.1)
		return []Point{Near(label+", low", low, accept.Low.Value, 0.5e-3), Near(label+", high", high, accept.High.Value, 0.5e-3)}, err
	case strings.HasPrefix(example, "resistor"):
		return []Point{Skip(label, "a guard band of a fifth of the tolerance, without an uncertainty")}, nil
	}
	return []Point{Skip(label, "a risk over a production whose spread is known: no studio knows it")}, nil
}

func guardBands(r testdata.Row) ([]Point, error) {
	rule := r.Text("rule")
	if strings.HasPrefix(rule, "rectangular") {
		return []Point{Skip(rule, "the limits of this package know normal distributions")}, nil
	}
	if strings.HasPrefix(rule, "one-sided ") && r.Text("guard") == "" {
		return []Point{Skip(rule, "Student's factor: what a scale leaves open is not judged from a few readings")}, nil
	}
	v, err := numbers(r, "guard", "risk_percent")
	if err != nil {
		return nil, err
	}
	if v[0] < 0 {
		return []Point{Skip(rule, "a guard band below none lets a scale agree that cannot know: refused")}, nil
	}
	l := portion.Limits{Low: honestplate.Some(0), Guard: honestplate.Some(v[0])}
	accept, err := l.Accept(1)
	if err != nil {
		return nil, err
	}
	at, err := l.Decide(accept.Low.Value, 1)
	if err != nil {
		return nil, err
	}
	risk := 100 * (1 - at.Probability)
	// The guard band is printed with two to four digits: the risk follows.
	points := []Point{Near(rule, v[1], risk, 0.006)}
	if text, ok := strings.CutPrefix(r.Text("published"), "below "); ok && strings.HasSuffix(text, " %") {
		bound, err := strconv.ParseFloat(strings.TrimSuffix(text, " %"), 64)
		if err != nil {
			return nil, err
		}
		if v[0] > 0 {
			points = append(points, Point{Label: rule + ", bound", Published: bound, Predicted: risk, Low: risk, High: math.Inf(1)})
		}
	}
	return points, nil
}

func layerDecisions(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "target_g", "minus_g", "plus_g", "weighed_g", "u_g", "probability", "capability")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s, %g g with %g g", r.Text("part"), v[3], v[4])
	l := portion.Limits{Low: honestplate.Some(v[0] - v[1]), High: honestplate.Some(v[0] + v[2])}
	d, err := l.Decide(v[3], v[4])
	if err != nil {
		return nil, err
	}
	capability, err := l.Capability(v[4])
	if err != nil {
		return nil, err
	}
	sure := portion.CannotTell
	if d.Probability >= 0.95 {
		sure = portion.Agrees
	} else if d.Probability <= 0.05 {
		sure = portion.Differs
	}
	return []Point{
		Same(label, verdict(portion.Verdict(r.Text("outcome"))), verdict(d.Verdict)),
		Near(label+", probability", v[5], d.Probability, 0.51e-6),
		Same(label+", 95 and 5 %", verdict(portion.Verdict(r.Text("outcome_95_5"))), verdict(sure)),
		Near(label+", Cm", v[6], capability, 0.51e-3),
	}, nil
}

func cumulativeWeighings(r testdata.Row) ([]Point, error) {
	label := fmt.Sprintf("%s, %s, d %s g, s %s g, %s", r.Text("build"), r.Text("mode"), r.Text("step_g"), r.Text("repeat_g"), r.Text("relative"))
	if r.Text("mode") == "separate loads" {
		return []Point{Skip(label, "one rounding a load; a Build has the zero as a reading of its own")}, nil
	}
	masses, err := r.Floats("layers_g")
	if err != nil {
		return nil, err
	}
	standards, err := r.Floats("layer_standard_g")
	if err != nil {
		return nil, err
	}
	v, err := numbers(r, "step_g", "repeat_g", "relative", "total_standard_g")
	if err != nil {
		return nil, err
	}
	const weight = 1000
	b := record.Build{Tared: r.Text("mode") == "tare each", Scale: portion.Scale{StepGrams: v[0], Repeat: v[1],
		Check: portion.CheckWeight{Grams: weight, Reading: weight, Standard: max(v[2]*weight, 1e-9)}}}
	var s record.Specification
	s.Product, s.Version = "build", "1"
	total := 0.0
	for i, m := range masses {
		total += m
		reading := total
		if b.Tared {
			reading = m
		}
		b.Layers = append(b.Layers, record.Placed{Reading: reading})
		s.Layers = append(s.Layers, record.Layer{Name: strconv.Itoa(i), Declared: portion.Amount{Grams: m, StepGrams: 0.1}})
	}
	found, err := s.Check(b)
	if err != nil {
		return nil, err
	}
	points := []Point{Near(label+", total", v[3], found.Total.Standard, 0.51e-4)}
	for i, f := range found.Layers {
		points = append(points, Near(fmt.Sprintf("%s, layer %d", label, i+1), standards[i], f.Standard, 0.51e-4))
	}
	return points, nil
}

func fileSums(r testdata.Row) ([]Point, error) {
	message, err := decodeHex(r.Text("message_hex"))
	if err != nil {
		return nil, err
	}
	times, err := strconv.Atoi(r.Text("times"))
	if err != nil {
		return nil, err
	}
	got, err := record.FileSHA256(strings.NewReader(strings.Repeat(message, times)))
	same := 0.0
	if got == r.Text("sha256") {
		same = 1
	}
	return []Point{Same(r.Text("case"), 1, same)}, err
}

// aRecord returns a record that would be valid without what the check adds.
func aRecord() record.Record {
	return record.Record{Revision: 1, Picture: "x", Items: []record.Item{{Item: "y"}}}
}

func pictureActions(r testdata.Row) ([]Point, error) {
	good, want, got := aRecord(), 1.0, 0.0
	good.Edits = []record.Edit{{Action: r.Text("action"), SourceType: "digitalCapture"}}
	if good.Validate() == nil {
		got = 1
	}
	if r.Text("kind_of_action") == "deprecated" {
		want = 0
	}
	return []Point{Same(r.Text("action"), want, got)}, nil
}

func pictureTerms(r testdata.Row) ([]Point, error) {
	record, want, got := aRecord(), 1.0, 0.0
	record.SourceType = r.Text("term")
	if record.Validate() == nil {
		got = 1
		if strings.Contains(record.Statement(), "generative") {
			got = 2
		}
	}
	switch {
	case r.Text("status") == "retired":
		want = 0
	case strings.HasPrefix(r.Text("generative_model"), "yes"):
		want = 2
	}
	return []Point{Same(r.Text("term"), want, got)}, nil
}
