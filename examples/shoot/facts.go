package shoot

import (
	"slices"
	"time"

	"example.org/honestplate"
)

// Facts are what has happened by a moment of the day. Every list may be empty; a plan
// of no facts is the plan of the morning.
type Facts struct {
	Now     time.Time      `json:"now" doc:"with its offset, such as 2026-10-14T11:05:00+02:00"`
	Room    *Room          `json:"room,omitzero" doc:"as it was measured on the set"`
	Seen    []Seen         `json:"seen,omitzero" range:"0,500" doc:"events seen on a unit, and readings taken"`
	Cups    []CupTimes     `json:"cups,omitzero" range:"0,100"`
	Takes   []Take         `json:"takes,omitzero" range:"0,5000"`
	Weights []WeighedThing `json:"weights,omitzero" range:"0,5000"`
	RanOut  []RanOut       `json:"ran_out,omitzero" range:"0,100" doc:"what is left of a stock"`
	Done    []string       `json:"done,omitzero" range:"0,200" doc:"dishes that are finished"`
	Notes   []Said         `json:"notes,omitzero" range:"0,2000" doc:"what the next unit should know"`
}

// Seen is an event or a reading of one unit, counted from when its clock began: when it
// left the cold, was filled or left the oven.
type Seen struct {
	Dish    string               `json:"dish"`
	Thing   string               `json:"thing"`
	Event   string               `json:"event,omitzero" words:"haze,white,beads,runs,ice gone,soft,drip,puddle,slump,steam ends,strings,sets" doc:"what was seen"`
	NotYet  bool                 `json:"not_yet,omitzero" doc:"it had not come by then"`
	TempC   honestplate.Optional `json:"temp_c,omitzero" range:"-80,120" doc:"or a temperature that was read"`
	Seconds float64              `json:"after_seconds" range:"0,86400"`
	Within  float64              `json:"within_seconds,omitzero" range:"0.1,3600" doc:"how exactly the time is known; default 5 per cent, at least 2 s"`
	WithinK float64              `json:"within_k,omitzero" range:"0.05,20" doc:"how exactly the temperature is known; default 1"`
	Unit    int                  `json:"unit,omitzero" range:"0,5000" doc:"which unit; default: one of its own"`
}

// CupTimes are timings of one batch in a flow cup.
type CupTimes struct {
	Dish    string    `json:"dish"`
	Thing   string    `json:"thing"`
	Cup     string    `json:"cup"`
	TempC   float64   `json:"temp_c" range:"0,60"`
	Seconds []float64 `json:"seconds" range:"1,20"`
}

// A Take is one picture taken.
type Take struct {
	Dish string    `json:"dish"`
	Unit int       `json:"unit" range:"1,5000"`
	Good bool      `json:"good"`
	At   time.Time `json:"at,omitzero"`
	File string    `json:"file,omitzero"`
	Note string    `json:"note,omitzero"`
}

// A WeighedThing is a thing of a unit on the scale.
type WeighedThing struct {
	Dish  string    `json:"dish"`
	Thing string    `json:"thing"`
	Unit  int       `json:"unit" range:"1,5000"`
	Grams float64   `json:"grams" range:"0,200000"`
	At    time.Time `json:"at,omitzero"`
}

// Said is a note about a picture, with or without a take.
type Said struct {
	Dish string    `json:"dish"`
	Unit int       `json:"unit,omitzero" range:"0,5000" doc:"which unit it is about; left out: all"`
	At   time.Time `json:"at,omitzero"`
	Text string    `json:"text"`
}

// RanOut says how many units of a thing are left.
type RanOut struct {
	Dish  string `json:"dish"`
	Thing string `json:"thing"`
	Left  int    `json:"left" range:"0,100000"`
}

// said are the notes about a dish: those of its takes, and those without one.
func (f *Facts) said(dish string) (out []Said) {
	for _, t := range f.Takes {
		if t.Dish == dish && t.Note != "" {
			out = append(out, Said{Dish: dish, Unit: t.Unit, At: t.At, Text: t.Note})
		}
	}
	for _, n := range f.Notes {
		if n.Dish == dish {
			out = append(out, n)
		}
	}
	slices.SortStableFunc(out, func(a, b Said) int { return a.At.Compare(b.At) })
	return out
}
