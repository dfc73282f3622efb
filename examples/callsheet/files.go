package main

import (
	"bytes"
	"encoding/json"

	"example.org/honestplate/portion"
)

// Files makes what -out writes, by file name.
func (p *Plan) Files(sheet *Sheet) (map[string][]byte, error) {
	var page bytes.Buffer
	if err := sheet.WriteMarkdown(&page); err != nil {
		return nil, err
	}
	record, err := json.MarshalIndent(p.Records(), "", "  ")
	if err != nil {
		return nil, err
	}
	files := map[string][]byte{
		"callsheet.md": page.Bytes(),
		"timeline.svg": timelineSVG(p.Shots),
		"record.json":  append(record, '\n'),
	}
	for i := range p.Shots {
		files[p.Shots[i].layoutName(i)] = p.Shots[i].Layout
	}
	return files, nil
}

// Records are the records to complete, one a picture, in the order of the shots:
// what is declared and planned is filled in, what is weighed and signed is not.
func (p *Plan) Records() []portion.Record {
	var out []portion.Record
	for i := range p.Shots {
		s := &p.Shots[i]
		r := portion.Record{Revision: 1, Picture: s.Dish.Name, Date: p.Call.Format("2006-01-02"), Cautions: s.Cautions}
		for j := range s.Dish.Frame {
			it := &s.Dish.Frame[j]
			amount := portion.Amount{Grams: it.Grams, StepGrams: it.StepGrams, Count: it.Count}
			item := portion.RecordItem{Item: it.Item, Advertised: it.Advertised, Declared: amount, How: s.Planned[it.Item]}
			if it.Advertised {
				item.Planned = &amount
			}
			if it.StandIn != "" {
				item.StandIn = &portion.StandIn{What: it.StandIn, Reason: it.Why}
			}
			r.Items = append(r.Items, item)
		}
		out = append(out, r)
	}
	return out
}
