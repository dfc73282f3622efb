package shoot

import (
	"time"

	"example.org/honestplate"
)

// A Plan is a brief worked out: numbers, instants and windows; the sentences are for
// whoever prints it.
type Plan struct {
	Title  string   `json:"title"`
	Client string   `json:"client"`
	About  string   `json:"about"`
	Place  Place    `json:"place,omitzero"`
	People []Person `json:"people,omitempty"`
	// Now is the time of the facts; the zero time where there are none.
	Now       time.Time  `json:"now,omitzero"`
	Air       Air        `json:"air"`
	Lights    []Light    `json:"lights,omitempty"`
	Days      []PlanDay  `json:"days"`
	Shots     []Shot     `json:"shots"` // in the order of shooting
	Tasks     []Task     `json:"tasks,omitempty"`
	Purchases []Purchase `json:"purchases,omitempty"`
	Kit       []Kit      `json:"kit,omitempty"`
	Next      []Step     `json:"next,omitempty"` // what to do in the next minutes, where there are facts
	// Chance is that every picture that is left gets its takes from the units prepared; the
	// pictures are taken as independent.
	Chance   float64   `json:"chance"`
	Notes    []Note    `json:"notes,omitempty"`
	Cautions []Caution `json:"cautions"`
}

// Air is the room.
type Air struct {
	TempC     honestplate.Estimate `json:"temp_c"`
	RHPercent honestplate.Estimate `json:"rh_percent"`
	DewPointC float64              `json:"dew_point_c"`
	SpeedMS   honestplate.Estimate `json:"speed_m_s"`
	Measured  bool                 `json:"measured"`
}

// A Light is what a lamp does to the food.
type Light struct {
	Name       string               `json:"name"`
	Source     string               `json:"source"`
	Irradiance honestplate.Estimate `json:"irradiance_w_m2"`
	Hot        bool                 `json:"hot"`
}

// A PlanDay is a date with its instants.
type PlanDay struct {
	Date      Date          `json:"date"`
	Call      time.Time     `json:"call"`
	FirstShot time.Time     `json:"first_shot"`
	LunchFrom time.Time     `json:"lunch_from,omitzero"`
	LunchTo   time.Time     `json:"lunch_to,omitzero"`
	Ends      time.Time     `json:"ends"` // of the last slot
	Wrap      time.Time     `json:"wrap"`
	ShiftAt   time.Time     `json:"clock_change_at,omitzero"`
	Shift     time.Duration `json:"clock_change_ns,omitempty"` // by which clocks go forward (or back, negative) between the evening before and the wrap
}

// A Shot is one dish worked out.
type Shot struct {
	Number    int       `json:"number"`
	Dish      string    `json:"dish"`
	About     string    `json:"about,omitempty"`
	Day       int       `json:"day"` // index into Days
	At        time.Time `json:"at"`
	End       time.Time `json:"end"`
	Done      bool      `json:"done,omitempty"`
	Editorial bool      `json:"editorial,omitempty"` // nothing in it is advertised
	Units     Units     `json:"units"`
	Picture   Picture   `json:"picture"`
	// Swap is how often a fresh unit comes on the set, at the latest; zero where a unit
	// lasts the slot.
	Swap      time.Duration  `json:"swap_ns,omitempty"`
	Things    []PlannedThing `json:"things"`
	Weights   []Weight       `json:"weights,omitempty"` // of the units so far
	Allergens []string       `json:"allergens,omitempty"`
	Notes     []Note         `json:"notes,omitempty"`
	Said      []Said         `json:"said,omitempty"` // notes of the facts
	Cautions  []Caution      `json:"cautions,omitempty"`
}

// Units are how many heroes a shot needs and gets.
type Units struct {
	Wanted     int     `json:"wanted_takes"`
	Good       int     `json:"good_so_far"`
	Taken      int     `json:"taken_so_far"`
	Prepare    int     `json:"prepare"` // planned from now on
	Need       int     `json:"need"`    // for the confidence asked, whether or not they fit
	Confidence float64 `json:"confidence"`
	Chance     float64 `json:"chance"` // that those prepared suffice
	// LimitedBy says why Prepare is less than Need: slot, hands, day, picture, the stock of
	// a thing, or the name of a freezer, fridge or oven; empty where it is not.
	LimitedBy string `json:"limited_by,omitempty"`
}

// A PlannedThing is something in the frame, worked out.
type PlannedThing struct {
	Name       string  `json:"name"`
	Kind       string  `json:"kind"`
	Advertised bool    `json:"advertised,omitempty"`
	StandIn    string  `json:"stand_in,omitempty"`
	Why        string  `json:"why,omitempty"`
	Grams      float64 `json:"grams,omitempty"`
	StepGrams  float64 `json:"step_grams,omitempty"`
	Count      int     `json:"count,omitempty"`
	Size       Size    `json:"size,omitzero"`
	Events     []Event `json:"events,omitempty"`
	// The parts that a kind has of its own.
	Pour   *PourPlan   `json:"pour,omitempty"`
	Coil   *CoilPlan   `json:"coil,omitempty"`
	Cold   *ColdPlan   `json:"cold,omitempty"`
	Cheese *CheesePlan `json:"cheese,omitempty"`
	Pieces *PiecesPlan `json:"pieces,omitempty"`
	Build  *BuildPlan  `json:"build,omitempty"`
	Notes  []Note      `json:"notes,omitempty"`
}

// An Event is something that happens to a unit, counted from the start of its clock.
type Event struct {
	Key     string             `json:"event"`
	When    honestplate.Window `json:"when"`
	Opens   bool               `json:"opens,omitempty"` // the picture can begin with it
	Closes  bool               `json:"closes,omitempty"`
	Reasons []Reason           `json:"reasons,omitempty"`
	Taught  bool               `json:"taught,omitempty"` // by what was seen today of its kind
}

// A Task is something somebody does, or a store does alone.
type Task struct {
	What    TaskKind  `json:"what"`
	Text    string    `json:"text,omitempty"` // the brief's own words, for a step of the brief's
	Shot    int       `json:"shot,omitempty"` // number of the shot it is for; 0 for all
	Thing   string    `json:"thing,omitempty"`
	Units   int       `json:"units,omitempty"`
	Start   time.Time `json:"start"`
	End     time.Time `json:"end"`
	Hand    int       `json:"hand,omitempty"` // which pair of hands, from 1; 0 where a store works alone
	Who     string    `json:"who,omitempty"`
	Store   string    `json:"store,omitempty"`
	TempC   float64   `json:"temp_c,omitempty"`
	HasTemp bool      `json:"has_temp,omitempty"`
	Early   bool      `json:"before_call,omitempty"` // whoever opens the studio, or the evening before
}

// A TaskKind says what is done.
type TaskKind string

// The kinds of task.
const (
	Verify   TaskKind = "verify the store's temperature"
	SwitchOn TaskKind = "switch on"
	DryIced  TaskKind = "put dry ice into"
	Preheat  TaskKind = "preheat"
	Harden   TaskKind = "into the deep freezer"
	Chill    TaskKind = "into the cold"
	ChillDry TaskKind = "glasses into the cold"
	Mix      TaskKind = "mix, chill, time the cup, correct"
	Warm     TaskKind = "warm to its temperature"
	Weigh    TaskKind = "weigh and choose"
	Bake     TaskKind = "bake"
	Assemble TaskKind = "build and weigh by layers"
	OwnStep  TaskKind = "step of the brief"
	ShotTask TaskKind = "on the set"
)

// A Purchase is a line of the shopping list.
type Purchase struct {
	What      string  `json:"what"`
	Grams     float64 `json:"grams,omitempty"` // needed at the most, tests and losses in it
	Count     int     `json:"count,omitempty"`
	Packs     int     `json:"packs"`
	PackGrams float64 `json:"pack_grams,omitempty"`
	PackCount int     `json:"pack_count,omitempty"`
	StandIn   bool    `json:"stand_in,omitempty"`
	Prop      bool    `json:"prop,omitempty"`
	Shots     []int   `json:"shots"`

	once bool // one serves all units, and none is used up
}

// A Kit is a tool of the day.
type Kit struct {
	What  string `json:"what"`
	Count int    `json:"count"`
	Shots []int  `json:"shots,omitempty"`
}

// A Step is what to do now.
type Step struct {
	At    time.Time `json:"at"`
	What  string    `json:"what"` // a TaskKind, or: start a unit, swap, stop
	Shot  int       `json:"shot"`
	Thing string    `json:"thing,omitempty"`
}

// A Note is something a crew must know, as a code with its numbers.
type Note struct {
	Code   NoteCode             `json:"code"`
	Thing  string               `json:"thing,omitempty"`
	Value  honestplate.Optional `json:"value,omitzero"`
	Second honestplate.Optional `json:"second,omitzero"`
	Share  honestplate.Optional `json:"share,omitzero"` // of the units, where it is about some of them
	Text   string               `json:"text,omitempty"` // a name that belongs to it
}

// A Caution is a danger that something in a shot or a day brings.
type Caution string

// The cautions.
const (
	HotLamp      Caution = "hot lamp"
	Mains        Caution = "liquids and mains"
	DeepFrozen   Caution = "deep-frozen surfaces"
	DryIce       Caution = "dry ice"
	GlassShock   Caution = "glass under thermal shock"
	BottleBursts Caution = "closed bottle in a freezer"
	HotBoard     Caution = "oven-hot boards"
	NotEaten     Caution = "food kept out"
	Allergens    Caution = "allergens"
	Advertising  Caution = "advertising and measures law"
	Favoured     Caution = "favour on the sold unit"
	Alcohol      Caution = "alcohol and flames"
)
