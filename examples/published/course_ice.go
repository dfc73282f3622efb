package published

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/ware"
)

// iceCourses are pieces of ice in air, in water, and the dew on a cold wall.
var iceCourses = []Check{
	{
		Table: "ice_on_surfaces", Package: "thermal", Quantity: "time to melt", Unit: "s",
		Claim: "the window of the clock of ice on a table", Banded: true, Points: iceOnSurface,
	},
	{
		Table: "ice_shapes_on_rack", Package: "thermal", Quantity: "disk before cube", Unit: "",
		Claim: "the order", Order: true, Points: iceShapes,
	},
	{
		Table: "ice_cylinder_in_water", Package: "thermal", Quantity: "time to half the volume", Unit: "s",
		Claim: "the window of the iced glass's clock", Banded: true, Points: iceCylinder,
	},
	{
		Table: "course_ice_cylinder", Package: "thermal", Quantity: "time to the radius", Unit: "s",
		Claim: "the window of the iced glass's clock", Banded: true, Points: iceCylinderCourse,
	},
	{
		Table: "condensation_in_channel", Package: "thermal", Quantity: "latent over sensible heat", Unit: "",
		Claim: "15 %, what the analogy of heat and mass is good for", Points: condensation,
	},
}

// tops are the surfaces of the table; the ground is taken as stone.
var tops = map[string]ware.Tabletop{
	"plastic": ware.PlasticTop, "wood": ware.WoodTop, "tile": ware.CeramicTop,
	"ground": ware.StoneTop, "iron": ware.MetalTop,
}

func iceOnSurface(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "ice_g", "melted_after_s")
	if err != nil {
		return nil, err
	}
	edge := math.Cbrt(v[0] / 1000 / 917)
	top, ok := tops[r.Text("surface")]
	if !ok {
		return nil, fmt.Errorf("no top of %q", r.Text("surface"))
	}
	clock, err := thermal.IceOnTable{Shape: thermal.IceCube, Size: edge, StartC: -15, Below: top}.Clock(thermal.Air{TempC: number(r, "city_air_c"), RH: number(r, "city_rh_percent") / 100})
	if err != nil {
		return nil, err
	}
	return []Point{whenRead(fmt.Sprintf("%s, piece %s, %g g", r.Text("surface"), r.Text("id"), v[0]), v[1], clock.Gone.Window)}, nil
}

// iceShapes compares which of two pieces of 100 ml of water goes first, once.
func iceShapes(r testdata.Row) ([]Point, error) {
	label := r.Text("shape") + ", " + r.Text("time_min") + " min"
	if r.Text("shape") != "disk" || r.Text("time_min") != "60" {
		return []Point{Skip(label, "room and dimensions are not given: only the order counts, once")}, nil
	}
	table, err := testdata.Load("ice_shapes_on_rack")
	if err != nil {
		return nil, err
	}
	lost := map[string]float64{}
	for _, q := range table.Rows {
		if q.Text("time_min") == "60" {
			lost[q.Text("shape")] = number(q, "thickness_lost_percent")
		}
	}
	const volume = 100e-6 * 1000 / 917
	var half [2]float64
	for i, p := range []thermal.IceOnTable{
		{Shape: thermal.IceChip, Size: math.Cbrt(volume / 9), StartC: -15},
		{Shape: thermal.IceCube, Size: math.Cbrt(volume), StartC: -15},
	} {
		c, err := p.Clock(thermal.Air{TempC: 21, RH: 0.5})
		if err != nil {
			return nil, err
		}
		half[i] = secondsOf(c.HalfOff.Likely)
	}
	return []Point{Same("the disk goes before the cube", order(lost["cube"], lost["disk"]), order(half[0], half[1]))}, nil
}

// recedes is the window in which the face of ice in a great amount of water recedes by
// depth (m): that of the half of a ball, whose radius then has lost a fifth.
func recedes(depth, waterC float64) (honestplate.Window, error) {
	ball := 2 * depth / (1 - math.Cbrt(0.5))
	grams, err := thermal.IceBall.PieceGrams(ball)
	if err != nil {
		return honestplate.Window{}, err
	}
	c, err := thermal.Glass{
		DrinkGrams: 1e5, DrinkC: honestplate.Some(waterC), IceShape: thermal.IceBall, IceSize: ball, IceGrams: grams, IceC: honestplate.Some(0),
		Diameter: 0.45, WallC: honestplate.Some(waterC), Horizon: 24 * hour,
	}.Clock(thermal.Air{TempC: min(waterC, 50), RH: 0.9}) // the room hardly counts
	return c.IceHalf.Window, err
}

func iceCylinder(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "water_c", "salinity_g_per_kg", "half_volume_s")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("run %s, %g degC, %g g/kg", r.Text("run"), v[0], v[1])
	if v[1] > 10 {
		return []Point{Skip(label, "salt drives its own flow and lowers the face's temperature")}, nil
	}
	const radius = 0.0188
	w, err := recedes(radius*(1-math.Sqrt(0.5)), v[0])
	return []Point{whenRead(label, v[2], w)}, err
}

func iceCylinderCourse(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "water_c", "time_s", "mean_radius_cm")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%g s, radius %g cm", v[1], v[2])
	const start = 1.882
	switch {
	case v[1] == 0:
		return []Point{Skip(label, "the start")}, nil
	case v[2] < start/3:
		return []Point{Skip(label, "a thin remnant: its ends decide")}, nil
	}
	w, err := recedes((start-v[2])/100, v[0])
	return []Point{whenRead(label, v[1], w)}, err
}

// condensation compares what no coefficient enters: the ratio of latent to sensible
// heat on an upright wall, each with the log mean between inlet and outlet.
func condensation(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "air_in_c", "dew_point_in_c", "air_out_c", "dew_point_out_c", "wall_c", "latent_w", "sensible_w")
	if err != nil {
		return nil, err
	}
	wall := heat.Surface{Shape: heat.VerticalPlate, Length: 2.05, Activity: 1}
	var latent, sensible [2]float64
	for i := range 2 {
		a, err := fromDewPoint(v[2*i], v[2*i+1], 0)
		if err != nil {
			return nil, err
		}
		a.Speed = 0.36
		x, err := wall.In(a)
		if err != nil {
			return nil, err
		}
		f, err := x.At(v[4], 0)
		if err != nil {
			return nil, err
		}
		latent[i], sensible[i] = f.Latent, f.Convection
	}
	logMean := func(x [2]float64) float64 { return (x[0] - x[1]) / math.Log(x[0]/x[1]) }
	return []Point{NearRel("inlet at "+r.Text("rh")+" of saturation", v[5]/v[6], logMean(latent)/logMean(sensible), 0.15)}, nil
}
