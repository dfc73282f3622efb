package published

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

// halfDigit is half of the last digit printed in a field.
func halfDigit(text string) float64 {
	_, decimals, _ := strings.Cut(text, ".")
	return 0.5000001 * math.Pow(10, -float64(len(decimals)))
}

func oneTerm(r testdata.Row) ([]Point, error) {
	bi := math.Inf(1)
	if r.Text("biot") != "inf" {
		var err error
		if bi, err = r.Float("biot"); err != nil {
			return nil, err
		}
	}
	var out []Point
	for _, form := range []thermal.Form{thermal.SlabForm, thermal.CylinderForm, thermal.SphereForm} {
		v, err := floats(r, form.String()+"_root_rad", form.String()+"_factor")
		if err != nil {
			return nil, err
		}
		s, err := thermal.NewSeries(form, bi)
		if err != nil {
			return nil, err
		}
		root, factor := s.FirstTerm()
		label := fmt.Sprintf("%v, Bi %s", form, r.Text("biot"))
		// The table rounds 1.59945, 1.17846 and 1.78700 the wrong way, so the
		// tolerance is a little more than half a digit.
		out = append(out, Near(label+", root", v[0], root, 0.52e-4))
		if math.IsInf(bi, 1) && form == thermal.CylinderForm {
			out = append(out, Skip(label+", factor", "remembered as 1.6021, exactly 1.60197"))
			continue
		}
		out = append(out, Near(label+", factor", v[1], factor, 0.52e-4))
	}
	return out, nil
}

// transientCase is a row of transient_examples.
type transientCase struct {
	row     testdata.Row
	solid   thermal.Solid
	heat    float64 // rho c, J/(m3 K), for the heat exchanged
	place   thermal.Place
	after   time.Duration
	volume  float64 // per body, per metre or per square metre
	answer  float64
	labeled string
}

func newTransientCase(r testdata.Row) (transientCase, error) {
	number := func(column string) float64 {
		v, err := r.Float(column)
		if err != nil {
			return 0 // an empty field; what is missed shows in the answer
		}
		return v
	}
	c := transientCase{row: r, labeled: r.Text("example")}
	rho, cp, k := number("rho_kg_m3"), number("cp_j_kgk"), number("k_w_mk")
	c.heat = rho * cp
	if alpha := number("alpha_m2_s"); alpha > 0 {
		rho, cp = 1000, k/(alpha*1000)
		if c.heat == 0 {
			c.heat = rho * cp
		}
	}
	d, h := number("diameter_m"), number("height_m")
	c.solid = thermal.Solid{
		Material: thermal.Material{Conductivity: k, Density: rho, SpecificHeat: cp},
		Size:     thermal.Size{Diameter: d, Height: h, Long: strings.Contains(r.Text("solid"), "cylinder") && h == 0},
		H:        number("h_w_m2k"), StartC: number("start_c"), AmbientC: number("ambient_c"),
	}
	switch r.Text("solid") {
	case "sphere":
		c.volume = math.Pi * d * d * d / 6
	case "cylinder":
		c.volume = math.Pi * d * d / 4
	case "slab":
		c.volume = h
	case "short cylinder":
		c.volume = math.Pi * d * d / 4 * h
	case "end of cylinder":
	default:
		return c, fmt.Errorf("unknown solid %q", r.Text("solid"))
	}
	c.place = thermal.Place{R: number("place_r"), H: number("place_h")}
	c.after = time.Duration(number("time_s") * float64(time.Second))
	var err error
	c.answer, err = r.Float("value")
	return c, err
}

// predict returns the quantity of the row by the full series.
func (c transientCase) predict() (float64, error) {
	if c.row.Text("solid") == "end of cylinder" {
		return c.endOfCylinder()
	}
	t, err := c.solid.Transient()
	if err != nil {
		return 0, err
	}
	switch q := c.row.Text("quantity"); q {
	case "temp_c":
		return t.TempC(c.place, c.after)
	case "time_s", "time_min", "time_h":
		target, err := c.row.Float("target_c")
		if err != nil {
			return 0, err
		}
		d, err := t.TimeTo(c.place, target)
		return d.Seconds() / map[string]float64{"time_s": 1, "time_min": 60, "time_h": 3600}[q], err
	default: // heat in kJ
		f, err := t.Heat(c.after)
		return f * c.heat * c.volume * math.Abs(c.solid.StartC-c.solid.AmbientC) / 1000, err
	}
}

// endOfCylinder is a long cylinder times a half-space, place_h being the depth in
// metres.
func (c transientCase) endOfCylinder() (float64, error) {
	depth := c.place.H
	c.place.H = 0
	t, err := c.solid.Transient()
	if err != nil {
		return 0, err
	}
	a, err := t.TempC(c.place, c.after)
	if err != nil {
		return 0, err
	}
	end := thermal.HalfSpace{Material: c.solid.Material, StartC: 1}
	b, err := end.Convected(0, c.solid.H, depth, c.after)
	return c.solid.AmbientC + (a-c.solid.AmbientC)*b, err
}

// oneTermOf is the one-term approximation the book used for a sphere.
func (c transientCase) oneTermOf() (float64, error) {
	r0 := c.solid.Diameter / 2
	s, err := thermal.NewSeries(thermal.SphereForm, c.solid.H*r0/c.solid.Conductivity)
	if err != nil {
		return 0, err
	}
	z, a := s.FirstTerm()
	alpha, err := c.solid.Diffusivity()
	if err != nil {
		return 0, err
	}
	dT := c.solid.StartC - c.solid.AmbientC
	centre := a * math.Exp(-z*z*alpha*c.after.Seconds()/(r0*r0))
	switch c.row.Text("quantity") {
	case "time_min":
		target, err := c.row.Float("target_c")
		return -math.Log((target-c.solid.AmbientC)/(dT*a)) / (z * z) * r0 * r0 / alpha / 60, err
	case "temp_c":
		if c.place.R > 0 {
			centre *= math.Sin(z*c.place.R) / (z * c.place.R)
		}
		return c.solid.AmbientC + dT*centre, nil
	default:
		f := 1 - 3*centre*(math.Sin(z)-z*math.Cos(z))/(z*z*z)
		return f * c.heat * c.volume * math.Abs(dT) / 1000, nil
	}
}

func transients(r testdata.Row) ([]Point, error) {
	c, err := newTransientCase(r)
	if err != nil {
		return nil, err
	}
	if strings.HasPrefix(c.labeled, "Kreith 2.13") {
		return []Point{Skip(c.labeled, "the chart gave 12 % more than the series and finite differences, which agree")}, nil
	}
	got, err := c.predict()
	if err != nil {
		return nil, err
	}
	// A temperature is judged by the difference between start and surroundings.
	scale := math.Abs(got)
	if r.Text("quantity") == "temp_c" {
		scale = math.Abs(c.solid.StartC - c.solid.AmbientC)
	}
	switch answer := r.Text("answer"); answer {
	case "digits":
		return []Point{Near(c.labeled, c.answer, got, 1e-9*scale)}, nil
	case "rounded":
		return []Point{Near(c.labeled, c.answer, got, 0.002*scale)}, nil
	case "interpolated":
		return []Point{Near(c.labeled+" (root interpolated in a coarse table)", c.answer, got, 0.04*scale)}, nil
	case "chart":
		tolerance := 0.04
		if strings.HasPrefix(r.Text("quantity"), "heat") {
			tolerance = 0.09
		}
		return []Point{Near(c.labeled+" (chart)", c.answer, got, tolerance*scale)}, nil
	case "one_term":
		one, err := c.oneTermOf()
		if err != nil {
			return nil, err
		}
		return []Point{
			Near(c.labeled+", one term", c.answer, one, halfDigit(r.Text("value"))),
			Near(c.labeled+", full series", c.answer, got, 0.004*scale),
		}, nil
	default:
		return nil, fmt.Errorf("unknown kind of answer %q", answer)
	}
}
