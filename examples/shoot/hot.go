package shoot

import (
	"cmp"
	"errors"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
	"example.org/honestplate/thermal"
)

// hotDish is the bowl as its clock takes it.
func (d *day) hotDish(q *Bowl) thermal.HotDish {
	return thermal.HotDish{
		Grams: q.FillGrams, Diameter: q.DiameterMM / 1000, StartC: q.StartC, LimitC: honestplate.Some(cmp.Or(q.LimitC, 60)),
		Solid: q.Solid, VesselGrams: q.VesselGrams, VesselC: q.VesselC,
	}
}

// bowl works hot food in an open vessel out.
func (d *day) bowl(j *job, t *Thing, p *PlannedThing) (*shown, error) {
	clock, err := clockOf(d, d.hotDish(t.Bowl))
	if err != nil {
		return nil, err
	}
	steam := t.Bowl.Wanted != "hot"
	events, l := d.clocked(j, t, kept(clock.Kept, "steam ends", "steam ends", false, steam), kept(clock.Kept, "cool", "cool", false, !steam))
	p.Events = events
	return l, nil
}

// pull is melted cheese as its clock takes it.
func (t *Thing) pull() thermal.Cheese {
	q := t.Cheese
	c := thermal.Cheese{Grams: t.Grams, Diameter: (q.DiameterMM - 2*q.RimMM) / 1000, StartC: q.BakedC, BreadThickness: q.BreadMM / 1000}
	if q.SauceMM.Given {
		c.SauceThickness = honestplate.Some(q.SauceMM.Value / 1000)
	}
	return c
}

// cheese works melted cheese out: where it lies, and its pull.
func (d *day) cheese(j *job, t *Thing, p *PlannedThing) (*shown, error) {
	q := t.Cheese
	round := plate.Round{Diameter: q.DiameterMM / 1000, Edge: q.RimMM / 1000, Slices: q.Slices}
	decl := portion.Declaration{Item: t.Name, Grams: t.Grams, StepGrams: d.step(), Advertised: t.Advertised}
	layout, err := plate.Strips{Favour: q.Favour}.Lay(round, decl)
	if err != nil {
		return nil, err
	}
	plan := &CheesePlan{DiameterMM: q.DiameterMM, Favour: q.Favour, SoldAs: cmp.Or(q.SoldAs, "whole"), RimMM: q.RimMM}
	for _, s := range layout.Strips {
		plan.StripGrams = append(plan.StripGrams, s.Grams)
	}
	plan.StripEnds = make([][2]Spot, len(layout.Strips))
	for _, s := range layout.Segments { // both slices beside a cut have the whole of it
		plan.StripEnds[s.Strip-1] = [2]Spot{spotOf(s.From), spotOf(s.To)}
	}
	for _, s := range layout.Slices {
		plan.SliceGrams, plan.SliceAt = append(plan.SliceGrams, s.Grams), append(plan.SliceAt, spotOf(s.Centre))
	}
	p.Cheese = plan
	if plan.SoldAs == "slice" {
		allowance := cmp.Or(q.Allowance, 0.1)
		sold, err := layout.SliceSold(allowance)
		if err != nil && !errors.Is(err, honestplate.ErrAdvertised) {
			return nil, err
		}
		plan.Over = sold.Over
		if sold.Beyond {
			p.Notes = append(p.Notes, Note{Code: FavourFlagged, Thing: t.Name, Value: honestplate.Some(sold.Over), Second: honestplate.Some(allowance)})
		}
	}
	clock, err := clockOf(d, t.pull())
	if err != nil {
		return nil, err
	}
	events, l := d.clocked(j, t, kept(clock.Kept, "strings", "opens", true, false), kept(clock.Kept, "sets", "closes", false, true))
	p.Events = events
	return l, nil
}
