package solve

import (
	"math"

	"example.org/honestplate/thermal/internal/root"
)

// An engine holds one computation: the grid, the state and the work space. It
// is reused from run to run, so that nothing is allocated while time advances.
type Engine struct {
	form   int // of the geometries
	Shells int // shells that are left
	Curve  *Compiled
	x      exchange

	Faces   []float64 // n+1 face radii
	at      []float64 // radius of each shell's node
	Volumes []float64 // of each shell
	per     []float64 // 1/vol
	link    []float64 // conductance factor between shell i and i+1: A/distance
	skin    []float64 // the same from shell i's node to its outer face
	area    []float64 // of each shell's outer face

	Enthalpies, u []float64 // enthalpy and potential; u[n] is the surface's
	f             []float64 // heat into each shell, W
	seg           []int32   // piece of the curve; seg[n] the surface's
	h0, f0        []float64 // the same at the start of the step
	f1            []float64
	vg            []float64 // what a stage starts from: volume times enthalpy, J
	vs, vb        []float64 // volume times slope and base of the shell's piece of the curve
	low           []float64 // potentials at the ends of that piece
	high          []float64
	un            []float64
	d, r          []float64
	wlink         []float64 // link times the implicit weight of the step
	square        []float64 // of wlink
	segHold       []int32

	// Flank, if not nil, is heat that the shells take beside the surface: at their
	// edges, at the foot of a slab. It is taken as straight within a step.
	Flank  func(shell int, tempC, seconds float64) (heat, slope float64) // W, W/K
	weight float64                                                       // implicit weight of the step, s
	fg, fq []float64                                                     // -slope of the flank, W/K, and its heat at 0 degC, W

	tally
	before    tally   // at the start of the last step
	dt        float64 // the next step, s
	StartH    float64
	us0       float64 // surface potential at the start of the last step
	Span      float64 // length of the last step, s
	probes    []probe
	least     float64 // below which heat is not worth counting, J
	tolerance float64 // error allowed in one step, share of the heat moved so far
	steps     int
}

// A tally is what an engine counts as time goes on.
type tally struct {
	Time float64 // s
	Flow float64 // heat through the surface, W
	Heat float64 // summed, J
	// Beside is the heat that came by the flanks, J.
	Beside float64
	moved  float64 // the same without regard to sign, J
}

// usualGrade makes the shells at the surface a twelfth as thick as those at the
// centre. The mapping is r/R = 1 - (exp(grade (1-s)) - 1)/(exp(grade) - 1), s
// uniform; grade 0 is even shells.
const UsualGrade = 2.5

// gradeFor returns the grade, usualGrade or more, that makes the outermost of n
// shells no thicker than a share of the radius.
func GradeFor(n int, share float64) float64 {
	want := share * float64(n)
	if UsualGrade/math.Expm1(UsualGrade) <= want {
		return UsualGrade
	}
	return root.Rising(func(grade float64) float64 { return want - grade/math.Expm1(grade) }, UsualGrade, 8)
}

func grow[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

func (e *Engine) Build(form int, radius float64, n int, grade float64) {
	e.form, e.Shells, e.Flank = form, n, nil
	for _, v := range [...]*[]float64{&e.Faces, &e.at, &e.Volumes, &e.per, &e.link, &e.skin, &e.area, &e.Enthalpies, &e.u, &e.f, &e.h0, &e.f0, &e.f1,
		&e.vg, &e.vs, &e.vb, &e.low, &e.high, &e.un, &e.d, &e.r, &e.wlink, &e.square, &e.fg, &e.fq} {
		*v = grow(*v, n+1)
	}
	e.seg, e.segHold = grow(e.seg, n+1), grow(e.segHold, n+1)
	clear(e.fg)
	clear(e.fq)
	for i := range n + 1 {
		s := float64(i) / float64(n)
		if grade > 0 {
			s = 1 - math.Expm1(grade*(1-s))/math.Expm1(grade)
		}
		e.Faces[i] = radius * s
	}
	e.Faces[0] = 0
	g := geometries[form]
	for i := range n {
		a, b := e.Faces[i], e.Faces[i+1]
		e.at[i], e.Volumes[i], e.area[i] = g.node(a, b), g.content(b)-g.content(a), g.area(b)
		e.per[i], e.skin[i] = 1/e.Volumes[i], g.conduct(e.at[i], b)
		if i > 0 {
			e.link[i-1] = g.conduct(e.at[i-1], e.at[i])
		}
	}
}

// A geometry is what a form makes of radii: the content to one and the area at one; the
// node of a shell, where its mean is its value to second order, its centroid; and the
// conductance of steady flow from one to another, per unit conductivity.
type geometry struct {
	content, area func(r float64) float64
	node, conduct func(a, b float64) float64
}

// geometries are those of a ball, a cylinder and a slab, as heat.Form numbers them.
var geometries = [...]geometry{
	{
		func(r float64) float64 { return 4.0 / 3 * math.Pi * r * r * r }, func(r float64) float64 { return 4 * math.Pi * r * r },
		func(a, b float64) float64 { return 0.75 * (a + b) * (a*a + b*b) / (a*a + a*b + b*b) },
		func(a, b float64) float64 { return 4 * math.Pi * a * b / (b - a) },
	},
	{
		func(r float64) float64 { return math.Pi * r * r }, func(r float64) float64 { return 2 * math.Pi * r },
		func(a, b float64) float64 { return 2.0 / 3 * (a*a + a*b + b*b) / (a + b) },
		func(a, b float64) float64 { return 2 * math.Pi / math.Log(b/a) },
	},
	{
		func(r float64) float64 { return r }, func(float64) float64 { return 1 },
		func(a, b float64) float64 { return (a + b) / 2 },
		func(a, b float64) float64 { return 1 / (b - a) },
	},
}

// Content is the volume to a radius: of a cylinder per metre, of a slab per square metre.
func (e *Engine) Content(r float64) float64 { return geometries[e.form].content(r) }
