package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
)

// Run r of a glass and of a dish in one room draw one room; a later unit of the same kind
// shares its room and not its luck.
func TestRunsOfOneLessonAreJoint(t *testing.T) {
	glass, err1 := testGlass().frame(studio, nil)
	dish, err2 := HotDish{Grams: 300, Diameter: 0.13, StartC: 80}.frame(studio, nil)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	a, err1 := glass.basis(Lesson{}, 256)
	b, err2 := dish.basis(Lesson{}, 256)
	c, err3 := glass.basis(Lesson{}.Unit(1), 256)
	if err1 != nil || err2 != nil || err3 != nil {
		t.Fatal(err1, err2, err3)
	}
	for j, u := range a.inputs {
		for k, v := range b.inputs {
			if u.Key == v.Key && a.z[j] == b.z[k] != (sharedNames[u.Shared] == "room" || sharedNames[u.Shared] == "lamps") {
				t.Errorf("%s: %g and %g", u.Key, a.z[j], b.z[k])
			}
		}
		if same := a.z[j] == c.z[j]; same == (sharedNames[u.Shared] == "this unit alone") {
			t.Errorf("another unit, %s: same is %t", u.Key, same)
		}
	}
}

// The course of a clock has a band that holds the likely course.
func TestCourseHasABand(t *testing.T) {
	clock, err := HotDish{Grams: 300, Diameter: 0.13, StartC: 80}.Clock(studio)
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range clock.Kept.Readings() {
		bands, err := clock.Kept.Course(key, time.Minute, 10*time.Minute, 3*time.Hour)
		if err != nil || len(bands) != 3 {
			t.Fatal(key, bands, err)
		}
		for i, b := range bands {
			if err := b.Check(key); err != nil || !(b.Low < b.High) {
				t.Errorf("%s, %d: %v, %v", key, i, b, err)
			}
		}
	}
	if _, err := clock.Kept.Course("taste", time.Minute); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("an unknown reading: %v", err)
	}
}

// A reading teaches: a core colder than thought is sooner where it is wanted.
func TestAReadingTeaches(t *testing.T) {
	dish := HotDish{Grams: 300, Diameter: 0.13, StartC: 80}
	before, err := dish.Clock(studio)
	if err != nil {
		t.Fatal(err)
	}
	band, err := before.Kept.Course("mean_c", 5*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	runs, lesson, err := before.Kept.Observe(Seen{Reading: "mean_c", At: 5 * time.Minute, Value: band[0].Low + 0.5})
	if err != nil {
		t.Fatal(err)
	}
	after := runs.Event("cool")
	if !after.Likely.Before(before.Limit.Likely) || lesson.IsZero() || lesson.Inputs() == nil {
		t.Errorf("%v, then %v", before.Limit.Window, after.Window)
	}
	if chance := runs.Chance(func(int) bool { return true }); math.Abs(chance-1) > 1e-12 || runs.Len() != 4096 {
		t.Errorf("%d runs, chance %g", runs.Len(), chance)
	}
	if other, err := lesson.Without("room", "lamps", "product", "crew"); err != nil || !other.IsZero() {
		t.Errorf("something is left: %v, %v", other.Inputs(), err)
	}
}

// What cannot be is refused by name.
func TestSeenIsChecked(t *testing.T) {
	clock, err := HotDish{Grams: 300, Diameter: 0.13, StartC: 80}.Clock(studio)
	if err != nil {
		t.Fatal(err)
	}
	for field, s := range map[string]Seen{
		"Seen[0].At":          {Event: "cool", At: time.Second},
		"Seen[0].Event":       {Event: "beads", At: time.Minute},
		"Seen[0].Reading":     {Reading: "core_c", At: time.Minute},
		"Seen[0].Value":       {Reading: "mean_c", At: time.Minute, Value: 20},
		"Seen[0].NotYet":      {Reading: "mean_c", NotYet: true, At: time.Minute, Value: 70},
		"Seen[0].WithinValue": {Reading: "mean_c", At: time.Minute, Value: 70, WithinValue: -1},
	} {
		_, _, err := clock.Kept.Observe(s)
		var got string
		switch e := honestplate.Cause(err).(type) {
		case *honestplate.InputError:
			got = e.Field
		case *honestplate.RangeError:
			got = e.Field
		}
		if got != field {
			t.Errorf("%+v: %v, want an error about %s", s, err, field)
		}
	}
	if _, _, err := (Runs{}).Observe(Seen{}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no runs: %v", err)
	}
}
