package main

import (
	"fmt"
	"math"
	"time"

	"example.org/honestplate/examples/shoot"
)

// wall is a time as the clock on the wall shows it. In the hour that comes twice when the
// clocks go back it has its zone with it, so that nobody is an hour late.
func wall(t time.Time) string {
	if twice(t) {
		return t.Format("15:04 MST")
	}
	return t.Format("15:04")
}

// twice reports whether the wall shows this time a second time, or has shown it before.
func twice(t time.Time) bool {
	from, until := t.ZoneBounds()
	_, now := t.Zone()
	if !until.IsZero() {
		_, then := until.Zone()
		if back := time.Duration(now-then) * time.Second; back > 0 && !t.Add(back).Before(until) {
			return true
		}
	}
	if !from.IsZero() {
		_, before := from.Add(-1).Zone()
		if back := time.Duration(before-now) * time.Second; back > 0 && t.Before(from.Add(back)) {
			return true
		}
	}
	return false
}

// clocksChange says what the clocks do, and what they show then.
func clocksChange(d *shoot.PlanDay) string {
	way := map[bool]string{true: "forward", false: "back"}[d.Shift > 0]
	return fmt.Sprintf("clocks go %s %s h, to %s", way, number(math.Abs(d.Shift.Hours())), d.ShiftAt.Format("15:04"))
}

// changeBefore is the day with the last change of clocks before a moment; nil where there
// is none.
func changeBefore(p *shoot.Plan, at time.Time) (last *shoot.PlanDay) {
	for i := range p.Days {
		if d := &p.Days[i]; !d.ShiftAt.IsZero() && !d.ShiftAt.After(at) {
			last = d
		}
	}
	return last
}
