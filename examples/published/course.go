package published

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"example.org/honestplate"
	"example.org/honestplate/testdata"
)

// Checks of the set clocks against timed measurements, unfitted: with the conditions
// that were given, and what had to be assumed said in the table.
var thermalCourses = slices.Concat(hotCourses, bottleCourses, iceCourses, scoopCourses, leftCourses)

// whenRead compares when a reading was taken with the clock's window for that event:
// the clocks give bands to events, and none yet to the course between them. Here, and
// only here, a reading meets a clock.
func whenRead(label string, seconds float64, w honestplate.Window) Point {
	return Point{
		Label: label, Published: seconds,
		Predicted: secondsOf(w.Likely), Low: secondsOf(w.Earliest), High: secondsOf(w.Latest),
	}
}

// secondsOf is a moment in seconds, endless where it is never.
func secondsOf(m honestplate.Moment) float64 {
	if m.Never {
		return math.Inf(1)
	}
	return m.After.Seconds()
}

// leftCourses are timed measurements that no clock answers yet, and why.
var leftCourses = []Check{
	left("course_beaker", "temperature", "degC", "one run of a beaker of unknown size: no order to compare"),
	left("ice_in_beaker", "time to melt", "s", "one time, second-hand, pieces, glass and room unknown: no order to compare"),
	left("drip_150min", "share dripped", "%", "how the fat is built is no input of a scoop: mixes that differ only in that come out alike"),
	left("vessels_end_points", "temperature", "degC", "sizes, and how the tap and the freezer's fan move water and air, are not given; sun on the cans"),
}

func left(table, quantity, unit, reason string) Check {
	return Check{Table: table, Package: "thermal", Quantity: quantity, Unit: unit, Claim: "not compared", Left: reason}
}

// A run is the readings of one vessel, in order.
type run struct {
	startS, startC float64 // of the first reading
	roomC          float64 // mean, where the table has one
	rows           []testdata.Row
}

// runs reads a table of courses once: by the columns that name a run, the time and the
// temperature.
func runs(table, timeColumn, tempColumn string, keys ...string) func(testdata.Row) (run, error) {
	load := sync.OnceValues(func() (map[string]run, error) {
		t, err := testdata.Load(table)
		if err != nil {
			return nil, err
		}
		out := map[string]run{}
		for _, r := range t.Rows {
			k := keyOf(r, keys)
			u, ok := out[k]
			if !ok {
				if u.startS, err = r.Float(timeColumn); err != nil {
					return nil, err
				}
				if u.startC, err = r.Float(tempColumn); err != nil {
					return nil, err
				}
			}
			n := float64(len(u.rows))
			u.roomC = (u.roomC*n + value(r, "room_c", 0)) / (n + 1)
			u.rows = append(u.rows, r)
			out[k] = u
		}
		return out, nil
	})
	return func(r testdata.Row) (run, error) {
		all, err := load()
		if err != nil {
			return run{}, err
		}
		u, ok := all[keyOf(r, keys)]
		if !ok {
			return run{}, fmt.Errorf("no run of %q", keyOf(r, keys))
		}
		return u, nil
	}
}

func keyOf(r testdata.Row, keys []string) string {
	k := ""
	for _, c := range keys {
		k += r.Text(c) + " "
	}
	return k
}
