package shoot

import (
	"fmt"
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
		var seen []thermal.Seen
		for _, i := range groups[u] {
			s, err := d.facts.Seen[i].of(t.kinds()[0])
			if err != nil {
				return honestplate.In(fmt.Sprintf("facts.seen[%d]", i), err)
			}
			seen = append(seen, s)
		}
		if d.lesson, err = d.observe(t, seen); err != nil {
			return honestplate.In(first, err)
		}
	}
	return nil
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
		return out, &honestplate.InputError{Field: "event", Got: fmt.Sprintf("%q", s.Event), Want: "one that happens to a thing of this kind"}
	}
	return out, nil
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
