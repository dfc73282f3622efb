package main

import (
	"fmt"
	"time"

	"example.org/honestplate/thermal"
)

func (p *Plan) planGlass(s *Shot, d *Glass) error {
	field := s.Field + ".glass"
	glass := thermal.Glass{
		Diameter: d.DiameterMM / 1000, Height: d.HeightMM / 1000, WallThickness: d.WallMM / 1000,
		DrinkGrams: d.DrinkGrams, DrinkC: d.DrinkC, IceGrams: d.IceGrams, WallC: d.GlassC,
	}
	clock, err := glass.Clock(p.Air, p.Lamps...)
	if err != nil {
		return &FieldError{field, err}
	}
	s.Events = []Event{
		{"haze", clock.Haze, false},
		{"white fog", clock.Opaque, d.Look == "haze"},
		{"beads", clock.Beads, false},
		{"runs", clock.Runs, d.Look == "beads"},
	}
	s.add("Fog", fmt.Sprintf("haze after %s; white after %s", clock.Haze, clock.Opaque))
	s.add("Beads", fmt.Sprintf("after %s; runs after %s", clock.Beads, clock.Runs))
	if d.IceGrams > 0 {
		s.Events = append(s.Events, Event{"ice gone", clock.IceGone, true})
		s.add("Ice", fmt.Sprintf("real; the last of it gone after %s", clock.IceGone))
	}
	opens, closes, look := clock.Haze, clock.Opaque, "a haze that the drink shows through"
	if d.Look == "beads" {
		opens, closes, look = clock.Beads, clock.Runs, "beads that do not run"
	}
	switch {
	case !opens.MayHappen():
		s.add("Shoot", fmt.Sprintf("the wanted look, %s, never comes by itself: the dew point is %.1f degC; a fine spray of water on the outside is a stand-in for dew: record it", look, p.DewPointC))
	default:
		s.add("Shoot", fmt.Sprintf("wanted: %s, from %s until %s after the glass is filled", look, thermal.Clock(opens.Likely), until(closes)))
	}
	s.Holds = earlier(closes, clock.IceGone)
	s.HoldsTill = "the look is over"
	s.Decides = decisive(clock.Decides)
	if shock, err := thermal.ThermalShock(thermal.ShockCheck{}); err == nil {
		_ = shock
	}
	s.Cautions = append(s.Cautions, "chilled glass breaks under a hot lamp or a hot drink: let it warm before the next fill")
	return nil
}

// until says when a window closes, or that it does not.
func until(w thermal.Window) string {
	if w.Likely == thermal.Never {
		return "the end of the slot"
	}
	return thermal.Clock(w.Likely)
}

// earlier is the window of whatever comes first of two.
func earlier(a, b thermal.Window) thermal.Window {
	return thermal.Window{Earliest: min(a.Earliest, b.Earliest), Likely: min(a.Likely, b.Likely), Latest: min(a.Latest, b.Latest)}
}

func decisive(s []thermal.Sensitivity) string {
	if len(s) == 0 {
		return ""
	}
	return fmt.Sprintf("%s (%.0f %% of the spread)", s[0].Input, 100*s[0].Share)
}

var mixes = map[string]func() thermal.FrozenMix{
	"vanilla ice cream": thermal.VanillaIceCream, "premium ice cream": thermal.PremiumIceCream,
	"chocolate ice cream": thermal.ChocolateIceCream, "gelato": thermal.Gelato, "sorbet": thermal.Sorbet,
	"soft serve": thermal.SoftServe, "frozen yogurt": thermal.FrozenYogurt, "ice pop": thermal.IcePop,
}

// safety is what a freezer's time is multiplied by before counting back: doors
// are opened, shelves are full.
const prepMargin = 30 * time.Minute
