package published

import (
	"fmt"
	"math"

	"example.org/honestplate/rheology/look/layer"
	"example.org/honestplate/rheology/look/mie"
	"example.org/honestplate/testdata"
)

// Checks of single spheres and of layers.
var lookLight = []Check{
	{
		Table: "mie_spheres", Package: "rheology", Quantity: "efficiencies and asymmetry of a sphere", Unit: "",
		Claim: "half of the last printed digit", Points: mieSpheres,
	},
	{
		Table: "slab", Package: "rheology", Quantity: "light back from a slab and through it", Unit: "",
		Claim: "0.001, 0.0003 for rows worked out by the same method", Points: slabs,
	},
	{
		Table: "slab_thick", Package: "rheology", Quantity: "light back from a pool without end", Unit: "",
		Claim: "1e-4", Points: thickSlabs,
	},
	{
		Table: "slab_over_ground", Package: "rheology", Quantity: "light back from a layer over a ground", Unit: "",
		Claim: "1e-4", Points: slabsOverGround,
	},
	{
		Table: "surface_reflection", Package: "rheology", Quantity: "reflection of a smooth surface", Unit: "",
		Claim: "2e-5, what that integration was good for", Points: surfaceReflection,
	},
	{
		Table: "diffusion_albedo", Package: "rheology", Quantity: "diffuse reflectance of a pool, printed by the diffusion formula", Unit: "",
		Claim: "0.02, what that formula is off by", Points: diffusionAlbedo,
	},
}

func mieSpheres(r testdata.Row) ([]Point, error) {
	index := figure(r, "index_real")
	if figure(r, "index_imaginary") > 0 || index < 1 {
		return []Point{Skip(r.Text("case"), "absorbs or is a bubble: no globule, no micelle")}, nil
	}
	e, err := mie.Sphere(index, figure(r, "size_parameter"))
	if err != nil {
		return nil, err
	}
	var out []Point
	for _, c := range []struct {
		column string
		got    float64
	}{{"extinction", e.Scattering}, {"scattering", e.Scattering}, {"asymmetry", e.Asymmetry}} {
		if v, half, ok := printed(r, c.column); ok {
			// What was printed to twelve digits is compared to nine.
			tolerance := max(1.01*half, 1e-9*math.Abs(v))
			out = append(out, Near(r.Text("case")+", "+c.column, v, c.got, tolerance))
		}
	}
	return out, nil
}

func slabOf(r testdata.Row) layer.Slab {
	depth := math.Inf(1)
	if r.Text("depth") != "inf" {
		depth = figure(r, "depth")
	}
	s := layer.Slab{Albedo: figure(r, "albedo"), Depth: depth}
	if v, _, ok := printed(r, "asymmetry"); ok {
		s.Asymmetry = v
	}
	if v, _, ok := printed(r, "index"); ok {
		s.Index = v
	}
	if v, _, ok := printed(r, "glass_index"); ok {
		s.Glass = v
	}
	return s
}

func slabs(r testdata.Row) ([]Point, error) {
	label := fmt.Sprintf("albedo %s, depth %s, g %s, n %s", r.Text("albedo"), r.Text("depth"), r.Text("asymmetry"), r.Text("index"))
	solved, err := slabOf(r).Solve(figure(r, "cos_incidence"))
	if err != nil {
		return nil, err
	}
	f, err := solved.Alone()
	if err != nil {
		return nil, err
	}
	tolerance := 0.001
	if r.Known() == "computed" {
		tolerance = 0.0003
	}
	var out []Point
	for _, c := range []struct {
		column string
		got    float64
	}{
		{"beam_reflected", f.BeamReflected}, {"beam_transmitted", f.BeamTransmitted},
		{"diffuse_reflected", f.DiffuseReflected}, {"diffuse_transmitted", f.DiffuseTransmitted},
	} {
		v, half, ok := printed(r, c.column)
		switch {
		case !ok:
		case r.Text("note") == "4 points" && math.Abs(v-c.got) > tolerance:
			out = append(out, Skip(label+", "+c.column, "made with four quadrature points, no exact value: with 48 points it moves by as much"))
		default:
			out = append(out, Near(label+", "+c.column, v, c.got, tolerance+half))
		}
	}
	return out, nil
}

func thickSlabs(r testdata.Row) ([]Point, error) {
	albedo := figure(r, "albedo")
	solved, err := layer.Slab{Albedo: albedo, Depth: math.Inf(1)}.Solve(1)
	if err != nil {
		return nil, err
	}
	f, err := solved.Alone()
	if err != nil {
		return nil, err
	}
	at := "albedo " + r.Text("albedo")
	return []Point{
		Near(at+", diffuse", figure(r, "diffuse_reflected"), f.DiffuseReflected, 1e-4),
		Near(at+", beam", figure(r, "beam_reflected"), f.BeamReflected, 1e-4),
		Skip(at+", Kubelka-Munk and van de Hulst", "formulas that the library does not offer"),
	}, nil
}

func slabsOverGround(r testdata.Row) ([]Point, error) {
	albedo, depth, ground := figure(r, "albedo"), figure(r, "depth"), figure(r, "ground")
	solved, err := layer.Slab{Albedo: albedo, Depth: depth}.Solve(1)
	if err != nil {
		return nil, err
	}
	f, err := solved.Over(ground)
	if err != nil {
		return nil, err
	}
	at := fmt.Sprintf("albedo %g, depth %g over %g", albedo, depth, ground)
	return []Point{
		Near(at, figure(r, "diffuse_reflected"), f.DiffuseReflected, 1e-4),
		Skip(at+", Kubelka-Munk", "a formula that the library does not offer"),
	}, nil
}

// surfaceReflection asks a pool that swallows what gets in: what comes back is its surface's.
func surfaceReflection(r testdata.Row) ([]Point, error) {
	n := figure(r, "index")
	f, err := surfaceOf(n)
	at := "n " + r.Text("index")
	return []Point{
		Near(at+", beam", figure(r, "beam"), f.BeamReflected, 1e-5),
		Near(at+", diffuse outside", figure(r, "outside_diffuse"), f.DiffuseReflected, 2e-5),
		// As much must pass one way as the other.
		Near(at+", diffuse inside", figure(r, "inside_diffuse"), 1-(1-f.DiffuseReflected)/(n*n), 2e-5),
	}, err
}

func surfaceOf(n float64) (layer.Fluxes, error) {
	black, err := layer.Slab{Depth: math.Inf(1), Index: n}.Solve(1)
	if err != nil {
		return layer.Fluxes{}, err
	}
	return black.Alone()
}

// diffusionAlbedo compares what the diffusion formula gave with the exact pool for a beam
// square on, the surface's own reflection left out as the formula does.
func diffusionAlbedo(r testdata.Row) ([]Point, error) {
	scatter, absorb, n := figure(r, "reduced_scattering_per_mm"), figure(r, "absorption_per_mm"), figure(r, "index")
	solved, err := layer.Slab{Albedo: scatter / (scatter + absorb), Depth: math.Inf(1), Index: n}.Solve(1)
	if err != nil {
		return nil, err
	}
	f, err := solved.Alone()
	if err != nil {
		return nil, err
	}
	surface, err := surfaceOf(n)
	glare := surface.BeamReflected
	got := (f.BeamReflected - glare) / (1 - glare)
	return []Point{Near(r.Text("material")+" "+r.Text("band"), figure(r, "reflectance"), got, 0.02)}, err
}
