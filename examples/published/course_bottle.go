package published

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
)

// bottleCourses are closed vessels in the cold.
var bottleCourses = []Check{{
	Table: "course_ale_bottles", Package: "thermal", Quantity: "time to cool to the reading", Unit: "s",
	Claim: "the window of the bottle's clock", Banded: true, Points: aleBottles,
}}

var aleRuns = runs("course_ale_bottles", "time_min", "beer_c")

// aleBottles compares when a bottle outdoors came down to each reading; the wind is
// assumed: 10 (6..20) W/(m2 K), from nearly still to a breeze, radiation to the sky
// included.
func aleBottles(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "time_min", "beer_c", "air_c")
	if err != nil {
		return nil, err
	}
	u, err := aleRuns(r)
	if err != nil {
		return nil, err
	}
	label := r.Text("time_min") + " min"
	switch {
	case v[0] == 0:
		return []Point{Skip(label, "the start")}, nil
	case v[1] < -1:
		return []Point{Skip(label, "freezing: the time hangs on the plateau")}, nil
	}
	air := 0.0
	for _, q := range u.rows {
		air += number(q, "air_c") / float64(len(u.rows))
	}
	clock, err := thermal.Bottle{
		DrinkGrams: 360, Drink: food.Drink{Brix: 3, AlcoholPercent: 5.6}, Diameter: 0.061, StartC: honestplate.Some(u.startC), TargetC: v[1],
		Medium: cold.Medium{TempC: math.Round(10*air) / 10, H: honestplate.Estimate{Low: 6, Likely: 10, High: 20}},
	}.Clock()
	if err != nil {
		return nil, err
	}
	return []Point{whenRead(label, 60*v[0], clock.Cold.Window)}, nil
}
