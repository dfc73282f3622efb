package heat

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// An Exchanger is a Surface in a certain Air, checked and prepared: At is then
// cheap and allocates nothing. Make one by Surface.In: the zero value answers with an
// [honestplate.InputError].
type Exchanger struct {
	shape             Shape
	length            float64
	emissivity        float64
	activity          float64
	factor            float64
	open              float64 // share of the surface that gives off vapour
	popiel, exponent  float64 // curvature of a vertical cylinder; popiel 0 is none
	free              float64 // Prandtl part of the free correlation
	forced, warmer    float64 // h of forced convection; its power of film over stream temperature
	airC, pressure    float64
	vapour            float64 // vapour pressure, Pa
	virtual, radiance float64 // virtual temperature, K; fourth power of the air's, K4
}

// In checks the surface and the air and prepares them for At.
func (s Surface) In(a MoistAir) (Exchanger, error) {
	const source = "bodies for which the correlations were made"
	if err := cmp.Or(honestplate.In("Air", a.check()), check.One("Shape", int(s.Shape), shapes[:]), check.Fields(source,
		check.Number("Length", s.Length, 1e-4, 10, "m"),
		check.Number("Emissivity", s.Emissivity, 0, 1, ""),
		check.Number("Activity", s.Activity, 0, 1, ""),
		check.Number("Covered", s.Covered, 0, 1, ""),
		check.Number("ConvectionFactor", s.ConvectionFactor, 0, 100, ""),
	)); err != nil {
		return Exchanger{}, err
	}
	if s.Shape == VerticalCylinder && s.Diameter != 0 {
		if err := honestplate.InRange("Diameter", s.Diameter, 1e-4, 10, "m", source); err != nil {
			return Exchanger{}, err
		}
	}
	t := a.TempC + kelvin
	pw, p := a.vapour(), a.pressure()
	x := Exchanger{
		shape: s.Shape, length: s.Length, emissivity: cmp.Or(s.Emissivity, defaultEmissivity), activity: s.Activity,
		factor: cmp.Or(s.ConvectionFactor, 1), open: 1 - s.Covered, airC: a.TempC, pressure: p, vapour: pw,
		virtual: virtualTemperature(t, pw, p), radiance: t * t * t * t,
	}
	mu, k := viscosity(t), conductivity(t)
	pr := airHeat * mu / k
	x.free = s.Shape.freeFactor(pr)
	if s.Shape == VerticalCylinder && s.Diameter > 0 {
		x.popiel, x.exponent = popiel(pr, s.Length/s.Diameter)
	}
	if a.Speed > 0 {
		perMetre := a.Speed * density(a.TempC, pw, p) / mu
		h, err := forcedCoefficient(s, perMetre, k, pr)
		if err != nil {
			return Exchanger{}, err
		}
		x.forced = h
		if s.Shape != Sphere {
			// Properties belong to the film, whose temperature At knows: with Nu as Re^n,
			// k as T^0.85 and nu as T^1.77, h goes as T^(0.85 - 1.77 n).
			more, err := forcedCoefficient(s, 1.01*perMetre, k, pr)
			if err != nil {
				return Exchanger{}, err
			}
			// Where the flow along a plate turns turbulent, Nu runs up as Re^2.3 for a
			// stretch; carried over a wide difference that would turn h negative, so no
			// more than Re^1 is carried.
			x.warmer = 0.85 - 1.77*min(1, math.Log(more/h)/math.Log(1.01))
		}
	}
	return x, nil
}

// forcedCoefficient returns h at a Reynolds number per metre.
func forcedCoefficient(s Surface, perMetre, k, pr float64) (float64, error) {
	across := s.Length
	switch s.Shape {
	case VerticalCylinder:
		across = cmp.Or(s.Diameter, s.Length)
	case PlateUp, PlateDown:
		across *= 4 // a disc's diameter, a square's side
	}
	n, err := s.ForcedNusselt(perMetre*across, pr)
	return n * k / across, err
}

// virtualTemperature is that of dry air of the same density, K: vapour is light,
// and buoyancy is driven by the difference in density.
func virtualTemperature(t, pw, p float64) float64 {
	return t * p / (p - (1-ratioOfMoles)*pw)
}

// At returns what the surface exchanges at surfaceC, -100..150 degC (a moist one
// only to where its vapour is 95 % of the air pressure), while it absorbs light
// W/m2.
//
//	convection = h (T_air - T_s), Nu^3 = Nu_free^3 + Nu_forced^3
//	radiation  = eps sigma (T_air^4 - T_s^4)
//	vapour     = h_M (p_w - a_w p_ws(T_s))/(R_v T_film) F, h_M = h/(rho c_p Le^(2/3)), Le = alpha/D
//	latent     = vapour x latent heat of dew, or of frost below 0 degC
//
// with film properties at the mean temperature, virtual temperatures in the
// Rayleigh number and F = p/p_air,log-mean for the flow that the vapour itself
// makes (Stefan), 1.01 on a cold glass, 1.36 at 80 degC. A dry surface (activity 0)
// takes dew as soon as it is below the dew point; between a_w and saturation
// nothing passes.
//
// The analogy is that of Chilton and Colburn (ASHRAE Handbook Fundamentals (SI)
// 2021, ch. 6; Cengel and Ghajar, Heat and Mass Transfer, ch. 14).
func (x Exchanger) At(surfaceC, light float64) (Flux, error) {
	if !(surfaceC >= -100 && surfaceC <= 150 && light >= 0 && light <= 1e6) {
		const source = "bodies and temperatures for which the correlations were made"
		return Flux{}, cmp.Or(honestplate.InRange("SurfaceC", surfaceC, -100, 150, "degC", source), honestplate.InRange("Light", light, 0, 1e6, "W/m2", source))
	}
	if x.length == 0 {
		return Flux{}, &honestplate.InputError{Field: "Exchanger", Got: "empty", Want: "one made by Surface.In"}
	}
	ts, p := surfaceC+kelvin, x.pressure
	ln, lnSlope := lnSaturation(ts)
	saturated := math.Exp(ln)
	ps := x.vapour // of the vapour at the surface: no drive unless dew or evaporation
	if saturated < x.vapour {
		ps = saturated
	} else if moist := x.activity * saturated; moist > x.vapour {
		ps = moist
		if ps > 0.95*p {
			return Flux{}, &honestplate.RangeError{Field: "SurfaceC", Value: surfaceC, Low: -100, High: boiling(0.95 * p / x.activity), Unit: "degC", Source: "at most 95 % of the air pressure may be vapour"}
		}
	}
	film := (ts + x.airC + kelvin) / 2
	mu, k := viscosity(film), conductivity(film)
	rho := p / (dryGas * film)
	h, free := x.coefficient(ts, ps, mu/rho, k, rho)
	// Free convection grows with the difference itself, about as its fourth root.
	growth := 0.0
	if d := surfaceC - x.airC; math.Abs(d) > 0.5 {
		growth = 0.24 * free / d
	}

	var f Flux
	f.H = h
	f.Light = light
	f.Convection = h * (x.airC - surfaceC)
	f.Radiation = x.emissivity * stefanBoltzmann * (x.radiance - float64(ts*ts*ts*ts)) // rounded as radiance is: nothing flows at equilibrium
	heat := rho * airHeat
	third := math.Cbrt(k / (heat * diffusivity(film, p)))
	f.Slope = -h + growth*f.Convection - 4*x.emissivity*stefanBoltzmann*ts*ts*ts
	if ps != x.vapour {
		// Pressures drive it, so that it turns exactly at the dew point; densities would
		// not, as they change with temperature alone.
		flow, latent := stefanFlow(x.vapour, ps, p), latentHeat(surfaceC)
		hm := h / (heat * third * third) * flow / (vapourGas * film)
		if ps > x.vapour {
			hm *= x.open
		}
		f.VapourRate = hm * (x.vapour - ps)
		f.VapourSlope = min(0, f.VapourRate*(growth+flow*lnSlope*ps/(2*p))-hm*ps*lnSlope)
		f.Latent = f.VapourRate * latent
		f.Slope += f.VapourSlope * latent
	}
	return f, nil
}

// coefficient is h at a surface of ts K with vapour ps, W/(m2 K), and the share of free
// convection in it, 0..1.
func (x *Exchanger) coefficient(ts, ps, nu, k, rho float64) (h, free float64) {
	virtual := virtualTemperature(ts, ps, x.pressure)
	dt := virtual - x.virtual
	grashof := gravity * math.Abs(dt) * 2 * x.length * x.length * x.length / ((virtual + x.virtual) * nu * nu)
	ra := grashof * nu * rho * airHeat / k
	shape := x.shape
	if (shape == PlateUp || shape == PlateDown) && dt <= 0 {
		shape = PlateUp + PlateDown - shape // a cold plate facing up is a hot one facing down
	}
	n := shape.free(ra, x.free)
	if x.popiel > 0 {
		n *= cylinderBend(x.popiel, x.exponent, grashof)
	}
	h, free = n*k/x.length, 1
	if x.forced > 0 {
		film := (ts + x.airC + kelvin) / 2
		f := x.forced * (1 + x.warmer*(film/(x.airC+kelvin)-1))
		both := h*h*h + f*f*f
		free = h * h * h / both
		h = math.Cbrt(both)
	}
	return h * x.factor, free
}

// stefanFlow is p over the log-mean pressure of the dry air between two vapour
// pressures.
func stefanFlow(a, b, p float64) float64 {
	dry, other := p-a, p-b
	sum := dry + other
	y := (other - dry) / sum
	if y*y < 0.01 {
		// ln(other/dry) = 2 artanh y, in series to 2e-10: no logarithm, and no 0/0.
		y *= y
		return 2 * p / sum * (1 + y*(1.0/3+y*(1.0/5+y*(1.0/7+y/9))))
	}
	return p * math.Log(other/dry) / (other - dry)
}
