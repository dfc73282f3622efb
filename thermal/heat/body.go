package heat

import (
	"cmp"
	"math"
	"slices"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solve"
)

// A Body is a slab, cylinder or sphere whose temperature is computed from its
// enthalpy, so that freezing and melting, at one temperature or over a range,
// need no front to be followed.
//
// The method is finite volumes: for each shell
//
//	V dH/dt = sum over its two faces of  A k dT/dr
//
// with H the enthalpy by volume (J/m3), and T and k functions of H by the
// Curve. k dT is integrated along the curve (Kirchhoff's transformation), so
// that the flux between two shells is exact for steady flow in all three forms.
// In time it is the implicit TR-BDF2 rule (Bank et al. 1985; Hosea and Shampine
// 1996, "Analysis and implementation of TR-BDF2"; both from memory): second
// order, any step stable, steps chosen from the embedded error estimate. What
// leaves one shell enters the next, and what the law lets in is summed by the same
// rule, so the energy balance closes to rounding.
//
// Second order in the grid away from a sharp front. With the default grid and
// tolerance a scoop's times move by less than 1 % when the grid is doubled.
type Body struct {
	// Form is the shape; the zero value is a sphere.
	Form Form
	// Radius is the radius, or half the slab's thickness, m; above 0.
	Radius float64
	// Curve is the material.
	Curve Curve
	// Cells is the number of shells, 4 to 2000; 0 means 48.
	Cells int
	// Uniform makes the shells equally thick. Otherwise they are thin at the
	// surface and thicker inside, which for the same number is more accurate.
	Uniform bool
	// Tolerance is the error allowed in one time step as a share of the heat that
	// has passed the surface so far; 0 means 3e-5. 1e-9 to 0.01. Over a run the
	// errors add up to some ten times that, or less.
	Tolerance float64
}

// A BodyState is a body at one time.
type BodyState struct {
	Time     time.Duration // since the start
	SurfaceC float64       // temperature of the surface, degC
	MeanC    float64       // temperature at the mean enthalpy, degC
	CoreC    float64       // temperature of the innermost shell, degC
	// HeatJ is the heat taken up since the start, J (cylinder: J/m, slab: J/m2
	// of one face).
	HeatJ float64
	// StoredJ is the gain in enthalpy since the start; it equals HeatJ.
	StoredJ float64
	// PastShare is the share of the volume, 0 to 1, that is past the mark
	// temperature given to Run. A shell on its way between the curve's last point
	// below the mark and the mark counts in part, by its enthalpy: with the mark at
	// the end of melting it is the melted share.
	PastShare float64
}

// Run computes the body from a uniform startC until the given time under a heat
// flux into its surface, W/m2, as a function of surface temperature (degC) and
// time. The flux must not rise with the surface temperature by more than it
// can cool: a cooling law is what makes the problem well posed. It reports the
// state at each of the times asked for, which must not decrease. PastShare counts
// what is warmer than markC.
//
// Errors: [honestplate.InputError] and [honestplate.RangeError] for sizes, curve or times that make no sense;
// [honestplate.RangeError] when the surface leaves the curve; *SolverError when no step comes off,
// as with a flux that is not finite.
func (b Body) Run(startC, markC float64, heat func(surfaceC float64, at time.Duration) float64, times ...time.Duration) ([]BodyState, error) {
	if heat == nil {
		return nil, &honestplate.InputError{Field: "Heat", Got: "nil", Want: "a function of surface temperature and time"}
	}
	b.Cells, b.Tolerance = cmp.Or(b.Cells, 48), cmp.Or(b.Tolerance, 3e-5)
	if err := cmp.Or(b.Curve.check(), b.check()); err != nil {
		return nil, err
	}
	var c solve.Compiled
	solve.Load(&c, b.Curve, 1, 1)
	if err := cmp.Or(c.Holds("StartC", startC), honestplate.Finite("MarkC", markC, "degC"), increasing(times)); err != nil {
		return nil, err
	}
	var e solve.Engine
	grade := solve.UsualGrade
	if b.Uniform {
		grade = 0
	}
	e.Build(int(b.Form), b.Radius, b.Cells, grade)
	e.Begin(&c, startC, b.Tolerance, law(heat))
	if i := slices.IndexFunc(times, func(t time.Duration) bool { return t > 0 }); i >= 0 {
		e.CareFrom(times[i].Seconds())
	}
	states := make([]BodyState, 0, len(times))
	for _, at := range times {
		if err := e.RunTo(at.Seconds()); err != nil {
			return nil, err
		}
		s := e.State(markC)
		states = append(states, BodyState{Time: at, SurfaceC: s.SurfaceC, MeanC: s.MeanC, CoreC: s.CoreC,
			HeatJ: s.HeatJ, StoredJ: s.StoredJ, PastShare: s.PastShare})
	}
	return states, nil
}

func (b Body) check() error {
	return cmp.Or(check.One("Form", int(b.Form), forms[:]),
		honestplate.InRange("Radius", b.Radius, 1e-5, 10, "m", "bodies of a kitchen's size"),
		honestplate.InRange("Cells", float64(b.Cells), 4, 2000, "", "shells that resolve a body in bearable time"),
		honestplate.InRange("Tolerance", b.Tolerance, 1e-9, 0.01, "", "steps that are exact enough in bearable time"))
}

// maxRun bounds what one run may be asked for: a hundred days.
const maxRun = 100 * 24 * time.Hour

func increasing(times []time.Duration) error {
	if len(times) == 0 {
		return &honestplate.InputError{Field: "Times", Got: "none", Want: "at least one"}
	}
	return cmp.Or(check.Not(times[0] < 0 || !slices.IsSorted(times), "Times", times[0].Seconds(), "s", "0 or later, and none before the one before it"),
		honestplate.InRange("Times", times[len(times)-1].Seconds(), 0, maxRun.Seconds(), "s", "nothing is watched for more than a hundred days"))
}

// law takes the slope of a user's law by a central difference.
type law func(surfaceC float64, at time.Duration) float64

func (f law) At(surfaceC, seconds float64) (float64, float64) {
	const d = 1e-3
	t := time.Duration(math.Round(seconds * 1e9))
	return f(surfaceC, t), (f(surfaceC+d, t) - f(surfaceC-d, t)) / (2 * d)
}
