package shoot

import "example.org/honestplate"

// A Bowl is hot food or drink in an open vessel: soup, porridge, coffee.
type Bowl struct {
	DiameterMM  float64              `json:"diameter_mm" range:"20,600" doc:"of the open surface"`
	FillGrams   float64              `json:"fill_grams" range:"5,20000"`
	StartC      float64              `json:"start_c" range:"30,99" doc:"of the food as it is served"`
	VesselGrams float64              `json:"vessel_grams,omitzero" range:"1,20000" doc:"default: none"`
	VesselC     honestplate.Optional `json:"vessel_c,omitzero" range:"-20,100" doc:"as the food goes in; left out: the room's"`
	LimitC      float64              `json:"best_above_c,omitzero" range:"20,95" doc:"default 60"`
	Wanted      string               `json:"wanted,omitzero" words:"steam,hot" doc:"steam (the default): the picture needs it to be seen; hot: only that it is hot"`
	Solid       bool                 `json:"solid,omitzero" doc:"mash, porridge: it does not mix"`
}

// Ice is what lies in a glass.
type Ice struct {
	Thing  string  `json:"thing" doc:"what it is called in the frame, where it is said whether it is sold"`
	Grams  float64 `json:"grams" range:"1,5000"`
	Shape  string  `json:"shape,omitzero" words:"cubes,ball,crushed" doc:"default cubes"`
	SizeMM float64 `json:"size_mm,omitzero" range:"3,100" doc:"edge or diameter; default 30, crushed 8"`
	TempC  float64 `json:"temp_c,omitzero" range:"-30,-0.1" doc:"left out: out of a freezer and some minutes in a bucket"`
}

// A Drink is a cold drink in a glass, with or without real ice.
type Drink struct {
	DiameterMM     float64              `json:"diameter_mm" range:"30,150"`
	HeightMM       float64              `json:"height_mm" range:"30,300"`
	WallMM         float64              `json:"wall_mm" range:"0.5,10"`
	FillGrams      float64              `json:"fill_grams" range:"10,3000"`
	DrinkC         float64              `json:"drink_c" range:"-5,60"`
	Brix           float64              `json:"brix,omitzero" range:"0,40" doc:"sugar, by mass per cent; default 0"`
	AlcoholPercent float64              `json:"alcohol_percent,omitzero" range:"0,60" doc:"by volume; default 0"`
	GlassC         honestplate.Optional `json:"glass_c,omitzero" range:"-30,40" doc:"as it is filled; left out: the room's"`
	Ice            *Ice                 `json:"ice,omitzero" doc:"real ice; the thing itself says whether it is sold"`
	Wanted         string               `json:"wanted" words:"haze,beads,clear,ice" doc:"haze: fogged but seen through; beads: drops that do not run; clear: no fog; ice: only that ice is there"`
}

// A Bottle is a closed bottle or can.
type Bottle struct {
	Vessel      string  `json:"vessel" words:"glass bottle,can,plastic bottle"`
	DiameterMM  float64 `json:"diameter_mm" range:"30,150"`
	HeightMM    float64 `json:"height_mm" range:"50,400"`
	FillGrams   float64 `json:"fill_grams" range:"50,3000"`
	WallMM      float64 `json:"wall_mm,omitzero" range:"0.05,10" doc:"default by the vessel"`
	VesselGrams float64 `json:"vessel_grams,omitzero" range:"5,2000" doc:"default by the vessel"`
	Brix        float64 `json:"brix,omitzero" range:"0,40"`
	Alcohol     float64 `json:"alcohol_percent,omitzero" range:"0,60"`
	FromC       float64 `json:"from_c" range:"-5,40" doc:"before chilling"`
	ServeC      float64 `json:"serve_c" range:"-8,30" doc:"chilled to"`
	Chill       string  `json:"chill,omitzero" words:"fridge,iced water,freezer" doc:"how; default fridge"`
	Wanted      string  `json:"wanted" words:"haze,beads,clear,cold" doc:"cold: the outside does not matter"`
}

// A Scoop is a ball of frozen dessert.
type Scoop struct {
	Mix       string               `json:"mix" words:"vanilla ice cream,chocolate ice cream,premium ice cream,gelato,sorbet,soft serve,frozen yogurt,ice pop"`
	Diameter  float64              `json:"diameter_mm" range:"15,120"`
	CabinetC  float64              `json:"cabinet_c" range:"-25,-8" doc:"of the serving cabinet it is scooped from"`
	Freeze    bool                 `json:"deep_freeze,omitzero" doc:"harden it in the coldest freezer first"`
	Rests     string               `json:"rests_on,omitzero" words:"plate,cone,nothing" doc:"default plate"`
	RestC     honestplate.Optional `json:"rests_on_c,omitzero" range:"-40,40" doc:"left out: the room's"`
	Structure string               `json:"structure,omitzero" words:"natural,stabilised,much destabilised fat" doc:"left out: not known"`
}

// A Soft is butter, chocolate and the like, which goes soft.
type Soft struct {
	Food        string  `json:"food" words:"butter,dark chocolate,milk chocolate,white chocolate,whipped cream,set cream"`
	ThicknessMM float64 `json:"thickness_mm" range:"3,100"`
	AcrossMM    float64 `json:"across_mm" range:"10,400"`
	StartC      float64 `json:"start_c" range:"-30,30"`
	On          string  `json:"on,omitzero" words:"ceramic,wood,plastic,glass,stone,metal,rack" doc:"what it lies on; default ceramic"`
}

// A Cheese is melted on a flatbread, out of the oven, for the pull.
type Cheese struct {
	DiameterMM float64              `json:"diameter_mm" range:"30,800"`
	RimMM      float64              `json:"rim_mm,omitzero" range:"0,200" doc:"kept free of it"`
	Slices     int                  `json:"slices" range:"2,24"`
	SoldAs     string               `json:"sold_as,omitzero" words:"whole,slice" doc:"default whole; of a slice no one is favoured beyond the allowance"`
	Favour     float64              `json:"favour,omitzero" range:"0,0.9" doc:"of the camera side, default 0"`
	Allowance  float64              `json:"favour_allowance,omitzero" range:"0,0.5" doc:"of a slice that is sold; default 0.1"`
	BakedC     float64              `json:"baked_c,omitzero" range:"40,110" doc:"as it leaves the oven; default 90"`
	BreadMM    float64              `json:"bread_mm,omitzero" range:"1,60" doc:"default 8"`
	SauceMM    honestplate.Optional `json:"sauce_mm,omitzero" range:"0,10" doc:"left out: some sauce"`
}

// A Pour is a liquid poured for the camera. Of an advertised liquid only the
// temperature may be chosen; another may be blended.
type Pour struct {
	Liquids    []Supply             `json:"liquids" range:"1,2" doc:"at hand: one, or a thin and a thick one"`
	WantedMPaS float64              `json:"wanted_mpa_s,omitzero" range:"0.3,1000000" doc:"how thick; left out, and pours_like too: as it is"`
	PoursLike  *Supply              `json:"pours_like,omitzero"`
	TempC      float64              `json:"temp_c" range:"0,95" doc:"at the pour"`
	LowestC    honestplate.Optional `json:"lowest_c,omitzero" range:"0,95" doc:"an advertised liquid may be served between"`
	HighestC   honestplate.Optional `json:"highest_c,omitzero" range:"0,95"`
	BatchGrams float64              `json:"batch_grams,omitzero" range:"1,100000" doc:"left out: what the takes need"`
	PouredG    float64              `json:"poured_grams" range:"1,10000" doc:"in one take"`
	Outlet     Outlet               `json:"outlet"`
	DropMM     float64              `json:"drop_mm" range:"5,2000" doc:"from the outlet to the food"`
	Onto       string               `json:"onto" words:"dry plate,film,pool" doc:"film and pool have a depth_mm"`
	DepthMM    float64              `json:"depth_mm,omitzero" range:"0.05,300"`
	Hides      string               `json:"must_hide,omitzero" words:"flake,glass,chocolate" doc:"what a coat of it should hide"`
	FrameMM    float64              `json:"frame_width_mm,omitzero" range:"10,3000" doc:"width of what the picture shows; default 200"`
}

// A Supply is a liquid at hand, with how it is bought.
type Supply struct {
	Name      string  `json:"name"`
	Is        Liquid  `json:"is" doc:"a liquid as the library writes it: kind, and what the kind needs"`
	PackGrams float64 `json:"pack_grams,omitzero" range:"1,100000" doc:"default 1000"`
}

// An Outlet is what pours: a jug's spout, a lip, a bottle.
type Outlet struct {
	Kind     string  `json:"kind" words:"spout,lip,bottle,closed bottle"`
	WidthMM  float64 `json:"width_mm" range:"0.5,100" doc:"bore, or width of the lip"`
	LengthMM float64 `json:"length_mm,omitzero" range:"0.5,400" doc:"of the bore; default its width"`
	HeadMM   float64 `json:"head_mm,omitzero" range:"0.5,500" doc:"of liquid above it; left out: pour_seconds says it"`
	Seconds  float64 `json:"pour_seconds,omitzero" range:"0.1,3600" doc:"wanted: the head follows"`
}

// A Drizzle is a thread of syrup, honey or sauce that coils where it lands.
type Drizzle struct {
	Liquid   Supply  `json:"liquid"`
	TempC    float64 `json:"temp_c" range:"0,95"`
	DrizzleG float64 `json:"drizzled_grams" range:"0.5,2000"`
	Outlet   Outlet  `json:"outlet"`
	DropMM   float64 `json:"drop_mm" range:"5,1000"`
}

// Pieces are chosen from weighed ones.
type Pieces struct {
	ToleranceGrams float64   `json:"tolerance_grams,omitzero" range:"0,1000"`
	NeverBelow     bool      `json:"never_below,omitzero" doc:"never under the declared mass"`
	PlateMM        float64   `json:"plate_mm,omitzero" range:"50,1000"`
	PieceMM        float64   `json:"piece_mm,omitzero" range:"3,300"`
	SpreadGrams    float64   `json:"spread_grams,omitzero" range:"0.001,1000" doc:"standard deviation of a piece, where none is weighed yet; default 7 per cent"`
	Weighed        []Weighed `json:"weighed,omitzero" range:"0,2000"`
}

// A Weighed piece lies on the tray.
type Weighed struct {
	Name  string  `json:"name"`
	Grams float64 `json:"grams" range:"0.01,10000"`
	Looks float64 `json:"looks" range:"0,100" doc:"the stylist's score"`
}
