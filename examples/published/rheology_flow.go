package published

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/testdata"
)

// Checks of thick foods and flow curves.
var rheologyFlow = []Check{
	{
		Table: "oil_viscosity", Package: "rheology", Quantity: "viscosity", Unit: "Pa s",
		Claim: "the model's own 95 % band", Banded: true, Points: oilViscosity,
	},
	{
		Table: "glycerol_water", Package: "rheology", Quantity: "viscosity", Unit: "mPa s",
		Claim: "the model's own 95 % band", Banded: true, Points: glycerolViscosity,
	},
	{
		Table: "glycerol_water", Package: "rheology", Quantity: "density", Unit: "kg/m3",
		Claim: "the model's own 95 % band", Banded: true, Points: glycerolDensity,
	},
	{
		Table: "glycerol_beta", Package: "rheology", Quantity: "departure from log-mixing", Unit: "1",
		Claim: "0.02", Points: glycerolBeta,
	},
	{
		Table: "trade_viscosity", Package: "rheology", Quantity: "viscosity", Unit: "mPa s",
		Claim: "the model's own 95 % band", Banded: true, Points: tradeViscosity,
	},
	{
		Table: "chocolate_flow", Package: "rheology", Quantity: "viscosity at 50 1/s", Unit: "Pa s",
		Claim: "the model's own 95 % band", Banded: true, Points: chocolateFlow,
	},
	{
		Table: "flow_curves", Package: "rheology", Quantity: "stress of the fitted power law", Unit: "Pa",
		Claim: "12 % of the line through the logarithms: the points bend a little", Points: flowCurves,
	},
	{
		Table: "flow_fits", Package: "rheology", Quantity: "fitted constants", Unit: "as stated",
		Claim: "the printed digits, 0.5 %; 1 % for constants fitted to equal shares, not through the logarithms", Points: flowFits,
	},
}

func oilViscosity(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "temp_c", "viscosity_pa_s")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s, %g degC (%s)", r.Text("oil"), v[0], r.Text("source"))
	kinds := map[string]rheology.Food{
		"corn oil": rheology.Food("corn oil"), "cottonseed oil": rheology.Food("cottonseed oil"), "olive oil": rheology.Food("olive oil"),
		"soybean oil": rheology.Food("soya oil"), "sunflower oil": rheology.Food("sunflower oil"), "peanut oil": rheology.Food("peanut oil"),
		"safflower oil": rheology.Food("safflower oil"), "rice bran oil": rheology.Food("rice bran oil"), "walnut oil": rheology.Food("walnut oil"),
	}
	oil, ok := kinds[r.Text("oil")]
	if !ok {
		return []Point{Skip(label, "oil bred before low erucic acid: twice what is sold today")}, nil
	}
	e, err := oil.Viscosity(v[0])
	return estimated(label, v[1], e, err, 1, 0)
}

func glycerolViscosity(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "glycerol_percent", "temp_c", "viscosity_mpa_s")
	if err != nil {
		return nil, err
	}
	e, err := rheology.Glycerol{Percent: v[0]}.Viscosity(v[1])
	return estimated(fmt.Sprintf("%g %%, %g degC (%s)", v[0], v[1], r.Text("source")), v[2], e, err, 1e3, 0)
}

func glycerolDensity(r testdata.Row) ([]Point, error) {
	label := fmt.Sprintf("%s %%, %s degC", r.Text("glycerol_percent"), r.Text("temp_c"))
	if r.Text("density_kg_per_m3") == "" {
		return []Point{Skip(label, "no density in this source")}, nil
	}
	v, err := columns(r, "glycerol_percent", "temp_c", "density_kg_per_m3")
	if err != nil {
		return nil, err
	}
	e, err := rheology.Glycerol{Percent: v[0]}.Density(v[1])
	return estimated(label, v[2], e, err, 1, 0)
}

func glycerolBeta(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "glycerol_mass_fraction", "beta")
	if err != nil {
		return nil, err
	}
	var ln [3]float64 // water, the mixture, glycerol
	for i, c := range []float64{0, v[0], 1} {
		e, err := rheology.Glycerol{Percent: 100 * c}.Viscosity(25)
		if err != nil {
			return nil, err
		}
		ln[i] = math.Log(e.Likely)
	}
	beta := (ln[1]-ln[2])/(ln[0]-ln[2]) - (1 - v[0])
	return []Point{Near(fmt.Sprintf("%.4g", v[0]), v[1], beta, 0.02)}, nil
}

func tradeViscosity(r testdata.Row) ([]Point, error) {
	food := r.Text("food")
	label := food + " " + r.Text("stated_as") + " (" + r.Text("source") + ")"
	liquids := map[string]rheology.Liquid{
		"sweetened condensed milk": rheology.Food("sweetened condensed milk"), "evaporated milk": rheology.Food("evaporated milk"),
		"maple syrup": rheology.Syrup{Of: "maple"}, "tomato ketchup": rheology.Food("tomato ketchup"),
		"golden syrup": rheology.Syrup{Of: "golden"},
	}
	t, rate := 22.0, 0.0 // a room, where nothing is stated
	var err error
	if r.Text("temp_c") != "" {
		if t, err = r.Float("temp_c"); err != nil {
			return nil, err
		}
	}
	l, ok := liquids[food]
	switch {
	case !ok:
		return []Point{Skip(label, "neither temperature nor shear rate nor strength is stated")}, nil
	case food == "tomato ketchup" && r.Text("shear_rate_per_s") == "":
		return []Point{Skip(label, "no shear rate is stated: it is that of about 0.7 1/s")}, nil
	case food == "tomato ketchup":
		if rate, err = r.Float("shear_rate_per_s"); err != nil {
			return nil, err
		}
	}
	if food == "golden syrup" {
		v, err := r.Float("kinematic_viscosity_cm2_s")
		if err != nil {
			return nil, err
		}
		eta, err := l.Viscosity(t)
		if err != nil {
			return nil, err
		}
		rho, err := l.Density(t)
		e := honestplate.Estimate{Low: eta.Low / rho.High, Likely: eta.Likely / rho.Likely, High: eta.High / rho.Low}
		return estimated(label, v, e, err, 1e4, 0)
	}
	v, err := r.Float("viscosity_mpa_s")
	if err != nil {
		return nil, err
	}
	e, err := rheology.ViscosityAtRate(l, t, rate)
	return estimated(label, v, e, err, 1e3, 0)
}

func chocolateFlow(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "yield_pa", "plastic_pa_s")
	if err != nil {
		return nil, err
	}
	var m flow.Model = flow.Casson{Yield: v[0], Plastic: v[1]}
	if r.Text("model") == "Bingham" {
		m = flow.Bingham{Yield: v[0], Plastic: v[1]}
	}
	published, err := flow.Viscosity(m, 50)
	if err != nil {
		return nil, err
	}
	food, t := rheology.Food("milk chocolate, melted"), 40.0
	switch r.Text("food") {
	case "dark chocolate":
		food = "dark chocolate, melted"
	case "tempered chocolate":
		food, t = "milk chocolate, tempered", 30
	}
	e, err := food.Viscosity(t)
	return estimated(r.Text("food")+" ("+r.Text("source")+")", published, e, err, 1, 0)
}

// brodkey reads the points of an example of Brodkey & Hershey.
var brodkey = sync.OnceValues(func() (map[string][]flow.Point, error) {
	table, err := testdata.Load("flow_curves")
	if err != nil {
		return nil, err
	}
	points := map[string][]flow.Point{}
	for _, r := range table.Rows {
		v, err := columns(r, "rate_per_s", "stress_pa")
		if err != nil {
			return nil, err
		}
		points[r.Text("example")] = append(points[r.Text("example")], flow.Point{ShearRate: v[0], Stress: v[1]})
	}
	return points, nil
})

// throughLogarithms fits a power law to equal shares of the stress, nearly the line through
// the logarithms on the graph paper of the textbooks.
func throughLogarithms(points []flow.Point) (flow.PowerLaw, error) {
	points = slices.Clone(points)
	for i, p := range points {
		points[i].Weight = 1 / (p.Stress * p.Stress)
	}
	fit, err := flow.Fit(flow.PowerLaw{}, points)
	if err != nil {
		return flow.PowerLaw{}, err
	}
	return fit.Model.(flow.PowerLaw), nil
}

func flowCurves(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "rate_per_s", "stress_pa")
	if err != nil {
		return nil, err
	}
	points, err := brodkey()
	if err != nil {
		return nil, err
	}
	m, err := throughLogarithms(points[r.Text("example")])
	if err != nil {
		return nil, err
	}
	return []Point{NearRel(fmt.Sprintf("%s, %g 1/s", r.Text("example"), v[0]), v[1], m.Stress(v[0]), 0.12)}, nil
}

func flowFits(r testdata.Row) ([]Point, error) {
	example, quantity := r.Text("example"), r.Text("quantity")
	label := example + ": " + quantity
	published, err := r.Float("value")
	if err != nil {
		return nil, err
	}
	if strings.HasPrefix(example, "Brodkey") {
		points, err := brodkey()
		if err != nil {
			return nil, err
		}
		fit, err := throughLogarithms(points[example[len(example)-4:]])
		constant := fit.K
		if quantity[0] == 'n' {
			constant = fit.N
		}
		return []Point{NearRel(label, published, constant, 0.01)}, err
	}
	given, err := columns(r, "k", "n")
	if err != nil {
		return nil, err
	}
	m := flow.PowerLaw{K: given[0], N: given[1]}
	fit, err := flow.Fit(flow.Bingham{}, []flow.Point{
		{ShearRate: 10, Stress: m.Stress(10)}, {ShearRate: 50, Stress: m.Stress(50)}})
	if err != nil {
		return nil, err
	}
	constant := fit.Values[1]
	if quantity[0] == 'y' {
		constant = fit.Values[0]
	}
	return []Point{NearRel(label, published, constant, 0.005)}, nil
}
