package main

import (
	"fmt"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/thermal"
)

func (p *Plan) planFlatbread(s *Shot, d *Flatbread) error {
	field := s.Field + ".flatbread"
	it := s.Dish.find(d.Item)
	round := portion.Round{Diameter: d.DiameterMM / 1000, Edge: d.RimMM / 1000, Slices: d.Slices}
	layout, err := portion.Strips{Favour: d.Favour}.Lay(round, it.declaration())
	if err != nil {
		return &FieldError{field, err}
	}
	s.Layout = layout.SVG()
	decimals := stepDecimals(it.StepGrams)
	var strips, slices []string
	for _, st := range layout.Strips {
		strips = append(strips, fmt.Sprintf("%.*f", decimals, st.Grams))
	}
	for _, sl := range layout.Slices {
		slices = append(slices, fmt.Sprintf("%.*f", decimals, sl.Grams))
	}
	s.add("Strips", fmt.Sprintf("%s over the cuts before baking: %s g = %.*f g", d.Item, strings.Join(strips, " + "), decimals, it.Grams))
	s.add("Slices", fmt.Sprintf("from the camera clockwise: %s g = %.*f g", strings.Join(slices, " + "), decimals, it.Grams))
	s.Planned[d.Item] = fmt.Sprintf("%.*f g in %d strips over the cuts", decimals, it.Grams, len(layout.Strips))
	clock, err := thermal.Cheese{
		Grams: it.Grams, Diameter: (d.DiameterMM - 2*d.RimMM) / 1000,
		StartC: d.BakedC, BreadThickness: d.BreadMM / 1000,
	}.Clock(p.Air, p.Lamps...)
	if err != nil {
		return &FieldError{field, err}
	}
	every := (s.slot() / time.Duration(s.Units)).Truncate(time.Minute)
	s.add("Oven", fmt.Sprintf("one leaves it every %s for the %d heroes of the slot", honestplate.After(max(every, time.Minute)), s.Units))
	s.Events = []Event{{"strings", clock.Opens.Window, false}, {"pull over", clock.Closes.Window, true}}
	s.add("Pull", fmt.Sprintf("strings from %s; over %s; decided by: %s", opensAt(clock.Opens.Window), when(clock.Closes.Window), decisive(clock.Closes.Decides)))
	s.Holds, s.HoldsTill, s.Decides = clock.Closes.Window, "the cheese sets", decisive(clock.Closes.Decides)
	s.Cautions = append(s.Cautions, "oven-hot boards and cheese burn: gloves for whoever pulls the slice")
	return nil
}

func opensAt(w honestplate.Window) string {
	if w.Likely == (honestplate.Moment{}) {
		return "the oven on"
	}
	return w.String() + " out of the oven"
}
