package portion

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"
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

// A RecordError says which field of a record is wrong, and what is wanted.
// errors.Is(err, ErrInput) holds.
type RecordError struct {
	Field string // such as items[2].stand_in.reason
	Want  string // what is wanted of it
	Err   error  // the error beneath, or nil
}

// Error names the field and what is wanted of it.
func (e *RecordError) Error() string {
	if e.Err != nil {
		return fmt.Sprintf("portion: record: %s: %s", oneLine(e.Field), strings.TrimPrefix(e.Err.Error(), "portion: "))
	}
	return fmt.Sprintf("portion: record: %s: want %s", oneLine(e.Field), oneLine(e.Want))
}

// Is reports that a RecordError is an ErrInput.
func (e *RecordError) Is(target error) bool { return target == ErrInput }

// Unwrap returns the error beneath.
func (e *RecordError) Unwrap() error { return e.Err }

// Validate returns nil for a record that can be written and read back unchanged.
// Otherwise a *RecordError naming the field: with an *AdvertisedError beneath where
// an advertised item has a stand-in or is planned other than declared.
func (r Record) Validate() error {
	if err := someText("picture", r.Picture); err != nil {
		return err
	}
	if err := day("date", r.Date); err != nil {
		return err
	}
	if len(r.Items) == 0 || len(r.Items) > maxRecordItems {
		return &RecordError{Field: "items", Want: fmt.Sprintf("1 to %d of them", maxRecordItems)}
	}
	for k, i := range r.Items {
		if err := i.validate(fmt.Sprintf("items[%d]", k)); err != nil {
			return err
		}
	}
	for k, c := range r.Cautions {
		if err := someText(fmt.Sprintf("cautions[%d]", k), c); err != nil {
			return err
		}
	}
	for k, s := range r.Signed {
		at := fmt.Sprintf("signed[%d]", k)
		if err := someText(at+".name", s.Name); err != nil {
			return err
		}
		if err := text(at+".role", s.Role); err != nil {
			return err
		}
		if err := day(at+".date", s.Date); err != nil {
			return err
		}
	}
	return nil
}

func (i RecordItem) validate(at string) error {
	if err := someText(at+".item", i.Item); err != nil {
		return err
	}
	d := i.Declaration()
	// What only dresses the picture need not be declared: nobody is promised any.
	if i.Advertised || i.Declared != (Amount{}) {
		if err := d.Validate(); err != nil {
			return &RecordError{Field: at + ".declared", Err: err}
		}
	}
	if i.StandIn != nil {
		if err := d.Allows(Replace); err != nil {
			return &RecordError{Field: at + ".stand_in", Err: err}
		}
		if err := someText(at+".stand_in.what", i.StandIn.What); err != nil {
			return err
		}
		if err := someText(at+".stand_in.reason", i.StandIn.Reason); err != nil {
			return err
		}
	}
	if p := i.Planned; p != nil {
		plan := Declaration{Item: i.Item, Grams: p.Grams, StepGrams: p.StepGrams, Count: p.Count}
		if err := plan.Validate(); err != nil {
			return &RecordError{Field: at + ".planned", Err: err}
		}
		act := Act("")
		switch {
		case p.Grams > d.Grams || p.Count > d.Count:
			act = Exceed
		case p.Grams < d.Grams || p.Count < d.Count:
			act = Reduce
		}
		if act != "" {
			if err := d.Allows(act); err != nil {
				return &RecordError{Field: at + ".planned", Err: err}
			}
		}
	}
	if w := i.Weighed; w != nil {
		if err := w.validate(at + ".weighed"); err != nil {
			return err
		}
	}
	return text(at+".how", i.How)
}

func (w Weighed) validate(at string) error {
	if err := notNegative("grams", w.Grams, "g"); err != nil {
		return &RecordError{Field: at, Err: err}
	}
	if err := notNegative("error_grams", w.ErrorGrams, "g"); err != nil {
		return &RecordError{Field: at, Err: err}
	}
	if w.Count < 0 {
		return &RecordError{Field: at + ".count", Want: "0 or more"}
	}
	return text(at+".scale", w.Scale)
}

// text refuses what JSON cannot carry unchanged.
func text(field, s string) error {
	if !utf8.ValidString(s) {
		return &RecordError{Field: field, Want: "valid UTF-8"}
	}
	return nil
}

func someText(field, s string) error {
	if strings.TrimSpace(s) == "" {
		return &RecordError{Field: field, Want: "some text"}
	}
	return text(field, s)
}

func day(field, s string) error {
	if s == "" {
		return nil
	}
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		return &RecordError{Field: field, Want: "a day as YYYY-MM-DD, or nothing"}
	}
	return nil
}
