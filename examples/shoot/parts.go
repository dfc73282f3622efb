package shoot

import "example.org/honestplate"

// A PourPlan is a pour worked out.
type PourPlan struct {
	Blend []BlendPart `json:"blend"` // one part where it pours as it is
	TempC float64     `json:"temp_c"`
	// WantedPaS is what was asked for; not given where it pours as it is. Predicted is
	// at the shear rate of ShearRate.
	WantedPaS    honestplate.Optional `json:"wanted_pa_s,omitzero"`
	PredictedPaS honestplate.Estimate `json:"predicted_pa_s"`
	ShearRate    float64              `json:"shear_rate_1_s,omitempty"`
	BatchGrams   float64              `json:"batch_grams"`
	Batches      int                  `json:"batches"`
	Cup          *CupTest             `json:"cup,omitempty"`
	PouredGrams  float64              `json:"poured_grams"`
	Outlet       Outlet               `json:"outlet"`
	HeadMM       float64              `json:"head_mm"`
	DropMM       float64              `json:"drop_mm"`
	Onto         string               `json:"onto"` // what it lands on, as in the brief
	DepthMM      float64              `json:"depth_mm,omitempty"`
	Into         string               `json:"into,omitempty"` // the thing in the frame that it lands in
	Lasts        honestplate.Window   `json:"lasts"`
	LiquidRules  bool                 `json:"liquid_rules"` // the liquid, not the outlet, decides how long
	StreamMM     float64              `json:"stream_mm"`
	SpeedMS      float64              `json:"speed_m_s"`
	Breaks       bool                 `json:"breaks"`    // before it lands
	MayBreak     bool                 `json:"may_break"` // at the low end of its band
	Splash       string               `json:"splash"`
	NoHigherMM   honestplate.Optional `json:"no_higher_mm,omitzero"`   // than this it does not splash
	PuddleMM     honestplate.Estimate `json:"puddle_mm"`               // across, on a level plate
	PuddleAfter  honestplate.Moment   `json:"puddle_after_s,omitzero"` // the first of it has landed
	CoatMM       honestplate.Estimate `json:"coat_mm"`                 // on an upright wall after two seconds
	Hides        *Hides               `json:"hides,omitempty"`
	FrameMM      float64              `json:"frame_width_mm"`    // of what the picture shows
	FreezeS      honestplate.Optional `json:"freeze_s,omitzero"` // the longest light that keeps the stream sharp in print
	Corrected    *Correction          `json:"corrected,omitempty"`
}

// A BlendPart is one liquid of a batch.
type BlendPart struct {
	Name  string  `json:"name"`
	Grams float64 `json:"grams"`
}

// A CupTest says how a batch is tested.
type CupTest struct {
	Cup         string             `json:"cup"`
	TempC       float64            `json:"temp_c"`
	Expected    honestplate.Window `json:"expected"`
	Leave       honestplate.Window `json:"leave"`   // readings that mean: leave it
	Least       honestplate.Moment `json:"least_s"` // shortest and longest time that this cup tells
	Most        honestplate.Moment `json:"most_s"`
	Corrections []Correction       `json:"corrections,omitempty"`
}

// A Correction is what a cup time asks to add.
type Correction struct {
	Seconds float64 `json:"seconds"`
	Add     string  `json:"add,omitempty"`
	Grams   float64 `json:"grams"`
	Leave   bool    `json:"leave,omitempty"`
}

// Hides says whether a coat covers what is under it.
type Hides struct {
	What      string               `json:"what"`
	NeedsMM   honestplate.Estimate `json:"needs_mm"` // for a contrast ratio of 0.98
	Contrast  honestplate.Estimate `json:"contrast"` // of the coat after two seconds
	Does      bool                 `json:"does"`
	MoreCream honestplate.Optional `json:"more_cream_grams,omitzero"`
}

// A CoilPlan is a drizzle worked out.
type CoilPlan struct {
	Lasts    honestplate.Window   `json:"lasts"`
	Coils    bool                 `json:"coils"`
	RingMM   honestplate.Estimate `json:"ring_mm"`
	TurnsPS  honestplate.Estimate `json:"turns_per_s"`
	HeadMM   float64              `json:"head_mm"`
	ThreadMM float64              `json:"thread_mm"`
	Grams    float64              `json:"grams"` // in one take
	TempC    float64              `json:"temp_c"`
	Outlet   Outlet               `json:"outlet"`
	DropMM   float64              `json:"drop_mm"`
}

// A ColdPlan says how something is chilled, and how it starts.
type ColdPlan struct {
	Store    string             `json:"store,omitempty"`
	StoreC   float64            `json:"store_c,omitempty"`
	StartC   float64            `json:"start_c"`
	Needs    honestplate.Window `json:"needs"` // time in the store
	FillMM   float64            `json:"fill_mm,omitempty"`
	HeightMM float64            `json:"height_mm,omitempty"`
	WidthMM  float64            `json:"width_mm,omitempty"` // of the glass, outside
	WallMM   float64            `json:"wall_mm,omitempty"`
	IceG     float64            `json:"ice_grams,omitempty"`
	ShockK   float64            `json:"shock_k,omitempty"`
	Breaks   bool               `json:"glass_breaks,omitempty"` // else it may, where shock_k is given
	BallMM   float64            `json:"ball_mm,omitempty"`      // the diameter that weighs what is declared
	GainMin  float64            `json:"gain_minutes,omitempty"`
	// Bursts says that it must be out of the freezer by OutBy.
	Bursts bool               `json:"bursts,omitempty"`
	OutBy  honestplate.Moment `json:"out_by_s,omitzero"`
}

// A CheesePlan says where the cheese goes.
type CheesePlan struct {
	StripGrams []float64 `json:"strip_grams"`
	SliceGrams []float64 `json:"slice_grams"`
	DiameterMM float64   `json:"diameter_mm"`
	RimMM      float64   `json:"rim_mm,omitempty"`
	StripEnds  [][2]Spot `json:"strip_ends"` // a strip's ends, in the order of StripGrams
	SliceAt    []Spot    `json:"slice_at"`   // the middle of a slice, in the order of SliceGrams
	Favour     float64   `json:"favour"`
	SoldAs     string    `json:"sold_as"`
	Over       float64   `json:"over_even_share,omitempty"` // of the fullest slice, where a slice is what is sold
}

// A PiecesPlan says which pieces make which hero.
type PiecesPlan struct {
	Sets    []PieceSet           `json:"sets"`
	Proven  bool                 `json:"proven"` // no more sets, and none better, exist
	Weigh   int                  `json:"weigh"`  // pieces to have on the tray for the units wanted
	Chance  honestplate.Estimate `json:"weigh_chance"`
	OnTray  int                  `json:"on_tray"`
	Missing int                  `json:"missing_sets"`
	PlateMM float64              `json:"plate_mm,omitempty"`
	PieceMM float64              `json:"piece_mm,omitempty"`
	Spots   []PieceSpot          `json:"spots,omitempty"` // of the first set, in the order of placing: far side first
}

// A PieceSet is one hero.
type PieceSet struct {
	Names []string `json:"names"`
	Grams float64  `json:"grams"`
	Looks float64  `json:"looks"`
}

// A BuildPlan is a specification to build by.
type BuildPlan struct {
	Product    string       `json:"product"`
	ValidUntil string       `json:"valid_until,omitempty"`
	Version    string       `json:"version"`
	Hash       string       `json:"sha256"`
	SignedBy   string       `json:"signed_by,omitempty"`
	Layers     []BuildLayer `json:"layers"`
}

// A BuildLayer is one component in build order.
type BuildLayer struct {
	Name     string  `json:"name"`
	Grams    float64 `json:"grams,omitempty"`
	Count    int     `json:"count,omitempty"`
	MinusG   float64 `json:"minus_grams,omitempty"` // the tolerance as it was signed
	PlusG    float64 `json:"plus_grams,omitempty"`
	TotalG   float64 `json:"total_grams,omitempty"` // on the scale with all layers so far
	LowG     float64 `json:"low_grams,omitempty"`   // readings that agree lie between
	HighG    float64 `json:"high_grams,omitempty"`
	RawGrams float64 `json:"raw_grams,omitempty"` // to cook, for one unit
	CanTell  bool    `json:"can_tell"`            // the scale can decide it
}
