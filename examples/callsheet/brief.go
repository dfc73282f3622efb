package main

import (
	_ "embed"
	"fmt"
	"io"
	"time"
)

// The embedded brief: an invented day at an invented cafe.
//
//go:embed brief.json
var demoBrief []byte

// A Brief describes one studio day. Field names carry their units; a number's
// limits stand in its range tag. Fields marked omitzero may be left out.
type Brief struct {
	Title      string   `json:"title"`
	Client     string   `json:"client"`
	About      string   `json:"about"`                         // what the day is, and that it is invented if it is
	Date       string   `json:"date"`                          // 2006-01-02
	CallTime   string   `json:"call_time"`                     // 15:04, local: the crew arrives
	FirstShot  string   `json:"first_shot"`                    // 15:04, local: the first dish is shot
	Confidence float64  `json:"confidence" range:"0.5,0.9999"` // that the prepared hero units suffice
	Room       Room     `json:"room"`
	Lamps      []Lamp   `json:"lamps"`
	Freezers   Freezers `json:"freezers"`
	Dishes     []Dish   `json:"dishes"`
}

// Room is the air of the set. Pressure follows from the altitude unless given.
type Room struct {
	TempC       float64 `json:"temp_c" range:"5,40"`
	RHPercent   float64 `json:"rh_percent" range:"1,100"`
	AirSpeed    float64 `json:"air_speed_m_s" range:"0,5"` // 0: still; people moving 0.1..0.2; a fan 1 and more
	AltitudeM   float64 `json:"altitude_m,omitzero" range:"-400,5000"`
	PressureHPa float64 `json:"pressure_hpa,omitzero" range:"500,1100"`
}

// Lamp is one light on the set. Watts is the electrical power of a continuous
// lamp; a flash is given by its stored energy, its pops and its modelling lamp.
type Lamp struct {
	Name          string  `json:"name"`
	Source        string  `json:"source"` // tungsten, discharge, led or flash
	Watts         float64 `json:"watts,omitzero" range:"1,20000"`
	Joules        float64 `json:"joules_per_pop,omitzero" range:"1,5000"`
	PopsPerMinute float64 `json:"pops_per_minute,omitzero" range:"0.01,120"`
	ModellingW    float64 `json:"modelling_watts,omitzero" range:"1,2000"`
	Lux           float64 `json:"lux,omitzero" range:"1,200000"` // measured at the food; it then decides
	DistanceM     float64 `json:"distance_m" range:"0.2,20"`
	BeamDegrees   float64 `json:"beam_degrees" range:"5,170"`
	Transmittance float64 `json:"transmittance,omitzero" range:"0.01,1"` // of soft box or diffuser; left out: bare
}

// Freezers are the two stages frozen food passes before the set.
type Freezers struct {
	HomeC float64 `json:"home_c" range:"-30,-5"`
	DeepC float64 `json:"deep_c" range:"-90,-20"`
}

// Dish is one picture. It carries one of pour, glass, scoop, flatbread, pieces.
type Dish struct {
	Name        string     `json:"name"`
	SlotMinutes float64    `json:"slot_minutes" range:"5,240"` // time on set
	Wanted      int        `json:"wanted_takes" range:"1,20"`
	SuccessRate float64    `json:"success_rate" range:"0.02,0.99"` // share of hero units that give a good take
	Frame       []Item     `json:"frame"`
	Pour        *Pour      `json:"pour,omitzero"`
	Glass       *Glass     `json:"glass,omitzero"`
	Scoop       *Scoop     `json:"scoop,omitzero"`
	Flatbread   *Flatbread `json:"flatbread,omitzero"`
	Pieces      *Pieces    `json:"pieces,omitzero"`
}

// Item is a thing in the frame. An advertised one declares its mass, its count or
// both, and the scale's step; another may have a stand-in, with the reason.
type Item struct {
	Item       string  `json:"item"`
	Advertised bool    `json:"advertised"`
	Grams      float64 `json:"grams,omitzero" range:"0.01,100000"`
	StepGrams  float64 `json:"step_grams,omitzero" range:"0.001,100"`
	Count      int     `json:"count,omitzero" range:"1,10000"`
	StandIn    string  `json:"stand_in,omitzero"`
	Why        string  `json:"why,omitzero"`
}

// Pour is a liquid poured for the camera. Either wanted_mpas or pours_like says
// how thick; of an advertised liquid only the temperature may be chosen.
type Pour struct {
	Item        string   `json:"item"`                                    // names an item of the frame
	Liquids     []Liquid `json:"liquids"`                                 // at hand: one, or a thin and a thick one
	WantedMPaS  float64  `json:"wanted_mpas,omitzero" range:"0.5,100000"` // dynamic viscosity
	PoursLike   *Liquid  `json:"pours_like,omitzero"`                     // at the serving temperature
	TempC       float64  `json:"temp_c" range:"0,90"`                     // at the pour
	LowestC     float64  `json:"lowest_c,omitzero" range:"0,90"`          // an advertised liquid may be
	HighestC    float64  `json:"highest_c,omitzero" range:"0,90"`         // served between these
	BatchGrams  float64  `json:"batch_grams" range:"1,100000"`
	StepGrams   float64  `json:"step_grams" range:"0.001,100"`
	PouredGrams float64  `json:"poured_grams" range:"1,10000"` // in one take
	Jug         Jug      `json:"jug"`
	DropMM      float64  `json:"drop_mm" range:"5,2000"`           // from the lip to the food
	PlateMM     float64  `json:"plate_mm" range:"40,800"`          // the plate or bowl it lands on, across
	Onto        string   `json:"onto"`                             // dry plate, or film: a surface already wet
	FilmMM      float64  `json:"film_mm,omitzero" range:"0.05,50"` // depth of that liquid
}

// Jug is what pours: an outlet of a diameter, fed by a head of liquid.
type Jug struct {
	OutletMM float64 `json:"outlet_mm" range:"1,60"`
	LengthMM float64 `json:"length_mm" range:"0.5,300"`
	HeadMM   float64 `json:"head_mm" range:"1,500"`
}

// Liquid is one from the library, named by its kind, perhaps corrected by a
// measurement of the bottle at hand.
type Liquid struct {
	Name            string    `json:"name"`
	Kind            string    `json:"kind"`
	FatPercent      float64   `json:"fat_percent,omitzero" range:"0.03,50"`
	Brix            float64   `json:"brix,omitzero" range:"0,90"`
	MoisturePercent float64   `json:"moisture_percent,omitzero" range:"10,30"`
	SolidsPercent   float64   `json:"solids_percent,omitzero" range:"1,100"`
	Measured        *Measured `json:"measured,omitzero"`
}

// Measured is a viscosity the user measured; it replaces the table.
type Measured struct {
	TempC     float64 `json:"temp_c" range:"0,90"`
	MPaS      float64 `json:"mpas" range:"0.3,1000000"`
	PlusMinus float64 `json:"plus_minus_percent" range:"0.1,50"`
}

// Glass is a cold drink in a glass, with or without real ice.
type Glass struct {
	Item       string  `json:"item"`
	DiameterMM float64 `json:"diameter_mm" range:"30,150"`
	HeightMM   float64 `json:"height_mm" range:"30,300"` // outside, of the glass
	WallMM     float64 `json:"wall_mm" range:"0.5,10"`
	DrinkGrams float64 `json:"drink_grams" range:"20,2000"`
	DrinkC     float64 `json:"drink_c" range:"-5,30"`
	IceGrams   float64 `json:"ice_grams,omitzero" range:"1,1000"`
	GlassC     float64 `json:"glass_c" range:"-30,40"` // chilled to
	Look       string  `json:"look"`                   // haze or beads: what the picture wants
}

// Scoop is a ball of frozen dessert.
type Scoop struct {
	Item       string  `json:"item"`
	Mix        string  `json:"mix"` // vanilla ice cream, sorbet, ...
	DiameterMM float64 `json:"diameter_mm" range:"15,120"`
	PlateMM    float64 `json:"plate_mm" range:"40,800"`
	CabinetC   float64 `json:"cabinet_c" range:"-25,-8"` // of the serving cabinet it is scooped from
}

// Flatbread is a round baked with an item laid in strips over its cuts. The camera
// stands at the bottom of the drawing, in front of slice 1.
type Flatbread struct {
	Item       string  `json:"item"`
	DiameterMM float64 `json:"diameter_mm" range:"50,800"`
	Slices     int     `json:"slices" range:"2,24"`
	RimMM      float64 `json:"rim_mm" range:"0,100"`   // kept free of the item
	Favour     float64 `json:"favour" range:"0,0.9"`   // of the camera side: near the front a strip carries 1 + favour of the even share
	BakedC     float64 `json:"baked_c" range:"60,110"` // of the cheese when it leaves the oven
	BreadMM    float64 `json:"bread_mm" range:"1,60"`
}

// Pieces are chosen from weighed ones.
type Pieces struct {
	Item           string    `json:"item"`
	ToleranceGrams float64   `json:"tolerance_grams" range:"0,1000"`
	NeverBelow     bool      `json:"never_below"` // never under the declared mass
	PlateMM        float64   `json:"plate_mm" range:"50,600"`
	PieceMM        float64   `json:"piece_mm" range:"5,200"`
	Weighed        []Weighed `json:"weighed"`
}

// Weighed is one piece on the tray.
type Weighed struct {
	Name  string  `json:"name"`
	Grams float64 `json:"grams" range:"0.01,10000"`
	Looks float64 `json:"looks" range:"0,100"` // the stylist's score
}

// ReadBrief reads a brief strictly and checks what one field cannot say alone.
func ReadBrief(r io.Reader) (*Brief, error) {
	b := new(Brief)
	if err := decode(r, b); err != nil {
		return nil, err
	}
	return b, b.check()
}

// times returns the call time and the first shot.
func (b *Brief) times() (call, first time.Time, err error) {
	if _, err = time.Parse("2006-01-02", b.Date); err != nil {
		return call, first, fieldErrorf("date", "%q: want a day of the calendar, as 2026-10-14", b.Date)
	}
	if call, err = time.Parse("2006-01-02 15:04", b.Date+" "+b.CallTime); err != nil {
		return call, first, fieldErrorf("call_time", "%q: want 15:04", b.CallTime)
	}
	if first, err = time.Parse("2006-01-02 15:04", b.Date+" "+b.FirstShot); err != nil {
		return call, first, fieldErrorf("first_shot", "%q: want 15:04", b.FirstShot)
	}
	if first.Before(call) {
		return call, first, fieldErrorf("first_shot", "%s is before the call time %s", b.FirstShot, b.CallTime)
	}
	return call, first, nil
}

func (b *Brief) check() error {
	if _, _, err := b.times(); err != nil {
		return err
	}
	if b.Room.AltitudeM != 0 && b.Room.PressureHPa != 0 {
		return fieldErrorf("room.pressure_hpa", "give either pressure_hpa or altitude_m")
	}
	for i, l := range b.Lamps {
		if err := l.check(fmt.Sprintf("lamps[%d]", i)); err != nil {
			return err
		}
	}
	if b.Freezers.DeepC >= b.Freezers.HomeC {
		return fieldErrorf("freezers.deep_c", "%g is not colder than home_c %g", b.Freezers.DeepC, b.Freezers.HomeC)
	}
	names := map[string]bool{}
	for i := range b.Dishes {
		d, field := &b.Dishes[i], fmt.Sprintf("dishes[%d]", i)
		if names[d.Name] {
			return fieldErrorf(field+".name", "%q names two dishes", d.Name)
		}
		names[d.Name] = true
		if err := d.check(field); err != nil {
			return err
		}
	}
	return nil
}

func (l *Lamp) check(field string) error {
	switch l.Source {
	case "tungsten", "discharge", "led":
		if l.Watts == 0 {
			return fieldErrorf(field+".watts", "missing: a %s lamp has a power", l.Source)
		}
		if l.Joules != 0 || l.PopsPerMinute != 0 || l.ModellingW != 0 {
			return fieldErrorf(field+".joules_per_pop", "only a flash has pops and a modelling lamp")
		}
	case "flash":
		if l.Joules == 0 || l.PopsPerMinute == 0 {
			return fieldErrorf(field+".joules_per_pop", "missing: a flash has joules_per_pop and pops_per_minute")
		}
		if l.Watts != 0 {
			return fieldErrorf(field+".watts", "a flash has modelling_watts instead")
		}
	default:
		return fieldErrorf(field+".source", "%q, want tungsten, discharge, led or flash", l.Source)
	}
	return nil
}

func (d *Dish) check(field string) error {
	parts := 0
	item, part := "", ""
	for _, p := range []struct {
		set        bool
		name, item string
	}{
		{d.Pour != nil, "pour", itemOf(d.Pour, func(p *Pour) string { return p.Item })},
		{d.Glass != nil, "glass", itemOf(d.Glass, func(g *Glass) string { return g.Item })},
		{d.Scoop != nil, "scoop", itemOf(d.Scoop, func(s *Scoop) string { return s.Item })},
		{d.Flatbread != nil, "flatbread", itemOf(d.Flatbread, func(f *Flatbread) string { return f.Item })},
		{d.Pieces != nil, "pieces", itemOf(d.Pieces, func(p *Pieces) string { return p.Item })},
	} {
		if p.set {
			parts, item, part = parts+1, p.item, p.name
		}
	}
	if parts != 1 {
		return fieldErrorf(field, "has %d of pour, glass, scoop, flatbread and pieces, want one", parts)
	}
	if d.find(item) == nil {
		return fieldErrorf(field+"."+part+".item", "%q is not in this dish's frame", item)
	}
	seen, advertised := map[string]bool{}, false
	for j := range d.Frame {
		it, at := &d.Frame[j], fmt.Sprintf("%s.frame[%d]", field, j)
		if seen[it.Item] {
			return fieldErrorf(at+".item", "%q is twice in the frame", it.Item)
		}
		seen[it.Item] = true
		advertised = advertised || it.Advertised
		if err := it.check(at); err != nil {
			return err
		}
	}
	if !advertised {
		return fieldErrorf(field+".frame", "no item is advertised: then what does the picture sell?")
	}
	switch {
	case d.Pour != nil:
		if err := d.Pour.check(field+".pour", d.find(item).Advertised); err != nil {
			return err
		}
		return asDeclared(field+".pour.poured_grams", d.Pour.PouredGrams, d.find(item))
	case d.Glass != nil:
		return d.checkGlass(field + ".glass")
	case d.Flatbread != nil:
		return d.needsDeclared(field+".flatbread.item", item, false)
	case d.Pieces != nil:
		return d.needsDeclared(field+".pieces.item", item, true)
	}
	return nil
}

// checkGlass wants real ice to be in the frame, where it is said whether it is sold, and
// the amounts to be those declared.
func (d *Dish) checkGlass(field string) error {
	g := d.Glass
	if g.Look != "haze" && g.Look != "beads" {
		return fieldErrorf(field+".look", "%q, want haze or beads", g.Look)
	}
	if err := asDeclared(field+".drink_grams", g.DrinkGrams, d.find(g.Item)); err != nil {
		return err
	}
	if g.IceGrams == 0 {
		return nil
	}
	ice := d.find("ice")
	if ice == nil {
		return fieldErrorf(field+".ice_grams", "%g, but no item \"ice\" is in this dish's frame", g.IceGrams)
	}
	if ice.StandIn != "" {
		return fieldErrorf(field+".ice_grams", "%g of real ice, but the frame has a stand-in for it", g.IceGrams)
	}
	return asDeclared(field+".ice_grams", g.IceGrams, ice)
}

// asDeclared refuses an amount that differs from the declared one of an advertised item,
// which is neither exceeded nor fallen short of.
func asDeclared(field string, grams float64, it *Item) error {
	if it.Advertised && it.Grams != 0 && grams != it.Grams {
		return fieldErrorf(field, "is %g, but %q is advertised and declares %g g", grams, it.Item, it.Grams)
	}
	return nil
}

func itemOf[T any](p *T, item func(*T) string) string {
	if p == nil {
		return ""
	}
	return item(p)
}

// find returns the item of the frame with a name, or nil.
func (d *Dish) find(name string) *Item {
	for j := range d.Frame {
		if d.Frame[j].Item == name {
			return &d.Frame[j]
		}
	}
	return nil
}

func (d *Dish) needsDeclared(field, item string, count bool) error {
	it := d.find(item)
	if it.Grams == 0 {
		return fieldErrorf(field, "%q declares no grams in the frame", item)
	}
	if count && it.Count == 0 {
		return fieldErrorf(field, "%q declares no count in the frame", item)
	}
	return nil
}

func (it *Item) check(field string) error {
	switch {
	case it.Advertised && it.StandIn != "":
		return fieldErrorf(field+".stand_in", "%q is advertised: it is shown as it is sold", it.Item)
	case it.Advertised && it.Grams == 0 && it.Count == 0:
		return fieldErrorf(field+".grams", "missing: an advertised item declares grams or count")
	case it.Grams != 0 && it.StepGrams == 0:
		return fieldErrorf(field+".step_grams", "missing: a mass needs the scale's step")
	case it.StandIn != "" && it.Why == "":
		return fieldErrorf(field+".why", "missing: a stand-in needs its reason")
	}
	return nil
}

func (p *Pour) check(field string, advertised bool) error {
	if (p.WantedMPaS == 0) == (p.PoursLike == nil) {
		return fieldErrorf(field+".wanted_mpas", "give either wanted_mpas or pours_like")
	}
	if advertised {
		if len(p.Liquids) != 1 {
			return fieldErrorf(field+".liquids", "has %d liquids, want 1: %q is advertised and pours as it is", len(p.Liquids), p.Item)
		}
		if p.LowestC >= p.HighestC {
			return fieldErrorf(field+".lowest_c", "%g is not below highest_c %g", p.LowestC, p.HighestC)
		}
	} else if len(p.Liquids) != 2 {
		return fieldErrorf(field+".liquids", "has %d liquids, want 2: a thin and a thick one", len(p.Liquids))
	}
	switch p.Onto {
	case "dry plate":
		if p.FilmMM != 0 {
			return fieldErrorf(field+".film_mm", "a dry plate has no film")
		}
	case "film":
		if p.FilmMM == 0 {
			return fieldErrorf(field+".film_mm", "missing: how deep is the liquid it falls into")
		}
	default:
		return fieldErrorf(field+".onto", "%q, want dry plate or film", p.Onto)
	}
	if p.PouredGrams > p.BatchGrams {
		return fieldErrorf(field+".poured_grams", "%g is more than the batch of %g g", p.PouredGrams, p.BatchGrams)
	}
	return nil
}
