package published

import (
	"cmp"
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/light"
)

var surfaceChecks = []Check{
	{
		Table: "convection_examples", Package: "thermal",
		Quantity: "convection correlations", Unit: "Nu; W",
		Claim:  "the printed digits; the column why",
		Points: convection,
	},
	{
		Table: "surface_examples", Package: "thermal",
		Quantity: "a whole surface in air", Unit: "as the row",
		Claim:  "0.3 % radiation, 2..8 % convection; the column why",
		Points: surfaceExamples,
	},
	{
		Table: "can_warming", Package: "thermal",
		Quantity: "latent warming of a cold can in 5 minutes", Unit: "K",
		Claim:  "between still air and 3 m/s: still air alone gives a third of the published warming",
		Points: canWarming,
	},
	{
		Table: "blackbody_fractions", Package: "thermal",
		Quantity: "share of black-body radiation", Unit: "",
		Claim:  "half the last printed digit + 1e-4; interpolated rows 3 %",
		Points: blackbody,
	},
	{
		Table: "stage_lamp_photometrics", Package: "thermal",
		Quantity: "peak intensity from power and beam angle", Unit: "cd", Banded: true,
		Claim:  "a factor of 3 (Fresnel), 1.7 (profile), 1.3 (PAR): a light meter knows better",
		Points: photometrics,
	},
	{
		Table: "lamp_efficacy", Package: "thermal",
		Quantity: "lumens per electrical watt, or per stored joule", Unit: "lm/W",
		Claim:  "the source's own 95 % band",
		Points: lampEfficacy,
	},
	{
		Table: "emissivity", Package: "thermal",
		Quantity: "the default emissivity", Unit: "", Banded: true,
		Claim:  "0.05 for all that is not metal; fine snow has 0.82",
		Points: emissivity,
	},
	{
		Table: "coffee_cooling", Package: "thermal",
		Quantity: "temperature of coffee in a mug", Unit: "degC", Floor: 1,
		Claim:  "15 % of the excess over the room, for an assumed mug of 300 g, 80 mm wide, at 50 % RH",
		Points: coffee,
	},
}

func convection(r testdata.Row) ([]Point, error) {
	label := r.Text("example") + ": " + r.Text("correlation")
	if r.Text("band_rel") == "" {
		return []Point{Skip(label, r.Text("why"))}, nil
	}
	opt := func(column string) float64 {
		v, err := r.Float(column)
		if err != nil {
			return 0 // the column does not apply
		}
		return v
	}
	v, err := numbers(r, "pr", "published", "band_rel")
	if err != nil {
		return nil, err
	}
	pr, ra, re, extra := v[0], opt("ra"), opt("re"), opt("extra")
	var nu float64
	switch c := r.Text("correlation"); c {
	case "vertical plate":
		nu, err = heat.Surface{Shape: heat.VerticalPlate}.FreeNusselt(ra, pr)
	case "vertical cylinder":
		nu, err = heat.Surface{Shape: heat.VerticalCylinder, Length: extra, Diameter: 1}.FreeNusselt(ra, pr)
	case "horizontal cylinder":
		nu, err = heat.Surface{Shape: heat.HorizontalCylinder}.FreeNusselt(ra, pr)
	case "sphere":
		nu, err = heat.Surface{Shape: heat.Sphere}.FreeNusselt(ra, pr)
	case "plate up":
		nu, err = heat.Surface{Shape: heat.PlateUp}.FreeNusselt(ra, pr)
	case "plate down":
		nu, err = heat.Surface{Shape: heat.PlateDown}.FreeNusselt(ra, pr)
	case "cylinder across":
		nu, err = heat.Surface{Shape: heat.HorizontalCylinder}.ForcedNusselt(re, pr)
	case "sphere in stream":
		nu, err = heat.Surface{Shape: heat.Sphere}.ForcedNusselt(re, pr)
		nu = 2 + (nu-2)*math.Pow(extra, 0.25) // the examples are in water, whose viscosity differs at the surface
	case "plate, both faces":
		up, upErr := heat.Surface{Shape: heat.PlateUp}.FreeNusselt(ra, pr)
		down, downErr := heat.Surface{Shape: heat.PlateDown}.FreeNusselt(ra, pr)
		err = cmp.Or(upErr, downErr)
		nu = up + down
	case "duct":
		return []Point{Skip(label, "its sides are taken as laminar, which the library leaves out")}, nil
	case "plate along":
		nu, err = heat.Surface{Shape: heat.VerticalPlate}.ForcedNusselt(re, pr)
	default:
		err = fmt.Errorf("unknown correlation %q", c)
	}
	if err != nil {
		return nil, err
	}
	got := nu
	if r.Text("quantity") == "heat" {
		s, err := numbers(r, "conductivity_w_per_m_k", "length_m", "area_m2", "dt_k")
		if err != nil {
			return nil, err
		}
		got = nu * s[0] / s[1] * s[2] * s[3]
	}
	return []Point{NearRel(label, v[1], got, v[2])}, nil
}

func surfaceExamples(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "length_m", "speed_m_per_s", "air_c", "rh", "pressure_pa", "activity", "emissivity", "published", "band")
	if err != nil {
		return nil, err
	}
	shape, ok := map[string]heat.Shape{
		"vertical plate": heat.VerticalPlate, "horizontal cylinder": heat.HorizontalCylinder, "plate up": heat.PlateUp,
	}[r.Text("shape")]
	if !ok {
		return nil, fmt.Errorf("unknown shape %q", r.Text("shape"))
	}
	surface := heat.Surface{Shape: shape, Length: v[0], Activity: v[5], Emissivity: v[6]}
	air := heat.MoistAir{TempC: v[2], RH: v[3], PressurePa: v[4], Speed: v[1]}
	label := r.Text("example") + ": " + r.Text("quantity")
	if r.Text("quantity") == "equilibrium" {
		x, err := surface.In(air)
		if err != nil {
			return nil, err
		}
		got, err := x.EquilibriumC(0)
		if err != nil {
			return nil, err
		}
		return []Point{Near(label, v[7], got, v[8])}, nil
	}
	surfaceC, err := r.Float("surface_c")
	if err != nil {
		return nil, err
	}
	x, err := surface.In(air)
	if err != nil {
		return nil, err
	}
	f, err := x.At(surfaceC, 0)
	if err != nil {
		return nil, err
	}
	got, ok := map[string]float64{"convection": f.Convection, "radiation": f.Radiation, "h": f.H}[r.Text("quantity")]
	if !ok {
		return nil, fmt.Errorf("unknown quantity %q", r.Text("quantity"))
	}
	return []Point{NearRel(label, v[7], got, v[8])}, nil
}

// canWarming integrates the heat of dew on a can from 1 degC for 5 minutes. Only that
// heat counts, as in the reports, but the can warms by it alone.
func canWarming(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "air_c", "dew_point_c", "warming_k")
	if err != nil {
		return nil, err
	}
	const (
		area     = 0.0301       // m2, side and ends of a 355 ml can
		capacity = 0.355 * 4180 // J/K
	)
	can := heat.Surface{Shape: heat.VerticalCylinder, Length: 0.122, Diameter: 0.066, Emissivity: 0.05, Activity: 1}
	warming := func(speed float64) (float64, error) {
		a, err := fromDewPoint(v[0], v[1], 0)
		if err != nil {
			return 0, err
		}
		a.Speed = speed
		x, err := can.In(a)
		if err != nil {
			return 0, err
		}
		t := 1.0
		for range 300 {
			f, err := x.At(t, 0)
			if err != nil {
				return 0, err
			}
			t += f.Latent * area / capacity
		}
		return t - 1, nil
	}
	still, err := warming(0)
	if err != nil {
		return nil, err
	}
	moving, err := warming(1.5)
	if err != nil {
		return nil, err
	}
	windy, err := warming(3)
	if err != nil {
		return nil, err
	}
	return []Point{{
		Label:     fmt.Sprintf("%s (still air gives %.1f K, 1.5 m/s %.1f K)", r.Text("place"), still, moving),
		Published: v[2], Predicted: moving, Low: still, High: windy,
	}}, nil
}

func blackbody(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "lambda_t_um_k", "fraction")
	if err != nil {
		return nil, err
	}
	got, err := heat.BlackbodyFraction(v[0] * 1e-6)
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%g um K", v[0])
	if r.Text("interpolated") == "yes" {
		return []Point{NearRel(label, v[1], got, 0.03)}, nil
	}
	band := lastDigit(r.Text("fraction")) + 1e-4*min(1, got*10)
	return []Point{Near(label, v[1], got, band)}, nil
}

func photometrics(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "lamp_w", "beam_angle_deg", "peak_candela")
	if err != nil {
		return nil, err
	}
	name := r.Text("fixture")
	head := light.Fresnel
	switch {
	case strings.HasPrefix(name, "ellipsoidal"):
		head = light.Profile
	case strings.HasPrefix(name, "PAR"):
		head = light.PAR
	}
	// candela are the lux at one metre
	lux, err := light.Lamp{Watts: v[0], BeamDegrees: v[1], Distance: 1, Head: head}.Illuminance()
	if err != nil {
		return nil, err
	}
	return []Point{{Label: name, Published: v[2], Predicted: lux.Likely, Low: lux.Low, High: lux.High}}, nil
}

func lampEfficacy(r testdata.Row) ([]Point, error) {
	v, err := r.Float("lumen_per_watt")
	if err != nil {
		return nil, err
	}
	label := r.Text("lamp")
	source, ok := map[string]light.Source{
		"tungsten": light.Tungsten, "discharge": light.Discharge, "LED": light.LED, "flash": light.Flash,
	}[r.Text("source_type")]
	if !ok {
		return []Point{Skip(label, r.Text("source_type")+": not at 3200 K")}, nil
	}
	d, err := source.Data()
	if err != nil {
		return nil, err
	}
	return []Point{{
		Label: label, Published: v, Predicted: d.Radiated.Likely * d.Efficacy.Likely,
		Low: d.Radiated.Low * d.Efficacy.Low, High: d.Radiated.High * d.Efficacy.High,
	}}, nil
}

func emissivity(r testdata.Row) ([]Point, error) {
	v, err := r.Float("emissivity")
	if err != nil {
		return nil, err
	}
	switch r.Text("of") {
	case "metal":
		return []Point{Skip(r.Text("material"), "bare metal: give its own")}, nil
	case "stone":
		return []Point{Skip(r.Text("material"), "sources disagree: others have 0.90..0.94")}, nil
	}
	// What a surface that gives none radiates, over what a black body would.
	x, err := heat.Surface{Shape: heat.Sphere, Length: 0.05}.In(heat.MoistAir{TempC: 20, RH: 0.5})
	if err != nil {
		return nil, err
	}
	f, err := x.At(30, 0)
	black := 5.670374419e-8 * (math.Pow(293.15, 4) - math.Pow(303.15, 4))
	return []Point{Near(r.Text("material"), v, math.Round(1e6*f.Radiation/black)/1e6, 0.05)}, err
}

func coffee(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "time_min", "black_c", "cream_c", "room_c")
	if err != nil {
		return nil, err
	}
	room := thermal.Air{TempC: v[3], RH: 0.5}
	var points []Point
	for i, start := range []float64{82.3, 68.8} {
		label := fmt.Sprintf("%s, %g min", []string{"black", "with cream"}[i], v[0])
		if v[0] == 0 {
			points = append(points, Skip(label, "the start"))
			continue
		}
		clock, err := thermal.HotDish{Grams: 300, Diameter: 0.08, StartC: start, VesselC: honestplate.Some(start), LimitC: honestplate.Some(v[3] + 1)}.Likely(room)
		if err != nil {
			return nil, err
		}
		got := math.NaN()
		for j, p := range clock.Series[1:] {
			if at := time.Duration(v[0] * float64(time.Minute)); p.Time >= at {
				q := clock.Series[j]
				share := float64(at-q.Time) / float64(p.Time-q.Time)
				got = q.MeanC + share*(p.MeanC-q.MeanC)
				break
			}
		}
		points = append(points, Near(label, v[1+i], got, 0.15*(got-v[3])))
	}
	return points, nil
}
