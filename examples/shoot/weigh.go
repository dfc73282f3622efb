package shoot

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

// A Weight is what a thing of a unit weighed, held against what is declared of it.
type Weight struct {
	Thing    string  `json:"thing"`
	Unit     int     `json:"unit"`
	Grams    float64 `json:"grams"`
	Declared float64 `json:"declared_grams"`
	// Verdict is Differs where the scale is sure that it is not what is declared; it cannot
	// agree where no tolerance is stated.
	Verdict portion.Verdict `json:"verdict"`
}

// weigh holds what was weighed of a dish against what it declares; of several readings of
// one thing of one unit the last counts. What differs is told: it is not put right by
// preparing more.
func (d *day) weigh(j *job) error {
	type key struct {
		thing string
		unit  int
	}
	at := map[key]int{}
	s := &j.shot
	for i, w := range d.facts.Weights {
		if w.Dish != j.dish.Name {
			continue
		}
		t := j.dish.thing(w.Thing)
		if !t.Advertised || t.Grams == 0 {
			continue // nobody is promised any
		}
		weighing, err := d.scale().Weigh(w.Grams)
		if err != nil {
			return &honestplate.InputError{Field: fmt.Sprintf("facts.weights[%d].grams", i), Got: fmt.Sprint(w.Grams), Want: fmt.Sprintf("at most %g, what the scale of the brief weighs", d.scale().MaxGrams)}
		}
		amount := portion.Amount{Grams: t.Grams, StepGrams: d.step()}
		if p := t.Pieces; p != nil {
			amount.PlusGrams = p.ToleranceGrams
			if !p.NeverBelow {
				amount.MinusGrams = min(p.ToleranceGrams, t.Grams)
			}
		}
		f, err := amount.Judge(&weighing, 0, honestplate.Optional{})
		if err != nil {
			return in(fmt.Sprintf("facts.weights[%d]", i), err)
		}
		k, found := at[key{w.Thing, w.Unit}]
		if !found {
			k = len(s.Weights)
			at[key{w.Thing, w.Unit}] = k
			s.Weights = append(s.Weights, Weight{})
		}
		s.Weights[k] = Weight{Thing: w.Thing, Unit: w.Unit, Grams: w.Grams, Declared: t.Grams, Verdict: f.Verdict}
	}
	for _, w := range s.Weights {
		if w.Verdict == portion.Differs {
			s.Notes = append(s.Notes, Note{Code: WeightOff, Thing: w.Thing, Value: honestplate.Some(w.Grams), Second: honestplate.Some(w.Declared), Text: fmt.Sprint(w.Unit)})
		}
	}
	return nil
}
