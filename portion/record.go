package portion

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// RecordSchema names the schema of a Record's JSON and its version. A reader
// refuses any other.
//
// The JSON is one object; names are exact, unknown and repeated ones are refused,
// and fields marked ? may be absent:
//
//	schema    "honestplate/record/1"
//	picture   what the picture is, text
//	date?     day of the picture, YYYY-MM-DD
//	items     at least one of:
//	    item        what it is, text
//	    advertised? true for the advertised product
//	    declared    {grams?, step_grams?, count?}: a mass in whole steps, a count or both
//	    planned?    the same shape: what was to be shown
//	    weighed?    {grams?, error_grams?, count?, scale?}: what was shown
//	    stand_in?   {what, reason}: what was shown in the item's place, and why
//	    how?        how it was placed or prepared, text
//	cautions? list of texts
//	signed?   list of {name, role?, date?}
const RecordSchema = "honestplate/record/1"

// A Record says, after the picture, how it was made: for every item what was
// declared, planned and weighed, what stood in for what and why, and who signs.
// An advertised item has no stand-in and is planned as declared; what was weighed
// is a fact and is recorded as it was.
//
// It documents; whether a picture may be used is for local advertising and
// weights-and-measures law.
type Record struct {
	Picture  string       `json:"picture"`           // what the picture is; not empty
	Date     string       `json:"date,omitzero"`     // day of the picture, YYYY-MM-DD, or empty
	Items    []RecordItem `json:"items"`             // at least one, up to 10 000
	Cautions []string     `json:"cautions,omitzero"` // what whoever uses the picture must know
	Signed   []Signature  `json:"signed,omitzero"`   // who answers for the record
}

// A RecordItem is one item of the picture.
type RecordItem struct {
	Item       string   `json:"item"`                // what it is; not empty
	Advertised bool     `json:"advertised,omitzero"` // the advertised product
	Declared   Amount   `json:"declared,omitzero"`   // what its buyer is promised; empty for what only dresses the picture
	Planned    *Amount  `json:"planned,omitzero"`    // what was to be shown; nil if no plan was made
	Weighed    *Weighed `json:"weighed,omitzero"`    // what was shown; nil until it is weighed
	StandIn    *StandIn `json:"stand_in,omitzero"`   // nil if the item itself is in the picture
	How        string   `json:"how,omitzero"`        // how it was placed or prepared
}

// An Amount is a mass, a count or both.
type Amount struct {
	Grams     float64 `json:"grams,omitzero"`      // g; 0 if only a count is given
	StepGrams float64 `json:"step_grams,omitzero"` // step of the scale, g; 0 means 1 g
	Count     int     `json:"count,omitzero"`      // pieces; 0 if only a mass is given
}

// A Weighed amount is what the scale and the eye found.
type Weighed struct {
	Grams      float64 `json:"grams,omitzero"`       // g; 0 if only counted
	ErrorGrams float64 `json:"error_grams,omitzero"` // what the weighing may be wrong by, g; 0 if not stated
	Count      int     `json:"count,omitzero"`       // pieces; 0 if only weighed
	Scale      string  `json:"scale,omitzero"`       // which scale, or its class
}

// A StandIn is what was shown in an item's place.
type StandIn struct {
	What   string `json:"what"`   // not empty
	Reason string `json:"reason"` // not empty
}

// A Signature names who answers for the record.
type Signature struct {
	Name string `json:"name"`          // not empty
	Role string `json:"role,omitzero"` // such as "food stylist"
	Date string `json:"date,omitzero"` // YYYY-MM-DD, or empty
}

// Declaration returns the item's declared amount as a Declaration.
func (i RecordItem) Declaration() Declaration {
	return Declaration{Item: i.Item, Grams: i.Declared.Grams, StepGrams: i.Declared.StepGrams, Count: i.Declared.Count, Advertised: i.Advertised}
}

const maxRecordItems = 10_000

// Validate returns nil for a record that can be written and read back unchanged.
// Otherwise a [honestplate.InputError] or the error of [Declaration.Validate] naming the
// field, and a [honestplate.RefusedError] of the kind [honestplate.ErrAdvertised] where
// an advertised item has a stand-in or is planned other than declared.
func (r Record) Validate() error {
	if err := cmp.Or(someText("Picture", r.Picture), day("Date", r.Date)); err != nil {
		return err
	}
	if len(r.Items) == 0 || len(r.Items) > maxRecordItems {
		return check.Input("Items", len(r.Items), "items", fmt.Sprintf("1 to %d", maxRecordItems))
	}
	for k, i := range r.Items {
		if err := i.validate(); err != nil {
			return in(fmt.Sprintf("Items[%d]", k), err)
		}
	}
	for k, c := range r.Cautions {
		if err := someText(fmt.Sprintf("Cautions[%d]", k), c); err != nil {
			return err
		}
	}
	for k, s := range r.Signed {
		if err := cmp.Or(someText("Name", s.Name), text("Role", s.Role), day("Date", s.Date)); err != nil {
			return in(fmt.Sprintf("Signed[%d]", k), err)
		}
	}
	return nil
}

func (i RecordItem) validate() error {
	d := i.Declaration()
	err := someText("Item", i.Item)
	// What only dresses the picture need not be declared: nobody is promised any.
	if err == nil && (i.Advertised || i.Declared != (Amount{})) {
		err = in("Declared", d.Validate())
	}
	if s := i.StandIn; err == nil && s != nil {
		err = cmp.Or(d.allows("StandIn", Replace), in("StandIn", cmp.Or(someText("What", s.What), someText("Reason", s.Reason))))
	}
	if err == nil && i.Planned != nil {
		err = i.Planned.checkPlan(d)
	}
	if w := i.Weighed; err == nil && w != nil {
		err = in("Weighed", w.validate())
	}
	return cmp.Or(err, text("How", i.How))
}

// checkPlan refuses a plan that shows an advertised item other than declared.
func (p Amount) checkPlan(d Declaration) error {
	plan := Declaration{Item: d.Item, Grams: p.Grams, StepGrams: p.StepGrams, Count: p.Count}
	err := plan.Validate()
	switch {
	case err != nil:
		return in("Planned", err)
	case p.Grams > d.Grams || p.Count > d.Count:
		return d.allows("Planned", Exceed)
	case p.Grams < d.Grams || p.Count < d.Count:
		return d.allows("Planned", Reduce)
	}
	return nil
}

func (w Weighed) validate() error {
	err := cmp.Or(honestplate.NotNegative("Grams", w.Grams, "g"),
		honestplate.NotNegative("ErrorGrams", w.ErrorGrams, "g"), text("Scale", w.Scale))
	if err == nil && w.Count < 0 {
		err = check.Input("Count", w.Count, "", "0 or more")
	}
	return err
}

// text refuses what JSON cannot carry unchanged.
func text(field, s string) error {
	if !utf8.ValidString(s) {
		return check.Input(field, strconv.Quote(s), "", "valid UTF-8")
	}
	return nil
}

func someText(field, s string) error {
	if strings.TrimSpace(s) == "" {
		return check.Input(field, "empty", "", "some text")
	}
	return text(field, s)
}

func day(field, s string) error {
	if s == "" {
		return nil
	}
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		return check.Input(field, strconv.Quote(s), "", "a day as YYYY-MM-DD, or nothing")
	}
	return nil
}
