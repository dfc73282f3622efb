package main

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

func (p *Plan) planGlass(s *Shot, d *Glass) error {
	field := s.Field + ".glass"
	glass := thermal.Glass{
		Diameter: d.DiameterMM / 1000, Height: d.HeightMM / 1000, WallThickness: d.WallMM / 1000,
		DrinkGrams: d.DrinkGrams, DrinkC: honestplate.Some(d.DrinkC), IceGrams: d.IceGrams, WallC: honestplate.Some(d.GlassC),
	}
	clock, err := glass.Clock(p.Air, p.Lamps...)
	if err != nil {
		return &FieldError{field, err}
	}
	s.Events = []Event{
		{"haze", clock.Haze.Window, false},
		{"white fog", clock.Opaque.Window, d.Look == "haze"},
		{"beads", clock.Beads.Window, false},
		{"runs", clock.Runs.Window, d.Look == "beads"},
	}
	decides := clock.Beads.Decides
	if !clock.Beads.MayHappen() {
		decides = clock.Haze.Decides
	}
	s.add("Fog", fmt.Sprintf("haze %s; white %s", when(clock.Haze.Window), when(clock.Opaque.Window)))
	s.add("Beads", fmt.Sprintf("%s; decided by: %s", when(clock.Beads.Window), decisive(decides)))
	s.add("Runs", when(clock.Runs.Window))
	if d.IceGrams > 0 {
		s.Events = append(s.Events, Event{"ice gone", clock.IceGone.Window, true})
		s.add("Ice", fmt.Sprintf("real; the last of it gone %s", when(clock.IceGone.Window)))
	}
	opens, closes, look := clock.Haze.Window, clock.Opaque.Window, "a haze that the drink shows through"
	if d.Look == "beads" {
		opens, closes, look = clock.Beads.Window, clock.Runs.Window, "beads that do not run"
	}
	switch {
	case !opens.MayHappen():
		s.add("Shoot", fmt.Sprintf("the wanted look, %s, never comes by itself: the dew point is %.1f degC; a fine spray of water on the outside is a stand-in for dew: record it", look, p.DewPointC))
	default:
		s.add("Shoot", fmt.Sprintf("wanted: %s, from %s until %s after the glass is filled", look, opens.Likely, until(closes)))
	}
	s.Holds = earlier(closes, clock.IceGone.Window)
	s.HoldsTill = "the look is over"
	s.Decides = decisive(decides)
	if err := p.chill(s, d); err != nil {
		return &FieldError{field + ".glass_c", err}
	}
	if err := s.place(d.Item, glass.Diameter, 0.8*(glass.Diameter-2*glass.WallThickness), []portion.Piece{{Name: d.Item, Grams: d.DrinkGrams}}); err != nil {
		return &FieldError{field + ".diameter_mm", err}
	}
	s.Cautions = append(s.Cautions, "chilled glass breaks under a hot lamp or a hot drink: let it warm before the next fill")
	return nil
}

// overnight is how long ahead a drink goes into the refrigerator; common practice, no
// source.
const overnight = 14 * time.Hour

// refrigeratorH is the exchange with the still air of a refrigerator, W/(m2 K),
// from published examples: 6 to 9 (read).
const refrigeratorH = 7

// chill counts back when the glasses go into the cold, and checks that the fill
// does not break them.
func (p *Plan) chill(s *Shot, d *Glass) error {
	shock, err := thermal.Glassware().Annealed.Shock(d.GlassC, d.DrinkC, d.WallMM/1000, 0)
	if err != nil {
		return err
	}
	if shock.MayBreak {
		s.add("Glass", fmt.Sprintf("%.0f K between glass and drink: %s", shock.DeltaK, shock))
	}
	if d.DrinkC < p.Air.TempC-1 {
		s.Prep = append(s.Prep, Prep{overnight, fmt.Sprintf("the %s into the cold, %.0f degC", d.Item, d.DrinkC)})
	}
	if d.GlassC >= p.Air.TempC-1 {
		return nil
	}
	// A wall that cools on both sides, in air a degree colder than it has to be.
	glass, until := heat.SodaLime(), d.GlassC-1
	tau := glass.Density * glass.SpecificHeat * d.WallMM / 1000 / (2 * refrigeratorH) // s
	took := time.Duration(tau * math.Log((p.Air.TempC-until)/(d.GlassC-until)) * float64(time.Second))
	s.Prep = append(s.Prep, Prep{took + doors, fmt.Sprintf("%d glasses into the cold, %.0f degC: they need %.0f min",
		s.Units, d.GlassC, math.Ceil(took.Minutes()))})
	return nil
}

var mixes = map[string]food.FrozenMix{
	"vanilla ice cream": food.Recipes().VanillaIceCream, "premium ice cream": food.Recipes().PremiumIceCream,
	"chocolate ice cream": food.Recipes().ChocolateIceCream, "gelato": food.Recipes().Gelato, "sorbet": food.Recipes().Sorbet,
	"soft serve": food.Recipes().SoftServe, "frozen yogurt": food.Recipes().FrozenYogurt, "ice pop": food.Recipes().IcePop,
}

// doors is added to every freezer time: doors are opened, shelves are full.
const doors = 30 * time.Minute

// The freezers are asked for a core this much warmer than they are; the last
// degrees take for ever.
const (
	homeShort = 3.0
	deepShort = 4.0
)

func (p *Plan) planScoop(s *Shot, d *Scoop) error {
	field := s.Field + ".scoop"
	mix, ok := mixes[d.Mix]
	if !ok {
		return fieldErrorf(field+".mix", "%q, want one of %q", d.Mix, slices.Sorted(maps.Keys(mixes)))
	}
	home, deep := thermal.Freezers().Home, thermal.Freezers().Deep
	home.TempC, deep.TempC = p.Brief.Freezers.HomeC, p.Brief.Freezers.DeepC
	homeC, deepC := home.TempC+homeShort, deep.TempC+deepShort
	if d.CabinetC <= homeC {
		return fieldErrorf(field+".cabinet_c", "is %g: the home freezer brings it to %g, so it would not harden there", d.CabinetC, homeC)
	}
	if homeC <= deepC {
		return fieldErrorf("freezers.deep_c", "is %g: too near home_c for a second, deeper freeze", deep.TempC)
	}
	freeze := thermal.DeepFreeze{Mix: mix, Diameter: d.DiameterMM / 1000, StartC: honestplate.Some(d.CabinetC), TargetC: homeC, Medium: home}
	first, err := freeze.Clock()
	if err != nil {
		return &FieldError{field, err}
	}
	freeze.StartC, freeze.TargetC, freeze.Medium = honestplate.Some(homeC), deepC, deep
	second, err := freeze.Clock()
	if err != nil {
		return &FieldError{field, err}
	}
	var clock thermal.ScoopClock
	for _, from := range []struct {
		label string
		tempC float64
	}{{"Cabinet", d.CabinetC}, {"One freeze", homeC}, {"Two freezes", deepC}} {
		clock, err = thermal.Scoop{Mix: mix, Diameter: d.DiameterMM / 1000, StartC: from.tempC}.Clock(p.Air, p.Lamps...)
		if err != nil {
			return &FieldError{field, err}
		}
		s.add(from.label, fmt.Sprintf("at %.0f degC: soft %s, drips %s, shape lost %s", from.tempC, when(clock.Softens.Window), when(clock.FirstDrip.Window), when(clock.Slumps.Window)))
	}
	if grams, err := ballGrams(mix, d.DiameterMM/1000); err == nil {
		s.add("Weigh", fmt.Sprintf("a ball of %.0f mm of this mix weighs about %.0f g; the scale decides, not the scoop", d.DiameterMM, grams))
	}
	decides := clock.FirstDrip.Decides
	if !clock.FirstDrip.MayHappen() {
		decides = clock.Softens.Decides
	}
	homeTime, deepTime, ok := surely(first.Core.Window, second.Core.Window)
	if !ok {
		return fieldErrorf("freezers", "perhaps never bring a core to %.0f degC", deepC)
	}
	s.add("Freeze", fmt.Sprintf("first %s at %.0f degC, then %s at %.0f degC, until the core is at %.0f degC",
		hours(homeTime), home.TempC, hours(deepTime), deep.TempC, deepC))
	s.Prep = append(s.Prep,
		Prep{deepTime + homeTime, fmt.Sprintf("%d scoops of %s from the cabinet into the home freezer, %.0f degC", s.Units, d.Item, home.TempC)},
		Prep{deepTime, fmt.Sprintf("the scoops of %s on into the deep freezer, %.0f degC", d.Item, deep.TempC)})
	s.Events = []Event{{"edges soft", clock.Softens.Window, true}, {"first drip", clock.FirstDrip.Window, true}, {"shape lost", clock.Slumps.Window, true}}
	s.Holds, s.HoldsTill, s.Decides = clock.Softens.Window, "its edges go soft, and soon it drips", decisive(decides)
	ball := portion.Piece{Name: d.Item, Grams: s.Dish.find(d.Item).Grams}
	if err := s.place(d.Item, d.PlateMM/1000, d.DiameterMM/1000, []portion.Piece{ball}); err != nil {
		return &FieldError{field + ".plate_mm", err}
	}
	s.Cautions = append(s.Cautions, "deep-frozen metal and food burn bare skin: gloves; deep-frozen food is not for eating straight away")
	if deep.TempC <= -50 {
		s.Cautions = append(s.Cautions, "a freezer this cold, and any dry ice in it: trained hands, gloves, fresh air; dry ice suffocates and never goes into a sealed box")
	}
	return nil
}

// surely is the time to count back: the late end of the band and a margin for
// doors, in whole five minutes.
func surely(first, second honestplate.Window) (time.Duration, time.Duration, bool) {
	late := func(w honestplate.Window) time.Duration {
		return (w.Latest.After + doors).Truncate(5*time.Minute) + 5*time.Minute
	}
	return late(first), late(second), !first.Latest.Never && !second.Latest.Never
}

// ballGrams is what a ball of a mix weighs.
func ballGrams(mix food.FrozenMix, diameter float64) (float64, error) {
	density, err := mix.Density()
	return density * math.Pi / 6 * diameter * diameter * diameter * 1000, err
}
