package shoot

import "example.org/honestplate"

// A Dish is one picture: a list of things in the frame, each with its clock.
type Dish struct {
	Name  string `json:"name"`
	About string `json:"about,omitzero" doc:"what the picture is to show"`

	Advertised string `json:"advertised,omitzero" words:"product,none" doc:"product (the default): something in the frame is sold; none: a cover, a test, a book"`

	Day         int     `json:"day,omitzero" range:"1,14" doc:"on which of the days; left out: where it fits"`
	SlotMinutes float64 `json:"slot_minutes" range:"1,720" doc:"time on the set"`
	TakeMinutes float64 `json:"take_minutes,omitzero" range:"0.05,240" doc:"one unit on the set, from set down to taken; default 2"`
	SwapMinutes float64 `json:"swap_minutes,omitzero" range:"0,120" doc:"between two units; default 1"`
	Wanted      int     `json:"wanted_takes" range:"1,100" doc:"good takes"`

	SuccessRate float64  `json:"success_rate,omitzero" range:"0.02,0.99" doc:"share of units that give a good take, of those that show the picture; left out: earlier says it"`
	Earlier     *Earlier `json:"earlier,omitzero" doc:"takes of earlier days like this one"`
	Together    float64  `json:"go_wrong_together,omitzero" range:"0,0.9" doc:"correlation of takes of one batch; default 0"`

	LongestMinutes float64  `json:"must_stand_minutes,omitzero" range:"0,720" doc:"how long one unit must hold for this picture, such as a motion take; left out: a moment"`
	Allergens      []string `json:"allergens,omitzero" range:"0,30"`
	Order          int      `json:"place_in_order,omitzero" range:"1,200" doc:"overrules the order"`

	Things        []Thing        `json:"things" range:"1,30" doc:"what is in the frame"`
	Specification *Specification `json:"specification,omitzero" doc:"of a build, as the client's technician gives it"`
}

// Earlier are takes of days before; a look that did not come is among what spoilt them.
type Earlier struct {
	Good   int     `json:"good" range:"0,10000"`
	Takes  int     `json:"takes" range:"1,10000"`
	Weight float64 `json:"weight,omitzero" range:"0.01,1" doc:"what an earlier take counts for, of one today; default 0.5"`
}

// A Thing is in the frame. What is advertised declares its grams, its count or both,
// and is the product itself; another may have a stand-in, with the reason. At most one
// of the kinds below says how it changes; without one it is plain, and does not.
type Thing struct {
	Name       string  `json:"name"`
	Advertised bool    `json:"advertised,omitzero"`
	Grams      float64 `json:"grams,omitzero" range:"0.01,100000" doc:"declared, or wanted, of one unit"`
	Count      int     `json:"count,omitzero" range:"1,10000"`
	StandIn    string  `json:"stand_in,omitzero" doc:"what is shown instead"`
	Why        string  `json:"why,omitzero" doc:"why that is honest"`

	PackGrams float64              `json:"pack_grams,omitzero" range:"0.1,100000" doc:"it is bought in packs of"`
	PackCount int                  `json:"pack_count,omitzero" range:"1,10000" doc:"it is bought in packs of so many pieces"`
	Stock     honestplate.Optional `json:"stock_units,omitzero" range:"0,10000" doc:"there are only so many: three bottles"`
	Prep      []Prep               `json:"prep,omitzero" range:"0,20" doc:"what must be done with it before"`

	Bowl    *Bowl    `json:"bowl,omitzero"`
	Drink   *Drink   `json:"iced_drink,omitzero"`
	Bottle  *Bottle  `json:"bottle,omitzero"`
	Scoop   *Scoop   `json:"scoop,omitzero"`
	Soft    *Soft    `json:"soft_food,omitzero"`
	Cheese  *Cheese  `json:"melted_cheese,omitzero"`
	Pour    *Pour    `json:"pour,omitzero"`
	Drizzle *Drizzle `json:"drizzle,omitzero"`
	Pieces  *Pieces  `json:"pieces,omitzero"`
	Build   bool     `json:"build,omitzero" doc:"stacked as the dish's specification says"`
}

// A Prep is a step before the shot that somebody does.
type Prep struct {
	What    string  `json:"what"`
	Minutes float64 `json:"minutes" range:"0,2880" doc:"of work for one pair of hands"`
	Ahead   float64 `json:"ahead_minutes,omitzero" range:"0,4320" doc:"how long before the shot it must be done; default 0"`
	Who     string  `json:"who,omitzero"`
	Each    bool    `json:"each_unit,omitzero" doc:"the minutes are for every unit"`
	OvenC   float64 `json:"oven_c,omitzero" range:"40,500" doc:"it needs an oven so hot"`
}
