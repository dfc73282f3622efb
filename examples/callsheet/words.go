package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
)

// The plan holds codes and numbers; the words are here, and only here.

// eventWords are what a crew calls an event.
var eventWords = map[string]string{
	"haze": "haze", "white": "white fog", "beads": "beads", "runs": "first run", "dry": "dry again",
	"ice gone": "ice gone", "soft": "edges soft", "drip": "first drip", "puddle": "puddle", "slump": "shape lost",
	"steam ends": "steam gone", "cool": "too cool", "strings": "strings", "sets": "sets, tears",
	"warm": "too warm", "runny": "runny", "pour ends": "pour ends",
}

func event(key string) string {
	if w, ok := eventWords[key]; ok {
		return w
	}
	return key
}

// remedyWords say what to do about a picture that does not surely stand.
var remedyWords = map[shoot.Remedy]string{
	shoot.TestUnit:     "run one test unit first and note its times: that settles most of it",
	shoot.DrierAir:     "drier air",
	shoot.DamperAir:    "damper air",
	shoot.WarmerGlass:  "a warmer glass",
	shoot.ColderGlass:  "a colder glass",
	shoot.CoolerLight:  "light with less heat until the take",
	shoot.NearerStore:  "bring the cold store nearer the set",
	shoot.ColderStore:  "a colder start lasts longer",
	shoot.MoreIce:      "more ice, if the declared amount allows it",
	shoot.WarmVessel:   "warm the vessel first",
	shoot.DarkGround:   "a dark ground and light from behind show thin steam",
	shoot.DeclareOther: "it cannot be done with the real thing: declare a stand-in, or change the shot",
}

// remedies are all of them in one sentence: fog can be had sooner or later, and which is
// wanted the test unit shows.
func remedies(rs []shoot.Remedy) string {
	var first, sooner, later, rest []string
	for _, r := range rs {
		switch r {
		case shoot.TestUnit:
			first = append(first, remedyWords[r])
		case shoot.ColderGlass, shoot.DamperAir:
			sooner = append(sooner, remedyWords[r])
		case shoot.WarmerGlass, shoot.DrierAir:
			later = append(later, remedyWords[r])
		case shoot.DeclareOther:
			continue // the note that it cannot stand says so
		default:
			rest = append(rest, remedyWords[r])
		}
	}
	if len(sooner) > 0 {
		rest = append(rest, "fog comes sooner with "+strings.Join(sooner, " or "))
	}
	if len(later) > 0 {
		rest = append(rest, "fog comes later with "+strings.Join(later, " or "))
	}
	all := append(first, rest...)
	return strings.Join(all, "; ")
}

// cautionWords are the usual cautions.
var cautionWords = map[shoot.Caution]string{
	shoot.HotLamp:      "Hot lamps: cloth, paper and hands away; let them cool before moving them.",
	shoot.Mains:        "Liquids and mains: jugs away from lamps, packs and leads.",
	shoot.DeepFrozen:   "Deep-frozen metal and food burn bare skin: gloves.",
	shoot.DryIce:       "Dry ice: gloves, fresh air, never in a closed box or car; trained hands only.",
	shoot.GlassShock:   "Chilled glass breaks under a hot lamp or a hot drink: let it warm before the next fill.",
	shoot.BottleBursts: "A full bottle left in a freezer bursts: set a timer, take it out in time.",
	shoot.HotBoard:     "Oven-hot boards, bowls and cheese burn: gloves for whoever carries and pulls.",
	shoot.NotEaten:     "Food that stood under lights or out of the cold is not eaten: keep it apart and say so.",
	shoot.Allergens:    "Allergens: label every jug and tray, also of what is only shown.",
	shoot.Advertising:  "What may be shown is for the law of advertising and of measures where the picture runs: ask before.",
	shoot.Favoured:     "The piece in front carries more than its neighbours: the whole is as declared, one piece alone is not what is sold.",
	shoot.Alcohol:      "Alcohol near hot lamps and flames: no open vessels close to either.",
}

// note puts a note into words.
func note(n shoot.Note) string {
	v, w := number(n.Value.Value), number(n.Second.Value)
	thing := n.Thing
	if thing == "" {
		thing = "it"
	}
	switch n.Code {
	case shoot.NoUnitFits:
		if n.Text == "slot" {
			return "no unit fits its slot: lengthen the slot or shoot fewer takes"
		}
		return "no unit can be prepared, for want of " + n.Text + ": find more, or leave the picture out"
	case shoot.UnitsLimited:
		return fmt.Sprintf("not all units that are wanted fit: the chance of getting the takes is %s", percent(n.Value.Value))
	case shoot.Overtime:
		return "the slot ends " + v + " min after the wrap"
	case shoot.HandsShort:
		return fmt.Sprintf("before the call every pair of hands is taken (%s there): call someone earlier, or one more", w)
	case shoot.StoreFull:
		return fmt.Sprintf("%s: %s units want to be in it at once, %s fit: stagger them or find another", n.Text, v, w)
	case shoot.NoColdStore:
		return fmt.Sprintf("%s wants %s °C, and the nearest store is %s", thing, v, orNone(n.Text))
	case shoot.StoreTooCold:
		return fmt.Sprintf("%s wants %s °C, and waits in %s at %s °C: colder than planned it fogs sooner and holds longer; find a store nearer to it, or let it warm, wipe off what settles and measure", thing, v, n.Text, w)
	case shoot.NoOven:
		return fmt.Sprintf("%s wants an oven at %s °C, and there is none", thing, v)
	case shoot.NeverLooks:
		return thing + ": the look does not come by itself in this room; a fine spray of water outside is a stand-in for dew: record it"
	case shoot.CannotStand:
		likely := ""
		if n.Second.Given {
			likely = "likely stands for " + w + " min, and "
		}
		return fmt.Sprintf("%s must stand for %s min; the real thing %sin %s of the units does: "+
			"declare a stand-in, or change the shot", thing, v, likely, percent(n.Share.Value))
	case shoot.HardlyStands:
		return fmt.Sprintf("only %s of the units show the picture at its best moment: declare a stand-in, or change the shot", percent(n.Share.Value))
	case shoot.NotSigned:
		return "the specification is not signed: ask the client's technician before the build"
	case shoot.SpecExpired:
		return "the specification is out of date on the day: ask for the new one"
	case shoot.ScaleTooCoarse:
		return fmt.Sprintf("%s: its tolerance is %s g, and the scale can tell no better than %s g: a finer scale, or it cannot be verified", thing, v, w)
	case shoot.NotWorthIt:
		return fmt.Sprintf("hardening %s gains only %s min: leave it out if the freezer is wanted elsewhere", thing, v)
	case shoot.MayStay:
		return thing + " may stay, or come all at once: practise the pour"
	case shoot.ClockChanges:
		return "the clocks change by " + v + " h: times here are on the wall clock"
	case shoot.PastMidnight:
		if date, err := time.Parse(time.DateOnly, n.Text); err == nil {
			return date.Format("Mon 2 Jan") + " ends after midnight"
		}
		return "a day ends after midnight"
	case shoot.StandInHolds:
		return "the stand-in for " + thing + " does not change on the set"
	case shoot.LongDay:
		return "the day is " + v + " h long"
	case shoot.ManyUnits:
		return v + " units are more than a day has: ask for fewer takes, or work on the success rate first"
	case shoot.TooThinForCup:
		return "no cup tells " + thing + " apart: time the pour itself"
	case shoot.WeightOff:
		return fmt.Sprintf("%s of unit %s weighs %s g, and %s g are declared: put it right, or do not show it", thing, n.Text, v, w)
	case shoot.MayBurst:
		return fmt.Sprintf("%s may burst after %s min in the freezer, before it is as cold as wanted: out by then, or use iced water", thing, v)
	case shoot.RevisedBatch:
		return "the batch of " + thing + " is planned from its cup time"
	case shoot.FavourFlagged:
		return fmt.Sprintf("a slice is what people buy: the front one may carry %s more, not %s", percent(n.Second.Value), percent(n.Value.Value))
	}
	return string(n.Code)
}

func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}

// reasonWords are inputs of the clocks that have another name on a set; the others say it
// themselves.
var reasonWords = map[string]string{
	"what the model leaves out": "what nobody measures", "what differs from one to the next": "what differs from unit to unit",
	"convection": "how the air moves over it", "air speed": "draught", "absorptance": "how dark it is to the lamps", "headspace": "air over the drink",
	"heat transfer inside": "how the drink moves inside", "conductivity": "how fast warmth goes through it", "heat capacity": "how much warmth it holds",
	"melt that clings": "how much melt clings", "melt that floats": "meltwater that floats on top", "thickness of the fringe": "how thick the melting edge is",
	"runny limit": "when this cheese runs", "stretch limit": "when it stops stretching", "wetness of the surface": "how wet its surface is", "water activity": "how wet its surface is",
	"depth of softening": "how deep counts as soft", "share frozen when soft": "what counts as soft", "share frozen when it flows": "what counts as runny",
	"share run off at the loss of shape": "how much may run off", "side of the vessel": "what the bowl’s side gives off", "softening temperature": "at what warmth it softens",
	"running temperature": "at what warmth it runs", "dilution that counts": "what counts as watery", "what counts as opaque fog": "what counts as white fog",
	"what the table brings": "warmth from the table", "what the cold takes": "how the cold store cools",
}

// reason names an input as the crew would.
func reason(r shoot.Reason) string {
	name, ok := reasonWords[r.Input]
	if !ok {
		name = r.Input
	}
	return name + " " + percent(r.Share)
}

// reasons gives the first two, with the rest that nothing explains alone.
func reasons(rs []shoot.Reason) string {
	var out []string
	for _, r := range rs[:min(2, len(rs))] {
		if r.Share >= 0.05 {
			out = append(out, reason(r))
		}
	}
	return strings.Join(out, ", ")
}

func percent(share float64) string {
	if share > 0.99 && share < 1 {
		return "over 99 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// number gives up to two decimals, without trailing zeros.
func number(v float64) string {
	if v == math.Trunc(v) || math.Abs(v) >= 100 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v, 'f', 2, 64), "0"), ".")
}

// grams gives a mass on a scale's step.
func grams(v, step float64) string {
	if step <= 0 {
		return number(v) + " g"
	}
	decimals := 0
	for s := step; decimals < 4 && math.Abs(s-math.Round(s)) > 1e-9*s; decimals++ {
		s *= 10
	}
	return strconv.FormatFloat(v, 'f', decimals, 64) + " g"
}

// stopwatch gives a moment as the crew counts it.
func stopwatch(m honestplate.Moment) string {
	if !m.Never && m.After < 10*time.Second && m.After > 0 {
		return strconv.FormatFloat(m.After.Seconds(), 'f', 1, 64) + " s"
	}
	return m.String()
}

// window gives a window with its band.
func window(w honestplate.Window) string {
	if !w.MayHappen() {
		return "never"
	}
	if w.Earliest == w.Latest {
		return stopwatch(w.Likely)
	}
	return fmt.Sprintf("%s (%s to %s)", stopwatch(w.Likely), stopwatch(w.Earliest), stopwatch(w.Latest))
}

// millimetres gives a length with its band.
func millimetres(e honestplate.Estimate) string {
	return fmt.Sprintf("%s mm (%s to %s)", two(e.Likely), two(e.Low), two(e.High))
}

// two gives two significant digits.
func two(v float64) string {
	if v == 0 {
		return "0"
	}
	digits := 1 - int(math.Floor(math.Log10(math.Abs(v))))
	return strconv.FormatFloat(v, 'f', max(digits, 0), 64)
}

// fraction gives an exposure time as photographers write it.
func fraction(seconds float64) string {
	if seconds >= 0.3 {
		return two(seconds) + " s"
	}
	n := 1 / seconds
	step := max(1, math.Pow(10, math.Floor(math.Log10(n))-1)) // two digits, rounded to the shorter time
	return fmt.Sprintf("1/%.0f s", math.Ceil(n/step-1e-9)*step)
}

// height says a fall as a hand shows it.
func height(mm float64) string { return fmt.Sprintf("%.0f cm", math.Floor(mm/10)) }

// degrees gives a temperature with a minus sign that does not break off.
func degrees(c float64) string {
	if c < 0 {
		return "−" + number(-c)
	}
	return number(c)
}

// long gives a time in a store as a day is spoken of: 31 min, 1 h 24 min, 14 h.
func long(w honestplate.Window) string {
	if !w.MayHappen() {
		return "never"
	}
	one := func(m honestplate.Moment) string {
		if m.Never {
			return "never"
		}
		n := int(math.Ceil(m.After.Minutes()))
		switch {
		case n < 60:
			return fmt.Sprintf("%d min", n)
		case n%60 == 0:
			return fmt.Sprintf("%d h", n/60)
		}
		return fmt.Sprintf("%d h %d min", n/60, n%60)
	}
	if w.Earliest == w.Latest {
		return one(w.Likely)
	}
	return fmt.Sprintf("%s (%s to %s)", one(w.Likely), one(w.Earliest), one(w.Latest))
}
