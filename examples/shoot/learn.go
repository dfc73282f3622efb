package shoot

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

// eventKeys are the keys of the clocks for the words of the facts, by kind.
var eventKeys = map[string]map[string]string{
	"iced_drink":    {"haze": "haze", "white": "opaque", "beads": "beads", "runs": "runs", "ice gone": "ice gone"},
	"bottle":        {"haze": "haze", "white": "opaque", "beads": "beads", "runs": "runs"},
	"scoop":         {"soft": "softens", "drip": "drips", "puddle": "puddle", "slump": "slumps"},
	"soft_food":     {"soft": "softens"},
	"melted_cheese": {"strings": "opens", "sets": "closes"},
	"bowl":          {"steam ends": "steam ends"},
}

// learn conditions everything that shares its unknowns by what was seen, unit by unit in
// the order of the facts: the room, the lamps, what this crew calls beads.
func (d *day) learn() error {
	type unit struct {
		dish, thing string
		number      int
	}
	var order []unit
	groups := map[unit][]int{}
	d.seen = map[string]bool{}
	for i, s := range d.facts.Seen {
		u := unit{s.Dish, s.Thing, s.Unit}
		if s.Unit == 0 {
			u.number = -i - 1 // a unit of its own
		}
		if groups[u] == nil {
			order = append(order, u)
		}
		groups[u] = append(groups[u], i)
	}
	for _, u := range order {
		first := fmt.Sprintf("facts.seen[%d]", groups[u][0])
		dish, t, err := d.brief.find(u.dish, u.thing, first)
		if err != nil {
			return err
		}
		if t == nil || t.StandIn != "" || len(t.kinds()) == 0 {
			return &honestplate.InputError{Field: first + ".thing", Got: fmt.Sprintf("%q", u.thing), Want: "a thing of " + dish.Name + " that changes on the set"}
		}
		d.seen[family(t.kinds()[0])] = true
		var seen []thermal.Seen
		for _, i := range groups[u] {
			s, err := d.facts.Seen[i].of(t.kinds()[0])
			if err != nil {
				return in(fmt.Sprintf("facts.seen[%d]", i), err)
			}
			seen = append(seen, s)
		}
		if d.lesson, err = d.observe(t, seen); err != nil {
			return seenFault(err, groups[u], d.facts)
		}
	}
	return nil
}

// family is what kinds of things share their judgements: what counts as beads is the same
// on a bottle as on a glass.
func family(kind string) string {
	if kind == "bottle" {
		return "iced_drink"
	}
	return kind
}

// seenFault puts an error about what was seen of one unit under the fact that it is
// about, in the words of a fact.
func seenFault(err error, group []int, facts *Facts) error {
	first := fmt.Sprintf("facts.seen[%d]", group[0])
	var k int
	var outside *honestplate.RangeError
	var input *honestplate.InputError
	const look = "look at the reading, at the room and at the thing in the brief"
	switch {
	case errors.As(err, &outside):
		if _, scan := fmt.Sscanf(outside.Field, "Seen[%d]", &k); scan != nil || k >= len(group) {
			return in(first, err)
		}
		at, s := fmt.Sprintf("facts.seen[%d]", group[k]), facts.Seen[group[k]]
		switch {
		case strings.HasSuffix(outside.Field, ".At"):
			low, high := time.Duration(outside.Low*float64(time.Second)), honestplate.Never()
			if outside.High < longestSeen {
				high = honestplate.After(time.Duration(outside.High * float64(time.Second)))
			}
			want := fmt.Sprintf("%s to %s, when it can come to %q", honestplate.After(low), high, s.Event)
			if high.Never {
				want = fmt.Sprintf("%s or more, when it can come to %q", honestplate.After(low), s.Event)
			}
			return &honestplate.InputError{Field: at + ".after_seconds", Got: fmt.Sprint(s.Seconds), Want: want + ": " + look}
		case strings.HasSuffix(outside.Field, ".Value"):
			return &honestplate.InputError{Field: at + ".temp_c", Got: fmt.Sprint(s.TempC.Value), Want: fmt.Sprintf("%.1f to %.1f, what it can be by then: %s", outside.Low, outside.High, look)}
		}
		return in(at, err)
	case errors.As(err, &input):
		if _, scan := fmt.Sscanf(input.Field, "Seen[%d]", &k); scan == nil && k < len(group) && strings.HasSuffix(input.Field, ".Event") {
			return &honestplate.InputError{Field: fmt.Sprintf("facts.seen[%d].event", group[k]), Got: fmt.Sprintf("%q", facts.Seen[group[k]].Event), Want: "one that can happen in this room: " + look}
		}
	}
	return in(first, err)
}

// longestSeen is the longest time on the set that a fact is believed of, s: half a day. No
// thing of a brief stands longer, and a slip of the thumb should not teach.
const longestSeen = 43200

// of puts an observation into the words of a kind's clock.
func (s *Seen) of(kind string) (thermal.Seen, error) {
	if s.Seconds > longestSeen {
		return thermal.Seen{}, &honestplate.InputError{Field: "after_seconds", Got: fmt.Sprint(s.Seconds), Want: fmt.Sprintf("at most %d, half a day: seconds since it was set out", longestSeen)}
	}
	out := thermal.Seen{At: time.Duration(s.Seconds * float64(time.Second)), Within: time.Duration(s.Within * float64(time.Second)), NotYet: s.NotYet}
	if s.TempC.Given {
		out.Value, out.WithinValue = s.TempC.Value, s.WithinK
		out.Reading = readings[kind]
		if out.Reading == "" {
			return out, &honestplate.InputError{Field: "temp_c", Got: fmt.Sprint(s.TempC.Value), Want: "an event instead: of this thing no temperature is followed"}
		}
		return out, nil
	}
	out.Event = eventKeys[kind][s.Event]
	if out.Event == "" {
		return out, &honestplate.InputError{Field: "event", Got: fmt.Sprintf("%q", s.Event), Want: "one that happens to " + article(kind)}
	}
	return out, nil
}

// article is a kind as a sentence has it.
func article(kind string) string {
	text := "a " + strings.ReplaceAll(kind, "_", " ") + ": "
	if kind == "iced_drink" {
		text = "an iced drink: "
	}
	return text + strings.Join(slices.Sorted(maps.Keys(eventKeys[kind])), ", ")
}

// readings are what a thermometer in a thing of a kind reads.
var readings = map[string]string{"iced_drink": "drink_c", "bottle": "drink_c", "bowl": "mean_c", "melted_cheese": "mean_c", "scoop": "core_c"}

// observe teaches what was seen of one unit.
func (d *day) observe(t *Thing, seen []thermal.Seen) (lesson thermal.Lesson, err error) {
	switch {
	case t.Drink != nil:
		_, lesson, err = d.glass(t.Drink).Observe(d.lesson, seen, d.air, d.lamps...)
	case t.Bottle != nil:
		_, lesson, err = d.vessel(t.Bottle).Observe(d.lesson, seen, d.air, d.lamps...)
	case t.Scoop != nil:
		ball, _, _ := d.ball(t.Scoop)
		_, lesson, err = ball.Observe(d.lesson, seen, d.air, d.lamps...)
	case t.Soft != nil:
		_, lesson, err = d.piece(t.Soft).Observe(d.lesson, seen, d.air, d.lamps...)
	case t.Cheese != nil:
		_, lesson, err = t.pull().Observe(d.lesson, seen, d.air, d.lamps...)
	case t.Bowl != nil:
		_, lesson, err = d.hotDish(t.Bowl).Observe(d.lesson, seen, d.air, d.lamps...)
	}
	return lesson, err
}
