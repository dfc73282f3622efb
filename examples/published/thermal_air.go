package published

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/heat"
)

// Checks of air, surfaces, light and cold glass.
var thermalAir = slices.Concat(airChecks, surfaceChecks)

var airChecks = []Check{
	{
		Table: "saturation_pressure_ashrae", Package: "thermal",
		Quantity: "saturation pressure", Unit: "kPa",
		Claim:  "0.05 % and half the last printed digit; below -40 degC 0.2 %",
		Points: saturationASHRAE,
	},
	{
		Table: "saturation_pressure_iapws", Package: "thermal",
		Quantity: "saturation pressure", Unit: "Pa",
		Claim:  "0.05 %",
		Points: saturationIAPWS,
	},
	{
		Table: "saturated_air_ashrae", Package: "thermal",
		Quantity: "saturated humidity ratio, ideal gases", Unit: "kg/kg",
		Claim:  "ideal gases are 0.4..0.8 % low, 1.3 % at 85 degC",
		Points: func(r testdata.Row) ([]Point, error) { return saturatedRatio(r) },
	},
	{
		Table: "saturated_air_ashrae", Package: "thermal",
		Quantity: "specific volume and enthalpy", Unit: "m3/kg, kJ/kg",
		Claim:  "volume 0.2 % (dry) or 0.25 % (saturated, 1.6 % at 85 degC); enthalpy 0.25 % of h + 50 kJ/kg, 0.5 % from 35 degC, 0.9 % at 85 degC",
		Points: saturatedAir,
	},
	{
		Table: "latent_heat_ashrae", Package: "thermal",
		Quantity: "latent heat", Unit: "kJ/kg",
		Claim:  "0.05 %",
		Points: latentHeat,
	},
	{
		Table: "vapour_diffusivity", Package: "thermal",
		Quantity: "diffusivity of vapour in air", Unit: "mm2/s",
		Claim:  "2.2 % of the handbook, 3 % of other sources, which differ by 4 %",
		Points: diffusivity,
	},
	{
		Table: "air_properties", Package: "thermal",
		Quantity: "density, conductivity, viscosity of dry air", Unit: "SI",
		Claim:  "1.5 %, 2.7 %, 1.3 %: the books' own disagreement",
		Points: airProperties,
	},
	{
		Table: "psychrometrics_psychrolib", Package: "thermal",
		Quantity: "dew point, wet bulb, humidity ratio, enthalpy, volume", Unit: "degC, kg/kg, kJ/kg, m3/kg",
		Claim:  "1 mK; 2 mK; half the last printed digit",
		Points: psychrolibGrid,
	},
	{
		Table: "psychrometrics_tests", Package: "thermal",
		Quantity: "moist air, as a library tests itself", Unit: "SI",
		Claim:  "the tolerance that those tests use",
		Points: psychrolibTests,
	},
	{
		Table: "psychrometrics_examples", Package: "thermal",
		Quantity: "moist air of worked examples", Unit: "as the row",
		Claim:  "what the way of reading allows: the column why",
		Points: airExamples,
	},
}

// lastDigit is half a unit of the last printed digit of a number.
func lastDigit(printed string) float64 {
	mantissa, exponent, _ := strings.Cut(strings.ToLower(printed), "e")
	power := 0
	if exponent != "" {
		power, _ = strconv.Atoi(exponent)
	}
	if _, decimals, ok := strings.Cut(mantissa, "."); ok {
		power -= len(decimals)
	}
	return 0.5 * math.Pow(10, float64(power))
}

func saturationASHRAE(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_c", "p_ws_kpa")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%g degC, %s", v[0], r.Text("phase"))
	if r.Text("phase") == "liquid" && v[0] < 0.01 {
		return []Point{Skip(label, "liquid below its triple point: the package takes ice")}, nil
	}
	got, err := heat.SaturationPressure(v[0])
	if err != nil {
		return nil, err
	}
	rel := 5e-4
	if v[0] < -40 {
		rel = 2e-3
	}
	return []Point{Near(label, v[1], got/1e3, rel*v[1]+lastDigit(r.Text("p_ws_kpa")))}, nil
}

func saturationIAPWS(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_k", "pressure_pa")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s, %g K", r.Text("quantity"), v[0])
	switch {
	case v[0] > 473.15:
		return []Point{Skip(label, "above the range of 200 degC")}, nil
	case strings.Contains(label, "superseded"):
		return []Point{Skip(label, "superseded by the row before")}, nil
	}
	got, err := heat.SaturationPressure(v[0] - 273.15)
	if err != nil {
		return nil, err
	}
	return []Point{NearRel(label, v[1], got, 5e-4)}, nil
}

func saturatedRatio(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_c", "humidity_ratio")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%g degC", v[0])
	half := lastDigit(r.Text("humidity_ratio"))
	w, err := property(heat.MoistAir{TempC: v[0], RH: 1}, "HumidityRatio")()
	if err != nil {
		return nil, err
	}
	rel := 8e-3
	if v[0] > 60 {
		rel = 0.013
	}
	return []Point{{Label: label, Published: v[1], Predicted: w, Low: w - half, High: w*(1+rel) + half}}, nil
}

func saturatedAir(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_c", "dry_volume_m3_per_kg", "volume_m3_per_kg_da", "dry_enthalpy_kj_per_kg", "enthalpy_kj_per_kg_da")
	if err != nil {
		return nil, err
	}
	var points []Point
	for i, rh := range []float64{0, 1} {
		a := heat.MoistAir{TempC: v[0], RH: rh}
		volume, err := property(a, "SpecificVolume")()
		if err != nil {
			return nil, err
		}
		h, err := property(a, "Enthalpy")()
		if err != nil {
			return nil, err
		}
		relV, relH := 2e-3, 2.5e-3
		if rh == 1 {
			relV = 2.5e-3
			if v[0] > 80 {
				relV, relH = 0.016, 0.009
			} else if v[0] >= 35 {
				relV, relH = 3e-3, 5e-3
			}
		}
		label := fmt.Sprintf("%g degC, RH %g, ", v[0], rh)
		points = append(points,
			NearRel(label+"volume", v[1+i], volume, relV),
			Near(label+"enthalpy", v[3+i], h/1e3, relH*(math.Abs(h/1e3)+50)))
	}
	return points, nil
}

func latentHeat(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_c", "latent_heat_kj_per_kg")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s, %g degC", r.Text("process"), v[0])
	t := v[0]
	if r.Text("process") == "sublimation" && t == 0 {
		t = -1e-9 // from 0 degC on the package takes dew
	}
	if r.Text("process") != "sublimation" && t < 0 {
		return []Point{Skip(label, "evaporation below freezing: the package takes frost")}, nil
	}
	got, err := heat.LatentHeat(t)
	if err != nil {
		return nil, err
	}
	return []Point{NearRel(label, v[1], got/1e3, 5e-4)}, nil
}

func diffusivity(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_c", "diffusivity_mm2_per_s")
	if err != nil {
		return nil, err
	}
	got, err := property(heat.MoistAir{TempC: v[0]}, "VapourDiffusivity")()
	if err != nil {
		return nil, err
	}
	rel := 0.03
	if strings.Contains(r.Text("source"), "ch. 1") {
		rel = 0.022
	}
	return []Point{NearRel(fmt.Sprintf("%g degC, %.20s", v[0], r.Text("source")), v[1], got*1e6, rel)}, nil
}

func airProperties(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_k", "density_kg_per_m3", "conductivity_w_per_m_k", "viscosity_pa_s")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s, %g K", r.Text("book"), v[0])
	if v[0] < 173.15 || v[0] > 373.15 {
		return []Point{Skip(label, "outside -100..100 degC, the range of Air")}, nil
	}
	a := heat.MoistAir{TempC: v[0] - 273.15}
	rho, err := property(a, "Density")()
	if err != nil {
		return nil, err
	}
	k, err := property(a, "Conductivity")()
	if err != nil {
		return nil, err
	}
	mu, err := property(a, "Viscosity")()
	if err != nil {
		return nil, err
	}
	return []Point{
		NearRel(label+", density", v[1], rho, 0.015),
		NearRel(label+", conductivity", v[2], k, 0.027),
		NearRel(label+", viscosity", v[3], mu, 0.013),
	}, nil
}

func psychrolibGrid(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_c", "rh_percent", "pressure_pa", "dew_point_c", "wet_bulb_c", "humidity_ratio", "enthalpy_kj_per_kg_da", "volume_m3_per_kg_da", "vapour_pressure_pa")
	if err != nil {
		return nil, err
	}
	a := heat.MoistAir{TempC: v[0], RH: v[1] / 100, PressurePa: v[2]}
	label := fmt.Sprintf("%g degC %g %%, ", v[0], v[1])
	var points []Point
	for _, q := range []struct {
		name      string
		published float64
		compute   func() (float64, error)
		scale     float64
		band      float64
	}{
		{"dew point", v[3], a.DewPointC, 1, 1e-3},
		{"wet bulb", v[4], a.WetBulbC, 1, 2e-3},
		{"humidity ratio", v[5], property(a, "HumidityRatio"), 1, lastDigit(r.Text("humidity_ratio")) + 1e-5*v[5]},
		{"enthalpy", v[6], property(a, "Enthalpy"), 1e-3, lastDigit(r.Text("enthalpy_kj_per_kg_da")) + 1e-5*v[6]},
		{"volume", v[7], property(a, "SpecificVolume"), 1, lastDigit(r.Text("volume_m3_per_kg_da")) + 1e-5*v[7]},
		{"vapour pressure", v[8], property(a, "VapourPressure"), 1, lastDigit(r.Text("vapour_pressure_pa")) + 1e-5*v[8]},
	} {
		got, err := q.compute()
		if err != nil {
			return nil, err
		}
		points = append(points, Near(label+q.name, q.published, got*q.scale, q.band))
	}
	return points, nil
}

func psychrolibTests(r testdata.Row) ([]Point, error) {
	opt := func(column string) float64 {
		v, err := r.Float(column)
		if err != nil {
			return 0 // the column does not apply
		}
		return v
	}
	want, err := r.Float("expected")
	if err != nil {
		return nil, err
	}
	t, p, w := opt("temp_c"), opt("pressure_pa"), opt("humidity_ratio")
	// rows that give a humidity ratio give no humidity
	moist := func() (heat.MoistAir, error) { return fromRatio(t, w, p) }
	saturated := heat.MoistAir{TempC: t, RH: 1, PressurePa: p}
	var got float64
	switch q := r.Text("quantity"); q {
	case "GetSatVapPres":
		got, err = heat.SaturationPressure(t)
	case "GetSatHumRatio":
		got, err = property(saturated, "HumidityRatio")()
	case "GetSatAirEnthalpy":
		got, err = property(saturated, "Enthalpy")()
	case "GetTWetBulbFromRelHum":
		got, err = heat.MoistAir{TempC: t, RH: opt("rh"), PressurePa: p}.WetBulbC()
	case "GetHumRatioFromVapPres":
		// a vapour pressure is that of saturated air at its dew point
		var dew float64
		if dew, err = heat.SaturationTemperature(opt("vapour_pressure_pa")); err == nil {
			got, err = property(heat.MoistAir{TempC: dew, RH: 1, PressurePa: p}, "HumidityRatio")()
		}
	case "GetHumRatioFromTWetBulb":
		var a heat.MoistAir
		if a, err = fromWetBulb(t, opt("wet_bulb_c"), p); err == nil {
			got, err = property(a, "HumidityRatio")()
		}
	case "GetDryAirEnthalpy":
		got, err = property(heat.MoistAir{TempC: t}, "Enthalpy")()
	case "GetDryAirVolume":
		got, err = property(heat.MoistAir{TempC: t, PressurePa: p}, "SpecificVolume")()
	case "GetMoistAirEnthalpy", "GetMoistAirVolume", "GetMoistAirDensity":
		var a heat.MoistAir
		if a, err = moist(); err == nil {
			got, err = map[string]func() (float64, error){
				"GetMoistAirEnthalpy": property(a, "Enthalpy"), "GetMoistAirVolume": property(a, "SpecificVolume"), "GetMoistAirDensity": property(a, "Density"),
			}[q]()
		}
	case "GetStandardAtmPressure":
		got, err = heat.PressureAtAltitude(opt("altitude_m"))
	default:
		err = fmt.Errorf("unknown quantity %q", q)
	}
	if err != nil {
		return nil, err
	}
	kind, value, _ := strings.Cut(r.Text("tolerance"), " ")
	tol, err := strconv.ParseFloat(value, 64)
	if err != nil {
		return nil, err
	}
	if kind == "rel" {
		tol *= math.Abs(want)
	}
	return []Point{Near(fmt.Sprintf("%s %s%s", r.Text("quantity"), r.Text("temp_c"), r.Text("altitude_m")), want, got, tol)}, nil
}

func airExamples(r testdata.Row) ([]Point, error) {
	v, err := numbers(r, "temp_c", "value", "pressure_pa", "published", "band")
	if err != nil {
		return nil, err
	}
	t, given, p := v[0], v[1], v[2]
	var a heat.MoistAir
	switch r.Text("given") {
	case "rh":
		a = heat.MoistAir{TempC: t, RH: given, PressurePa: p}
	case "wet_bulb":
		a, err = fromWetBulb(t, given, p)
	case "dew_point":
		a, err = fromDewPoint(t, given, p)
	case "humidity_ratio":
		a, err = fromRatio(t, given, p)
	case "vapour_pressure":
		var dew float64
		if dew, err = heat.SaturationTemperature(given); err == nil {
			a, err = fromDewPoint(t, dew, p)
		}
	default:
		err = fmt.Errorf("unknown column given: %q", r.Text("given"))
	}
	if err != nil {
		return nil, err
	}
	q := r.Text("quantity")
	compute, scale := map[string]func() (float64, error){
		"humidity ratio": property(a, "HumidityRatio"), "enthalpy": property(a, "Enthalpy"), "dew point": a.DewPointC,
		"specific volume": property(a, "SpecificVolume"), "vapour pressure": property(a, "VapourPressure"), "humid heat": property(a, "SpecificHeat"),
		"relative humidity": func() (float64, error) { return a.RH, nil },
	}[q], map[string]float64{"g/kg": 1e3, "kJ/kg": 1e-3, "%": 100}[r.Text("unit")]
	if compute == nil {
		return nil, fmt.Errorf("unknown quantity %q", q)
	}
	if scale == 0 {
		scale = 1
	}
	got, err := compute()
	if err != nil {
		return nil, err
	}
	return []Point{Near(fmt.Sprintf("%s: %s at %g degC", r.Text("example"), q, t), v[3], got*scale, v[4])}, nil
}

// property is one of the properties of moist air.
func property(a heat.MoistAir, name string) func() (float64, error) {
	return func() (float64, error) {
		p, err := a.Properties()
		return map[string]float64{
			"HumidityRatio": p.HumidityRatio, "Enthalpy": p.Enthalpy, "SpecificVolume": p.SpecificVolume, "Density": p.Density,
			"Viscosity": p.Viscosity, "Conductivity": p.Conductivity, "VapourDiffusivity": p.VapourDiffusivity,
			"VapourPressure": p.VapourPressure, "SpecificHeat": p.SpecificHeat,
		}[name], err
	}
}

// fromRatio is the air that holds a ratio of vapour, kg per kg of dry air.
func fromRatio(tempC, ratio, pressurePa float64) (heat.MoistAir, error) {
	full, err := heat.SaturationPressure(tempC)
	a := heat.MoistAir{TempC: tempC, PressurePa: pressurePa}
	a.RH = cmp.Or(pressurePa, heat.StandardPressure) * ratio / (0.621945 + ratio) / full
	return a, err
}

// fromWetBulb is the air of a wet bulb: WetBulbC the other way.
func fromWetBulb(tempC, wetC, pressurePa float64) (heat.MoistAir, error) {
	a := heat.MoistAir{TempC: tempC, PressurePa: pressurePa}
	low, high := 0.0, 1.0
	for range 60 {
		a.RH = (low + high) / 2
		wet, err := a.WetBulbC()
		switch {
		case err != nil:
			return a, err
		case wet < wetC:
			low = a.RH
		default:
			high = a.RH
		}
	}
	return a, nil
}

func fromDewPoint(tempC, dewC, pressurePa float64) (heat.MoistAir, error) {
	a, err := thermal.AirFromDewPoint(tempC, dewC, pressurePa)
	return heat.MoistAir{TempC: a.TempC, RH: a.RH, PressurePa: a.PressurePa}, err
}
