package main

import (
	"fmt"
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/heat"
)

// A Plan is the brief worked out.
type Plan struct {
	Brief       *Brief
	Call, First time.Time
	Air         thermal.Air
	DewPointC   float64
	Lamps       []thermal.Lamp
	Light       []float64 // W/m2 on the food, a lamp each
	Shots       []Shot    // in the order of shooting
}

// A Shot is one dish worked out.
type Shot struct {
	Dish  *Dish
	Field string // the dish's path in the brief, for errors
	At    time.Time
	// Holds is how long one unit looks right on the set; Never in all three places
	// where nothing changes within the hour.
	Holds      honestplate.Window
	HoldsTill  string // what ends it
	Moment     string // for what is over in a moment: how long that lasts
	Decides    string // which uncertain input the time hangs on most
	Units      int    // to prepare, for the confidence asked
	Swap       time.Duration
	Events     []Event
	Lines      []Line
	Prep       []Prep
	Buys       []Buy
	Cautions   []string
	Planned    map[string]string // item -> what is planned of it, for the record
	Layout     []byte            // SVG of where things lie
	confidence float64
}

// Prep is something that must start before the shot.
type Prep struct {
	Before time.Duration // ahead of the shot
	What   string
}

// Buy is a line of the shopping list.
type Buy struct {
	Item  string
	Grams float64
	Count int
}

// fresh is the window of what does not change while it is on the set.
var fresh = honestplate.Window{Earliest: honestplate.Never(), Likely: honestplate.Never(), Latest: honestplate.Never()}

// Plan works the brief out. Its errors name the field of the brief.
func (b *Brief) Plan() (*Plan, error) {
	call, first, err := b.times()
	if err != nil {
		return nil, err
	}
	p := &Plan{Brief: b, Call: call, First: first}
	if p.Air, err = b.Room.air(); err != nil {
		return nil, &FieldError{"room", err}
	}
	if p.DewPointC, err = p.Air.DewPointC(); err != nil {
		return nil, &FieldError{"room", err}
	}
	for i, l := range b.Lamps {
		lamp := l.lamp()
		light, err := lamp.Irradiance()
		if err != nil {
			return nil, &FieldError{fmt.Sprintf("lamps[%d]", i), err}
		}
		p.Lamps, p.Light = append(p.Lamps, lamp), append(p.Light, light.Likely)
	}
	for i := range b.Dishes {
		shot, err := p.shot(&b.Dishes[i], fmt.Sprintf("dishes[%d]", i))
		if err != nil {
			return nil, err
		}
		p.Shots = append(p.Shots, *shot)
	}
	p.order()
	return p, nil
}

// order puts what holds longest first: the light is settled on what waits, and
// what melts comes when everything else is proven. Ties keep the brief's order.
func (p *Plan) order() {
	slices.SortStableFunc(p.Shots, func(a, b Shot) int {
		switch {
		case b.Holds.Earliest.Before(a.Holds.Earliest):
			return -1
		case a.Holds.Earliest.Before(b.Holds.Earliest):
			return 1
		}
		return 0
	})
	at := p.First
	for i := range p.Shots {
		p.Shots[i].At = at
		at = at.Add(p.Shots[i].slot())
	}
}

func (s *Shot) slot() time.Duration {
	return time.Duration(s.Dish.SlotMinutes * float64(time.Minute))
}

func (p *Plan) shot(d *Dish, field string) (*Shot, error) {
	s := &Shot{Dish: d, Field: field, Holds: fresh, Planned: map[string]string{}, confidence: p.Brief.Confidence}
	for j := range d.Frame {
		it := &d.Frame[j]
		if it.Grams == 0 && it.Count == 0 {
			continue // only dresses the picture
		}
		if err := it.declaration().Validate(); err != nil {
			return nil, &FieldError{fmt.Sprintf("%s.frame[%d]", field, j), err}
		}
	}
	units, err := portion.Heroes{SuccessRate: d.SuccessRate, Wanted: d.Wanted, Confidence: p.Brief.Confidence}.Units()
	if err != nil {
		return nil, &FieldError{field + ".success_rate", err}
	}
	s.Units = units
	switch {
	case d.Pour != nil:
		err = p.planPour(s, d.Pour)
	case d.Glass != nil:
		err = p.planGlass(s, d.Glass)
	case d.Scoop != nil:
		err = p.planScoop(s, d.Scoop)
	case d.Flatbread != nil:
		err = p.planFlatbread(s, d.Flatbread)
	case d.Pieces != nil:
		err = p.planPieces(s, d.Pieces)
	}
	if err != nil {
		return nil, err
	}
	s.rhythm()
	s.shopping()
	return s, nil
}

// rhythm sets how often a unit is swapped: at the earliest time it may be over,
// rounded down to what a person counts.
func (s *Shot) rhythm() {
	hold := s.Holds.Earliest.After
	if s.Holds.Earliest.Never || hold > time.Hour {
		return
	}
	step := 5 * time.Second
	if hold > 2*time.Minute {
		step = 30 * time.Second
	}
	s.Swap = max(hold.Truncate(step), time.Second)
}

// shopping lists the advertised items for all hero units. What a part of the dish
// mixes or pours it adds itself.
func (s *Shot) shopping() {
	for i := range s.Dish.Frame {
		it := &s.Dish.Frame[i]
		if it.Advertised && !slices.ContainsFunc(s.Buys, func(b Buy) bool { return b.Item == it.Item }) {
			s.Buys = append(s.Buys, Buy{it.Item, it.Grams * float64(s.Units), it.Count * s.Units})
		}
	}
}

func (it *Item) declaration() portion.Declaration {
	return portion.Declaration{Item: it.Item, Grams: it.Grams, StepGrams: it.StepGrams, Count: it.Count, Advertised: it.Advertised}
}

func (r Room) air() (thermal.Air, error) {
	a := thermal.Air{TempC: r.TempC, RH: r.RHPercent / 100, Speed: r.AirSpeed, PressurePa: r.PressureHPa * 100}
	if r.AltitudeM != 0 {
		pa, err := heat.PressureAtAltitude(r.AltitudeM)
		if err != nil {
			return a, err
		}
		a.PressurePa = pa
	}
	return a, a.Validate()
}

var sources = map[string]thermal.Source{
	"tungsten": thermal.Tungsten, "discharge": thermal.Discharge, "led": thermal.LED, "flash": thermal.Flash,
}

func (l Lamp) lamp() thermal.Lamp {
	return thermal.Lamp{
		Source: sources[l.Source], Watts: l.Watts, Lux: l.Lux,
		Joules: l.Joules, PopsPerMinute: l.PopsPerMinute, ModellingWatts: l.ModellingW,
		Distance: l.DistanceM, BeamDegrees: l.BeamDegrees, Transmittance: l.Transmittance,
	}
}

// add appends an answer to the dish's lines; an empty label continues the last.
func (s *Shot) add(label, text string) { s.Lines = append(s.Lines, Line{label, text}) }
