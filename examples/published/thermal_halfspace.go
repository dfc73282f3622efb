package published

import (
	"errors"
	"fmt"
	"math"
	"time"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

func halfSpaces(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "k_w_mk", "alpha_m2_s", "start_c", "drive", "value")
	if err != nil {
		return nil, err
	}
	label := r.Text("example")
	if r.Text("answer") == "misread chart" {
		return []Point{Skip(label, "the chart answer is 19 % off the formula it stands for")}, nil
	}
	optional := func(column string) float64 {
		x, err := r.Float(column)
		if err != nil {
			return 0 // empty: not used by this row
		}
		return x
	}
	s := thermal.HalfSpace{
		Material: thermal.Material{Conductivity: v[0], Density: 1000, SpecificHeat: v[0] / (v[1] * 1000)},
		StartC:   v[2],
	}
	after := time.Duration(optional("time_s") * float64(time.Second))
	depth, h, target := optional("depth_m"), optional("h_w_m2k"), optional("target_c")
	var got float64
	switch r.Text("surface") + " " + r.Text("quantity") {
	case "held depth_m":
		got, err = s.HeldDepth(v[3], target, after)
	case "held flux_w_m2":
		got, err = s.HeldFlux(v[3], after)
	case "heated temp_c":
		got, err = s.Heated(v[3], depth, after)
	case "convected temp_c":
		got, err = s.Convected(v[3], h, depth, after)
	case "convected time_s":
		var d time.Duration
		d, err = s.ConvectedTimeTo(target, v[3], h, depth)
		got = d.Seconds()
	default:
		err = errors.New("unknown kind of row")
	}
	if err != nil {
		return nil, err
	}
	if r.Text("answer") == "chart" {
		scale := math.Abs(got)
		if r.Text("quantity") == "temp_c" {
			scale = math.Abs(v[2] - v[3])
		}
		return []Point{Near(label+" (chart)", v[4], got, 0.04*scale)}, nil
	}
	return []Point{Near(label, v[4], got, halfDigit(r.Text("value")))}, nil
}

func lumpedBodies(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "length_m", "rho_kg_m3", "cp_j_kgk", "h_w_m2k", "start_c", "ambient_c", "value")
	if err != nil {
		return nil, err
	}
	label := r.Text("example")
	k := 1e6 // stirred: the conductivity does not matter
	if r.Text("k_w_mk") != "stirred" {
		if k, err = r.Float("k_w_mk"); err != nil {
			return nil, err
		}
	}
	l := thermal.Lumped{Material: thermal.Material{Conductivity: k, Density: v[1], SpecificHeat: v[2]},
		Volume: v[0], Area: 1, H: v[3], StartC: v[4], AmbientC: v[5]}
	if r.Text("answer") == "refused" {
		bi, err := l.Biot()
		if !errors.Is(err, thermal.ErrRange) {
			return nil, fmt.Errorf("a Biot number of %g is not refused", bi)
		}
		return []Point{Skip(label, fmt.Sprintf("the book lumps at a Biot number of %.2f; the library refuses", bi))}, nil
	}
	var got float64
	scale := math.Abs(v[4] - v[5])
	if r.Text("quantity") == "temp_c" {
		t, err := r.Float("time_s")
		if err != nil {
			return nil, err
		}
		got, err = l.TempC(time.Duration(t * float64(time.Second)))
		if err != nil {
			return nil, err
		}
	} else {
		target, err := r.Float("target_c")
		if err != nil {
			return nil, err
		}
		d, err := l.TimeTo(target)
		if err != nil {
			return nil, err
		}
		got = d.Seconds()
		scale = got
	}
	if r.Text("answer") == "rounded" {
		return []Point{NearRel(label, v[6], got, 0.0025*scale/math.Abs(got))}, nil
	}
	return []Point{Near(label, v[6], got, halfDigit(r.Text("value")))}, nil
}
