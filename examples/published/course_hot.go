package published

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

// hotCourses are vessels of water that cool, in a room or in a freezer.
var hotCourses = []Check{
	cooling("course_mug_open", "time_min", 60, func(testdata.Row, run) vessel {
		return vessel{thermal.HotDish{Grams: 300, Diameter: 0.08, VesselGrams: 350}, thermal.Air{TempC: 24, RH: 0.5}, someMug}
	}),
	cooling("course_mug_oil", "time_min", 60, func(testdata.Row, run) vessel {
		return vessel{thermal.HotDish{Grams: 300, Diameter: 0.08, VesselGrams: 350, Activity: dry}, thermal.Air{TempC: 24, RH: 0.5}, someMug}
	}),
	cooling("course_water_80ml", "time_s", 1, func(testdata.Row, run) vessel {
		return vessel{thermal.HotDish{Grams: 80, Diameter: 0.05, VesselGrams: 40}, thermal.Air{TempC: 28, RH: 0.5}, given}
	}),
	cooling("course_measuring_cup", "time_s", 1, func(_ testdata.Row, u run) vessel {
		return vessel{thermal.HotDish{Grams: 250, Diameter: 0.08, VesselGrams: 300}, thermal.Air{TempC: u.roomC, RH: 0.5}, someMug}
	}),
	cooling("course_canister", "time_s", 1, func(r testdata.Row, u run) vessel {
		// 5.1 g of plastic take up as much as 11 g of glass (1900 against 850 J/(kg K)).
		return vessel{thermal.HotDish{Grams: number(r, "water_g"), Diameter: 0.032, VesselGrams: 11, Activity: dry}, thermal.Air{TempC: u.roomC, RH: 0.5}, given}
	}, "run"),
	cooling("course_dish_in_freezer", "time_min", 60, func(r testdata.Row, _ run) vessel {
		return vessel{thermal.HotDish{Grams: number(r, "water_g"), Diameter: 0.12, VesselGrams: 450}, thermal.Air{TempC: number(r, "freezer_c"), RH: 0.8}, given}
	}),
	cooling("course_foam_cups", "time_s", 1, func(testdata.Row, run) vessel {
		return vessel{foamCup, freezerAir, given}
	}, "cup", "trial"),
	{
		Table: "foam_cups_to_zero", Package: "thermal", Quantity: "time to 0 degC", Unit: "s",
		Claim: "the window of the hot dish's clock", Banded: true, Points: foamCups,
	},
	{
		Table: "course_five_vessels", Package: "thermal", Quantity: "insulated before ordinary", Unit: "",
		Claim: "the order", Order: true, Points: fiveVessels,
	},
}

// dry is a surface that gives off no vapour: under oil, under a lid. 0 would mean wet.
const dry = 1e-6

// A vessel is the conditions of a course. Where its amount had to be assumed, fill is
// how well it is known at 95 %, as a factor: what was assumed is compared with its band.
type vessel struct {
	dish thermal.HotDish
	air  thermal.Air
	fill float64
}

const (
	given   = 1   // the amount is published
	someMug = 1.5 // mugs and cups hold 200 to 450 g (common practice, no source)
)

// spread widens the band of a point by what the fill is not known: the two are
// independent, so their logarithms add as squares.
func (v vessel) spread(p Point, dish thermal.HotDish) (Point, error) {
	grams := dish.Grams
	for _, end := range []struct {
		fill float64
		of   *float64
	}{{1 / v.fill, &p.Low}, {v.fill, &p.High}} {
		dish.Grams = grams * end.fill
		c, err := dish.Likely(v.air)
		if err != nil {
			return p, err
		}
		own, fill := math.Log(*end.of/p.Predicted), math.Log(secondsOf(c.Limit.Likely)/p.Predicted)
		*end.of = p.Predicted * math.Exp(math.Copysign(math.Hypot(own, fill), own))
	}
	return p, nil
}

var (
	foamCup    = thermal.HotDish{Grams: 59, Diameter: 0.06, VesselGrams: 3, SideH: 3} // of foam
	freezerAir = thermal.Air{TempC: -18, RH: 0.8}
)

// cooling compares a course: how long after its first reading the vessel came down to
// each of the others. seconds are in a unit of the column of times.
func cooling(table, timeColumn string, seconds float64, conditions func(testdata.Row, run) vessel, keys ...string) Check {
	of := runs(table, timeColumn, "water_c", keys...)
	return Check{
		Table: table, Package: "thermal", Quantity: "time to cool to the reading", Unit: "s",
		Claim: "the window of the hot dish's clock", Banded: true,
		Points: func(r testdata.Row) ([]Point, error) {
			u, err := of(r)
			if err != nil {
				return nil, err
			}
			label := fmt.Sprintf("%s%s %s", keyOf(r, keys), r.Text(timeColumn), map[float64]string{1: "s", 60: "min"}[seconds])
			if r.Text("water_c") == "" {
				return []Point{Skip(label, r.Text("seen"))}, nil
			}
			v, err := columns(r, timeColumn, "water_c")
			if err != nil {
				return nil, err
			}
			in := conditions(r, u)
			dish, air := in.dish, in.air
			after := (v[0] - u.startS) * seconds
			switch {
			case after <= 0:
				return []Point{Skip(label, "the start")}, nil
			case v[1] >= u.startC:
				return []Point{Skip(label, "not below the start yet")}, nil
			case v[1] < air.TempC+3:
				return []Point{Skip(label, "so near the room that the time hangs on it alone")}, nil
			case v[1] < 0.9 && air.TempC < 0:
				return []Point{Skip(label, "freezing: the clock has no ice")}, nil
			}
			// The first reading was taken in the vessel.
			dish.StartC, dish.VesselC, dish.LimitC = u.startC, honestplate.Some(u.startC), honestplate.Some(v[1])
			clock, err := dish.Clock(air)
			if err != nil {
				return nil, err
			}
			p := whenRead(label, after, clock.Limit.Window)
			if in.fill != given {
				p, err = in.spread(p, dish)
			}
			return []Point{p}, err
		},
	}
}

func foamCups(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "start_c", "seconds_to_0c")
	if err != nil {
		return nil, err
	}
	cup := foamCup
	cup.StartC, cup.LimitC = v[0], honestplate.Some(0)
	clock, err := cup.Clock(freezerAir)
	if err != nil {
		return nil, err
	}
	return []Point{whenRead(fmt.Sprintf("%s, trial %s, from %g degC", r.Text("cup"), r.Text("trial"), v[0]), v[1], clock.Limit.Window)}, nil
}

var vesselRuns = runs("course_five_vessels", "time_s", "water_c", "vessel")

// fiveVessels holds the time in which an ordinary mug loses a fifth of its excess over
// 24 degC against that of the insulated one; SideH of the insulated is 1.
func fiveVessels(r testdata.Row) ([]Point, error) {
	u, err := vesselRuns(r)
	if err != nil {
		return nil, err
	}
	label := "vessel " + r.Text("vessel") + ", " + r.Text("time_s") + " s"
	if r.Text("vessel") == "1" || r.Text("time_s") != u.rows[0].Text("time_s") {
		return []Point{Skip(label, "sizes, fills and room are not given: only the order counts, once a vessel")}, nil
	}
	insulated, err := vesselRuns(u.rows[0].With("vessel", "1"))
	if err != nil {
		return nil, err
	}
	slow, err := insulated.fifth()
	if err != nil {
		return nil, err
	}
	fast, err := u.fifth()
	if err != nil {
		return nil, err
	}
	var clock [2]float64
	for i, side := range []float64{8, 1} {
		c, err := thermal.HotDish{Grams: 300, Diameter: 0.08, StartC: 90, LimitC: honestplate.Some(76.8), SideH: side}.Likely(thermal.Air{TempC: 24, RH: 0.5})
		if err != nil {
			return nil, err
		}
		clock[i] = secondsOf(c.Limit.Likely)
	}
	return []Point{Same("vessel "+r.Text("vessel")+" cools faster than the insulated one", order(fast, slow), order(clock[0], clock[1]))}, nil
}

// order is 1 where a comes before b, else -1.
func order(a, b float64) float64 {
	if a < b {
		return 1
	}
	return -1
}

// fifth is when a run has lost a fifth of its excess over 24 degC, between readings.
func (u run) fifth() (float64, error) {
	target := 24 + 0.8*(u.startC-24)
	t0, c0 := u.startS, u.startC
	for _, r := range u.rows[1:] {
		v, err := columns(r, "time_s", "water_c")
		if err != nil {
			return 0, err
		}
		if v[1] <= target {
			return t0 + (c0-target)/(c0-v[1])*(v[0]-t0) - u.startS, nil
		}
		t0, c0 = v[0], v[1]
	}
	return math.Inf(1), nil
}
