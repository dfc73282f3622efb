package record

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
)

// A Item is one item of the picture.
type Item struct {
	Item       string          `json:"item"`                // what it is; not empty
	Advertised bool            `json:"advertised,omitzero"` // the advertised product
	Declared   portion.Amount  `json:"declared,omitzero"`   // what its buyer is promised; empty for what only dresses the picture
	Planned    *portion.Amount `json:"planned,omitzero"`    // what was to be shown; nil if no plan was made
	Weighed    *Weighed        `json:"weighed,omitzero"`    // what was shown; nil until it is weighed
	StandIn    *StandIn        `json:"stand_in,omitzero"`   // nil if the item itself is in the picture
	// Favour is how far it was arranged towards the camera, as [example.org/honestplate/portion/plate.Strips] has it, 0..0.9.
	// An arrangement can mislead although the total is true.
	Favour float64 `json:"favour,omitzero"`
	How    string  `json:"how,omitzero"` // how it was placed or prepared
}

// A Weighed amount is what the scale and the eye found.
type Weighed struct {
	Grams      float64 `json:"grams,omitzero"`       // g; 0 if only counted
	ErrorGrams float64 `json:"error_grams,omitzero"` // expanded uncertainty (k = 2), g; 0 if not stated
	LeastGrams float64 `json:"least_grams,omitzero"` // least load of the scale, g; 0 if not stated
	Count      int     `json:"count,omitzero"`       // pieces; 0 if only weighed
	Scale      string  `json:"scale,omitzero"`       // which scale, its class, its check weight
	Basis      Basis   `json:"basis,omitzero"`       // the state in which it was weighed, if that matters
}

// declaration returns what the item declares, for Share, Allows and the rest.
func (i Item) declaration() portion.Declaration {
	return portion.Declaration{Item: i.Item, Grams: i.Declared.Grams, StepGrams: i.Declared.StepGrams,
		MinusGrams: i.Declared.MinusGrams, PlusGrams: i.Declared.PlusGrams, Count: i.Declared.Count, Advertised: i.Advertised}
}

// Verdict returns what was weighed and counted against what is declared: the finding
// whose verdict stands in the JSON and whose reason stands in the statement. It has no
// verdict where nothing is declared or nothing was weighed. Errors: those of Validate.
func (i Item) Verdict() (portion.Finding, error) {
	if err := i.validate(); err != nil || i.Weighed == nil || i.Declared == (portion.Amount{}) {
		return portion.Finding{Name: i.Item}, err
	}
	var w *portion.Weighing
	if i.Weighed.Grams > 0 {
		w = &portion.Weighing{Grams: i.Weighed.Grams, Standard: i.Weighed.ErrorGrams / 2, LeastGrams: i.Weighed.LeastGrams}
	}
	f, err := i.Declared.Judge(w, i.Weighed.Count, honestplate.Optional{})
	f.Name = i.Item
	return f, err
}

func (i Item) validate() error {
	if err := textAt("Item", i.Item, true); err != nil {
		return err
	}
	// What only dresses the picture need not be declared: nobody is promised any.
	if i.Advertised || i.Declared != (portion.Amount{}) {
		if err := i.Declared.Validate(); err != nil {
			return honestplate.In("Declared", err)
		}
	}
	d := i.declaration()
	if i.StandIn != nil {
		err := cmp.Or(check.Rename(d.Allows(portion.Replace), "Advertised", ""), textAt("What", i.StandIn.What, true), textAt("Reason",
			i.StandIn.Reason, true))
		if err != nil {
			return honestplate.In("StandIn", err)
		}
	}
	if p := i.Planned; p != nil {
		act := ""
		switch {
		case p.Grams > d.Grams || p.Count > d.Count:
			act = portion.Exceed
		case p.Grams < d.Grams || p.Count < d.Count:
			act = portion.Reduce
		}
		err := p.Validate()
		if act != "" {
			err = cmp.Or(err, check.Rename(d.Allows(act), "Advertised", ""))
		}
		if err != nil {
			return honestplate.In("Planned", err)
		}
	}
	if w := i.Weighed; w != nil {
		if err := w.validate(); err != nil {
			return honestplate.In("Weighed", err)
		}
	}
	return cmp.Or(honestplate.InRange("Favour", i.Favour, 0, 0.9, "", "the favour that Strips can lay"),
		textAt("How", i.How, false))
}

func (w Weighed) validate() error {
	err := cmp.Or(honestplate.NotNegative("Grams", w.Grams, "g"), honestplate.NotNegative("ErrorGrams",
		w.ErrorGrams, "g"),
		honestplate.NotNegative("LeastGrams", w.LeastGrams, "g"), textAt("Scale", w.Scale, false))
	switch {
	case err != nil:
		return err
	case w.Count < 0:
		return check.Input("Count", w.Count, "", "0 or more")
	case w.Grams == 0 && w.Count == 0:
		return check.Input("Grams", "0 g, and no pieces", "", "what was weighed or counted, or no Weighed at all")
	case w.Basis != "" && w.Basis != Raw && w.Basis != Cooked:
		return check.Input("Basis", fmt.Sprintf("%q", w.Basis), "", "raw, cooked or nothing")
	}
	return nil
}
