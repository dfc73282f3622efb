package record

import (
	"cmp"
	"fmt"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/seal"
)

// Schema names the schema of a Record's JSON and its version. A reader refuses
// any other.
//
// The JSON is one object in which names are exact and come once; what would be empty,
// 0 or false is left out, so that one record has one canonical form. Fields marked ?
// may be absent:
//
//	schema          "honestplate/record/2"
//	revision        1, 2, 3 ..
//	previous?       SHA-256 of the revision before, where there is one
//	picture         what the picture is, text
//	date?           day of the picture, YYYY-MM-DD
//	source_type?    what it comes from: a digital source type of the IPTC, or a URI
//	takes?          list of {number, time?, file?, sha256?, chosen?}
//	specification?  {product, version, sha256, signed_by?, valid_until?}
//	items           at least one of:
//	    item        what it is, text
//	    advertised? true for the advertised product
//	    declared?   {grams?, step_grams?, minus_grams?, plus_grams?, count?, minus_count?, plus_count?}
//	    planned?    the same shape: what was to be shown
//	    weighed?    {grams?, error_grams?, least_grams?, count?, scale?, basis?}: what was shown
//	    verdict?    agrees, differs or cannot tell: where something is declared and weighed
//	    stand_in?   {what, reason}: what was shown in the item's place, and why
//	    favour?     how far it was arranged towards the camera, 0..0.9
//	    how?        how it was placed or prepared, text
//	edits?          list of {action, source_type?, what?}: what was done to the picture
//	edits_complete? true where nothing else was done
//	cautions?       list of texts
//	signed?         list of {name, role?, date?}
const Schema = "honestplate/record/2"

// A Record says, after the picture, how it was made: for every item what was
// declared, planned and weighed, what stood in for what and why, which takes there
// are, what was done to them, and who answers for it. An advertised item has no
// stand-in and is planned as declared; what was weighed is a fact and is recorded as
// it was, with its verdict.
//
// It documents; whether a picture may be used is for local advertising and
// weights-and-measures law.
type Record struct {
	Revision int    `json:"revision"`          // 1 for the first
	Previous string `json:"previous,omitzero"` // SHA-256 of the revision before; empty for the first
	Picture  string `json:"picture"`           // what the picture is; not empty
	Date     string `json:"date,omitzero"`     // day of the picture, YYYY-MM-DD, or empty
	// SourceType says what it comes from, such as digitalCapture: see [Edit].
	SourceType    string            `json:"source_type,omitzero"`
	Takes         []Take            `json:"takes,omitzero"`          // the picture's files
	Specification *SpecificationRef `json:"specification,omitzero"`  // what the product was held against
	Items         []Item            `json:"items"`                   // at least one, up to 10 000
	Edits         []Edit            `json:"edits,omitzero"`          // what was done to the picture afterwards
	EditsComplete bool              `json:"edits_complete,omitzero"` // nothing else was done
	Cautions      []string          `json:"cautions,omitzero"`       // what whoever uses the picture must know
	// Signed says who answers for the record; a name is no seal: see [Record.Sign].
	Signed []Signature `json:"signed,omitzero"`
}

// A Take is one release of the shutter.
type Take struct {
	Number int    `json:"number"`          // as it was counted on the set, 1 or more; comes once
	Time   string `json:"time,omitzero"`   // RFC 3339, such as 2026-10-14T11:32:05+02:00; a claim, no time stamp
	File   string `json:"file,omitzero"`   // name of the picture's file
	SHA256 string `json:"sha256,omitzero"` // of the file's bytes: see [FileSHA256]
	Chosen bool   `json:"chosen,omitzero"` // the picture, or part of it
}

// A SpecificationRef names the specification that a product was held against: see
// [Specification.Ref].
type SpecificationRef struct {
	Product    string `json:"product"`              // what is sold under it; not empty
	Version    string `json:"version"`              // as its maker counts; not empty
	SHA256     string `json:"sha256"`               // of its canonical bytes
	SignedBy   string `json:"signed_by,omitzero"`   // the technician; empty if nobody signed
	ValidUntil string `json:"valid_until,omitzero"` // its last day, YYYY-MM-DD; empty for no end
}

// A StandIn is what was shown in an item's place.
type StandIn struct {
	What   string `json:"what"`   // such as acrylic cubes; not empty
	Reason string `json:"reason"` // why; not empty
}

// A Signature says who answers for the record, in what role and since when.
type Signature struct {
	Name string `json:"name"`          // who; not empty
	Role string `json:"role,omitzero"` // such as food stylist
	Date string `json:"date,omitzero"` // YYYY-MM-DD, or empty
}

const maxRecordItems = 10_000

// Validate returns nil for a record that can be written and read back unchanged.
// Otherwise an [honestplate.InputError] or [honestplate.RangeError] naming the field, a
// [honestplate.RefusedError] of the kind [honestplate.ErrAdvertised] where an advertised item has a stand-in or is planned
// other than declared.
func (r Record) Validate() error {
	if r.Revision < 1 {
		return check.Input("Revision", r.Revision, "", "1 for the first, one more for each that replaces it")
	}
	if first := r.Revision == 1; first != (r.Previous == "") || !first && !seal.IsSum(r.Previous) {
		return check.Input("Previous", fmt.Sprintf("%q", r.Previous), "",
			"nothing in revision 1, later the SHA-256 of the one before: see Record.Next")
	}
	if err := cmp.Or(textAt("Picture", r.Picture, true), dayAt("Date", r.Date), sourceTypeAt("SourceType",
		r.SourceType)); err != nil {
		return err
	}
	seen := map[int]bool{}
	err := eachAt("Takes", r.Takes, func(t Take) error {
		if seen[t.Number] {
			return check.Input("Number", fmt.Sprintf("%d a second time", t.Number), "",
				"a number of its own for every take")
		}
		seen[t.Number] = true
		return t.validate()
	})
	if err != nil {
		return err
	}
	if s := r.Specification; s != nil {
		if err := s.validate(); err != nil {
			return honestplate.In("Specification", err)
		}
	}
	if len(r.Items) == 0 || len(r.Items) > maxRecordItems {
		return check.Input("Items", len(r.Items), "", fmt.Sprintf("1 to %d of them", maxRecordItems))
	}
	return cmp.Or(
		eachAt("Items", r.Items, Item.validate),
		eachAt("Edits", r.Edits, Edit.validate),
		eachAt("Cautions", r.Cautions, func(c string) error { return textAt("", c, true) }),
		eachAt("Signed", r.Signed, func(s Signature) error {
			if s.Date != "" && s.Date < r.Date {
				return check.Input("Date", s.Date, "", "a day not before the picture, "+r.Date)
			}
			return s.validate()
		}),
	)
}

// eachAt checks a list and says at which place it fails.
func eachAt[T any](field string, list []T, try func(T) error) error {
	for i, v := range list {
		if err := try(v); err != nil {
			return honestplate.In(fmt.Sprintf("%s[%d]", field, i), err)
		}
	}
	return nil
}

func (t Take) validate() error {
	if t.Number < 1 {
		return check.Input("Number", t.Number, "", "1 or more")
	}
	if t.Time != "" {
		if _, err := time.Parse(time.RFC3339, t.Time); err != nil {
			return check.Input("Time", fmt.Sprintf("%q", t.Time), "",
				"a time like 2026-10-14T11:32:05+02:00, or nothing")
		}
	}
	return cmp.Or(textAt("File", t.File, false), sumAt("SHA256", t.SHA256, false))
}

func (s SpecificationRef) validate() error {
	return cmp.Or(textAt("Product", s.Product, true), textAt("Version", s.Version, true), sumAt("SHA256",
		s.SHA256, true),
		textAt("SignedBy", s.SignedBy, false), dayAt("ValidUntil", s.ValidUntil))
}

func (s Signature) validate() error {
	return cmp.Or(textAt("Name", s.Name, true), textAt("Role", s.Role, false), dayAt("Date", s.Date))
}
