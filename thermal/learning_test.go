package thermal

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
)

// A pupil is a clock that a test unit teaches, as its users call it.
type pupil struct {
	event, other string // seen, and another that must not get wider
	known        func(Lesson, Air) (Runs, error)
	observed     func(Lesson, []Seen, Air) (Runs, Lesson, error)
}

func pupils() map[string]pupil {
	dish := HotDish{Grams: 300, Diameter: 0.13, StartC: 80, VesselGrams: 400}
	scoop, cheese := ball(-18), pull()
	freeze := DeepFreeze{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: honestplate.Some(-13), TargetC: -28, Medium: cold.Freezers().Deep}
	soft := Softening{Food: food.SoftFoods().Butter, Thickness: 0.02, StartC: honestplate.Some(5)}
	ice := IceOnTable{Size: 0.03, StartC: -18}
	glass := testGlass()
	// The freezer has no room: air that makes no sense is a mix that makes none.
	frozen := func(a Air) DeepFreeze {
		f := freeze
		if a.Validate() != nil {
			f.Diameter = math.NaN()
		}
		return f
	}
	chilled := func(a Air) Bottle {
		b := beer()
		if a.Validate() != nil {
			b.Diameter = math.NaN()
		}
		return b
	}
	return map[string]pupil{
		"glass": {"haze", "opaque",
			func(l Lesson, a Air) (Runs, error) { k, err := glass.Knowing(l, a); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := glass.Observe(l, s, a)
				return k.Kept, l, err
			}},
		"dish": {"cool", "steam ends",
			func(l Lesson, a Air) (Runs, error) { k, err := dish.Knowing(l, a); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := dish.Observe(l, s, a)
				return k.Kept, l, err
			}},
		"scoop": {"softens", "drips",
			func(l Lesson, a Air) (Runs, error) { k, err := scoop.Knowing(l, a); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := scoop.Observe(l, s, a)
				return k.Kept, l, err
			}},
		"cheese": {"closes", "closes",
			func(l Lesson, a Air) (Runs, error) { k, err := cheese.Knowing(l, a); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := cheese.Observe(l, s, a)
				return k.Kept, l, err
			}},
		"soft": {"softens", "softens",
			func(l Lesson, a Air) (Runs, error) { k, err := soft.Knowing(l, a); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := soft.Observe(l, s, a)
				return k.Kept, l, err
			}},
		"ice": {"half off", "ice gone",
			func(l Lesson, a Air) (Runs, error) { k, err := ice.Knowing(l, a); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := ice.Observe(l, s, a)
				return k.Kept, l, err
			}},
		"bottle": {"cold", "cold",
			func(l Lesson, a Air) (Runs, error) { k, err := chilled(a).Knowing(l); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := chilled(a).Observe(l, s)
				return k.Kept, l, err
			}},
		"freeze": {"core", "core",
			func(l Lesson, a Air) (Runs, error) { k, err := frozen(a).Knowing(l); return k.Kept, err },
			func(l Lesson, s []Seen, a Air) (Runs, Lesson, error) {
				k, l, err := frozen(a).Observe(l, s)
				return k.Kept, l, err
			}},
	}
}

// wide is the width of a window, as the logarithm of the ratio of its ends.
func wide(w honestplate.Window) float64 {
	if w.Latest.Never {
		return math.Inf(1)
	}
	return math.Log(w.Latest.After.Seconds() / w.Earliest.After.Seconds())
}

// Every clock learns from an event seen where it was expected: that unit is known better,
// the next one no worse, no other event gets wider than the runs can tell (5 %), and what
// makes no sense is an error and not a lesson.
func TestEveryClockLearns(t *testing.T) {
	for name, p := range pupils() {
		t.Run(name, func(t *testing.T) {
			if testing.Short() && name != "soft" {
				t.Skip("seconds of runs")
			}
			before, err := p.known(Lesson{}, studio)
			if err != nil {
				t.Fatal(err)
			}
			w := before.Event(p.event).Window
			if w.Likely.Never {
				t.Fatalf("%q is none of %q", p.event, before.Events())
			}
			seen := Seen{Event: p.event, At: w.Likely.After, Within: w.Likely.After / 10}
			this, lesson, err := p.observed(Lesson{}, []Seen{seen}, studio)
			if err != nil {
				t.Fatal(err)
			}
			next, err := p.known(lesson.Unit(1), studio)
			if err != nil {
				t.Fatal(err)
			}
			was, is, then := wide(w), wide(this.Event(p.event).Window), wide(next.Event(p.event).Window)
			if is > 0.9*was || then > 1.05*was {
				t.Errorf("%s: width %.2f before, %.2f of this unit, %.2f of the next", p.event, was, is, then)
			}
			if a, b := wide(before.Event(p.other).Window), wide(next.Event(p.other).Window); b > 1.05*a {
				t.Errorf("%s got wider: %.2f, then %.2f", p.other, a, b)
			}
			t.Logf("%s: width %.2f before, %.2f of this unit, %.2f of the next", p.event, was, is, then)
			for i, key := range before.Readings() {
				runs := before // a few hundred, and once the thousands that were taught
				if i == 0 {
					runs = next
				}
				if bands, err := runs.Course(key, w.Likely.After/2, w.Likely.After); err != nil || len(bands) != 2 {
					t.Errorf("%s: %v, %v", key, bands, err)
				}
			}
			if _, _, err := before.Observe(Seen{Event: p.event, At: w.Earliest.After / 2, NotYet: true}); err != nil {
				t.Errorf("not yet: %v", err)
			}
			if _, _, err := p.observed(Lesson{}, []Seen{{Event: "applause", At: time.Minute}}, studio); err == nil {
				t.Error("an event of another clock teaches")
			}
			nowhere := Air{TempC: math.NaN()}
			if _, err := p.known(lesson, nowhere); err == nil {
				t.Error("a clock in no room")
			}
			if _, _, err := p.observed(lesson, []Seen{seen}, nowhere); err == nil {
				t.Error("a lesson in no room")
			}
		})
	}
}
