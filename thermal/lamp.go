package thermal

import "math"

// A Head is what a lamp sits in.
type Head int

// The heads, with the share of the radiated power in the beam, were it as bright all
// over as in the middle, and the factor to which that is known. Above 1 because a beam
// is brighter in the middle than over the cone that the beam angle names. From published
// photometrics of tungsten stage heads, except the first.
const (
	OpenFace Head = iota // a reflector or soft box: 0.6, divided and multiplied by 3 (estimate)
	Fresnel              // 0.28, by 3: little in full spot, most in flood
	Profile              // an ellipsoidal spot: 1.33, by 1.7
	PAR                  // a PAR 64: 2.4, by 1.3
)

// share returns the head's BeamShare and the factor to which it is known.
func (h Head) share() (share, factor float64) {
	switch h {
	case Fresnel:
		return 0.28, 3
	case Profile:
		return 1.33, 1.7
	case PAR:
		return 2.4, 1.3
	}
	return 0.6, 3
}

// A Lamp lights the food. Lamp{Watts: 650, Source: Tungsten, Distance: 1.4,
// BeamDegrees: 40} is a 650 W tungsten head at 1.4 m.
//
// Its heat follows from the power and the beam only to a factor of 1.3 to 3, since
// heads differ so much in how much of the light they catch; a light meter at the
// food (Lux) says it to a third.
type Lamp struct {
	// Watts is the electrical power, W, 0..100000. A Flash has none: give Joules.
	Watts float64
	// Source is the kind of light.
	Source Source
	// Distance from the lamp to the food, m, 0.05..100.
	Distance float64
	// BeamDegrees is the full angle of the beam to half its peak, degrees, 1..180;
	// 0 means 60, a plain reflector.
	BeamDegrees float64
	// Head is the kind of head, which says how much of the light is in the beam.
	Head Head
	// BeamShare is the share of the radiated power that is in the beam, were it as
	// bright all over as in the middle, 0..3; 0 means the Head's.
	BeamShare float64
	// Transmittance of what hangs in front, 0..1; 0 means 1. A soft box or a full
	// diffusion frame passes about 0.3..0.5 towards the food, a light one 0.7
	// (engineering estimates).
	Transmittance float64
	// Lux is the illuminance measured at the food, lx; 0 means not measured. Given,
	// it decides: power, beam and transmittance are not looked at. Of a Flash it is
	// the modelling lamp's.
	Lux float64
	// Joules is the energy a Flash stores for one pop, J (Ws), 0..10000.
	Joules float64
	// PopsPerMinute is how often a Flash fires, 0..600.
	PopsPerMinute float64
	// ModellingWatts is the power of a Flash's tungsten modelling lamp while it
	// burns, W, 0..5000.
	ModellingWatts float64
}

// Irradiance returns the radiation that falls on a surface square to the lamp,
// W/m2, averaged over time for a Flash:
//
//	E = Watts x radiated share x BeamShare x Transmittance / (2 pi (1 - cos(BeamDegrees/2)) Distance^2)
//
// and for a Flash Joules x PopsPerMinute/60 in place of Watts, with the modelling
// lamp added. With Lux it is Lux over the source's efficacy. The cone law holds
// from about five times the size of the lamp. A field that makes no sense gives an
// *InputError or a *RangeError.
//
// Hot lamps burn skin and set paper, gel and fabric alight: keep the maker's
// distances, follow local codes and licensed practice. These are estimates.
func (l Lamp) Irradiance() (float64, error) {
	parts, err := l.parts()
	if err != nil {
		return 0, err
	}
	var sum float64
	for _, p := range parts {
		sum += p.irradiance
	}
	return sum, nil
}

// Illuminance returns the lx that the lamp gives at the food, from its Irradiance
// and the source's efficacy; for a Flash that of the modelling lamp alone.
func (l Lamp) Illuminance() (float64, error) {
	parts, err := l.parts()
	if err != nil {
		return 0, err
	}
	p := parts[0]
	if l.Source == Flash {
		p = parts[1]
	}
	return p.irradiance * p.source.data().Efficacy, nil
}

// At returns the lamp moved to another distance, m: a measured Lux falls with the
// square of it.
func (l Lamp) At(distance float64) (Lamp, error) {
	if err := within("lamp distance", distance, 0.05, 100, "m", "this package"); err != nil {
		return Lamp{}, err
	}
	if _, err := l.parts(); err != nil {
		return Lamp{}, err
	}
	if l.Lux > 0 {
		if err := within("lamp distance", l.Distance, 0.05, 100, "m", "this package"); err != nil {
			return Lamp{}, err
		}
		l.Lux *= l.Distance * l.Distance / (distance * distance)
	}
	l.Distance = distance
	return l, nil
}

// A part is what one of the two lights of a Lamp gives.
type part struct {
	source     Source
	irradiance float64 // W/m2
}

// parts checks the lamp and returns its light and, for a Flash, that of the
// modelling lamp.
func (l Lamp) parts() ([2]part, error) {
	var none [2]part
	if err := l.Source.check(); err != nil {
		return none, err
	}
	if l.Head < OpenFace || l.Head > PAR {
		return none, &InputError{"lamp head", float64(l.Head), "", "open face, Fresnel, profile or PAR"}
	}
	for _, f := range [...]struct {
		name           string
		v, low, high   float64
		unit           string
		zeroIsDefault  bool
		neededForPower bool
	}{
		{"lamp power", l.Watts, 0, 1e5, "W", false, false},
		{"beam angle", l.BeamDegrees, 1, 180, "degrees", true, false},
		{"beam share", l.BeamShare, 0, 3, "", false, false},
		{"lamp transmittance", l.Transmittance, 0, 1, "", false, false},
		{"illuminance", l.Lux, 0, 1e7, "lx", false, false},
		{"flash energy", l.Joules, 0, 1e4, "J", false, false},
		{"pops per minute", l.PopsPerMinute, 0, 600, "/min", false, false},
		{"modelling lamp power", l.ModellingWatts, 0, 5000, "W", false, false},
	} {
		if f.zeroIsDefault && f.v == 0 {
			continue
		}
		if err := within(f.name, f.v, f.low, f.high, f.unit, "this package"); err != nil {
			return none, err
		}
	}
	if l.Source == Flash && l.Watts > 0 {
		return none, &InputError{"lamp power", l.Watts, "W", "0 for a flash: give Joules, PopsPerMinute and ModellingWatts"}
	}
	if l.Source != Flash && (l.Joules > 0 || l.PopsPerMinute > 0 || l.ModellingWatts > 0) {
		return none, &InputError{"flash energy, pops or modelling lamp", max(l.Joules, l.PopsPerMinute, l.ModellingWatts), "", "0 unless the source is a flash"}
	}
	power := max(l.Watts, l.Joules, l.ModellingWatts)
	var perWatt float64 // irradiance per watt radiated
	if power > 0 && (l.Lux == 0 || l.Source == Flash) {
		if err := within("lamp distance", l.Distance, 0.05, 100, "m", "this package"); err != nil {
			return none, err
		}
		angle, share, transmittance := l.BeamDegrees, l.BeamShare, l.Transmittance
		if angle == 0 {
			angle = 60
		}
		if share == 0 {
			share, _ = l.Head.share()
		}
		if transmittance == 0 {
			transmittance = 1
		}
		cone := 2 * math.Pi * (1 - math.Cos(angle/2*math.Pi/180))
		perWatt = share * transmittance / (cone * l.Distance * l.Distance)
	}
	watts := l.Watts
	var modelling part
	if l.Source == Flash {
		watts = l.Joules * l.PopsPerMinute / 60
		modelling = part{Tungsten, l.ModellingWatts * Tungsten.data().Radiated * perWatt}
		if l.Lux > 0 {
			modelling.irradiance = l.Lux / Tungsten.data().Efficacy
		}
	}
	main := part{l.Source, watts * l.Source.data().Radiated * perWatt}
	if l.Lux > 0 && l.Source != Flash {
		main.irradiance = l.Lux / l.Source.data().Efficacy
	}
	return [2]part{main, modelling}, nil
}

// LightBand returns the factors between which the true irradiance of these lamps
// lies with 95 %, relative to Irradiance: divided and multiplied by 1.35 where every
// lamp was measured (Lux), by 1.5 where its BeamShare is given, else by what its Head
// is known to; the worst of the lamps counts. 1 and 1 without lamps.
func LightBand(lamps ...Lamp) (low, high float64) {
	factor := 1.0
	for _, l := range lamps {
		switch {
		case l.Lux > 0:
			factor = max(factor, 1.35)
		case l.BeamShare > 0:
			factor = max(factor, 1.5)
		default:
			_, f := l.Head.share()
			factor = max(factor, f)
		}
	}
	return 1 / factor, factor
}
