package shoot

import "example.org/honestplate"

// A Brief is what a day, or several, are to show, and with what. Field names carry
// their units; what is marked omitzero may be left out and has the default that its
// line states.
type Brief struct {
	Title  string `json:"title" doc:"what the job is called"`
	Client string `json:"client" doc:"for whom"`
	About  string `json:"about" doc:"what the days are; say here if they are invented"`
	Place  Place  `json:"place,omitzero" doc:"where; what is left out is a line to fill in"`

	Days   []Day    `json:"days" range:"1,14" doc:"the days of the shoot, in order"`
	Order  string   `json:"order,omitzero" words:"free,fixed" doc:"free (the default): what holds longest comes first; fixed: as the dishes stand here"`
	People []Person `json:"people,omitzero" range:"0,60" doc:"who is there; left out: lines to fill in"`
	Hands  int      `json:"hands,omitzero" range:"1,40" doc:"people who prepare and swap at the same time; default 2"`

	ChangeoverMinutes float64 `json:"changeover_minutes,omitzero" range:"0,240" doc:"between two dishes on the set; default 10"`
	Confidence        float64 `json:"confidence,omitzero" range:"0.5,0.999" doc:"wanted chance that the prepared units suffice; default 0.9"`

	Room     Room     `json:"room" doc:"the air of the set"`
	Lamps    []Lamp   `json:"lamps,omitzero" range:"0,40" doc:"none, and no daylight, is a dark room"`
	Daylight float64  `json:"daylight_lux,omitzero" range:"1,100000" doc:"window light on the food, measured"`
	Freezers []Store  `json:"freezers,omitzero" range:"0,20" doc:"cabinets and freezers, any order"`
	Fridges  []Store  `json:"fridges,omitzero" range:"0,20"`
	Ovens    []Oven   `json:"ovens,omitzero" range:"0,20"`
	Cups     []string `json:"cups,omitzero" range:"0,20" words:"ISO 3,ISO 4,ISO 5,ISO 6,DIN 4,Ford 2,Ford 3,Ford 4,Ford 5,Zahn 1,Zahn 2,Zahn 3,Zahn 4,Zahn 5" doc:"flow cups at hand; left out: the ISO 2431 cup that suits goes on the kit list"`
	Scale    Scale    `json:"scale,omitzero" doc:"the bench scale; default 0.1 g steps to 3 kg"`

	Dishes []Dish `json:"dishes" range:"1,200" doc:"each is one picture"`
}

// A Place is where the crew goes.
type Place struct {
	Address   string  `json:"address,omitzero"`
	Hospital  string  `json:"nearest_emergency,omitzero" doc:"nearest emergency department"`
	AltitudeM float64 `json:"altitude_m,omitzero" range:"-400,4000" doc:"default 0: sea level"`
	TimeZone  string  `json:"time_zone,omitzero" doc:"as the IANA names it, such as Europe/Vienna; left out: local time without a change of clocks"`
}

// A Day is one date of the shoot.
type Day struct {
	Date         Date      `json:"date"`
	Call         TimeOfDay `json:"call" doc:"the crew arrives"`
	FirstShot    TimeOfDay `json:"first_shot"`
	Wrap         TimeOfDay `json:"wrap" doc:"the set is left; a time before the call, of this or of another, is on the next date"`
	Lunch        TimeOfDay `json:"lunch,omitzero" doc:"the set rests from then"`
	LunchMinutes float64   `json:"lunch_minutes,omitzero" range:"5,180" doc:"default 45 where there is a lunch"`
}

// A Person is somebody on the day.
type Person struct {
	Name  string `json:"name"`
	Role  string `json:"role"`
	Phone string `json:"phone,omitzero"`
}

// A Room is the air of the set, as it is expected or was measured.
type Room struct {
	TempC     float64              `json:"temp_c" range:"5,40"`
	RHPercent float64              `json:"rh_percent" range:"5,98"`
	AirSpeed  honestplate.Optional `json:"air_speed_m_s,omitzero" range:"0,5" doc:"left out: an occupied room"`
	Measured  bool                 `json:"measured,omitzero" doc:"temperature and humidity were read on the set, not expected"`
}

// A Lamp is one light. Watts is the electrical power of a continuous lamp; a flash is
// given by its energy, its pops and its modelling lamp.
type Lamp struct {
	Name          string  `json:"name"`
	Source        string  `json:"source" words:"tungsten,discharge,led,flash"`
	Watts         float64 `json:"watts,omitzero" range:"1,20000"`
	Joules        float64 `json:"joules_per_pop,omitzero" range:"1,10000"`
	PopsPerMinute float64 `json:"pops_per_minute,omitzero" range:"0.01,600"`
	ModellingW    float64 `json:"modelling_watts,omitzero" range:"1,2000"`
	Lux           float64 `json:"lux,omitzero" range:"1,500000" doc:"measured at the food; it then decides"`
	DistanceM     float64 `json:"distance_m,omitzero" range:"0.2,30"`
	BeamDegrees   float64 `json:"beam_degrees,omitzero" range:"5,170"`
	Stops         float64 `json:"diffuser_stops,omitzero" range:"0,8" doc:"that a soft box or diffuser takes"`
}

// A Store is a cabinet, freezer or fridge.
type Store struct {
	Name        string  `json:"name"`
	TempC       float64 `json:"temp_c" range:"-90,12"`
	Units       int     `json:"units" range:"1,5000" doc:"how many heroes, glasses or bottles fit"`
	AirSpeed    float64 `json:"air_speed_m_s,omitzero" range:"0,10" doc:"of a fan inside; left out: still"`
	CoolDownMin float64 `json:"cool_down_minutes,omitzero" range:"0,2880" doc:"from switching on to its temperature; default 4 h"`
	DryIce      bool    `json:"dry_ice,omitzero" doc:"cooled with dry ice"`
}

// An Oven bakes or keeps hot.
type Oven struct {
	Name       string  `json:"name"`
	TempC      float64 `json:"temp_c" range:"40,500"`
	Units      int     `json:"units" range:"1,500" doc:"how many fit at once"`
	PreheatMin float64 `json:"preheat_minutes,omitzero" range:"0,180" doc:"default 20"`
}

// A Scale is what heroes are weighed on.
type Scale struct {
	StepGrams float64 `json:"step_grams" range:"0.001,100"`
	MaxGrams  float64 `json:"max_grams" range:"1,200000"`
	CheckG    float64 `json:"check_weight_error_grams,omitzero" range:"0,100" doc:"largest error a check weight has shown; left out: none was used"`
}
