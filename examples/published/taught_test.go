package published

import (
	"cmp"
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
	sum, sets := 0.0, 0.0
	add := func(table string, inside, all int) {
		t.Logf("%s: %d of %d inside", table, inside, all)
		sum, sets = sum+float64(inside)/float64(all), sets+1
	}
	for _, c := range courses {
		inside, all := c.judge(t)
		add(c.table, inside, all)
	}
	if len(courses) == len(taughtCourses) {
		inside, all := judgeScoops(t)
		add("course_scoops", inside, all)
	}
	if mean := sum / sets; mean < CourseShare {
		t.Errorf("taught, %.0f %% inside on the average of the sets", 100*mean)
	}
}

// judgeScoops teaches the clock of each scoop by the first third of its readings inside.
// Where the probe sat is not said: it is taken for the core, good to 2 K, and is inside
// where it lies between the bands of core and mean, 1 K for readings in whole degrees. The
// run whose probe was partly in air is left out.
func judgeScoops(t *testing.T) (inside, all int) {
	t.Helper()
	table, err := testdata.Load("course_scoops")
	if err != nil {
		t.Fatal(err)
	}
	for _, first := range table.Rows {
		if first.Text("first_drip_s") == "" || first.Text("run") == "2" {
			continue
		}
		u, err := scoopRuns(first)
		if err != nil {
			t.Fatal(err)
		}
		clock, err := scoopClock(first)
		if err != nil {
			t.Fatal(err)
		}
		var at []time.Duration
		var read []float64
		for _, r := range u.rows[2:] { // after the first drip and the start
			v, err := columns(r, "time_s", "inside_c")
			if err != nil {
				t.Fatal(err)
			}
			at, read = append(at, time.Duration(v[0]*float64(time.Second))), append(read, v[1])
		}
		third := len(at) / 3
		var seen []thermal.Seen
		for i := range third {
			seen = append(seen, thermal.Seen{Reading: "core_c", At: at[i], Value: read[i], WithinValue: 2})
		}
		taught, _, err := clock.Kept.Observe(seen...)
		if err != nil {
			t.Fatal(first.Text("run"), err)
		}
		core, err1 := taught.Course("core_c", at[third:]...)
		mean, err2 := taught.Course("mean_c", at[third:]...)
		if err := cmp.Or(err1, err2); err != nil {
			t.Fatal(err)
		}
		for i, v := range read[third:] {
			low, high := min(core[i].Low, mean[i].Low)-1, max(core[i].High, mean[i].High)+1
			if all++; v >= low && v <= high {
				inside++
			} else {
				t.Logf("run %s at %v: read %.0f, band %.1f..%.1f", first.Text("run"), at[third+i], v, low, high)
			}
		}
	}
	return inside, all
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
