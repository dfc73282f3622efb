package thermal

import (
	"math"
	"time"
)

// A HalfSpace is a body so thick, or a time so short, that heat entering its
// surface does not reach the other side: good while Fo, with the thickness as
// length, is below 0.05. Its formulas are those of Carslaw & Jaeger, Conduction of
// Heat in Solids (from memory), checked on published examples. x is the depth, m;
// e = x/(2 sqrt(alpha t)).
type HalfSpace struct {
	Material
	StartC float64 // degC
}

// check validates and returns depth/(2 sqrt(alpha t)) and sqrt(alpha t).
func (s HalfSpace) check(depth float64, after time.Duration) (e, root float64, err error) {
	if err := s.Validate(); err != nil {
		return 0, 0, err
	}
	if err := temperature("starting temperature", s.StartC); err != nil {
		return 0, 0, err
	}
	if err := notNegative("depth", depth, "m"); err != nil {
		return 0, 0, err
	}
	if err := within("depth", depth, 0, 1e4, "m", "this package"); err != nil {
		return 0, 0, err
	}
	if err := positive("time", after.Seconds(), "s"); err != nil {
		return 0, 0, err
	}
	root = math.Sqrt(s.diffusivity() * after.Seconds())
	return depth / (2 * root), root, nil
}

// Held returns the temperature, degC, at a depth when the surface is held at
// surfaceC from time 0 on: T = Ts + (T0 - Ts) erf(e). Properties and time must be
// above 0, the depth 0 or more, else an *InputError; a depth over 1e4 m, a material that
// is none or a temperature outside -273.15..5000 degC is a *RangeError.
func (s HalfSpace) Held(surfaceC, depth float64, after time.Duration) (float64, error) {
	e, _, err := s.check(depth, after)
	if err != nil {
		return 0, err
	}
	if err := temperature("surface temperature", surfaceC); err != nil {
		return 0, err
	}
	return surfaceC + (s.StartC-surfaceC)*math.Erf(e), nil
}

// HeldFlux returns the heat flux into the surface, W/m2, when it is held at
// surfaceC: k (Ts - T0)/sqrt(pi alpha t). Errors as Held.
func (s HalfSpace) HeldFlux(surfaceC float64, after time.Duration) (float64, error) {
	_, root, err := s.check(0, after)
	if err != nil {
		return 0, err
	}
	if err := temperature("surface temperature", surfaceC); err != nil {
		return 0, err
	}
	return s.Conductivity * (surfaceC - s.StartC) / (math.Sqrt(math.Pi) * root), nil
}

// HeldDepth returns the depth, m, to which a temperature has come after a time when
// the surface is held at surfaceC: the inverse of Held. A temperature not between
// surface (included) and start is a *RangeError; other errors as Held.
func (s HalfSpace) HeldDepth(surfaceC, tempC float64, after time.Duration) (float64, error) {
	_, root, err := s.check(0, after)
	if err != nil {
		return 0, err
	}
	if err := temperature("surface temperature", surfaceC); err != nil {
		return 0, err
	}
	low, high := min(surfaceC, s.StartC), max(surfaceC, s.StartC)
	if err := within("wanted temperature", tempC, low, high, "degC", "surface and start"); err != nil {
		return 0, err
	}
	share := (tempC - surfaceC) / (s.StartC - surfaceC)
	if !(share < 1) {
		return 0, &RangeError{"wanted temperature", tempC, low, high, "degC", "the start is only approached"}
	}
	return 2 * root * math.Erfinv(share), nil
}

// Convected returns the temperature, degC, at a depth when the surface exchanges
// heat with surroundings at ambientC through h, W/(m2 K):
//
//	(T - T0)/(Ta - T0) = erfc(e) - exp(h x/k + u^2) erfc(e + u),  u = h sqrt(alpha t)/k
//
// h must be above 0, else an *InputError; others as Held.
func (s HalfSpace) Convected(ambientC, h, depth float64, after time.Duration) (float64, error) {
	e, root, err := s.check(depth, after)
	if err != nil {
		return 0, err
	}
	if err := temperature("surroundings' temperature", ambientC); err != nil {
		return 0, err
	}
	if err := positive("heat transfer coefficient", h, "W/(m2 K)"); err != nil {
		return 0, err
	}
	return s.StartC + (ambientC-s.StartC)*s.convected(h, e, root), nil
}

func (s HalfSpace) convected(h, e, root float64) float64 {
	if e > 27 {
		return 0
	}
	// halfSpace with Bi and b alike, since the surface is plane.
	return halfSpace(h/s.Conductivity, h/s.Conductivity, e, root)
}

// ConvectedTimeTo returns when a depth reaches a temperature under convection: the
// inverse of Convected. A temperature not between start (included) and
// surroundings is a *RangeError; other errors as Convected. Never if it takes more
// than 285 years.
func (s HalfSpace) ConvectedTimeTo(tempC, ambientC, h, depth float64) (time.Duration, error) {
	if _, err := s.Convected(ambientC, h, depth, time.Second); err != nil {
		return 0, err
	}
	low, high := min(ambientC, s.StartC), max(ambientC, s.StartC)
	if err := within("wanted temperature", tempC, low, high, "degC", "start and surroundings"); err != nil {
		return 0, err
	}
	if tempC == s.StartC {
		return 0, nil
	}
	share := (tempC - s.StartC) / (ambientC - s.StartC)
	if !(share < 1) {
		return 0, &RangeError{"wanted temperature", tempC, low, high, "degC", "the surroundings are only approached"}
	}
	v := rootOf(func(v float64) float64 {
		root := math.Sqrt(s.diffusivity() * math.Exp(v))
		return s.convected(h, depth/(2*root), root) - share
	}, math.Log(1e-9), math.Log(1e11))
	return seconds(math.Exp(v)), nil
}

// Heated returns the temperature, degC, at a depth when the surface takes a steady
// flux q, W/m2 (negative: gives it off), such as a lamp's:
//
//	T - T0 = (2 q sqrt(alpha t/pi)/k) exp(-e^2) - (q x/k) erfc(e)
//
// Errors as Held; q beyond +-1e12 is a *RangeError.
func (s HalfSpace) Heated(q, depth float64, after time.Duration) (float64, error) {
	e, root, err := s.check(depth, after)
	if err != nil {
		return 0, err
	}
	if err := within("heat flux", q, -1e12, 1e12, "W/m2", "this package"); err != nil {
		return 0, err
	}
	rise := 2 * root / math.Sqrt(math.Pi) * math.Exp(-e*e)
	if e < 27 {
		rise -= depth * math.Erfc(e)
	}
	return s.StartC + q/s.Conductivity*rise, nil
}

// ContactC returns the temperature, degC, that two thick bodies take where they
// touch: (e1 T1 + e2 T2)/(e1 + e2) with e their effusivities. It stays there until
// heat has crossed the thinner of the two. Errors as Validate of the materials and, for
// temperatures, as Held.
func ContactC(a, b HalfSpace) (float64, error) {
	ea, err := a.Effusivity()
	if err != nil {
		return 0, err
	}
	eb, err := b.Effusivity()
	if err != nil {
		return 0, err
	}
	for _, c := range [...]float64{a.StartC, b.StartC} {
		if err := temperature("temperature", c); err != nil {
			return 0, err
		}
	}
	return (ea*a.StartC + eb*b.StartC) / (ea + eb), nil
}
