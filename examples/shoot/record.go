package shoot

import (
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

// Records are the records to fill in, one a picture, in the order of the shots: what is
// declared and planned stands in them, what is weighed, taken and signed does not. Names
// are written on one line, without controls: a record refuses others.
func (p *Plan) Records() []record.Record {
	out := make([]record.Record, len(p.Shots))
	for i := range p.Shots {
		s := &p.Shots[i]
		r := record.Record{Revision: 1, Picture: honestplate.OneLine(s.Dish), SourceType: "digitalCapture"}
		if !s.At.IsZero() {
			r.Date = s.At.Format(time.DateOnly)
		}
		for _, c := range s.Cautions {
			r.Cautions = append(r.Cautions, string(c))
		}
		for k := range s.Things {
			r.Items = append(r.Items, s.Things[k].recordItem(s.Editorial))
		}
		for k := range s.Things {
			if b := s.Things[k].Build; b != nil {
				r.Specification = &record.SpecificationRef{Product: b.Product, Version: b.Version, SHA256: b.Hash, SignedBy: b.SignedBy, ValidUntil: b.ValidUntil}
			}
		}
		out[i] = r
	}
	return out
}

// recordItem is what the record says of a thing before the picture. Of an editorial
// picture nothing is sold, and the record says so of every item.
func (t *PlannedThing) recordItem(editorial bool) record.Item {
	amount := portion.Amount{Grams: t.Grams, Count: t.Count}
	if t.Grams > 0 {
		amount.StepGrams = t.StepGrams
	}
	item := record.Item{Item: honestplate.OneLine(t.Name), Advertised: t.Advertised}
	if t.Advertised {
		item.Declared = amount
		item.Planned = &amount
	} else if amount != (portion.Amount{}) {
		item.Planned = &amount
	}
	if t.StandIn != "" {
		item.StandIn = &record.StandIn{What: honestplate.OneLine(t.StandIn), Reason: honestplate.OneLine(t.Why)}
	}
	if editorial {
		item.How = "no product is shown: editorial"
	}
	if t.Cheese != nil {
		item.Favour = t.Cheese.Favour
	}
	return item
}
