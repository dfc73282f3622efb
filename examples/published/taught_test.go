package published

import (
	"os"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

// A taughtCourse is a vessel of which the first third of the readings teaches the clock.
type taughtCourse struct {
	table, timeColumn string
	seconds           float64 // of a unit of time
	keys              []string
	conditions        func(testdata.Row, run) (thermal.HotDish, thermal.Air)
}

// Courses of A and B sets with at least six readings in time: the clock is taught by the
// first third of them and judged by the rest, reading by reading, in its band (1 K for the
// thermometer). Averaged over the sets at least 85 % lie inside.
func TestTaughtCourses(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of courses")
	}
	courses := taughtCourses
	if os.Getenv("HONESTPLATE_TRUTHS") == "" {
		courses = courses[1:2] // all of them where time is no matter
	}
	sum := 0.0
	for _, c := range courses {
		inside, all := c.judge(t)
		t.Logf("%s: %d of %d inside", c.table, inside, all)
		sum += float64(inside) / float64(all)
	}
	if mean := sum / float64(len(courses)); mean < CourseShare {
		t.Errorf("taught, %.0f %% inside on the average of the sets", 100*mean)
	}
}

var taughtCourses = []taughtCourse{
	{"course_mug_open", "time_min", 60, nil, func(testdata.Row, run) (thermal.HotDish, thermal.Air) {
		return thermal.HotDish{Grams: 300, Diameter: 0.08, VesselGrams: 350}, thermal.Air{TempC: 24, RH: 0.5}
	}},
	{"course_water_80ml", "time_s", 1, nil, func(testdata.Row, run) (thermal.HotDish, thermal.Air) {
		return thermal.HotDish{Grams: 80, Diameter: 0.05, VesselGrams: 40}, thermal.Air{TempC: 28, RH: 0.5}
	}},
	{"course_measuring_cup", "time_s", 1, nil, func(_ testdata.Row, u run) (thermal.HotDish, thermal.Air) {
		return thermal.HotDish{Grams: 250, Diameter: 0.08, VesselGrams: 300}, thermal.Air{TempC: u.roomC, RH: 0.5}
	}},
	{"course_mug_oil", "time_min", 60, nil, func(testdata.Row, run) (thermal.HotDish, thermal.Air) {
		return thermal.HotDish{Grams: 300, Diameter: 0.08, VesselGrams: 350, Activity: dry}, thermal.Air{TempC: 24, RH: 0.5}
	}},
	{"course_canister", "time_s", 1, []string{"run"}, func(r testdata.Row, u run) (thermal.HotDish, thermal.Air) {
		return thermal.HotDish{Grams: number(r, "water_g"), Diameter: 0.032, VesselGrams: 11, Activity: dry}, thermal.Air{TempC: u.roomC, RH: 0.5}
	}},
	{"course_foam_cups", "time_s", 1, []string{"cup", "trial"}, func(testdata.Row, run) (thermal.HotDish, thermal.Air) {
		return foamCup, freezerAir
	}},
}

func (c taughtCourse) judge(t *testing.T) (inside, all int) {
	t.Helper()
	table, err := testdata.Load(c.table)
	if err != nil {
		t.Fatal(err)
	}
	u, err := runs(c.table, c.timeColumn, "water_c", c.keys...)(table.Rows[0])
	if err != nil {
		t.Fatal(err)
	}
	dish, air := c.conditions(u.rows[0], u)
	// The first reading was taken in a vessel that had warmed.
	dish.StartC, dish.VesselC, dish.LimitC = u.startC, honestplate.Some(u.startC), honestplate.Some(air.TempC+3)
	var at []time.Duration
	var read []float64
	for _, r := range u.rows[1:] {
		v, err := columns(r, c.timeColumn, "water_c")
		if err != nil {
			t.Fatal(err)
		}
		if v[1] < 0.9 && air.TempC < 0 {
			continue // freezing: the clock has no ice
		}
		at = append(at, time.Duration((v[0]-u.startS)*c.seconds*float64(time.Second)))
		read = append(read, v[1])
	}
	third := len(at) / 3
	var seen []thermal.Seen
	for i := range third {
		seen = append(seen, thermal.Seen{Reading: "mean_c", At: at[i], Value: read[i], WithinValue: 1})
	}
	clock, _, err := dish.Observe(thermal.Lesson{}, seen, air)
	if err != nil {
		t.Errorf("%s: %v", c.table, err)
		return 0, 1
	}
	bands, err := clock.Kept.Course("mean_c", at[third:]...)
	if err != nil {
		t.Fatal(err)
	}
	for i, b := range bands {
		if v := read[third+i]; v >= b.Low-1 && v <= b.High+1 {
			inside++
		} else {
			t.Logf("%s at %v: read %.1f, band %.1f..%.1f", c.table, at[third+i], v, b.Low, b.High)
		}
	}
	return inside, len(bands)
}
