package pour

import (
	"encoding/json"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
)

// A question is what was asked for a Pour: it answers the same again.
type question struct {
	spout  Spout
	lip    Lip
	liquid rheology.Liquid
}

type pourWire struct {
	Spout    *Spout               `json:"spout,omitempty"`
	Lip      *Lip                 `json:"lip,omitempty"`
	Of       rheology.Part        `json:"of"`
	TempC    float64              `json:"temp_c"`
	Duration honestplate.Window   `json:"duration"`
	Rate     honestplate.Estimate `json:"rate_m3_per_s"`
	Left     honestplate.Estimate `json:"left_grams"`
}

// MarshalJSON writes what was asked, the outlet with the liquid and its grams, and for who
// reads it the duration, the rate and what stays behind.
func (p Pour) MarshalJSON() ([]byte, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	w := pourWire{
		Of: rheology.Part{Liquid: p.asked.liquid, Grams: p.Grams}, TempC: p.out.tempC,
		Duration: p.Duration, Rate: p.Rate, Left: p.LeftGrams,
	}
	if p.asked.lip != (Lip{}) {
		w.Lip = &p.asked.lip
	} else {
		w.Spout = &p.asked.spout
	}
	return json.Marshal(w)
}

// UnmarshalJSON asks again what MarshalJSON wrote, and so gets the same answer.
func (p *Pour) UnmarshalJSON(b []byte) (err error) {
	var w pourWire
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	var again Pour
	switch {
	case w.Lip != nil && w.Spout == nil:
		again, err = w.Lip.Pour(w.Of.Liquid, w.TempC, w.Of.Grams)
	case w.Spout != nil && w.Lip == nil:
		again, err = w.Spout.Pour(w.Of.Liquid, w.TempC, w.Of.Grams)
	default:
		err = check.Missing("spout", "a spout or a lip, and not both")
	}
	if err != nil {
		return err
	}
	*p = again
	return nil
}
