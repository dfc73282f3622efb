package published

import (
	"fmt"
	"math"
	"slices"
	"sync"
	"time"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/food"
)

const hour = time.Hour

// scoopCourses are five scoops of half a US cup on cones.
var scoopCourses = []Check{
	{
		Table: "course_scoops", Package: "thermal", Quantity: "first visible drip", Unit: "s",
		Claim: "the window of the scoop's clock", Banded: true, Points: scoopDrip,
	},
	{
		Table: "course_scoops", Package: "thermal", Quantity: "temperature inside", Unit: "degC",
		Claim:  "between core and mean of the likely course, 1 K for readings in whole degrees: the clock gives no band over time",
		Banded: true, Floor: 1, Points: scoopInside,
	},
}

var scoopRuns = runs("course_scoops", "first_drip_s", "room_c", "run")

// scoopClocks keeps the clock of a run: every reading asks for it.
var scoopClocks sync.Map

// scoopClock is the clock of a row's scoop, from what its probe inside read first.
func scoopClock(r testdata.Row) (thermal.ScoopClock, error) {
	u, err := scoopRuns(r)
	if err != nil {
		return thermal.ScoopClock{}, err
	}
	start, err := u.rows[1].Float("inside_c")
	if err != nil {
		return thermal.ScoopClock{}, err
	}
	key := [2]float64{start, u.roomC}
	if kept, ok := scoopClocks.Load(key); ok {
		return kept.(thermal.ScoopClock), nil
	}
	const halfCup = 118.3e-6 // m3
	clock, err := thermal.Scoop{
		Mix: food.Recipes().PremiumIceCream, Diameter: math.Cbrt(6 / math.Pi * halfCup), StartC: start, Rest: thermal.OnCone,
	}.Clock(thermal.Air{TempC: u.roomC, RH: 0.5})
	if err == nil {
		scoopClocks.Store(key, clock)
	}
	return clock, err
}

func scoopDrip(r testdata.Row) ([]Point, error) {
	label := "run " + r.Text("run") + ", " + r.Text("mix")
	if r.Text("first_drip_s") == "" {
		return []Point{Skip(label, "a reading of temperature")}, nil
	}
	seen, err := r.Float("first_drip_s")
	if err != nil {
		return nil, err
	}
	clock, err := scoopClock(r)
	if err != nil {
		return nil, err
	}
	return []Point{whenRead(label, seen, clock.FirstDrip.Window)}, nil
}

func scoopInside(r testdata.Row) ([]Point, error) {
	label := fmt.Sprintf("run %s, %s s", r.Text("run"), r.Text("time_s"))
	switch {
	case r.Text("time_s") == "":
		return []Point{Skip(label, "the first drip")}, nil
	case r.Text("time_s") == "0.0":
		return []Point{Skip(label, "the start")}, nil
	case r.Text("run") == "2":
		return []Point{Skip(label, "the probe of this run was partly in air")}, nil
	}
	v, err := columns(r, "time_s", "inside_c")
	if err != nil {
		return nil, err
	}
	clock, err := scoopClock(r)
	if err != nil {
		return nil, err
	}
	at := time.Duration(v[0] * float64(time.Second))
	i := slices.IndexFunc(clock.Series, func(m thermal.ScoopPoint) bool { return m.Time >= at })
	if i < 0 {
		return []Point{Skip(label, "after the end of the likely course")}, nil
	}
	m := clock.Series[i]
	return []Point{{
		Label: label, Published: v[1], Predicted: (m.CoreC + m.MeanC) / 2,
		Low: min(m.CoreC, m.MeanC) - 1, High: max(m.CoreC, m.MeanC) + 1,
	}}, nil
}
